"""One dimension of the footwell tried over a range: where every driver's demands are met.

Demands bound it; the bands of the joints say where in it is best. Clearances and other wishes
are told beside it: they have cures of their own.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from pedalwright.assess import Assessment, Placed, assess
from pedalwright.core.answers import Sentence, sentence
from pedalwright.core.batch import over, pick
from pedalwright.core.checks import Finding, Weight
from pedalwright.core.units import Array
from pedalwright.design import Design
from pedalwright.driver import knee_sensitivity, knee_spread
from pedalwright.driver.body import TAPE
from pedalwright.search.changes import one
from pedalwright.search.reasons import reason

#: Left to either end of what fits, mm: hips and legs are not known better (ours).
SPARE = 10.0

Mask = NDArray[np.bool_]
Concerns = Callable[[Finding], bool]

#: Wishes about the joints.
BANDS = {"driver.ankle_max", "driver.knee_rest", "driver.hip", "driver.heel_lift_clutch"}


@dataclass(frozen=True, slots=True)
class Stretch:
    """From and to."""

    low: float
    high: float

    def inside(self, place: float) -> float:
        """The nearest that leaves 10 mm to either end, or half of what there is.

        In whole 5 mm where one of these will do, else in whole mm.
        """
        spare = min(SPARE, (self.high - self.low) / 2)
        near = min(max(place, self.low + spare), self.high - spare)
        rough = round(near / 5.0) * 5.0
        return rough if self.low < rough < self.high else float(np.floor(near))

    def holds(self, place: float) -> bool:
        """Whether a place lies between."""
        return self.low <= place <= self.high


@dataclass(frozen=True, kw_only=True, slots=True)
class Scan:
    """A batch along one dimension, and what is asked of it."""

    #: Places tried, in order; (places,).
    places: Array
    assessment: Assessment
    findings: tuple[Finding, ...]

    def index(self, place: float) -> int:
        """The nearest place that was tried."""
        return int(np.argmin(np.abs(self.places - place)))

    def bears(self, near: float) -> Stretch | None:
        """Where every demand that can be met is met.

        The unbroken stretch that holds a place, or else comes nearest to it.
        """
        fits = self._missed_at("must") == 0
        return self._around(fits, near) if fits.any() else None

    def suits(self, near: float) -> Stretch | None:
        """Where of these as few joints as possible are out of their bands."""
        fits, bands = self._missed_at("must") == 0, self._missed_at("should")
        return self._around(fits & (bands == bands[fits].min()), near) if fits.any() else None

    def hopeless(self) -> list[Finding]:
        """Demands that are met nowhere in the range, those with a value first."""
        musts = [f for f in self.findings if f.limit.weight == "must"]
        never = [f for f in musts if not self._met(f).any()]
        return sorted(never, key=lambda f: not np.any(f.judged))

    def missed(self, place: float, weight: Weight = "must") -> list[Sentence]:
        """Demands, or bands, missed at a place, of those that are met elsewhere in the range.

        A leg that does not reach has no angles: what could not be judged is told only where nothing
        else is.
        """
        failing = self.failing(place, weight)
        judged = [finding for finding in failing if np.all(finding.judged)]
        return [reason(finding) for finding in judged or failing]

    def failing(self, place: float, weight: Weight = "must") -> list[Finding]:
        """The same as findings."""
        i = self.index(place)
        return [pick(f, i) for f in self._curable(weight) if not self._met(f)[i]]

    def others(self, place: float) -> list[Sentence]:
        """Wishes that are not about joints, missed at a place."""
        i = self.index(place)
        wishes = [
            f for f in self.findings if f.limit.weight == "should" and f.limit.code not in BANDS
        ]
        return [reason(pick(f, i)) for f in wishes if not self._met(f)[i]]

    def _met(self, finding: Finding) -> Mask:
        return np.broadcast_to(np.asarray(finding.ok), self.places.shape)

    def _missed_at(self, weight: Weight) -> NDArray[np.int_]:
        """How many of the demands, or bands, that can be met are not, place by place."""
        missed = np.zeros(self.places.shape, dtype=np.int_)
        for finding in self._curable(weight):
            missed = missed + np.logical_not(self._met(finding))
        return missed

    def _curable(self, weight: Weight) -> list[Finding]:
        """Demands, or bands of joints, that are met somewhere in the range."""
        asked = [
            f
            for f in self.findings
            if f.limit.weight == weight and (weight == "must" or f.limit.code in BANDS)
        ]
        return [f for f in asked if self._met(f).any()]

    def _around(self, good: Mask, near: float) -> Stretch:
        edges = np.flatnonzero(np.diff(np.concatenate([[False], good, [False]]).astype(int)))
        runs = edges.reshape(-1, 2) - [0, 1]
        stretches = [Stretch(float(self.places[a]), float(self.places[b])) for a, b in runs]
        return min(stretches, key=lambda s: max(s.low - near, near - s.high, 0.0))


def scan(places: Array, batch: Design, concerns: Concerns) -> Scan:
    """A design whose numbers are arrays over the places, assessed once."""
    assessment = assess(batch)
    findings = tuple(f for f in assessment.findings if concerns(f))
    return Scan(places=places, assessment=assessment, findings=findings)


def many(design: Design, n: int) -> Design:
    """The same design so many times over, as a batch."""

    def repeated(number: float) -> Array:
        return np.full(n, number)

    batch: Design = over(repeated, design)
    return batch


def of_legs(pedals: Sequence[str] = ("clutch", "brake", "throttle")) -> Concerns:
    """Findings about a leg on one of these pedals."""

    def concerns(finding: Finding) -> bool:
        return finding.room == "driver" and any(p in finding.about.split(", ") for p in pedals)

    return concerns


def who(drivers: Sequence[Placed]) -> str:
    """All drivers together, in words."""
    names = [placed.name for placed in drivers]
    return {1: names[0], 2: "both drivers"}.get(len(names), "all drivers")


def guessed_legs(drivers: Sequence[Placed], place: int) -> Iterator[Sentence]:
    """How far off the knees may be where thigh or shank was guessed."""
    for placed in drivers:
        spread, rest = placed.spread, placed.brake.rest
        if min(one(spread.thigh), one(spread.shank)) > TAPE:
            slopes = knee_sensitivity(placed.brake.body, rest)
            doubt = np.asarray(knee_spread(slopes, spread))
            yield sentence(
                f"{placed.name}'s legs were guessed: the knee is good to {{}} (1 SD). Sitting "
                "knee height and buttock to knee, with two boards and a tape, narrow it.",
                (float(doubt[place] if doubt.ndim else doubt), "rad"),
            )
