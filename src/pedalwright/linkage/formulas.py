"""Lever and rod: the sums a builder can do with a ruler at one position of the pedal."""

import numpy as np

from pedalwright.core.units import N, Ratio, mm, rad
from pedalwright.core.working import formula


@formula("s_pad", source="geometry")
def pad_arc(r_pad: mm, theta: rad) -> mm:
    """The pad centre moves along an arc about the pivot."""
    return r_pad * theta


@formula("i", source="geometry")
def pedal_ratio(r_pad: mm, beta: rad, a: mm) -> Ratio:
    """Pad movement over piston movement: pad radius against the rod line's distance from the pivot.

    `a` is the perpendicular distance from the pivot to the line of the rod, `beta` the angle
    between rod and cylinder. Exact for a rigid lever at this position.
    """
    return r_pad * np.cos(beta) / a


@formula("i_1", source="geometry")
def relay_ratio(r_pad: mm, a: mm, b: mm, r: mm) -> Ratio:
    """Pad movement over movement of the relay lever's driven pin.

    `a` and `b` are the perpendicular distances from the pedal's pivot and from the relay's to
    the line of the rod between them, `r` the driven pin's distance from the relay's pivot.
    """
    return r_pad * b / (a * r)


@formula("i", source="geometry")
def ratio_through_relay(i_1: Ratio, i_2: Ratio) -> Ratio:
    """Ratios one behind the other multiply."""
    return i_1 * i_2


@formula("F_1", source="statics")
def pedal_rod_force(F_pad: N, r_pad: mm, a: mm) -> N:
    """Force along the rod at the pedal's pin, `a` off the pivot: moments about the pivot."""
    return F_pad * r_pad / a


@formula("i_mean", source="geometry")
def mean_ratio(s_pad: mm, s_piston: mm) -> Ratio:
    """Mean ratio over a stroke: the pad's whole arc over the piston's whole travel."""
    return s_pad / s_piston


@formula("beta", source="geometry")
def rod_angle(e: mm, h: mm) -> rad:
    """Angle of the rod to the cylinder's axis: sideways reach `e` over reach along the axis `h`."""
    return np.arctan2(e, h)


@formula("F_piston", source="geometry")
def piston_force(F_pad: N, i: Ratio) -> N:
    """Force along the cylinder: what the pad does in work, the piston does in work."""
    return F_pad * i


@formula("F_rod", source="geometry")
def rod_force(F_piston: N, beta: rad) -> N:
    """Force along the rod: the piston takes only its part along the cylinder."""
    return F_piston / np.cos(beta)


@formula("F_side", source="geometry")
def side_force(F_piston: N, beta: rad) -> N:
    """Sideways force of a slanting rod on the piston, which wears the bore."""
    return F_piston * np.tan(beta)
