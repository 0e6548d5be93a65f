"""Which bore? The bores that are sold, in a row, through one batch."""

from collections.abc import Iterator, Sequence
from itertools import product

from pedalwright.brakes.formulas import DESIGN_PUSH, GRAVITY, effort_for
from pedalwright.core.answers import (
    Answer,
    Bar,
    Bars,
    Change,
    Column,
    Mark,
    Row,
    Sentence,
    sentence,
)
from pedalwright.design import Design
from pedalwright.hydraulics import Tandem
from pedalwright.search.changes import Changes, number, one
from pedalwright.search.cures import step_to
from pedalwright.search.prices import BRAKE_CYLINDER, BRAKE_CYLINDERS, longer_lost, weaker_circuit
from pedalwright.search.reasons import joined, reason
from pedalwright.search.tried import (
    Candidate,
    Concerns,
    about_pedal,
    both,
    not_in,
    same_for_all,
    tried,
)
from pedalwright.shelf.bores import bores

#: Hard braking on a dry road, as a share of gravity.
HARD_BRAKING = 0.9
#: Push wished for it at most (ours: a strong push that a light driver has in him every time).
STRONG_PUSH = 400.0
#: Twin cylinders: how many sizes front and rear may lie apart (ours; the bar tilts else).
SIZES_APART = 3
#: Rows of pairs shown.
SHOWN = 9
#: Bores closer than this are one bore, mm.
SAME = 0.05

COLUMNS = (
    Column("full stop", "N"),
    Column("0.9 g", "N"),
    Column("pad travel", "mm"),
    Column("stroke used", "share"),
    Column("one lost", "m/s2"),
    Column("pad, lost", "mm"),
)


def which_bore(design: Design) -> Answer:
    """The largest bore that passes and brings 0.9 g with no more than a strong push."""
    row = list(_row(design))
    candidates = tried(design, [changes for _, changes in row]).all()
    uncured = same_for_all(candidates)
    concerns = both(about_pedal("brake"), not_in(uncured))
    order = sorted(range(len(row)), key=lambda i: _rank(candidates[i], concerns))
    best, now = order[0], _now(design, row)
    shown = sorted({*order[:SHOWN], now})
    return Answer(
        question="bore",
        title="Which bore for the brake?",
        says=_says(row[best][0], best == now, candidates[best], concerns),
        outcome="fails" if candidates[now].fails(about_pedal("brake")) else "passes",
        columns=COLUMNS,
        rows=tuple(
            Row(
                name=row[i][0],
                values=_values(candidates[i]),
                mark=_mark(i, best, now, candidates[i], concerns),
                why=tuple(_why(candidates[i], candidates[best], concerns, i == best)),
                changes=row[i][1],
            )
            for i in shown
        ),
        bars=Bars(
            title="push on the pad for 0.9 g",
            unit="N",
            bars=tuple(Bar(row[i][0], hard_push(candidates[i])) for i in shown),
            bound=STRONG_PUSH,
            bound_says="a strong push",
        ),
        steps=()
        if best == now
        else (
            step_to(
                design,
                sentence(f"Fit the {row[best][0]}."),
                sentence(
                    "a full stop with {} instead of {}",
                    (_effort(candidates[best]), "N"),
                    (_effort(candidates[now]), "N"),
                ),
                row[best][1],
                BRAKE_CYLINDER if isinstance(design.brake.masters, Tandem) else BRAKE_CYLINDERS,
            ),
        ),
        notes=tuple(_notes(candidates[best], uncured)),
    )


def hard_push(candidate: Candidate) -> float:
    """Push on the pad for 0.9 g, wheels rolling."""
    stop = candidate.assessment.brake.result.at_500.deceleration
    return one(effort_for.rule(DESIGN_PUSH, stop, HARD_BRAKING * GRAVITY))


def _effort(candidate: Candidate) -> float:
    return one(candidate.assessment.brake.result.effort_6_43)


def _row(design: Design) -> Iterator[tuple[str, Changes]]:
    """Names and changes: every bore of a tandem, pairs of a twin; the fitted ones among them."""
    if isinstance(design.brake.masters, Tandem):
        for name, size in _sizes(number(design, "brake.masters.bore")):
            yield name, (Change("brake.masters.bore", size, "mm"),)
        return
    fronts = _sizes(number(design, "brake.masters.front.bore"))
    rears = _sizes(number(design, "brake.masters.rear.bore"))
    for (i, (front, d)), (k, (rear, e)) in product(enumerate(fronts), enumerate(rears)):
        if abs(i - k) <= SIZES_APART:
            yield (
                f"{front} front, {rear} rear",
                (
                    Change("brake.masters.front.bore", d, "mm"),
                    Change("brake.masters.rear.bore", e, "mm"),
                ),
            )


def _sizes(fitted: float) -> list[tuple[str, float]]:
    """The shelf's bores; a fitted one that is not among them stands where it belongs."""
    sizes = [(_called(bore.name, bore.diameter), bore.diameter) for bore in bores()]
    for i, (name, size) in enumerate(sizes):
        if abs(size - fitted) < SAME:
            sizes[i] = (name, fitted)
            return sizes
    return sorted([*sizes, (f"{fitted:.2f} mm", fitted)], key=lambda entry: entry[1])


def _called(name: str, size: float) -> str:
    return f"{name} ({size:.2f})"


def _now(design: Design, row: Sequence[tuple[str, Changes]]) -> int:
    """The candidate that changes nothing."""
    return next(
        i
        for i, (_, changes) in enumerate(row)
        if all(change.value == number(design, change.path) for change in changes)
    )


def _rank(candidate: Candidate, concerns: Concerns) -> tuple[float, ...]:
    """Fewest musts missed, then wishes; then no more than a strong push; then the shortest pad."""
    push = hard_push(candidate)
    travel = one(candidate.assessment.brake.result.pad_travel_hard_stop)
    strong = push <= STRONG_PUSH
    return (
        len(candidate.fails(concerns)),
        len(candidate.fails(concerns, "should")),
        not strong,
        travel if strong else push,
    )


def _values(candidate: Candidate) -> tuple[float, ...]:
    result = candidate.assessment.brake.result
    used = next(f for f in candidate.assessment.findings if f.limit.code == "hydraulics.stroke")
    return (
        _effort(candidate),
        hard_push(candidate),
        one(result.pad_travel_hard_stop),
        one(used.value),
        weaker_circuit(candidate.assessment),
        longer_lost(candidate.assessment),
    )


def _mark(i: int, best: int, now: int, candidate: Candidate, concerns: Concerns) -> Mark:
    if i == best:
        return "keep" if i == now else "take"
    if i == now:
        return "now"
    if candidate.fails(concerns):
        return "fails"
    return "short" if candidate.fails(concerns, "should") else "passes"


def _why(
    candidate: Candidate, best: Candidate, concerns: Concerns, chosen: bool
) -> Iterator[Sentence]:
    missed = candidate.fails(concerns) or candidate.fails(concerns, "should")
    yield from (reason(f) for f in missed)
    if chosen or missed:
        return
    push, other = hard_push(candidate), hard_push(best)
    if push > STRONG_PUSH:
        yield sentence("needs {} for 0.9 g, {} wished at most", (push, "N"), (STRONG_PUSH, "N"))
    elif push < other:
        travel = one(candidate.assessment.brake.result.pad_travel_hard_stop)
        yield sentence("a longer pedal, {}, for a push nobody needs lighter", (travel, "mm"))


def _says(name: str, keeps: bool, best: Candidate, concerns: Concerns) -> Sentence:
    result, room = best.assessment.brake.result, one(best.assessment.brake.room)
    figures = sentence(
        ": a full stop takes {}, 0.9 g takes {}, the pad stops after {} of {}, "
        "and with one circuit lost 500 N still gives {}",
        (_effort(best), "N"),
        (hard_push(best), "N"),
        (one(result.pad_travel_hard_stop), "mm"),
        (room, "mm"),
        (weaker_circuit(best.assessment), "m/s2"),
    )
    missed = best.fails(concerns)
    if missed:
        return (
            sentence(f"No bore in the row does it all; the nearest is {name}")
            + figures
            + sentence(", but ")
            + joined([reason(f) for f in missed])
            + sentence(".")
        )
    verb = "Keep" if keeps else "Fit"
    return sentence(f"{verb} the {name}") + figures + sentence(".")


def _notes(best: Candidate, uncured: frozenset[tuple[str, str]]) -> Iterator[Sentence]:
    yield sentence(
        "The row is judged with the stroke of your cylinder; check the stroke of the one you buy."
    )
    for finding in best.fails(about_pedal("brake")):
        if (finding.limit.code, finding.about) in uncured:
            yield sentence("No bore cures this: ") + reason(finding)
