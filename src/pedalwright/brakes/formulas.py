"""Brakes: one formula each, from line pressure to lock order."""

import numpy as np

from pedalwright.core.units import MPa, N, Nmm, Ratio, kg, m_s2, mm, mm2
from pedalwright.core.working import formula

#: Standard gravity as the handbooks' worked examples use it, m/s2.
GRAVITY = 9.81
#: The push at which a design stop is judged, N (UN R13-H and FMVSS 135 allow no more).
DESIGN_PUSH = 500.0
#: Deceleration of the cold service-brake test, m/s2 (UN R13-H, to verify).
SERVICE_DECELERATION = 6.43
#: Deceleration asked of what is left with one circuit lost, m/s2 (UN R13-H, to verify).
SECONDARY_DECELERATION = 2.44


@formula("C", source="geometry")
def disc_factor(mu: Ratio) -> Ratio:
    """Brake factor of a disc: both faces rub, so twice the lining friction."""
    return 2 * mu


@formula("T", source="Limpert")
def brake_torque(C: Ratio, p: MPa, A: mm2, r: mm) -> Nmm:
    """Torque at one wheel: brake factor x pressure x piston area x radius.

    For a disc, `A` is the pistons of ONE side and `r` the effective radius; counting both
    sides of a fixed calliper doubles the answer wrongly. For a drum, `A` is one wheel
    cylinder's piston and `r` the drum's radius.
    """
    return C * p * A * r


@formula("F_axle", source="geometry")
def axle_force(T: Nmm, R: mm) -> N:
    """Braking force of both wheels of an axle on the road, while they roll."""
    return 2 * T / R


@formula("phi", source="geometry")
def force_share(F_front: N, F_rear: N) -> Ratio:
    """Front share of the braking force."""
    return F_front / (F_front + F_rear)


@formula("a", source="Newton")
def deceleration(F: N, m: kg) -> m_s2:
    """Deceleration from the braking force, without any limit of grip."""
    return F / m


@formula("F_pedal", source="geometry")
def effort_for(F_known: N, a_known: m_s2, a_wanted: m_s2) -> N:
    """Push for a wanted deceleration: push and deceleration grow together while wheels roll."""
    return F_known * a_wanted / a_known


@formula("F_pedal", source="geometry")
def pad_push(F_rod: N, i: Ratio) -> N:
    """Push on the pad that puts a force on the rod."""
    return F_rod / i


@formula("psi_laden", source="geometry")
def laden_share(m: kg, psi: Ratio, m_load: kg, psi_load: Ratio) -> Ratio:
    """Front share of the weight of car and load together."""
    return (m * psi + m_load * psi_load) / (m + m_load)


@formula("z", source="UN R13-H")
def braking_rate(a: m_s2, g: m_s2) -> Ratio:
    """Braking rate: deceleration as a share of gravity."""
    return a / g


@formula("phi_ideal", source="Limpert")
def ideal_share(psi: Ratio, z: Ratio, h: mm, L: mm) -> Ratio:
    """Front share at which both axles use the road alike: standing share plus load transfer."""
    return psi + z * h / L


@formula("z_crit", source="Limpert")
def critical_rate(phi: Ratio, psi: Ratio, h: mm, L: mm) -> Ratio:
    """Braking rate up to which the front wheels lock first.

    From equal adhesion on both axles: phi = psi + z h / L. Below it the front locks first,
    above it the rear, which lets the car turn round.
    """
    return (phi - psi) * L / h


@formula("f_front", source="UN R13-H")
def front_adhesion(phi: Ratio, z: Ratio, psi: Ratio, h: mm, L: mm) -> Ratio:
    """Adhesion the front axle uses: its braking force over its load, load transfer included."""
    return phi * z / (psi + z * h / L)


@formula("f_rear", source="UN R13-H")
def rear_adhesion(phi: Ratio, z: Ratio, psi: Ratio, h: mm, L: mm) -> Ratio:
    """Adhesion the rear axle uses: its braking force over its load; infinite once it lifts."""
    return np.where(psi + z * h / L < 1, (1 - phi) * z / (1 - psi - z * h / L), np.inf)


@formula("z_front", source="Limpert")
def front_alone_grip(mu: Ratio, psi: Ratio, h: mm, L: mm) -> Ratio:
    """Most that the front axle alone can do on a road of grip `mu`."""
    return mu * psi / (1 - mu * h / L)


@formula("z_rear", source="Limpert")
def rear_alone_grip(mu: Ratio, psi: Ratio, h: mm, L: mm) -> Ratio:
    """Most that the rear axle alone can do on a road of grip `mu`."""
    return mu * (1 - psi) / (1 + mu * h / L)


@formula("N_front", source="Limpert")
def front_load(m: kg, g: m_s2, psi: Ratio, z: Ratio, h: mm, L: mm) -> N:
    """Load on the front axle while braking: moments about the rear tyres."""
    return m * g * (psi + z * h / L)


@formula("N_rear", source="Limpert")
def rear_load(m: kg, g: m_s2, psi: Ratio, z: Ratio, h: mm, L: mm) -> N:
    """Load on the rear axle while braking: moments about the front tyres."""
    return m * g * (1 - psi - z * h / L)


@formula("z_front_lock", source="Limpert")
def front_lock(mu: Ratio, phi: Ratio, psi: Ratio, h: mm, L: mm) -> Ratio:
    """Braking rate at which the front axle locks on a road of grip `mu`; infinite if never."""
    return np.where(phi > mu * h / L, mu * psi / (phi - mu * h / L), np.inf)


@formula("z_rear_lock", source="Limpert")
def rear_lock(mu: Ratio, phi: Ratio, psi: Ratio, h: mm, L: mm) -> Ratio:
    """Braking rate at which the rear axle locks on a road of grip `mu`."""
    return mu * (1 - psi) / (1 - phi + mu * h / L)


@formula("k_needed", source="UN R13-H")
def utilisation_limit(k: Ratio) -> Ratio:
    """Least braking rate on a road of adhesion `k` between 0.2 and 0.8 (from memory, to verify)."""
    return 0.1 + 0.7 * (k - 0.2)


@formula("r_eff", source="geometry")
def mean_radius(r_outer: mm, r_inner: mm) -> mm:
    """Effective radius of a worn-in pad: the middle of the rubbed ring."""
    return (r_outer + r_inner) / 2


@formula("r_eff", source="geometry")
def new_pad_radius(r_outer: mm, r_inner: mm) -> mm:
    """Effective radius of a new pad, pressed alike over its whole ring."""
    return 2 / 3 * (r_outer**3 - r_inner**3) / (r_outer**2 - r_inner**2)
