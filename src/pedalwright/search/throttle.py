"""Why no full throttle? Opening over the pad's stroke, and the lever that gives all of it."""

from collections.abc import Iterator
from math import ceil, floor

import numpy as np

from pedalwright.core.answers import (
    Answer,
    Bar,
    Bars,
    Change,
    Column,
    Outcome,
    Row,
    Sentence,
    Step,
    sentence,
)
from pedalwright.core.units import Array
from pedalwright.design import Design
from pedalwright.search.changes import Changes, number, one
from pedalwright.search.cures import step_to
from pedalwright.search.judged import Judged
from pedalwright.search.prices import STRONGER_SPRING, THROTTLE_LEVER, Job
from pedalwright.search.reasons import joined, reason
from pedalwright.search.tried import Candidate, alone, both, named, not_in, own, tried
from pedalwright.throttle.parts import BallRod, Cable

FULL = named("throttle.full_opening")
#: Places of the stroke shown, as parts of it.
SHOWN = (0.25, 0.5, 0.75, 1.0)
#: Lever radii tried, whole mm.
SHORTEST, LONGEST = 15, 180
#: Longest lever against the present one (ours: beyond, the pedal or bracket is another one).
REACH = 3.0

COLUMNS = (Column("opening", "rad"), Column("of full", "share"))


def full_throttle(design: Design) -> Answer:
    """How far the pedal opens the throttle, what stands in the way, and what mends it."""
    now = alone(design)
    result = now.assessment.throttle.result
    travel, angle = np.asarray(result.pad_travel), np.asarray(result.spindle_angle)
    full = one(result.full_opening)
    places = [(part, float(part * travel[-1])) for part in SHOWN]
    return Answer(
        question="throttle",
        title="Does the throttle open fully, and come back?",
        says=_says(now),
        outcome=_outcome(now),
        columns=COLUMNS,
        rows=tuple(
            Row(
                name=f"{part:.0%} of the pad's stroke",
                values=(_at(travel, angle, pad), _at(travel, angle, pad) / full),
            )
            for part, pad in places
        ),
        bars=Bars(
            title="opening over the pad's stroke",
            unit="rad",
            bars=tuple(Bar(f"{part:.0%}", _at(travel, angle, pad)) for part, pad in places),
            bound=full,
            bound_says="full opening",
        ),
        steps=tuple(_steps(design, now)),
        notes=tuple(_notes(now.assessment)),
    )


def _at(travel: Array, angle: Array, pad: float) -> float:
    """The spindle's angle at a place of the pad; no value past a dead point."""
    return float(np.interp(pad, travel, angle))


def _outcome(now: Candidate) -> Outcome:
    if now.fails(own("throttle")):
        return "fails"
    return "short" if now.fails(own("throttle"), "should") else "passes"


def _says(now: Candidate) -> Sentence:
    result = now.assessment.throttle.result
    opens, full = one(result.at_stop), one(result.full_opening)
    if now.fails(FULL):
        if np.isnan(opens):
            return sentence(
                "The linkage locks before the pedal is at its stop: a rod comes into line with "
                "its lever."
            )
        return sentence(
            "The pedal at its stop opens {} of {}: the levers turn too little for {} of pad.",
            (opens, "rad"),
            (full, "rad"),
            (float(np.asarray(result.pad_travel)[-1]), "mm"),
        )
    missed = now.fails(own("throttle"))
    if missed:
        return (
            sentence("It opens fully, but ") + joined([reason(f) for f in missed]) + sentence(".")
        )
    return sentence(
        "It opens fully, {} of {}, and comes back with one spring lost; the foot holds {}.",
        (min(opens, full), "rad"),
        (full, "rad"),
        (one(result.effort), "N"),
    )


def _steps(design: Design, now: Candidate) -> Iterator[Step]:
    if now.fails(FULL) or now.fails(named("throttle.beyond"), "should"):
        for stage, _ in enumerate(design.throttle.opening.stages, start=1):
            for end, word in (("driving_radius", "driving"), ("driven_radius", "driven")):
                yield from _lever(design, now, stage, end, word)
    if now.fails(named("throttle.one_spring")) or now.fails(
        named("throttle.return_force"), "should"
    ):
        yield from _spring(design, now)


def _lever(design: Design, now: Candidate, stage: int, end: str, word: str) -> Iterator[Step]:
    """The whole-mm radius nearest to the present one that opens fully and passes."""
    kind = design.throttle.opening.stages[stage - 1]
    if isinstance(kind, BallRod):
        return
    name = "cable" if isinstance(kind, Cable) else "rod"
    path = f"throttle.opening.stages.{stage}.{end}"
    radius = number(design, path)
    low, high = max(SHORTEST, radius / REACH), min(LONGEST, radius * REACH)
    tries = sorted(range(ceil(low), floor(high) + 1), key=lambda r: abs(r - radius))
    rows = [_radius(design, stage, end, float(r)) for r in tries]
    batch = tried(design, rows)
    others = frozenset((f.limit.code, f.about) for f in now.fails(own("throttle")) if not FULL(f))
    good = np.flatnonzero(
        batch.passes(both(own("throttle"), not_in(others)))
        & batch.passes(named("throttle.beyond"), "should")
    )
    if not good.size:
        return
    found = batch[int(good[0])]
    yield step_to(
        now,
        found,
        sentence(
            f"Make the {word} lever of {name} {stage} {{}} long instead of {{}}.",
            (found.changes[0].value, "mm"),
            (radius, "mm"),
        ),
        sentence(
            "opens {} at the pedal's stop, for {} on the pad; no rod nearer to its lever than {}",
            (one(found.assessment.throttle.result.at_stop), "rad"),
            (one(found.assessment.throttle.result.effort), "N"),
            (one(found.assessment.throttle.result.rod_to_lever), "rad"),
        ),
        THROTTLE_LEVER,
    )


def _radius(design: Design, stage: int, end: str, radius: float) -> Changes:
    """A lever's radius; the pedal's own pin follows, where it is the first driving lever."""
    path = f"throttle.opening.stages.{stage}.{end}"
    change = Change(path, radius, "mm")
    pin = number(design, "throttle.pedal.pin_radius")
    if stage == 1 and end == "driving_radius" and pin == number(design, path):
        return (change, Change("throttle.pedal.pin_radius", radius, "mm"))
    return (change,)


def _spring(design: Design, now: Candidate) -> Iterator[Step]:
    """Every spring a quarter stronger, and again, until it comes back."""
    springs = design.throttle.opening.springs
    factors = np.arange(1.25, 4.01, 0.25)
    rows = [
        tuple(
            Change(
                f"throttle.opening.springs.{i}.torque_closed",
                one(spring.torque_closed) * float(factor),
                "N*mm",
            )
            for i, spring in enumerate(springs, start=1)
        )
        for factor in factors
    ]
    if not springs:
        return
    batch = tried(design, rows)
    good = np.flatnonzero(
        batch.passes(named("throttle.one_spring"))
        & batch.passes(named("throttle.return_force"), "should")
    )
    if not good.size:
        return
    found = batch[int(good[0])]
    yield step_to(
        now,
        found,
        sentence("Fit return springs {} times as strong.", (float(factors[good[0]]), "1")),
        sentence(
            "the pad comes back with {} instead of {}",
            (one(found.assessment.throttle.result.return_force), "N"),
            (one(now.assessment.throttle.result.return_force), "N"),
        ),
        Job(STRONGER_SPRING.minutes * len(springs), f"{len(springs)} return springs"),
    )


def _notes(assessment: Judged) -> Iterator[Sentence]:
    result = assessment.throttle.result
    yield sentence(
        "Over the stroke no rod comes nearer to its lever than {}; at 0° it is at its dead point.",
        (one(result.rod_to_lever), "rad"),
    )
    needed = one(result.pad_travel_full)
    if np.isfinite(needed):
        yield sentence("Full opening takes {} of pad travel with these levers.", (needed, "mm"))
    else:
        yield sentence("These levers never open it fully, however far the pad goes.")
    yield sentence(
        "With any one spring lost at least {} close it, against {} of friction.",
        (one(result.one_spring_lost), "N*mm"),
        (one(result.friction), "N*mm"),
    )
