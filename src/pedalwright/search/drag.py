"""Why do the brakes drag? What the file knows of open ports, held pressure and clearances."""

from collections.abc import Iterator

import numpy as np

from pedalwright.brakes import Disc
from pedalwright.core.answers import (
    Answer,
    Bar,
    Bars,
    Change,
    Column,
    Mark,
    Outcome,
    Price,
    Row,
    Sentence,
    Step,
    sentence,
)
from pedalwright.design import Design
from pedalwright.search.brake_cures import LEAST_LIFT
from pedalwright.search.changes import one
from pedalwright.search.cures import step_to
from pedalwright.search.prices import CRACK_NIPPLE, ROD_GAP, TAKE_VALVE_OUT
from pedalwright.search.reasons import joined, reason
from pedalwright.search.tried import Candidate, alone, named

#: Play to feel between rod and piston with the pedal up, mm (common practice, no source).
LEAST_GAP = 0.5
#: Dead stroke below which the port may not be open at rest, mm (ours).
LEAST_DEAD = 0.8
HELD = named("hydraulics.residual_drag", "hydraulics.drain_back")


def brake_drag(design: Design) -> Answer:
    """Whether anything in the file makes brakes drag, and what to look at on the car."""
    now = alone(design)
    rows = tuple(_rows(design))
    bad = [row for row in rows if row.mark in {"fails", "short"}]
    unknown = [row.name for row in rows if np.isnan(row.values[0])]
    held = [reason(finding) for finding in now.fails(HELD)]
    return Answer(
        question="drag",
        title="Why do the brakes drag?",
        says=_says(bad, held, unknown),
        outcome=_outcome(bad, held, unknown),
        columns=(Column("is", "mm"), Column("at least", "mm")),
        rows=rows,
        bars=Bars(
            title="what keeps linings and port free",
            unit="mm",
            bars=tuple(Bar(row.name, row.values[0]) for row in rows),
        ),
        steps=tuple(_steps(design, now)),
        notes=tuple(_notes(design)),
    )


def _rows(design: Design) -> Iterator[Row]:
    plumbing = design.brake.plumbing
    gap = np.nan if plumbing.rod_gap is None else one(plumbing.rod_gap)
    yield _row("play between rod and piston", gap, LEAST_GAP)
    yield _row("dead stroke, play included", one(plumbing.dead_stroke), LEAST_DEAD)
    yield _row("front linings' lift", one(design.brake.front.lift), LEAST_LIFT)
    yield _row("rear linings' lift", one(design.brake.rear.lift), LEAST_LIFT)


def _row(name: str, value: float, least: float) -> Row:
    mark: Mark | None = "passes" if value >= least else "fails"
    return Row(name=name, values=(value, least), mark=None if np.isnan(value) else mark)


def _outcome(bad: list[Row], held: list[Sentence], unknown: list[str]) -> Outcome:
    if bad or held:
        return "fails"
    return "open" if unknown else "passes"


def _says(bad: list[Row], held: list[Sentence], unknown: list[str]) -> Sentence:
    reasons = [
        sentence(f"{row.name} is {{}}, {{}} at least", *((value, "mm") for value in row.values))
        for row in bad
    ]
    if reasons or held:
        return sentence("They will drag: ") + joined([*reasons, *held]) + sentence(".")
    if unknown:
        names = " or the ".join(unknown)
        return sentence(f"Nothing in the file makes them drag, but it does not say the {names}.")
    return sentence("Nothing in the file makes them drag: look at the wheels themselves.")


def _steps(design: Design, now: Candidate) -> Iterator[Step]:
    plumbing = design.brake.plumbing
    gap = None if plumbing.rod_gap is None else one(plumbing.rod_gap)
    if gap is None or not gap >= LEAST_GAP:
        known = "" if gap is None else ", which has {} now"
        yield Step(
            what=sentence(
                "Feel for play between rod and piston with the pedal up, and set {}" + known + ".",
                (LEAST_GAP, "mm"),
                *(() if gap is None else ((gap, "mm"),)),
            ),
            brings=sentence("the piston comes back past its port, and pressure can leave"),
            price=Price(
                minutes=ROD_GAP.minutes,
                buy=ROD_GAP.buy,
                worse=(sentence("the pedal starts later, by the play times its ratio"),),
            ),
        )
    valves = plumbing.residual
    if valves is not None:
        for axle, brake, pressure in (
            ("front", design.brake.front, valves.front),
            ("rear", design.brake.rear, valves.rear),
        ):
            if isinstance(brake, Disc) and one(pressure) > 0.0:
                change = Change(f"brake.plumbing.residual.{axle}", 0.0, "MPa")
                yield step_to(
                    now,
                    alone(design, (change,)),
                    sentence(f"Take the residual valve out of the {axle} circuit: it has discs."),
                    sentence("{} are no longer held on the pads", (one(pressure), "MPa")),
                    TAKE_VALVE_OUT,
                )
    yield Step(
        what=sentence("Crack a nipple of the wheel that drags, pedal up."),
        brings=sentence(
            "if the wheel comes free, pressure was held: port, valve or a hose closed inside; "
            "if not, it is pistons, slides or shoes"
        ),
        price=Price(
            minutes=CRACK_NIPPLE.minutes,
            buy=CRACK_NIPPLE.buy,
            worse=(sentence("the circuit wants bleeding afterwards"),),
        ),
    )


def _notes(design: Design) -> Iterator[Sentence]:
    plumbing = design.brake.plumbing
    if plumbing.residual is None:
        yield sentence("Residual valves: none in the file; some cylinders have one inside.")
    if plumbing.reservoirs is None:
        yield sentence("Height of the reservoir: not in the file.")
    yield sentence(
        "Return spring of the pedal, seals swollen by the wrong fluid and bent discs are not in "
        "the file."
    )
