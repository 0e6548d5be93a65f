"""A row of candidates compared: which one to take, and why each of the others loses."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from pedalwright.core.answers import Mark, Outcome, Row, Sentence
from pedalwright.core.units import Num
from pedalwright.design import Design
from pedalwright.search.changes import Changes, number
from pedalwright.search.reasons import reason
from pedalwright.search.tried import Candidate, Concerns, Tried, about_pedal, own, tried

#: What decides between candidates that miss equally little, the weightier first: less of it is
#: better. It is asked once, of all candidates together.
Taste = Callable[[Candidate], Sequence[Num]]


@dataclass(frozen=True, kw_only=True, slots=True)
class Choice:
    """A row of candidates, compared."""

    names: tuple[str, ...]
    #: The best ones and the one that changes nothing, by their place in the row.
    candidates: Mapping[int, Candidate]
    #: What the row is judged by: demands and wishes of the pedal's own rooms.
    concerns: Concerns
    #: Demands of other rooms on this pedal that the best candidate misses all the same.
    uncured: tuple[Sentence, ...]
    best: int
    #: The candidate that changes nothing.
    now: int

    @property
    def shown(self) -> list[int]:
        """Places of the row that are shown, in order."""
        return sorted(self.candidates)

    @property
    def outcome(self) -> Outcome:
        """How the car comes out as it stands."""
        now = self.candidates[self.now]
        if now.fails(self.concerns):
            return "fails"
        return "short" if now.fails(self.concerns, "should") else "passes"

    def mark(self, i: int) -> Mark:
        """What to say of a candidate in one word."""
        found = self.candidates[i]
        if i == self.best and not found.fails(self.concerns):
            return "keep" if i == self.now else "take"
        if i == self.now:
            return "now"
        if found.fails(self.concerns):
            return "fails"
        return "short" if found.fails(self.concerns, "should") else "passes"

    def missed(self, i: int) -> list[Sentence]:
        """Demands a candidate misses, or else wishes."""
        found = self.candidates[i]
        missed = found.fails(self.concerns) or found.fails(self.concerns, "should")
        return [reason(finding) for finding in missed]

    def row(
        self,
        i: int,
        values: Callable[[Candidate], tuple[float, ...]],
        also: Sequence[Sentence] = (),
    ) -> Row:
        """A candidate as a line of a table."""
        return Row(
            name=self.names[i],
            values=values(self.candidates[i]),
            mark=self.mark(i),
            why=(*self.missed(i), *also),
            changes=self.candidates[i].changes,
        )


def choose(
    design: Design,
    pedal: str,
    named_rows: Sequence[tuple[str, Changes]],
    taste: Taste,
    shown: int = 9,
    *,
    keep: bool = False,
) -> Choice:
    """Fewest demands missed, then wishes, then taste; one row must change nothing.

    With `keep` the present one stays the best where no other misses less.
    """
    names, rows = zip(*named_rows, strict=True)
    batch, concerns = tried(design, rows), own(pedal)
    now = next(i for i, changes in enumerate(rows) if _changes_nothing(design, changes))
    other = np.arange(len(rows)) != now
    order = _order(batch, concerns, (lambda c: (other, *taste(c))) if keep else taste)
    candidates = {i: batch[i] for i in {*order[:shown], now}}
    best = candidates[order[0]]
    return Choice(
        names=names,
        candidates=candidates,
        concerns=concerns,
        uncured=tuple(
            reason(finding) for finding in best.fails(about_pedal(pedal)) if not concerns(finding)
        ),
        best=order[0],
        now=now,
    )


def _order(batch: Tried, concerns: Concerns, taste: Taste) -> list[int]:
    """Places of the row, best first."""
    keys = [
        batch.missed(concerns),
        batch.missed(concerns, "should"),
        *taste(batch.together()),
    ]
    together = [np.broadcast_to(key, len(batch.rows)) for key in keys]
    return [int(i) for i in np.lexsort(together[::-1])]


def _changes_nothing(design: Design, changes: Changes) -> bool:
    return all(abs(change.value - number(design, change.path)) < 1e-9 for change in changes)
