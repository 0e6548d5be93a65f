"""A row of candidates compared: which one to take, and why each of the others loses."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from pedalwright.core.answers import Mark, Row, Sentence
from pedalwright.design import Design
from pedalwright.search.changes import Changes, number
from pedalwright.search.reasons import reason
from pedalwright.search.tried import Candidate, Concerns, about_pedal, both, not_in, own, tried

#: What decides between candidates that miss equally little: less of it is better.
Taste = Callable[[Candidate], tuple[float, ...]]


@dataclass(frozen=True, kw_only=True, slots=True)
class Choice:
    """A row of candidates, best known."""

    names: tuple[str, ...]
    candidates: tuple[Candidate, ...]
    #: What the row can decide: demands of the pedal that not all candidates miss.
    concerns: Concerns
    #: What it is wished to meet besides: the pedal's own rooms only.
    wishes: Concerns
    #: Demands of the pedal that every candidate misses.
    uncured: tuple[Sentence, ...]
    best: int
    #: The candidate that changes nothing.
    now: int
    #: Best first.
    order: tuple[int, ...]

    def mark(self, i: int) -> Mark:
        """What to say of a candidate in one word."""
        found = self.candidates[i]
        if i == self.best and not found.fails(self.concerns):
            return "keep" if i == self.now else "take"
        if i == self.now:
            return "now"
        if found.fails(self.concerns):
            return "fails"
        return "short" if found.fails(self.wishes, "should") else "passes"

    def missed(self, i: int) -> list[Sentence]:
        """Demands a candidate misses, or else wishes."""
        found = self.candidates[i]
        missed = found.fails(self.concerns) or found.fails(self.wishes, "should")
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
    design: Design, pedal: str, named_rows: Sequence[tuple[str, Changes]], taste: Taste
) -> Choice:
    """Fewest demands missed, then wishes, then taste; one row must change nothing."""
    names, rows = zip(*named_rows, strict=True)
    candidates = tried(design, rows).all()
    missed = [
        {(f.limit.code, f.about) for f in c.assessment.findings if not f.ok} for c in candidates
    ]
    by_all = frozenset(key for key in missed[0] if all(key in other for other in missed))
    concerns, wishes = both(about_pedal(pedal), not_in(by_all)), both(own(pedal), not_in(by_all))

    def rank(i: int) -> tuple[float, ...]:
        found = candidates[i]
        return (
            len(found.fails(concerns)),
            len(found.fails(wishes, "should")),
            *taste(found),
        )

    order = sorted(range(len(rows)), key=rank)
    now = next(i for i, changes in enumerate(rows) if _changes_nothing(design, changes))
    return Choice(
        names=names,
        candidates=tuple(candidates),
        concerns=concerns,
        wishes=wishes,
        uncured=tuple(
            reason(f)
            for f in candidates[now].fails(about_pedal(pedal))
            if (f.limit.code, f.about) in by_all
        ),
        best=order[0],
        now=now,
        order=tuple(order),
    )


def _changes_nothing(design: Design, changes: Changes) -> bool:
    return all(abs(change.value - number(design, change.path)) < 1e-9 for change in changes)
