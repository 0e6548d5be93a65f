"""Lengths to saw."""

import numpy as np

from pedalwright.core.units import mm
from pedalwright.core.working import formula


@formula("l", source="geometry")
def tube_to_cut(b: mm, c: mm) -> mm:
    """Pivot tube between cheeks `b` apart, with an end float of `c` in all."""
    return b - c


@formula("l", source="geometry")
def rod_to_cut(L: mm, f_1: mm, f_2: mm) -> mm:
    """Rod of `L` between the middles of its ends, each end's own length `f` taken off."""
    return L - f_1 - f_2


@formula("c", source="geometry")
def cut_off(r_there: mm, r: mm) -> mm:
    """What is between a radius that is there and the one that is wanted."""
    return r_there - r


@formula("l", source="geometry")
def weld_round(d: mm) -> mm:
    """Length of a fillet round a tube where it comes through a plate, both faces."""
    return 2 * np.pi * d


@formula("z", source="EN 1993-1-8")
def fillet_leg(a: mm) -> mm:
    """Leg of a fillet whose throat is `a`, its legs alike."""
    return 2**0.5 * a


@formula("z", source="common practice")
def usual_leg(t_1: mm, t_2: mm) -> mm:
    """Leg of a fillet as heavy as the thinner of the two parts."""
    return np.minimum(t_1, t_2)


@formula("l", source="geometry")
def pin_grip(t: mm, t_fork: mm, g: mm) -> mm:
    """What a clevis pin goes through: the arm, both sides of the fork, both gaps."""
    return t + 2 * t_fork + 2 * g


@formula("b", source="geometry")
def plate_along(l: mm, l_lap: mm) -> mm:  # noqa: E741 (the source's letter)
    """A plate over a trim of `l`, lapping at either end."""
    return l + 2 * l_lap


@formula("l", source="geometry")
def bar_along(l: mm, l_lap: mm, h: mm) -> mm:  # noqa: E741 (the source's letter)
    """The longest a bar round a trim can be, its ends brought in by `h`; it is cut to fit."""
    return l + 2 * l_lap + 2 * h


@formula("l", source="geometry")
def bore_round(d: mm) -> mm:
    """Once round a hole."""
    return np.pi * d


@formula("t", source="geometry")
def wall(d_out: mm, d_in: mm) -> mm:
    """Wall of a tube."""
    return (d_out - d_in) / 2


@formula("l", source="geometry")
def runs_beside(h: mm) -> mm:
    """Two runs, one on each side."""
    return 2 * h


@formula("h", source="geometry")
def under_arm(l: mm, t: mm) -> mm:  # noqa: E741 (the source's letter)
    """Packing under an arm of `t` that stands in the middle of a tube of `l`, tube on end."""
    return (l - t) / 2


@formula("h", source="geometry")
def under_pad(l: mm, o: mm, b: mm) -> mm:  # noqa: E741 (the source's letter)
    """Packing under a pad `b` wide whose middle stands `o` above the arm's, tube on end.

    Less than nought where the pad reaches below the tube's foot.
    """
    return l / 2 + o - b / 2


@formula("h", source="geometry")
def under_tube(h_pad: mm) -> mm:
    """Packing under the tube, so that the lowest part just stands on the plate."""
    return np.maximum(0.0, -h_pad)
