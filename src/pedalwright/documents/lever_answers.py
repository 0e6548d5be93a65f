"""Questions about a lever, answered by `fitting`: cut, wrong hole."""

from collections.abc import Sequence

from pedalwright import brakes, clutch, fitting
from pedalwright.assess import assess
from pedalwright.core.answers import (
    Answer,
    Bar,
    Bars,
    Change,
    Column,
    Mark,
    Price,
    Row,
    Sentence,
    Step,
    sentence,
)
from pedalwright.core.units import Num
from pedalwright.design import Design
from pedalwright.fitting import PedalName
from pedalwright.search import most_to_cut
from pedalwright.search.changes import one, pin_at
from pedalwright.search.prices import PIN_HOLE
from pedalwright.search.reasons import joined, reason

#: Looked at where nothing else is asked for, mm (ours).
CUT, OFF = 30.0, 6.0
#: Minutes to cut an arm and put its pad on again (ours).
CUT_ARM = 120.0

OUTCOME = (
    Column("ratio", "1"),
    Column("effort", "N"),
    Column("pad travel", "mm"),
    Column("room", "mm"),
    Column("rod angle", "rad"),
)


def cut(design: Design, pedal: PedalName, by: float | None) -> Answer:
    """The arm shortened by as much as it bears, or by what is asked: hole left, drilled anew."""
    part = design.brake if pedal == "brake" else design.clutch
    arm = part.pedal
    most = most_to_cut(design, pedal)
    by = by or most or CUT
    donor = fitting.Donor(
        pad_radius=arm.pad_radius, pin_radius=arm.pin_radius, pin_hole=part.carrier.arm.pin_hole
    )
    plan = fitting.cut_plan(design, pedal, donor, pad_radius=arm.pad_radius - by)
    came, left, new = plan.as_it_came, plan.hole_left, plan.redrilled
    newly = _newly(new, came)
    return Answer(
        question="cut",
        title=f"How much can I cut off the {pedal} pedal?",
        says=_cut_says(plan, most, _reasons(new, newly)),
        outcome="fails" if newly else "passes",
        columns=OUTCOME,
        rows=(
            _row("as it is", came, "now"),
            _row(f"cut {by:g} mm, hole left", left, _against(left, came), _newly(left, came)),
            _row(f"cut {by:g} mm, drilled anew", new, _against(new, came), newly),
        ),
        bars=_effort_bars((("as it is", came), ("hole left", left), ("drilled anew", new)), pedal),
        steps=(_cut_step(design, pedal, plan),),
        notes=(
            sentence(
                "Longest cut that misses nothing met now, drilled anew for the same ratio: {}.",
                (most, "mm"),
            ),
            sentence(
                "Of unknown metal no weld is counted: bolt the pad on, or have the metal tested."
            ),
            sentence("Cut at the pad's end; then nothing is spliced where the arm bends."),
        ),
    )


def hole(design: Design, pedal: PedalName, by: float | None) -> Answer:
    """A hole further out than it should be: every way out, least work first."""
    by = OFF if by is None else by
    arm = (design.brake if pedal == "brake" else design.clutch).pedal
    part = design.brake if pedal == "brake" else design.clutch
    wrong = fitting.Hole(
        radius=arm.pin_radius + by, diameter=part.carrier.arm.pin_hole, angle=arm.pin_angle
    )
    plan = fitting.hole_rescue(design, pedal, wrong)
    best = plan.best
    says = (
        sentence(
            "With a hole {} off, no way gives the pedal that was wanted: see what each would cost.",
            (one(plan.off_by), "mm"),
        )
        if best is None
        else sentence(
            f"With a hole {{}} off: {best.way}, about {{}} minutes, for a ratio of {{}} where {{}} "
            "was wanted.",
            (one(plan.off_by), "mm"),
            (best.minutes, "1"),
            (one(best.outcome.ratio), "1"),
            (one(plan.wanted.ratio), "1"),
        )
    )
    return Answer(
        question="hole",
        title=f"The {pedal}'s pin hole is in the wrong place: what now?",
        says=says,
        outcome="fails" if best is None else "passes",
        columns=OUTCOME,
        rows=tuple(_rescue_row(rescue, rescue is best) for rescue in plan.ways),
        bars=Bars(
            title="minutes at the bench",
            unit="1",
            bars=tuple(Bar(rescue.way, rescue.minutes) for rescue in plan.ways),
        ),
        steps=tuple(_rescue_step(rescue, plan.wanted) for rescue in plan.ways if rescue.possible),
        notes=(
            sentence(
                "Metal between the two holes: {}, {} needed.",
                (one(plan.land), "mm"),
                (one(plan.land_needed), "mm"),
            ),
            sentence("The hole is taken to be further out along the arm by what was asked."),
        ),
    )


def _cut_says(plan: fitting.CutPlan, most: float, newly: Sequence[Sentence]) -> Sentence:
    new, left = plan.redrilled, plan.hole_left
    lead = (
        sentence("You can cut {}: ", (most, "mm"))
        if most > 0.0
        else sentence("You can cut nothing: ")
    )
    told = lead + sentence(
        "with {} off and the hole left the ratio falls to {} and the effort grows to {}; drilled "
        "anew at {} from the pivot it is {} and {}",
        (one(plan.cut_off), "mm"),
        (one(left.ratio), "1"),
        (one(left.effort), "N"),
        (one(plan.pin_radius), "mm"),
        (one(new.ratio), "1"),
        (one(new.effort), "N"),
    )
    if newly:
        return told + sentence(", but then ") + joined(list(newly)) + sentence(".")
    return told + sentence(".")


def _cut_step(design: Design, pedal: PedalName, plan: fitting.CutPlan) -> Step:
    drilling = plan.drilling.best
    how = f" ({drilling.way})" if drilling is not None else ""
    minutes = CUT_ARM + (PIN_HOLE.minutes if drilling is None else drilling.minutes)
    came, new = plan.as_it_came, plan.redrilled
    pin = one(plan.pin_radius)
    return Step(
        what=sentence(
            f"Cut {{}} off at the pad's end, put the pad on, drill at {{}} from the pivot{how}.",
            (one(plan.cut_off), "mm"),
            (pin, "mm"),
        ),
        brings=sentence(
            "{}:1, {} of effort, {} of pad travel of {}",
            (one(new.ratio), "1"),
            (one(new.effort), "N"),
            (one(new.travel), "mm"),
            (one(new.room), "mm"),
        ),
        price=Price(
            minutes=minutes,
            buy="" if drilling is not None else "side plates, or a new arm",
            worse=_worse(came, new),
        ),
        changes=(
            Change(f"{pedal}.pedal.pad_radius", one(_arm(design, pedal) - plan.cut_off), "mm"),
            *pin_at(design, pedal, pin),
        ),
        breaks=_reasons(new, _newly(new, came)),
    )


def _arm(design: Design, pedal: PedalName) -> Num:
    return (design.brake if pedal == "brake" else design.clutch).pedal.pad_radius


def _row(name: str, found: fitting.Outcome, mark: Mark, fails: Sequence[str] = ()) -> Row:
    return Row(
        name=name,
        values=(
            one(found.ratio),
            one(found.effort),
            one(found.travel),
            one(found.room),
            one(found.rod_angle),
        ),
        mark=mark,
        why=_reasons(found, fails),
    )


def _rescue_row(rescue: fitting.Rescue, best: bool) -> Row:
    if not rescue.possible:
        row = _row(rescue.way, rescue.outcome, "fails")
        return Row(
            name=row.name,
            values=row.values,
            mark="fails",
            why=(sentence(f"cannot be done: {rescue.because}"),),
        )
    mark: Mark = "take" if best else "passes" if rescue.as_wanted else "short"
    return _row(rescue.way, rescue.outcome, mark, rescue.newly_fails)


def _rescue_step(rescue: fitting.Rescue, wanted: fitting.Outcome) -> Step:
    return Step(
        what=sentence(f"{rescue.way[0].upper()}{rescue.way[1:]}."),
        brings=sentence(
            "{}:1, {} of effort, {} of pad travel",
            (one(rescue.outcome.ratio), "1"),
            (one(rescue.outcome.effort), "N"),
            (one(rescue.outcome.travel), "mm"),
        ),
        price=Price(minutes=rescue.minutes, buy="", worse=_worse(wanted, rescue.outcome)),
        breaks=_reasons(rescue.outcome, rescue.newly_fails),
    )


def _effort_bars(found: Sequence[tuple[str, fitting.Outcome]], pedal: PedalName) -> Bars:
    return Bars(
        title="effort for a full stop" if pedal == "brake" else "effort that holds it released",
        unit="N",
        bars=tuple(Bar(name, one(outcome.effort)) for name, outcome in found),
        bound=brakes.DESIGN_PUSH if pedal == "brake" else clutch.TOLERABLE_EFFORT,
        bound_says="at most",
    )


def _against(found: fitting.Outcome, before: fitting.Outcome) -> Mark:
    return "fails" if _newly(found, before) else "passes"


def _newly(after: fitting.Outcome, before: fitting.Outcome) -> tuple[str, ...]:
    return tuple(code for code in after.fails if code not in before.fails)


def _reasons(found: fitting.Outcome, codes: Sequence[str]) -> tuple[Sentence, ...]:
    """The demands of those codes that a candidate misses, with their figures."""
    if not codes:
        return ()
    missed = [f for f in assess(found.design).findings if f.limit.code in codes and not f.ok]
    return tuple(reason(finding) for finding in missed)


def _worse(before: fitting.Outcome, after: fitting.Outcome) -> tuple[Sentence, ...]:
    found: list[Sentence] = []
    for words, unit, was, now in (
        ("{} of effort, not {}", "N", before.effort, after.effort),
        ("{} of pad travel, not {}", "mm", before.travel, after.travel),
        ("rod {} off its axis, not {}", "rad", before.rod_angle, after.rod_angle),
    ):
        if one(now) > 1.005 * one(was):
            found.append(sentence(words, (one(now), unit), (one(was), unit)))
    if one(after.room) < 0.995 * one(before.room):
        found.append(
            sentence("{} of room, not {}", (one(after.room), "mm"), (one(before.room), "mm"))
        )
    return tuple(found)
