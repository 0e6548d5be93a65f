"""One-sided contact: which places press on one another, and how hard.

The sheets' give at the places of contact, with the sheets otherwise held as they are, makes a
small full problem: find forces that push only, so that no gap is less than nothing, and no force
where there is a gap. The give is positive definite, so there is just one answer. It is sought by
changing all wrong places at once, and when that comes no nearer, one place at a time from the
last, which cannot go round in circles: J. J. Júdice, F. M. Pires, "A block principal pivoting
algorithm for large-scale strictly monotone linear complementarity problems", Computers &
Operations Research 21 (1994) 587-596, with K. G. Murty's rule (from memory).
"""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.mesh import Flags

#: A place changes only if it is wrong by more than this share of the largest force or gap; a
#: place that only just touches would otherwise open and close for ever.
HYSTERESIS = 1e-9
#: Tries without progress before places are changed one at a time.
PATIENCE = 8
#: Passes after which it gives up and says so.
PASSES = 2_000


@dataclass(frozen=True, slots=True)
class Pressed:
    """What came out: the force of each place, and whether the search ended by itself."""

    force: Array
    settled: bool


def press(give: Array, opening: Array) -> Pressed:
    """Forces of places that may push but not pull.

    `give` is how far each place opens for a force at each other, (places, places), the places'
    own stiffness included; `opening` how far each would open without any force, (places,).
    """
    scale_gap = max(float(np.abs(opening).max(initial=0.0)), np.finfo(float).tiny)
    scale_force = scale_gap / max(float(np.diag(give).max(initial=0.0)), np.finfo(float).tiny)
    closed: Flags = opening < 0.0
    best, patience = len(opening) + 1, PATIENCE
    for _ in range(PASSES):
        force = _forces(give, opening, closed)
        gap = give @ force + opening
        pulls = closed & (force < -HYSTERESIS * scale_force)
        enters = ~closed & (gap < -HYSTERESIS * scale_gap)
        wrong = np.flatnonzero(pulls | enters)
        if not len(wrong):
            return Pressed(np.maximum(force, 0.0), settled=True)
        if len(wrong) < best:
            best, patience = len(wrong), PATIENCE
        else:
            patience -= 1
        change = wrong if patience > 0 else wrong[-1:]
        closed = closed.copy()
        closed[change] = ~closed[change]
    return Pressed(np.full(len(opening), np.nan), settled=False)


def _forces(give: Array, opening: Array, closed: Flags) -> Array:
    force = np.zeros(len(opening))
    some = np.flatnonzero(closed)
    force[some] = np.linalg.solve(give[np.ix_(some, some)], -opening[some])
    return force
