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
    return np.arctan2(B, A) + sigma * np.arccos(C / np.hypot(A, B))


@formula("phi", source="geometry")
def cable_turn(r_driving: mm, theta: rad, slack: mm, r_driven: mm) -> rad:
    """Turn of a driven quadrant: what is pulled, less the slack, over its radius."""
    return np.maximum(r_driving * theta - slack, 0.0) / r_driven


@formula("i_rod", source="geometry")
def rod_gearing(r_driving: mm, alpha: rad, r_driven: mm, beta: rad) -> Ratio:
    """Gearing of a rod: turn over turn, by the lever arms; angles of the rod to each lever."""
    return r_driving * np.sin(alpha) / (r_driven * np.sin(beta))


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
    """Force with which the pad comes back: springs less friction through the gearing."""
    return (T_springs - T_friction) * i / r_pad


@formula("F_rod", source="geometry")
def rod_force(F_pad: N, r_pad: mm, r_lever: mm, alpha: rad) -> N:
    """Force in the rod for a push on the pad; `alpha` is the angle of rod and lever."""
    return F_pad * r_pad / (r_lever * np.sin(alpha))


@formula("T", source="geometry")
def lever_torque(F_rod: N, r_lever: mm, beta: rad) -> Nmm:
    """Torque a rod puts on a lever; with no stop at the pedal the spindle's own stop takes it."""
    return F_rod * r_lever * np.sin(beta)


@formula("a_open", source="geometry")
def open_share(psi: rad, psi_0: rad) -> Ratio:
    """Open share of the bore past a thin plate turned to `psi`, closed at `psi_0`.

    Angles from square to the bore. Geometry only, no flow coefficient.
    """
    return 1 - np.cos(psi) / np.cos(psi_0)


@formula("a_open", source="Heywood")
def open_share_with_shaft(psi: rad, psi_0: rad, d: mm, D: mm) -> Ratio:
    """Open share of the bore past plate and shaft; nothing is gained once it hides the plate.

    `d` is the shaft's, `D` the bore's diameter.
    """
    return np.where(
        np.cos(psi) / np.cos(psi_0) > d / D,
        1
        - np.cos(psi) / np.cos(psi_0)
        + 2
        / np.pi
        * (
            d
            / D
            * np.cos(psi_0)
            / np.cos(psi)
            * np.sqrt(np.maximum((np.cos(psi) / np.cos(psi_0)) ** 2 - (d / D) ** 2, 0.0))
            + np.cos(psi)
            / np.cos(psi_0)
            * np.arcsin(np.minimum(d / D * np.cos(psi_0) / np.cos(psi), 1.0))
            - d / D * np.sqrt(1 - (d / D) ** 2)
            - np.arcsin(d / D)
        ),
        1 - 2 / np.pi * (np.arcsin(d / D) + d / D * np.sqrt(1 - (d / D) ** 2)),
    )
