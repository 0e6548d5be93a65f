"""Where rod and arm come into line and the pedal locks."""

import numpy as np
from numpy.typing import NDArray

from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import mm, rad
from pedalwright.core.working import unrecorded
from pedalwright.linkage.circles import radius
from pedalwright.linkage.parts import Lever, Rod
from pedalwright.linkage.solve import position

#: No pedal is pressed further than this.
FURTHEST = 1.2
#: Stations of the first look, over the whole turn, and of each closer look where it stops.
_COARSE, _FINE, _LOOKS = 5, 9, 6


@no_answer_is_nan
def locks_at(lever: Lever, rod: Rod) -> mm:
    """Arc of the pad from rest to the first dead point; nan where there is none within 69 degrees.

    At a dead point the piston would run back, or a rod cannot follow. The answer is the last
    place that still moves, a hundredth of a millimetre before it at most.
    """
    with unrecorded():
        at_rest = np.zeros(_variants(lever, rod))
        before, behind, locked = _closer(lever, rod, at_rest, at_rest + FURTHEST, _COARSE)
        if np.any(locked):
            for _ in range(_LOOKS):
                before, behind, _ = _closer(lever, rod, before, behind, _FINE)
    return np.where(locked, before, np.nan) * radius(lever, lever.pad)


def _variants(lever: Lever, rod: Rod) -> tuple[int, ...]:
    """Shape of the batch; a relay has more numbers that may be batched than are worth listing."""
    if rod.relay is not None:
        return np.shape(position(lever, rod, 0.0).ratio)
    span = rod.socket - lever.pin
    return np.shape(span.dot(rod.direction) + (lever.pad - lever.pivot).dot(lever.axis))


def _closer(
    lever: Lever, rod: Rod, low: rad, high: rad, stations: int
) -> tuple[rad, rad, NDArray[np.bool_]]:
    """The neighbouring stations between which the pedal locks, and whether it does."""
    moves = np.isfinite(position(lever, rod, np.linspace(low, high, stations)).ratio)
    locked = ~np.all(moves, axis=0)
    first = np.argmin(moves, axis=0)
    step = (high - low) / (stations - 1)
    return low + np.maximum(first - 1, 0) * step, low + first * step, locked
