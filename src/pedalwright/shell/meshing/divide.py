"""Lines divided into sides: a line of space is divided in one way, whoever asks.

So the sheets on both sides of a fold get the same nodes on it without looking at one another.
"""

from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.meshing.features import SAME, Circle
from pedalwright.shell.meshing.plane import distance
from pedalwright.shell.meshing.sizes import ROUND, Sizes, around

#: Places at which the size along a line is asked.
PROBES = 33


@dataclass(frozen=True, slots=True)
class Divider:
    """Divides lines as the wished size asks, with a node wherever something else meets them."""

    size: Sizes
    #: Points of the model where any line that passes has a node, (points, 3).
    breaks: Array

    def straight(self, start: Array, end: Array) -> Array:
        """Nodes of a straight line from end to end, (nodes, 3)."""
        on = distance(self.breaks, start[None], end[None]) < SAME
        ends = np.stack([start, end])
        stops = np.concatenate([ends, self.breaks[on]])
        length_2 = np.sum((end - start) ** 2)
        share = (stops - start) @ (end - start) / length_2
        order = np.argsort(share, kind="stable")
        stops, share = stops[order], share[order]
        apart = np.diff(share, prepend=-np.inf) * np.sqrt(length_2) > SAME
        stops = stops[apart]
        pieces = [self._piece(a, b)[:-1] for a, b in pairwise(stops)]
        return np.concatenate([*pieces, stops[-1:]])

    def round(self, circle: Circle, lift: Callable[[Array], Array]) -> Array:
        """Nodes round a circle, in its plane, (nodes, 2)."""
        probe = np.array(circle.centre) + circle.radius * np.array([[1.0, 0.0], [0.0, 1.0]])
        side = float(self.size(lift(probe)).min())
        count = max(ROUND, int(np.ceil(2 * np.pi * circle.radius / side)))
        return around(circle, count)

    def _piece(self, start: Array, end: Array) -> Array:
        """A line that nothing else meets."""
        # Always from the same end, so that rounding is the same for all who ask.
        if tuple(np.round(end, 3)) < tuple(np.round(start, 3)):
            return self._piece(end, start)[::-1]
        share: Array = np.linspace(0.0, 1.0, PROBES)
        sides = np.linalg.norm(end - start) / self.size(start + share[:, None] * (end - start))
        count = np.concatenate([[0.0], np.cumsum(0.5 * (sides[1:] + sides[:-1]) / (PROBES - 1))])
        whole = max(1, round(float(count[-1])))
        wanted = np.arange(float(whole + 1)) * (float(count[-1]) / whole)
        at: Array = np.interp(wanted, count, share)
        divided: Array = start + at[:, None] * (end - start)
        return divided
