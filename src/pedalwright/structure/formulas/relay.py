"""A relay lever: two flat arms on one tube, how hard they work and what the pad loses to them."""

import numpy as np

from pedalwright.core.units import MPa, N, Nmm, Ratio, mm, mm4
from pedalwright.core.working import formula


@formula("T", source="statics; work in is work out")
def relay_torque(F: N, i_1: Ratio, r: mm) -> Nmm:
    """Torque that one arm of a relay lever hands on to the other.

    `i_1` is the pad's movement over the driven pin's, `r` that pin's distance from the tube.
    """
    return F * i_1 * r


@formula("tau", source="beam theory")
def tube_shear(T: Nmm, d: mm, d_i: mm) -> MPa:
    """Shear stress on the outside of a round tube in torsion."""
    return 16 * T * d / (np.pi * (d**4 - d_i**4))


@formula("delta_r", source="beam theory; work in is work out")
def relay_bending_give(T: Nmm, F: N, r_1: mm, r_2: mm, E: MPa, I_1: mm4, I_2: mm4) -> mm:
    """How far the pad moves because both arms bend, each held at the tube.

    An arm of length `r` under the push T / r bends T r^2 / (3 E I), which is a turn of
    T r / (3 E I); the pad goes T / F times the turn.
    """
    return T**2 * (r_1 / I_1 + r_2 / I_2) / (3 * E * F)


@formula("delta_t", source="beam theory; work in is work out")
def relay_twist_give(T: Nmm, F: N, s: mm, G: MPa, J: mm4) -> mm:
    """How far the pad moves because the tube twists between arms that stand `s` apart."""
    return T**2 * s / (G * J * F)
