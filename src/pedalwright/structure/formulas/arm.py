"""The pedal arm: a flat bar bent in its depth and twisted by a pad that stands to one side.

Two places are judged at each station. On the narrow edge bending is largest and torsion
adds its smaller share; in the middle of the broad face there is no bending, but torsion and
shear are largest. With a joggled arm the second often governs. A place between the two can
be worse than both, by up to 3 % for a depth of four thicknesses and 9 % for eight (found by a
finite-difference solution, see the tests).
"""

import numpy as np

from pedalwright.core.units import MPa, N, Nmm, Ratio, mm, mm2, mm3, rad
from pedalwright.core.working import formula


@formula("a", source="geometry")
def overhang(R: mm, r: mm, gamma: rad) -> mm:
    """From the pad to the first thing that holds the arm, along the arm.

    With the pin between pivot and pad (`gamma` = 0) that is the pin, with the pin beyond the
    pivot (`gamma` = pi) it is the pivot. The arm is taken as straight.
    """
    return R - r * np.maximum(np.cos(gamma), 0.0)


@formula("h", source="geometry")
def depth_at(h_pad: mm, h_pivot: mm, x: mm, R: mm) -> mm:
    """Depth of an evenly tapered arm, `x` from the pad centre towards the pivot."""
    return h_pad + (h_pivot - h_pad) * x / R


@formula("M", source="statics")
def bending_moment(F: N, x: mm) -> Nmm:
    """Bending of the arm by a push square to it, `x` from the pad centre."""
    return F * x


@formula("T", source="statics")
def offset_torque(F: N, e: mm) -> Nmm:
    """Torque in the arm from a pad that stands `e` beside the arm's plane; the pivot takes it."""
    return F * np.abs(e)


@formula("V", source="statics")
def support_shear(F: N, a: mm, b: mm) -> N:
    """Shear of the arm where it is first held: the push, or more on the far side.

    Between pivot and pin, `b` apart, an overhang `a` works like a crowbar.
    """
    return F * np.maximum(1.0, a / b)


@formula("sigma", source="beam theory")
def bending_stress(M: Nmm, W: mm3) -> MPa:
    """Stress in the outermost fibre."""
    return M / W


@formula("tau_T", source="Timoshenko and Goodier")
def torsion_stress(T: Nmm, k: Ratio, h: mm, t: mm) -> MPa:
    """Torsion stress of a flat bar; `k` is k_2 on the broad face, k_3 on the narrow edge."""
    return T / (k * h * t**2)


@formula("tau_V", source="beam theory")
def shear_stress(V: N, A: mm2) -> MPa:
    """Shear in the middle of a flat bar, half as much again as the mean."""
    return 1.5 * V / A


@formula("sigma_v", source="Shigley")
def equivalent_stress(sigma: MPa, tau: MPa) -> MPa:
    """The pull that yields as early as `sigma` and `tau` together."""
    return np.sqrt(sigma**2 + 3 * tau**2)


@formula("sigma_p", source="plastic theory; Hill and Siebel")
def collapse_stress(M: Nmm, Z: mm3, T: Nmm, W_t: mm3) -> MPa:
    """Yield strength at which the arm, yielding over its whole section, just still holds.

    Bending and torsion share the section as (M / M_p)^2 + (T / T_p)^2 = 1, a lower bound for
    a ductile bar. No use for cast or hardened arms. The source is quoted from memory.
    """
    return np.sqrt((M / Z) ** 2 + 3 * (T / W_t) ** 2)
