"""Pins, eyes and the pivot: what turns, and what it turns in."""

from math import cos, pi, radians

import numpy as np

from pedalwright.core.units import MPa, N, Nmm, mm
from pedalwright.core.working import formula


@formula("tau", source="Shigley")
def double_shear(P: N, d: mm) -> MPa:
    """Mean shear in a pin held on both sides of the pull."""
    return 2 * P / (pi * d**2)


@formula("tau", source="Shigley")
def single_shear(P: N, d: mm) -> MPa:
    """Mean shear in a pin or shaft over one face."""
    return 4 * P / (pi * d**2)


@formula("M", source="Shigley")
def pin_moment(P: N, t_o: mm, g: mm, t_i: mm) -> Nmm:
    """Bending of a clevis pin: fork sides `t_o` each, gaps `g` each, eye `t_i` between.

    Each half of the load acts in the middle of a fork side and in the middle of half the eye.
    Thick stiff forks are kinder; worn ones are not.
    """
    return P / 2 * (t_o / 2 + g + t_i / 4)


@formula("p", source="Shigley")
def bearing_pressure(P: N, d: mm, t: mm) -> MPa:
    """Pressure of a pin on its hole, over the projected area."""
    return P / (d * t)


@formula("sigma", source="Shigley")
def lug_net_stress(P: N, w: mm, d: mm, t: mm) -> MPa:
    """Pull in the metal left beside the hole of an eye of width `w`."""
    return P / ((w - d) * t)


@formula("tau", source="Shigley")
def lug_tear_out(P: N, t: mm, e: mm, d: mm) -> MPa:
    """Shear where the pin would tear out through the end, `e` from hole centre to the end.

    The two planes start beside the pin's axis; `lug_tear_out_40` counts the metal the pin
    really pushes out and is lower.
    """
    return P / (2 * t * (e - d / 2))


@formula("tau", source="common practice")
def lug_tear_out_40(P: N, t: mm, e: mm, d: mm) -> MPa:
    """Tear-out over planes that start 40 degrees off the pull, as airframe practice has it."""
    return P / (2 * t * (e - d / 2 * cos(radians(40))))


@formula("M", source="statics")
def mid_span_moment(P: N, s: mm) -> Nmm:
    """Bending of a tube held at both ends, loaded in the middle: the worst place for the arm."""
    return P * s / 4


@formula("P_end", source="statics")
def end_load(P: N, T: Nmm, s: mm) -> N:
    """Load on the harder pressed end of the pivot: half, and the couple of the offset pad."""
    return P / 2 + np.abs(T) / s
