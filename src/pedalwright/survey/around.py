"""One mark by itself, and its sights from marks whose places are taken as known."""

from dataclasses import dataclass, replace

import numpy as np

from pedalwright.core.units import Array
from pedalwright.survey.equations import (
    STEP,
    TAPE,
    Equations,
    Integers,
    Truths,
    changes,
    readings,
    with_datum,
)

#: Steps of least squares on one mark, what keeps them from overshooting, and when they end, mm.
STEPS, DAMPING, SETTLED = 8, 1e-6, 0.05
#: Hooks farther out of their common plane than this show which side of it the mark is on, mm.
OUT_OF_PLANE = 40.0


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Around:
    """The sights of one mark. Every array is (sights,) or (sights, 3)."""

    kind: Integers
    along: Array
    measured: Array
    sigma: Array
    #: Where the other ends are, and whether the sight looks to the mark (1) or from it (-1).
    others: Array
    sign: Array
    #: Which of its coordinates are to be found.
    free: Truths
    side: Array | None

    @property
    def count(self) -> int:
        """How many sights it has."""
        return self.measured.size

    def misfit(self, place: Array) -> Array:
        """How far each sight is out with the mark there, in standard deviations."""
        read = readings(self.kind, self.along, self._ways(place))
        misfit: Array = (read - self.measured) / self.sigma
        return misfit

    def squares(self, place: Array) -> float:
        """Sum of the squares of that."""
        misfit = self.misfit(place)
        return float(misfit @ misfit)

    def polished(self, place: Array) -> Array:
        """The place after a few steps of least squares."""
        weight, dims = (self.sign / self.sigma)[:, None], int(np.sum(self.free))
        for _ in range(STEPS):
            ways = self._ways(place)
            rows = (changes(self.kind, self.along, ways) * weight)[:, self.free]
            misfit = (readings(self.kind, self.along, ways) - self.measured) / self.sigma
            normal = rows.T @ rows
            normal.flat[:: dims + 1] *= 1.0 + DAMPING
            try:
                step = np.linalg.solve(normal, rows.T @ misfit)
            except np.linalg.LinAlgError:
                return place
            place = place.copy()
            place[self.free] -= step
            if np.max(np.abs(step)) < SETTLED:
                break
        return place

    def reflected(self, place: Array) -> Array | None:
        """The place on the other side of its hooks; None where that is sure to be another."""
        hooks = self.others[self.kind == TAPE]
        if len(hooks) < int(np.sum(self.free)):
            return None
        middle = hooks.mean(axis=0)
        _, values, ways = np.linalg.svd((hooks - middle)[:, self.free])
        if values[-1] > OUT_OF_PLANE * np.sqrt(len(hooks)) and len(values) == ways.shape[0]:
            return None
        way = np.zeros(3)
        way[self.free] = ways[-1]
        mirrored: Array = place - 2.0 * float(way @ (place - middle)) * way
        return mirrored

    def without(self, row: int) -> "Around":
        """The same with one sight left out."""
        keep = np.arange(self.count) != row
        return replace(
            self,
            kind=self.kind[keep],
            along=self.along[keep],
            measured=self.measured[keep],
            sigma=self.sigma[keep],
            others=self.others[keep],
            sign=self.sign[keep],
        )

    def hooks(self) -> tuple[Array, Array]:
        """The other ends of its tapes, and their lengths."""
        tapes = self.kind == TAPE
        return self.others[tapes], self.measured[tapes]

    def levels(self) -> tuple[Array, Array]:
        """Directions in which its own place was measured, (steps, 3), and what it came to."""
        steps = np.flatnonzero(self.kind == STEP)
        along = self.along[steps]
        there = np.sum(self.others[steps] * along, axis=1)
        return along, there + self.sign[steps] * self.measured[steps]

    def _ways(self, place: Array) -> Array:
        ways: Array = self.sign[:, None] * (place - self.others)
        return ways


def around(
    eq: Equations, rows: Integers, at: Array, mark: int, free: Truths, side: Array | None
) -> Around:
    """A mark and some of its sights; `at` holds the places of all marks, (marks, 3)."""
    own = eq.last[rows] == mark
    other = np.where(own, eq.first[rows], eq.last[rows])
    return Around(
        kind=eq.kind[rows],
        along=eq.along[rows],
        measured=eq.measured[rows],
        sigma=eq.sigma[rows],
        others=with_datum(at)[other],
        sign=np.where(own, 1.0, -1.0),
        free=free,
        side=side,
    )
