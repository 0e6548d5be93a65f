"""Lengths to saw."""

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
