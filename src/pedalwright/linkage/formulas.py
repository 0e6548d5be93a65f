"""Lever and rod: the sums a builder can do with a ruler at one position of the pedal."""

import numpy as np

from pedalwright.core.units import MPa, N, N_mm, Ratio, mm, rad
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


@formula("z", source="geometry")
def turns(s: mm, P: mm) -> Ratio:
    """Whole and part turns of a rod end for a change of the rod's length."""
    return s / P


@formula("l_min", source="common practice")
def least_engaged(d: mm) -> mm:
    """Thread to leave in a steel rod end: its diameter.

    A fitting guide of the trade wants 0.3 in whatever the thread, which M8 and larger meet.
    """
    return 1.0 * d


@formula("m", source="common practice")
def locknut_height(d: mm) -> mm:
    """Height of an ordinary nut: 0.8 of its thread, as an ISO 4032 nut has within 10 %."""
    return 0.8 * d


@formula("s_out", source="geometry")
def thread_out(l: mm, d: mm) -> mm:  # noqa: E741
    """How far an end can be screwed out: `l` in it now, less one diameter that stays."""
    return l - 1.0 * d


@formula("s_in", source="geometry")
def thread_in(l: mm, l_max: mm, b: mm, d: mm) -> mm:  # noqa: E741
    """How far an end can be screwed in: to its ground, or until bare thread `b` is the nut's."""
    return np.minimum(l_max - l, b - 0.8 * d)


@formula("s_pad", source="geometry")
def pad_by_screw(s: mm, a: mm, r_pad: mm) -> mm:
    """How far a pad rises or sinks when its rest stop, `a` off the pivot, is screwed by `s`."""
    return s * r_pad / a


@formula("F_s", source="elasticity")
def spring_pull(F_0: N, c: N_mm, L: mm, L_0: mm) -> N:
    """Pull of a coil spring drawn out to `L`: nothing until it is longer than unloaded."""
    return np.where(L_0 < L, F_0 + c * (L - L_0), 0.0 * L_0 * c)


@formula("F_pad", source="statics")
def pad_return(F_s: N, a: mm, r_pad: mm) -> N:
    """Force of a return spring on the pad, `a` off the pivot."""
    return F_s * a / r_pad


@formula("k", source="Shigley")
def coil_index_factor(D: mm, d: mm) -> Ratio:
    """Curved wire is stressed more on the inside of a coil (Wahl's factor)."""
    return (4 * D / d - 1) / (4 * D / d - 4) + 0.615 * d / D


@formula("tau", source="Shigley")
def spring_stress(k: Ratio, F: N, D: mm, d: mm) -> MPa:
    """Shear stress of the wire of a coil spring."""
    return 8 * k * F * D / (np.pi * d**3)


@formula("R_m", source="EN 10270-1", empirical=True)
def wire_strength(d: mm) -> MPa:
    """Least tensile strength of the spring wire that cheap springs are made of: patented, drawn.

    Kind SM; a line through the table of the standard from 0.5 to 6 mm.
    """
    return 1980.0 - 740.0 * np.log10(d)
