"""The triangle of hip, knee and ankle, and the angles the joints are judged by."""

import numpy as np
from numpy import pi

from pedalwright.core.units import N, Nmm, Ratio, mm, rad
from pedalwright.core.working import formula


@formula("gamma", source="geometry")
def knee_angle(T: mm, S: mm, D: mm) -> rad:
    """Angle at the knee between thigh and shank, by the law of cosines.

    `D` is the distance from hip to ankle. No value where the leg cannot span it. Near a straight
    leg a small error of `D` is a large one of the angle.
    """
    return np.arccos((T**2 + S**2 - D**2) / (2 * T * S))


@formula("phi", source="geometry")
def ankle_angle(sigma: rad, alpha: rad) -> rad:
    """Angle at the ankle between shin and sole.

    Shin `sigma` and sole `alpha` are both measured from straight ahead upwards. The angle the SAE
    calls A46, to the line of the bare foot, is 6.5 degrees more.
    """
    return sigma - alpha


@formula("eta", source="geometry")
def hip_angle(tau: rad, psi: rad) -> rad:
    """Angle at the hip between trunk and thigh.

    Trunk `tau` is measured behind the vertical, thigh `psi` above the horizontal.
    """
    return pi / 2 + tau - psi


@formula("l_BK", source="geometry")
def ball_to_knee(S: mm, f: mm, phi: rad, delta: rad) -> mm:
    """Distance from ball of the foot to knee while the ankle is held at `phi`.

    Shank and foot are then one rigid piece; `f` is ankle to ball and `delta` the angle of that
    line above the sole.
    """
    return np.sqrt(S**2 + f**2 - 2 * S * f * np.cos(phi + delta))


@formula("D", source="geometry")
def hip_to_ankle(e_x: mm, e_z: mm) -> mm:
    """Distance the leg has to span, from its lengths along and up in the side view."""
    return np.hypot(e_x, e_z)


@formula("M", source="statics")
def joint_moment(r_x: mm, r_z: mm, F_x: N, F_z: N) -> Nmm:
    """Moment of a force about a joint, from its point of attack seen from there."""
    return r_x * F_z - r_z * F_x


@formula("F_leg", source="common practice")
def push_of_leg(F_most: N, k_knee: Ratio) -> N:
    """Push of a braced leg, from the most it gives nearly straight and the share at its knee angle.

    The curve is known by its shape only: below a half at 120 degrees, below a quarter at 90.
    """
    return F_most * k_knee
