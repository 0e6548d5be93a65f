"""Which ratio, and how much can be cut: pins and arms in rows, each row one batch."""

from collections.abc import Callable, Iterator

import numpy as np

from pedalwright.core.answers import (
    Answer,
    Bar,
    Bars,
    Change,
    Column,
    Sentence,
    Step,
    sentence,
)
from pedalwright.core.units import Num
from pedalwright.design import Design
from pedalwright.search.changes import Changes, PedalName, number, one, pin_at
from pedalwright.search.choice import Choice, choose
from pedalwright.search.cures import step_to
from pedalwright.search.prices import PIN_HOLE
from pedalwright.search.reasons import joined
from pedalwright.search.tried import Candidate, about_pedal, not_in, tried
from pedalwright.structure.formulas.arm import depth_at

#: Pins of the row on either side of the present one, mm.
PINS = (-16.0, -12.0, -8.0, -4.0, 0.0, 4.0, 8.0, 12.0, 16.0)
#: Cuts tried, mm.
CUTS = tuple(float(cut) for cut in range(0, 62, 2))

COLUMNS = (
    Column("by ruler", "1"),
    Column("works at", "1"),
    Column("effort", "N"),
    Column("pad travel", "mm"),
    Column("rod angle", "rad"),
)


def which_ratio(design: Design, pedal: PedalName) -> Answer:
    """Pins further in and out; the present one stays unless another misses less."""
    pin = number(design, f"{pedal}.pedal.pin_radius")
    rows = [(f"pin at {pin + step:.1f} mm", pin_at(design, pedal, pin + step)) for step in PINS]

    def values(candidate: Candidate) -> tuple[float, ...]:
        ruler = one(_arm_ratio(candidate.design, pedal))
        return (ruler, *(one(value) for value in _comes_to(candidate, pedal)))

    def taste(_candidates: Candidate) -> tuple[Num, ...]:
        return (np.abs(np.asarray(PINS)),)

    choice = choose(design, pedal, rows, taste, keep=True)
    made = choice.candidates[choice.now].assessment
    room = one(made.brake.room if pedal == "brake" else made.clutch.room)
    found = [(i, values(choice.candidates[i])) for i in choice.shown]
    return Answer(
        question="ratio",
        title=f"Which ratio for the {pedal} pedal?",
        says=_says(choice, values),
        outcome=choice.outcome,
        columns=COLUMNS,
        rows=tuple(choice.row(i, values) for i in choice.shown),
        bars=Bars(
            title="pad travel",
            unit="mm",
            bars=tuple(Bar(choice.names[i], figures[3]) for i, figures in found),
            bound=room,
            bound_says="where the toes meet the wall",
        ),
        steps=tuple(_steps(choice, values(choice.candidates[choice.best]))),
        notes=(
            sentence("The cylinder moves with the pin, so that its rod stays as it is."),
            sentence("The trade's 5:1 or 6:1 is a rule of thumb, never a demand."),
            *(sentence("No pin of the row mends this: ") + missed for missed in choice.uncured),
        ),
    )


def most_to_cut(design: Design, pedal: PedalName) -> float:
    """The longest cut, drilled anew for the same ratio, that misses nothing met before.

    In steps of 2 mm up to 60; 0 where the first already misses something.
    """
    batch = tried(design, [cut_by(design, pedal, cut) for cut in CUTS])
    now = batch[0]
    known = frozenset((f.limit.code, f.about) for f in now.fails(about_pedal(pedal)))
    concerns, others = about_pedal(pedal), not_in(known)
    passes = batch.passes(lambda finding: concerns(finding) and others(finding))
    good = np.logical_and.accumulate(passes)
    return CUTS[int(np.flatnonzero(good)[-1])]


def cut_by(design: Design, pedal: PedalName, cut: float) -> Changes:
    """An arm shortened at its pad, its pin drilled anew for the ratio it had."""
    radius = number(design, f"{pedal}.pedal.pad_radius")
    pin = number(design, f"{pedal}.pedal.pin_radius")
    arm = f"{pedal}.carrier.arm"
    at_pad, at_pivot = (number(design, f"{arm}.depth_at_{end}") for end in ("pad", "pivot"))
    return (
        Change(f"{pedal}.pedal.pad_radius", radius - cut, "mm"),
        Change(f"{arm}.depth_at_pad", one(depth_at.rule(at_pad, at_pivot, cut, radius)), "mm"),
        *pin_at(design, pedal, pin * (radius - cut) / radius),
    )


def _arm_ratio(design: Design, pedal: PedalName) -> Num:
    arm = (design.brake if pedal == "brake" else design.clutch).pedal
    return arm.pad_radius / arm.pin_radius


def _comes_to(candidate: Candidate, pedal: PedalName) -> tuple[Num, Num, Num, Num]:
    """Ratio, effort, pad travel and largest rod angle."""
    brake, clutch = candidate.assessment.brake, candidate.assessment.clutch
    if pedal == "brake":
        ratio, effort = brake.hard_stop.ratio, brake.result.effort_6_43
        return ratio, effort, brake.result.pad_travel_hard_stop, _widest(brake.stroke.rod_angle)
    result = clutch.result
    angle = _widest(clutch.stroke.rod_angle)
    return result.mean_ratio, result.effort, result.budget.total, angle


def _widest(angles: Num) -> Num:
    widest: Num = np.max(angles, axis=0)
    return widest


def _says(choice: Choice, values: Callable[[Candidate], tuple[float, ...]]) -> Sentence:
    best = choice.candidates[choice.best]
    ruler, ratio, effort, travel, _ = values(best)
    lead = "Keep the" if choice.best == choice.now else "Drill the hole for the"
    figures = sentence(
        f"{lead} {choice.names[choice.best]}, {{}}:1 by the ruler and {{}}:1 as it works: {{}} of "
        "effort, {} of pad travel",
        (ruler, "1"),
        (ratio, "1"),
        (effort, "N"),
        (travel, "mm"),
    )
    missed = choice.missed(choice.best)
    if choice.candidates[choice.best].fails(choice.concerns):
        return figures + sentence("; it is the nearest, but ") + joined(missed) + sentence(".")
    return figures + sentence(".")


def _steps(choice: Choice, best: tuple[float, ...]) -> Iterator[Step]:
    if choice.best != choice.now:
        yield step_to(
            choice.candidates[choice.now],
            choice.candidates[choice.best],
            sentence(f"Drill a new hole, {choice.names[choice.best]} from the pivot."),
            sentence(
                "{}:1, {} of effort, {} of pad travel",
                *zip(best[1:4], ("1", "N", "mm"), strict=True),
            ),
            PIN_HOLE,
        )
