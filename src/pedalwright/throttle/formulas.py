"""Throttle: turns, springs, pad force and open area, one formula each."""

import numpy as np

from pedalwright.core.units import N, Nmm, Nmm_rad, Ratio, mm, mm2, rad
from pedalwright.core.working import formula


@formula("theta", source="geometry")
def pedal_turn(s_pad: mm, r_pad: mm) -> rad:
    """Turn of the pedal for a pad travel along its arc."""
    return s_pad / r_pad


@formula("phi", source="geometry")
def rod_turn(A: mm2, B: mm2, C: mm2, sigma: Ratio) -> rad:
    """Turn of the driven lever from where it stood: the rod keeps its length.

    Its pin's circle meets the rod's length where A cos(phi) + B sin(phi) = C; `sigma`, +1 or -1,
    is the side on which it was assembled.
    """
    return np.arctan2(
        B * C + sigma * A * np.sqrt(A**2 + B**2 - C**2),
        A * C - sigma * B * np.sqrt(A**2 + B**2 - C**2),
    )


@formula("phi", source="geometry")
def turn_from_rest(phi_middle: rad, phi_after: rad) -> rad:
    """Turn from rest of a lever whose rod was fitted at mid-travel: up to there and beyond."""
    return phi_middle + phi_after


@formula("i_rod", source="geometry")
def rod_gearing(a_driving: mm, a_driven: mm) -> Ratio:
    """Gearing of a rod, turn over turn: the distances of its line from the two axes.

    Measured square to the axis on a drawing; with slanting axes the moment of a unit push along
    the rod. It is the lever's length where the rod is square to it and 0 at a dead point.
    """
    return a_driving / a_driven


@formula("phi", source="geometry")
def cable_turn(r_driving: mm, theta: rad, slack: mm, r_driven: mm) -> rad:
    """Turn of a driven quadrant: what is pulled, less the slack, over its radius."""
    return (np.maximum(r_driving * theta, slack) - slack) / r_driven


@formula("theta", source="geometry")
def cable_turn_needed(r_driven: mm, phi: rad, slack: mm, r_driving: mm) -> rad:
    """Turn of the driving quadrant that opens the driven one by `phi`, slack taken up first."""
    return (slack + r_driven * phi) / r_driving


@formula("r_driven", source="geometry")
def largest_quadrant(r_driving: mm, theta: rad, slack: mm, phi: rad) -> mm:
    """Largest quadrant at the spindle that a pedal's turn `theta` still opens by `phi`."""
    return (r_driving * theta - slack) / phi


@formula("T", source="geometry")
def spring_torque(T_0: Nmm, k: Nmm_rad, phi: rad) -> Nmm:
    """Torque of a return spring at the spindle, opened by `phi`."""
    return T_0 + k * phi


@formula("F_pad", source="geometry")
def pad_force(T_springs: Nmm, T_friction: Nmm, i: Ratio, r_pad: mm) -> N:
    """Push on the pad that holds the spindle open: springs and friction through the gearing."""
    return (T_springs + T_friction) * i / r_pad


@formula("F_return", source="geometry")
def return_force(T_springs: Nmm, T_friction: Nmm, i: Ratio, r_pad: mm) -> N:
    """Force with which the pad comes back: springs less friction through the gearing.

    What the pedal's own pivot and weight take or give is not in it.
    """
    return (T_springs - T_friction) * i / r_pad


@formula("F_rod", source="geometry")
def rod_force(F_pad: N, r_pad: mm, r_lever: mm, alpha: rad) -> N:
    """Force in the rod for a push on the pad; `alpha` is the angle of rod and lever."""
    return F_pad * r_pad / (r_lever * np.sin(alpha))


@formula("T", source="geometry")
def lever_torque(F_rod: N, r_lever: mm, beta: rad) -> Nmm:
    """Torque a rod puts on a lever; with no stop at the pedal the spindle's own stop takes it."""
    return F_rod * r_lever * np.sin(beta)


@formula("T", source="geometry")
def stop_torque(F_pad: N, r_pad: mm, i: Ratio) -> Nmm:
    """Torque on the spindle's own stop for a push on the pad that no pedal stop takes.

    The work of the pad is the work of the spindle, whatever lies between. Springs and friction,
    which help the stop a little, are left out.
    """
    return F_pad * r_pad / i


@formula("c", source="geometry")
def plate_width(psi: rad, psi_0: rad) -> Ratio:
    """Width that the plate of a butterfly covers, seen along the bore, as a share of the bore.

    `psi` and the closed angle `psi_0` are measured from square to the bore.
    """
    return np.cos(psi) / np.cos(psi_0)


@formula("a_open", source="geometry")
def open_share(c: Ratio) -> Ratio:
    """Open share of the bore past a thin plate of covered width `c`; no flow coefficient."""
    return 1 - c


@formula("alpha", source="geometry")
def shaft_in_bore(a: Ratio) -> rad:
    """Angle in the bore at which the edge of a shaft, `a` of the bore wide, meets it."""
    return np.arcsin(a)


@formula("beta", source="geometry")
def shaft_on_plate(a: Ratio, c: Ratio) -> rad:
    """The same angle on the plate of covered width `c`; a right angle once the shaft hides it."""
    return np.arcsin(np.minimum(a / c, 1))


@formula("a_open", source="Heywood, eq. 7.18, to verify")
def open_share_with_shaft(alpha: rad, beta: rad) -> Ratio:
    """Open share of the bore past plate and shaft; once the shaft hides the plate it stays.

    `alpha` is the angle of the shaft's edge in the bore, `beta` on the plate; the shaft must have
    a width. The source's areas written with these two angles. Geometry only, no flow coefficient.
    """
    return (
        1
        - np.sin(alpha) / np.sin(beta)
        + 2 / np.pi * (np.sin(alpha) * (np.cos(beta) + beta / np.sin(beta) - np.cos(alpha)) - alpha)
    )


@formula("psi", source="geometry")
def hidden_from(a: Ratio, psi_0: rad) -> rad:
    """Angle from which the shaft hides the plate, so that the bore opens no further."""
    return np.arccos(a * np.cos(psi_0))


@formula("psi", source="geometry")
def plate_angle(psi_0: rad, phi: rad) -> rad:
    """Angle of the butterfly from square to the bore, its spindle opened by `phi`."""
    return psi_0 + phi


@formula("L_cut", source="geometry")
def cut_length(L: mm, b_1: mm, b_2: mm, e_1: mm, e_2: mm) -> mm:
    """Bar to cut for a rod of `L` from ball to ball.

    Each joint takes its reach `b` from ball to face, and the rod goes into it by `e`.
    """
    return L - b_1 - b_2 + e_1 + e_2
