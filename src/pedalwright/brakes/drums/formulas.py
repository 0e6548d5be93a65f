"""Drum brakes: how much a shoe helps itself, by the short sum and by the long one.

The short sum puts the whole pressure of a shoe at its middle. It shows why a leading shoe
bites and when it would grab, from four lengths and the friction. The long sum (long shoe)
spreads the pressure as the sine of the angle from the pivot, and needs the lining's ends.
"""

import numpy as np

from pedalwright.core.units import MPa, N, Nmm, Ratio, mm, rad
from pedalwright.core.working import formula


@formula("S_lead", source="geometry; moments about the shoe's pivot")
def leading_factor(mu: Ratio, h: mm, b: mm, r: mm) -> Ratio:
    """Drag of a shoe that the drum pulls into itself, over the force that applies it.

    `h` is the applied force's arm about the pivot, `b` the pivot's distance from the drum's
    centre line, `r` the drum's radius. Infinite where the shoe grabs by itself. For a short
    lining opposite the pivot; a long one gives less.
    """
    return np.where(b > mu * r, mu * h / (b - mu * r), np.inf)


@formula("S_trail", source="geometry; moments about the shoe's pivot")
def trailing_factor(mu: Ratio, h: mm, b: mm, r: mm) -> Ratio:
    """Drag of a shoe that the drum pushes off, over the force that applies it.

    The same four measures as for the leading shoe, and the same limits.
    """
    return mu * h / (b + mu * r)


@formula("C", source="geometry")
def simplex_factor(S_lead: Ratio, S_trail: Ratio) -> Ratio:
    """Brake factor of one leading and one trailing shoe, applied by equal forces."""
    return S_lead + S_trail


@formula("C", source="geometry")
def duplex_factor(S_lead: Ratio) -> Ratio:
    """Brake factor of two leading shoes; going backwards both trail."""
    return 2 * S_lead


@formula("k", source="geometry; balance of the floating shoe")
def passed_on(S_first: Ratio, mu: Ratio) -> Ratio:
    """Force the floating first shoe of a duo-servo drum passes on, over the force on it."""
    return S_first / mu - 1


@formula("C", source="geometry")
def duo_servo_factor(S_first: Ratio, k: Ratio, S_second: Ratio) -> Ratio:
    """Brake factor of a duo-servo drum: the first shoe, and the second pushed `k` times as hard.

    Very sensitive to friction: both factors and `k` grow with it.
    """
    return S_first + k * S_second


@formula("mu_grab", source="geometry")
def grabbing_friction(b: mm, r: mm) -> Ratio:
    """Lining friction at which a leading shoe grabs by itself and cannot be let go."""
    return b / r


@formula("M_n", source="Bhandari, 12.6")
def pressure_moment(
    p_max: MPa, w: mm, r: mm, h: mm, theta_1: rad, theta_2: rad, theta_max: rad
) -> Nmm:
    """Moment of the lining's pressure about the shoe's pivot.

    `w` is the lining's width, `h` the pivot's distance from the drum's centre. Angles run from
    the line centre-pivot to the lining's two ends; `theta_max` is where the pressure is
    highest: 90 degrees, or the far end if it lies before that. True for a stiff shoe and drum.
    """
    return (
        p_max
        * w
        * r
        * h
        / (4 * np.sin(theta_max))
        * (2 * (theta_2 - theta_1) - np.sin(2 * theta_2) + np.sin(2 * theta_1))
    )


@formula("M_f", source="Bhandari, 12.6")
def friction_moment(
    mu: Ratio, p_max: MPa, w: mm, r: mm, h: mm, theta_1: rad, theta_2: rad, theta_max: rad
) -> Nmm:
    """Moment of the lining's friction about the shoe's pivot; helps a leading shoe.

    The same measures and limits as for the moment of the pressure.
    """
    return (
        mu
        * p_max
        * w
        * r
        / (4 * np.sin(theta_max))
        * (
            4 * r * (np.cos(theta_1) - np.cos(theta_2))
            - h * (np.cos(2 * theta_1) - np.cos(2 * theta_2))
        )
    )


@formula("F_lead", source="Bhandari, 12.6")
def leading_force(M_n: Nmm, M_f: Nmm, c: mm) -> N:
    """Force that applies a leading shoe, at the arm `c` about its pivot; below zero it grabs."""
    return (M_n - M_f) / c


@formula("p_max", source="Bhandari, 12.6")
def trailing_pressure(p_lead: MPa, M_n: Nmm, M_f: Nmm) -> MPa:
    """Highest pressure on a trailing shoe applied by the same force as its leading partner.

    `M_n` and `M_f` are the leading shoe's moments, at its highest pressure `p_lead`.
    """
    return p_lead * (M_n - M_f) / (M_n + M_f)


@formula("T", source="Bhandari, 12.6")
def shoe_torque(
    mu: Ratio, p_max: MPa, w: mm, r: mm, theta_1: rad, theta_2: rad, theta_max: rad
) -> Nmm:
    """Braking torque of one shoe."""
    return mu * p_max * w * r**2 * (np.cos(theta_1) - np.cos(theta_2)) / np.sin(theta_max)


@formula("F_trail", source="Bhandari, 12.6")
def trailing_force(M_n: Nmm, M_f: Nmm, c: mm) -> N:
    """Force that applies a trailing shoe, at the arm `c` about its pivot."""
    return (M_n + M_f) / c


@formula("S", source="Bhandari, 12.6")
def shoe_factor(T: Nmm, F: N, r: mm) -> Ratio:
    """Drag of a shoe over the force that applies it; infinite where it grabs by itself.

    Torque and force grow together with the highest pressure, which drops out.
    """
    return np.where(F > 0 * F, T / (F * r), np.inf)


@formula("mu_grab", source="Bhandari, 12.6")
def long_grabbing_friction(mu: Ratio, M_n: Nmm, M_f: Nmm) -> Ratio:
    """Lining friction at which a leading shoe grabs: the friction's moment grows with it."""
    return mu * M_n / M_f


@formula("dC", source="geometry")
def friction_power(C_low: Ratio, C_high: Ratio, mu_low: Ratio, mu_high: Ratio) -> Ratio:
    """How torque follows lining friction: 1 per cent more friction gives so many per cent torque.

    1 for a disc; a shoe that helps itself has more, and fades and pulls by as much more.
    """
    return np.log(C_high / C_low) / np.log(mu_high / mu_low)
