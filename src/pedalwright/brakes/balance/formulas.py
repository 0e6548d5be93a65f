"""A limiter bends the rear axle's braking: one formula each for what follows.

Up to the knee the rear axle has the share 1 - phi of all braking. Past it the rear's braking,
as a share of the car's weight, is a straight line b + sigma z over the braking rate z. Lock
order, lock points and effort come from that line in closed form.
"""

import numpy as np

from pedalwright.core.units import MPa, N, Ratio, m_s2, mm
from pedalwright.core.working import formula


@formula("z_knee", source="geometry")
def knee_rate(z: Ratio, p_knee: MPa, p_rear: MPa) -> Ratio:
    """Braking rate at which the rear pressure reaches the limiter's knee.

    `z` is the rate at a rear pressure `p_rear` without the limiter: both grow together.
    """
    return z * p_knee / p_rear


@formula("sigma", source="geometry")
def rear_slope(phi: Ratio, m: Ratio) -> Ratio:
    """Share of any further braking that the rear axle takes past the knee.

    `m` is the limiter's slope, `phi` the front share below the knee.
    """
    return m * (1 - phi) / (phi + m * (1 - phi))


@formula("b", source="geometry")
def rear_start(phi: Ratio, sigma: Ratio, z_knee: Ratio) -> Ratio:
    """Where the rear axle's line past the knee would begin at no braking: both meet at the knee."""
    return (1 - phi - sigma) * z_knee


@formula("phi", source="geometry")
def share_past_knee(z: Ratio, sigma: Ratio, b: Ratio) -> Ratio:
    """Front share of the braking force past the knee; it rises with the rate."""
    return 1 - sigma - b / z


@formula("z_crit", source="geometry")
def critical_past_knee(sigma: Ratio, b: Ratio, psi: Ratio, h: mm, L: mm) -> Ratio:
    """Braking rate past the knee up to which the front wheels lock first.

    The larger root of b + sigma z = z (1 - psi - z h / L), where the rear's line crosses what
    equal use of the road would give it. 0 where the line lies above that everywhere: then the
    rear locks first at any rate.
    """
    return np.where(
        (1 - psi - sigma) ** 2 >= 4 * b * h / L,
        (1 - psi - sigma + np.sqrt((1 - psi - sigma) ** 2 - 4 * b * h / L)) * L / (2 * h),
        0.0,
    )


@formula("z_front_lock", source="geometry")
def front_lock_past_knee(mu: Ratio, sigma: Ratio, b: Ratio, psi: Ratio, h: mm, L: mm) -> Ratio:
    """Braking rate past the knee at which the front axle locks on a road of grip `mu`."""
    return np.where(
        1 - sigma > mu * h / L,
        (mu * psi + b) / (1 - sigma - mu * h / L),
        np.inf,
    )


@formula("z_rear_lock", source="geometry")
def rear_lock_past_knee(mu: Ratio, sigma: Ratio, b: Ratio, psi: Ratio, h: mm, L: mm) -> Ratio:
    """Braking rate past the knee at which the rear axle locks on a road of grip `mu`."""
    return (mu * (1 - psi) - b) / (sigma + mu * h / L)


@formula("F_rod", source="geometry")
def effort_past_knee(F: N, a_front: m_s2, a_rear: m_s2, F_knee: N, m: Ratio, a_wanted: m_s2) -> N:
    """Force on the cylinders for a wanted deceleration, with a limiter behind the rear one.

    `a_front` and `a_rear` are what the axles give at the force `F` without the limiter, `F_knee`
    the force at its knee, `m` its slope. Infinite where no force is enough.
    """
    return np.where(
        (a_front + a_rear) * F_knee >= a_wanted * F,
        F * a_wanted / (a_front + a_rear),
        F_knee + np.divide(a_wanted * F - (a_front + a_rear) * F_knee, a_front + m * a_rear),
    )


@formula("z", source="geometry")
def gripped_rate(z_front: Ratio, z_rear: Ratio, mu: Ratio, psi: Ratio, h: mm, L: mm) -> Ratio:
    """Braking rate reached when no axle can brake with more than its load times the grip `mu`.

    `z_front` and `z_rear` are the braking forces over the car's weight, were the road endless in
    grip. The least of four: nothing locks, the front alone, the rear alone, both. A locked tyre
    is taken to hold as well as a rolling one.
    """
    return np.minimum(
        np.minimum(z_front + z_rear, mu),
        np.minimum(
            (mu * psi + z_rear) / (1 - mu * h / L),
            (z_front + mu * (1 - psi)) / (1 + mu * h / L),
        ),
    )
