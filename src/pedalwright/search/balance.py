"""Which wheels lock first? Lock order at every friction, and what brings it right."""

from collections.abc import Iterator

import numpy as np

from pedalwright.brakes import Disc, earliest_rear_lock
from pedalwright.brakes.formulas import GRAVITY, braking_rate
from pedalwright.core.answers import (
    Answer,
    Bar,
    Bars,
    Change,
    Column,
    Mark,
    Outcome,
    Row,
    Sentence,
    Step,
    sentence,
)
from pedalwright.core.units import Num
from pedalwright.design import Design
from pedalwright.hydraulics import Twin
from pedalwright.search.bore_row import bore_row
from pedalwright.search.changes import Changes, number, one
from pedalwright.search.cures import step_to
from pedalwright.search.judged import Judged
from pedalwright.search.prices import (
    BAR_OFFSET,
    BRAKE_CYLINDERS,
    LININGS,
    WHEEL_CYLINDERS,
    Job,
    front_first,
)
from pedalwright.search.tried import Candidate, alone, named, tried

#: The front should lock first up to between these, as shares of gravity: below, the rear locks
#: in a hard stop (0.8 is also asked for); above, the rear brakes do little (ours).
LEAST, MOST = 0.8, 1.1
#: Beyond this no road tyre brakes, and the rear brakes idle (ours).
IDLE = 1.2
LOCKS = named("brakes.lock_order")
#: Offsets of the balance bar tried, mm.
OFFSETS = np.arange(-10.0, 10.5, 1.0)
#: Friction of other front linings tried (ours: what is sold for road cars).
FRICTIONS = np.arange(0.28, 0.481, 0.02)

COLUMNS = (Column("front share", "share"), Column("front first up to", "g"))


def brake_balance(design: Design) -> Answer:
    """Lock order at low, usual and high friction, against the share the road would like."""
    now = alone(design)
    result = now.assessment.brake.result
    frictions = (
        ("low friction", result.low),
        ("usual friction", result.nominal),
        ("high friction", result.high),
    )
    return Answer(
        question="balance",
        title="Which wheels lock first?",
        says=_says(now),
        outcome=_outcome(now.assessment),
        columns=COLUMNS,
        rows=(
            *(
                Row(
                    name=name,
                    values=(one(at.front_share), _in_g(at.critical)),
                    mark=_mark(_in_g(at.critical)),
                )
                for name, at in frictions
            ),
            Row(
                name="ideal share at 500 N",
                values=(one(result.ideal_share), _in_g(result.at_500.deceleration)),
            ),
        ),
        bars=Bars(
            title="the front wheels lock first up to",
            unit="g",
            bars=tuple(Bar(name, _in_g(at.critical)) for name, at in frictions),
            bound=LEAST,
            bound_says="at least",
        ),
        steps=() if _outcome(now.assessment) == "passes" else tuple(_steps(design, now)),
        notes=(
            sentence(
                "The height of the centre of gravity, {}, decides as much as the brakes do: "
                "measure it if it is assumed.",
                (number(design, "car.cg_height"), "mm"),
            ),
            sentence(
                "Linings of both axles are taken at the same end of their friction; a mixed set "
                "can be worse."
            ),
        ),
    )


def _in_g(deceleration: Num) -> float:
    return one(braking_rate.rule(deceleration, GRAVITY))


def _mark(critical: float) -> Mark:
    if not critical >= LEAST:
        return "fails"
    return "short" if critical > IDLE else "passes"


def _outcome(assessment: Judged) -> Outcome:
    outcomes: dict[Mark, Outcome] = {"fails": "fails", "short": "short", "passes": "passes"}
    return outcomes[_mark(front_first(assessment))]


def _says(now: Candidate) -> Sentence:
    worst = (front_first(now.assessment), "g")
    share = (one(now.assessment.brake.result.at_500.front_share), "share")
    if now.fails(LOCKS):
        return sentence(
            "The rear wheels lock first from {} onward, and a car that locks its rear turns round: "
            "{} is asked for; the front has {} of the braking.",
            worst,
            (LEAST, "g"),
            share,
        )
    if worst[0] > IDLE:
        return sentence(
            "The front wheels lock first up to {}, more than road tyres give: the rear brakes do "
            "too little, with {} of the braking in front.",
            worst,
            share,
        )
    return sentence(
        "The front wheels lock first up to {}, as it should be, with {} of the braking in front.",
        worst,
        share,
    )


def _steps(design: Design, now: Candidate) -> Iterator[Step]:
    """For each kind of change, the least of it that brings the lock order between the bounds."""
    masters = design.brake.masters
    if isinstance(masters, Twin):
        offset = one(masters.bar.offset)
        rows: list[Changes] = [
            (Change("brake.masters.bar.offset", float(o), "mm"),)
            for o in sorted(OFFSETS, key=lambda o: abs(float(o) - offset))
        ]
        yield from _first(
            design, now, rows, "Set the bearing of the balance bar {} off centre.", BAR_OFFSET
        )
        rows = [
            (Change("brake.masters.rear.bore", size, "mm"),)
            for _, size in _nearest(one(masters.rear.bore))
        ]
        yield from _first(design, now, rows, "Fit a rear master cylinder of {}.", BRAKE_CYLINDERS)
    rear = "cylinder_bore" if not isinstance(design.brake.rear, Disc) else None
    if rear is not None:
        rows = [
            (Change(f"brake.rear.{rear}", size, "mm"),)
            for _, size in _nearest(number(design, f"brake.rear.{rear}"))
        ]
        yield from _first(design, now, rows, "Fit rear wheel cylinders of {}.", WHEEL_CYLINDERS)
    if isinstance(design.brake.front, Disc):
        friction = number(design, "brake.front.friction")
        rows = [
            tuple(
                Change(
                    f"brake.front.{name}",
                    number(design, f"brake.front.{name}") * float(mu) / friction,
                    "1",
                )
                for name in ("friction", "friction_low", "friction_high")
            )
            for mu in sorted(FRICTIONS, key=lambda mu: abs(float(mu) - friction))
        ]
        yield from _first(design, now, rows, "Fit front linings with a friction of {}.", LININGS)


def _nearest(fitted: float) -> list[tuple[str, float]]:
    return sorted(bore_row(fitted), key=lambda entry: abs(entry[1] - fitted))


def _first(
    design: Design, now: Candidate, rows: list[Changes], what: str, job: Job
) -> Iterator[Step]:
    """The first of the rows, nearest to the car as it is, that lies between the bounds."""
    batch = tried(design, rows)
    worst = np.broadcast_to(
        braking_rate.rule(earliest_rear_lock(batch.assessment.brake.result), GRAVITY), len(rows)
    )
    between = np.flatnonzero((worst >= LEAST) & (worst <= MOST))
    if not between.size:
        return
    found = batch[int(between[0])]
    change = found.changes[0]
    yield step_to(
        now,
        found,
        sentence(what, (change.value, change.unit)),
        sentence("the front wheels lock first up to {}", (front_first(found.assessment), "g")),
        job,
    )
