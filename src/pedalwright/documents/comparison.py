"""Two attempts side by side: what was changed, what that mended, what it broke, what moved."""

import textwrap
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Protocol

import numpy as np

from pedalwright.assess import Headline
from pedalwright.core.checks import Finding
from pedalwright.documents.about import About
from pedalwright.documents.cautions import FIRST_CAUTION
from pedalwright.documents.outside import Units
from pedalwright.documents.verdict import compared, state, verdict

WIDTH = 100
#: Share of a figure below which it counts as unmoved (ours).
MOVED = 0.005


class Changed(Protocol):
    """One entry of the file that reads differently; a text is empty where there is nothing."""

    @property
    def path(self) -> str:
        """The entry's path in the file."""
        ...

    @property
    def old(self) -> str:
        """As it was typed."""
        ...

    @property
    def new(self) -> str:
        """As it is typed now."""
        ...


@dataclass(frozen=True, slots=True)
class Attempt:
    """One of the two, assessed."""

    about: About
    findings: tuple[Finding, ...]
    headlines: tuple[Headline, ...]


@dataclass(frozen=True, slots=True)
class Turn:
    """A demand on both attempts; None where one of them does not ask it."""

    old: Finding | None
    new: Finding | None

    @property
    def was_met(self) -> bool:
        """Met before, or not asked."""
        return self.old is None or bool(self.old.ok)

    @property
    def is_met(self) -> bool:
        """Met now, or no longer asked."""
        return self.new is None or bool(self.new.ok)


@dataclass(frozen=True, slots=True)
class Move:
    """A headline that moved, in inside units; nan where one of the two has no value."""

    name: str
    unit: str
    old: float
    new: float


def turns(old: Attempt, new: Attempt) -> list[Turn]:
    """Every demand of either attempt, in the order of the new one."""
    before = {(f.limit.code, f.about): f for f in old.findings}
    after = {(f.limit.code, f.about): f for f in new.findings}
    return [Turn(before.get(key), after.get(key)) for key in dict.fromkeys((*after, *before))]


def moves(old: Attempt, new: Attempt) -> Iterator[Move]:
    """Headlines that moved by more than half a per cent, appeared or went."""
    before = {line.name: line for line in old.headlines}
    after = {line.name: line for line in new.headlines}
    for name, line in {**before, **after}.items():
        was = float(before[name].value) if name in before else np.nan
        now = float(after[name].value) if name in after else np.nan
        unmoved = abs(now - was) <= MOVED * abs(was) or (np.isnan(was) and np.isnan(now))
        if not unmoved:
            yield Move(name, line.unit, was, now)


def comparison_text(old: Attempt, new: Attempt, changes: Sequence[Changed]) -> str:
    """All of it as text."""
    return "\n".join(_lines(old, new, changes)) + "\n"


def _lines(old: Attempt, new: Attempt, changes: Sequence[Changed]) -> Iterator[str]:
    for word, attempt in (("from", old), ("to", new)):
        about = attempt.about
        yield f"{word:<5}{about.car}   ({about.file}, {about.date}; pedalwright {about.version})"
        yield f"     {verdict(attempt.findings)}"
    yield ""
    yield f"CHANGED: {len(changes)} entries"
    for change in changes:
        yield from _wrapped(
            f"{change.path}:  {change.old or 'nothing'}  ->  {change.new or 'gone'}"
        )
    found = turns(old, new)
    units = new.about.units
    mended = [turn for turn in found if not turn.was_met and turn.is_met]
    broken = [turn for turn in found if turn.was_met and not turn.is_met]
    still = [turn for turn in found if not turn.was_met and not turn.is_met]
    for heading, some in (("MENDED", mended), ("BROKEN", broken), ("STILL NOT MET", still)):
        yield from _told(heading, some, units)
    yield ""
    yield "FIGURES THAT MOVED"
    shifted = list(moves(old, new))
    longest = max((len(move.name) for move in shifted), default=0)
    for move in shifted:
        was, now = (_said(value, move.unit, units) for value in (move.old, move.new))
        yield f"  {move.name:<{longest}}  {was:>12}  ->  {now}"
    yield ""
    yield from textwrap.wrap(FIRST_CAUTION, WIDTH)


def _told(heading: str, found: Sequence[Turn], units: Units) -> Iterator[str]:
    yield ""
    yield f"{heading}: {len(found)}"
    for turn in found:
        finding = turn.new or turn.old
        assert finding is not None, "a turn has at least one side"
        about = f" [{finding.about}]" if finding.about else ""
        figures = " -> ".join(_compared(side, units) for side in (turn.old, turn.new))
        asks = units.prose(finding.limit.asks + about)
        yield from _wrapped(f"{state(finding)}: {asks} {figures}")


def _compared(finding: Finding | None, units: Units) -> str:
    return "not asked" if finding is None else compared(finding, units)


def _said(value: float, unit: str, units: Units) -> str:
    return "no value" if np.isnan(value) else units.said(value, unit)


def _wrapped(text: str) -> list[str]:
    return textwrap.wrap(text, WIDTH, initial_indent="  ", subsequent_indent="      ")
