"""Which bore? The bores that are sold, in a row, through one batch."""

from collections.abc import Iterator
from itertools import product

import numpy as np

from pedalwright.brakes.formulas import GRAVITY
from pedalwright.brakes.solve import Chain
from pedalwright.core.answers import Answer, Bar, Bars, Change, Column, Sentence, Step, sentence
from pedalwright.core.units import Num
from pedalwright.design import Design
from pedalwright.hydraulics import Tandem
from pedalwright.search.bore_row import bore_row
from pedalwright.search.changes import Changes, number, one
from pedalwright.search.choice import Choice, choose
from pedalwright.search.cures import step_to
from pedalwright.search.prices import (
    BRAKE_CYLINDER,
    BRAKE_CYLINDERS,
    front_first,
    longer_lost,
    weaker_circuit,
)
from pedalwright.search.reasons import joined
from pedalwright.search.tried import Candidate

#: Hard braking on a dry road, as a share of gravity.
HARD_BRAKING = 0.9
#: Push wished for it at most (ours: a strong push that a light driver has in him every time).
STRONG_PUSH = 400.0
#: Twin cylinders: how many sizes front and rear may lie apart (ours; the bar tilts else).
SIZES_APART = 3
#: Rows of pairs shown.
SHOWN = 9

COLUMNS = (
    Column("full stop", "N"),
    Column("0.9 g", "N"),
    Column("pad travel", "mm"),
    Column("stroke used", "share"),
    Column("one lost", "m/s2"),
    Column("pad, lost", "mm"),
    Column("front first to", "g"),
)


def which_bore(design: Design) -> Answer:
    """The largest bore that passes and brings 0.9 g with no more than a strong push."""
    choice = choose(design, "brake", list(_row(design)), _taste, SHOWN)
    shown = choice.shown
    return Answer(
        question="bore",
        title="Which bore for the brake?",
        says=_says(choice),
        outcome=choice.outcome,
        columns=COLUMNS,
        rows=tuple(choice.row(i, _values, tuple(_why(choice, i))) for i in shown),
        bars=Bars(
            title="push on the pad for 0.9 g",
            unit="N",
            bars=tuple(Bar(choice.names[i], hard_push(choice.candidates[i])) for i in shown),
            bound=STRONG_PUSH,
            bound_says="a strong push",
        ),
        steps=_steps(design, choice),
        notes=(
            sentence(
                "The row is judged with the stroke of your cylinder; "
                "check the stroke of the one you buy."
            ),
            *(sentence("No bore mends this: ") + missed for missed in choice.uncured),
        ),
    )


def hard_pushes(candidate: Candidate) -> Num:
    """Push on the pad for 0.9 g, wheels rolling, for one candidate or all together."""
    car, part, brake = candidate.design.car, candidate.design.brake, candidate.assessment.brake
    chain = Chain(masters=part.masters, front=part.front, rear=part.rear, plumbing=part.plumbing)
    return chain.effort(car, brake.hard_stop.ratio, brake.result.at_500, HARD_BRAKING * GRAVITY)


def hard_push(candidate: Candidate) -> float:
    """The same for one candidate; servo and limiter are counted."""
    return one(hard_pushes(candidate))


def full_push(candidate: Candidate) -> float:
    """Push on the pad for a full stop, 6.43 m/s²."""
    return one(candidate.assessment.brake.result.effort_6_43)


def _row(design: Design) -> Iterator[tuple[str, Changes]]:
    """Names and changes: every bore of a tandem, pairs of a twin; the fitted ones among them."""
    if isinstance(design.brake.masters, Tandem):
        for name, size in bore_row(number(design, "brake.masters.bore")):
            yield name, (Change("brake.masters.bore", size, "mm"),)
        return
    fronts = bore_row(number(design, "brake.masters.front.bore"))
    rears = bore_row(number(design, "brake.masters.rear.bore"))
    for (i, (front, d)), (k, (rear, e)) in product(enumerate(fronts), enumerate(rears)):
        if abs(i - k) <= SIZES_APART:
            yield (
                f"{front} front, {rear} rear",
                (
                    Change("brake.masters.front.bore", d, "mm"),
                    Change("brake.masters.rear.bore", e, "mm"),
                ),
            )


def _taste(candidates: Candidate) -> tuple[Num, ...]:
    """No more than a strong push; then the shortest pad, or else the lightest push."""
    push = hard_pushes(candidates)
    strong = np.less_equal(push, STRONG_PUSH)
    travel = candidates.assessment.brake.result.pad_travel_hard_stop
    return (np.where(strong, 0.0, 1.0), np.where(strong, travel, push))


def _values(candidate: Candidate) -> tuple[float, ...]:
    assessment = candidate.assessment
    used = next(f for f in assessment.findings if f.limit.code == "hydraulics.stroke")
    return (
        full_push(candidate),
        hard_push(candidate),
        one(assessment.brake.result.pad_travel_hard_stop),
        one(used.value),
        weaker_circuit(assessment),
        longer_lost(assessment),
        front_first(assessment),
    )


def _why(choice: Choice, i: int) -> Iterator[Sentence]:
    """Why a bore that passes is not the one."""
    if i == choice.best or choice.missed(i):
        return
    found = choice.candidates[i]
    push = hard_push(found)
    if push > STRONG_PUSH:
        yield sentence("needs {} for 0.9 g, {} wished at most", (push, "N"), (STRONG_PUSH, "N"))
    elif push < hard_push(choice.candidates[choice.best]):
        travel = one(found.assessment.brake.result.pad_travel_hard_stop)
        yield sentence("a longer pedal, {}, for a push nobody needs lighter", (travel, "mm"))


def _says(choice: Choice) -> Sentence:
    name, best = choice.names[choice.best], choice.candidates[choice.best]
    found = best.assessment
    figures = sentence(
        ": a full stop takes {}, 0.9 g takes {}, the pad stops after {} of {}, "
        "and with one circuit lost 500 N still gives {}",
        (full_push(best), "N"),
        (hard_push(best), "N"),
        (one(found.brake.result.pad_travel_hard_stop), "mm"),
        (one(found.brake.room), "mm"),
        (weaker_circuit(found), "m/s2"),
    )
    if choice.mark(choice.best) not in {"keep", "take"}:
        return (
            sentence(f"No bore in the row does it all; the nearest is {name}")
            + figures
            + sentence(", but ")
            + joined(choice.missed(choice.best))
            + sentence(".")
        )
    if choice.best == choice.now:
        return sentence(f"Keep the {name}") + figures + sentence(".")
    if not choice.missed(choice.now):
        now = choice.candidates[choice.now]
        still = "lighter" if hard_push(best) < hard_push(now) else "shorter"
        passing = sentence(f"The {choice.names[choice.now]} passes; {still} still is the {name}")
        return passing + figures + sentence(".")
    return sentence(f"Fit the {name}") + figures + sentence(".")


def _steps(design: Design, choice: Choice) -> tuple[Step, ...]:
    if choice.best == choice.now:
        return ()
    best, now = choice.candidates[choice.best], choice.candidates[choice.now]
    step = step_to(
        now,
        best,
        sentence(f"Fit the {choice.names[choice.best]}."),
        sentence(
            "a full stop with {} instead of {}",
            (full_push(best), "N"),
            (full_push(now), "N"),
        ),
        BRAKE_CYLINDER if isinstance(design.brake.masters, Tandem) else BRAKE_CYLINDERS,
    )
    return (step,)
