"""Findings in the order a reader needs them: what fails, how badly, and who asks."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

import numpy as np

from pedalwright.core.checks import Finding
from pedalwright.core.units import Num
from pedalwright.documents.outside import METRIC, Units

#: Rooms in the order of the job.
ROOMS = (
    *("survey", "driver", "linkage", "hydraulics", "brakes", "clutch", "throttle"),
    *("structure", "shell"),
)


@dataclass(frozen=True, slots=True)
class Verdict:
    """How a set of findings came out."""

    passed: int
    musts_failed: int
    shoulds_failed: int
    unjudged: int

    @property
    def ok(self) -> bool:
        """True when every must is met; one that could not be judged is not met."""
        return self.musts_failed == 0

    def __str__(self) -> str:
        """One plain sentence."""
        total = self.passed + self.musts_failed + self.shoulds_failed
        if self.passed == total:
            return f"All {total} demands are met."
        parts = [f"{self.musts_failed} of {total} demands fail that must be met"]
        if self.musts_failed == 0:
            parts = [f"All demands of {total} that must be met are met"]
        if self.shoulds_failed:
            parts.append(f"{self.shoulds_failed} that should be met are not")
        if self.unjudged:
            parts.append(f"{self.unjudged} of these could not be judged")
        return "; ".join(parts) + "."


def verdict(findings: Sequence[Finding]) -> Verdict:
    """Count what passed, failed and could not be judged."""
    failed = [f for f in findings if not f.ok]
    return Verdict(
        passed=len(findings) - len(failed),
        musts_failed=sum(f.limit.weight == "must" for f in failed),
        shoulds_failed=sum(f.limit.weight == "should" for f in failed),
        unjudged=sum(not f.judged for f in failed),
    )


@dataclass(frozen=True, slots=True)
class Row:
    """One line of a table: a finding, and how many more of the same demand pass behind it."""

    finding: Finding
    #: Findings of the same demand that pass with more in hand, for other drivers or pedals.
    more: int = 0

    @property
    def about(self) -> str:
        """What the finding speaks of, e.g. `D1, brake, rest; tightest of 12`."""
        others = f"tightest of {self.more + 1}" if self.more else ""
        return "; ".join(text for text in (self.finding.about, others) if text)


def by_room(findings: Sequence[Finding]) -> Iterator[tuple[str, list[Row]]]:
    """Rooms in the order of the job; in each what fails one by one, the rest demand by demand.

    The worst margin comes first, and what could not be judged before all. A demand that many
    drivers and pedals meet is one row with the tightest of them.
    """
    ordered = sorted(findings, key=lambda f: (ROOMS.index(f.room), *_worst_first(f)))
    for room, members in groupby(ordered, key=lambda f: f.room):
        together = list(members)
        failing = [Row(f) for f in together if not f.ok]
        passing: dict[str, list[Finding]] = {}
        for finding in together:
            if finding.ok:
                passing.setdefault(finding.limit.code, []).append(finding)
        yield room, [*failing, *(Row(same[0], len(same) - 1) for same in passing.values())]


def weakest(findings: Sequence[Finding]) -> Finding:
    """The finding with the worst margin; a must comes before a should."""
    return min(findings, key=lambda f: (bool(f.ok), f.limit.weight == "should", *_worst_first(f)))


def state(finding: Finding) -> str:
    """One word: passes, fails, short (a should that fails) or unjudged."""
    if not finding.judged:
        return "unjudged"
    if finding.ok:
        return "passes"
    return "fails" if finding.limit.weight == "must" else "short"


def compared(finding: Finding, units: Units = METRIC) -> str:
    """Value against bound, e.g. `517 N, at most 500 N`."""
    unit = finding.limit.unit
    value = units.said(finding.value, unit) if finding.judged else "no value"
    return f"{value}, {finding.limit.sense} {units.said(finding.bound, unit)}"


def percent(margin: Num) -> str:
    """A margin as the share of the bound in hand, e.g. `+12 %`; what is beyond ±999 % is cut."""
    share = float(margin) * 100 + 0.0  # a nought has no sign here
    return "?" if np.isnan(share) else f"{max(-999.0, min(999.0, share)):+.0f} %"


def asked_by(finding: Finding) -> str:
    """Who asks, with the kind of source."""
    source = finding.limit.source
    return f"{source.document}, {source.clause} ({source.kind})"


def _worst_first(finding: Finding) -> tuple[bool, float]:
    return bool(finding.judged), float(finding.margin) if finding.judged else 0.0
