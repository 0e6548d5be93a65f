"""Candidates: a row of changed designs, stacked, assessed in one batch, read one by one."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from pedalwright.assess import assess
from pedalwright.core.batch import pick, stack
from pedalwright.core.checks import Finding, Weight
from pedalwright.design import Design
from pedalwright.search.changes import Changes, changed
from pedalwright.search.judged import Judged

Concerns: TypeAlias = Callable[[Finding], bool]


@dataclass(frozen=True, kw_only=True, slots=True)
class Candidate:
    """One changed design and what it comes to."""

    changes: Changes
    design: Design
    assessment: Judged

    def fails(self, concerns: Concerns, weight: Weight = "must") -> list[Finding]:
        """Demands of that weight that are not met."""
        found = self.assessment.findings
        return [f for f in found if concerns(f) and f.limit.weight == weight and not f.ok]


@dataclass(frozen=True, kw_only=True, slots=True)
class Tried:
    """A row of candidates; the designs and the assessment are batches."""

    rows: tuple[Changes, ...]
    designs: Design
    assessment: Judged

    def __getitem__(self, i: int) -> Candidate:
        return Candidate(
            changes=self.rows[i],
            design=pick(self.designs, i),
            assessment=pick(self.assessment, i),
        )

    def all(self) -> list[Candidate]:
        """Every candidate, in order."""
        return [self[i] for i in range(len(self.rows))]

    def together(self) -> Candidate:
        """All candidates as one: every number is (candidates,)."""
        return Candidate(changes=(), design=self.designs, assessment=self.assessment)

    def missed(self, concerns: Concerns, weight: Weight = "must") -> NDArray[np.int_]:
        """For each candidate, how many demands of that weight are not met."""
        found = self.assessment.findings
        oks = [f.ok for f in found if concerns(f) and f.limit.weight == weight]
        missed: NDArray[np.int_] = np.zeros(len(self.rows), dtype=np.int_)
        for ok in oks:
            missed = missed + np.logical_not(ok)
        return missed

    def passes(self, concerns: Concerns, weight: Weight = "must") -> NDArray[np.bool_]:
        """For each candidate, whether it meets every demand of that weight."""
        met: NDArray[np.bool_] = np.equal(self.missed(concerns, weight), 0)
        return met


def alone(design: Design, changes: Changes = (), *, told: Changes = ()) -> Candidate:
    """One candidate by itself; without changes the car as it stands.

    `told` are changes that are in the design already, for the reader.
    """
    made = changed(design, changes)
    return Candidate(changes=changes or told, design=made, assessment=Judged.of(assess(made)))


def tried(design: Design, rows: Sequence[Changes]) -> Tried:
    """Every candidate of a row, in one batch through the one assessment."""
    designs = stack([changed(design, changes) for changes in rows])
    return Tried(rows=tuple(rows), designs=designs, assessment=Judged.of(assess(designs)))


#: The rooms that judge nothing but one pedal.
ROOMS = {"brake": {"brakes", "hydraulics"}, "clutch": {"clutch"}, "throttle": {"throttle"}}


def own(pedal: str) -> Concerns:
    """Findings of one pedal's own rooms."""

    def concerns(finding: Finding) -> bool:
        return finding.room in ROOMS[pedal]

    return concerns


def about_pedal(pedal: str) -> Concerns:
    """Findings of one pedal's own rooms, and those of other rooms that name it."""

    def concerns(finding: Finding) -> bool:
        return finding.room in ROOMS[pedal] or pedal in finding.about.split(", ")

    return concerns


def named(*codes: str) -> Concerns:
    """Findings of these demands."""

    def concerns(finding: Finding) -> bool:
        return finding.limit.code in codes

    return concerns


def both(one: Concerns, other: Concerns) -> Concerns:
    """Findings that both speak of."""

    def concerns(finding: Finding) -> bool:
        return one(finding) and other(finding)

    return concerns


def not_in(codes: frozenset[tuple[str, str]]) -> Concerns:
    """Findings other than those."""

    def concerns(finding: Finding) -> bool:
        return (finding.limit.code, finding.about) not in codes

    return concerns
