"""Does the clutch release? Travel needed and there, the masters that are sold in a row, cures."""

from collections.abc import Iterator
from dataclasses import fields

from pedalwright.clutch.limits import OVER_LIFT
from pedalwright.clutch.parts import CableFork, ClutchResult, RodFork
from pedalwright.core.answers import (
    Answer,
    Bar,
    Bars,
    Change,
    Column,
    Price,
    Sentence,
    Step,
    sentence,
)
from pedalwright.core.units import Num
from pedalwright.design import Design
from pedalwright.search.bore_row import bore_row
from pedalwright.search.brake_cures import stiffer_mounts
from pedalwright.search.changes import Changes, number, one, pin_at
from pedalwright.search.choice import Choice, choose
from pedalwright.search.cures import Cure, ranked
from pedalwright.search.prices import (
    CLUTCH_CYLINDER,
    FREE_PLAY,
    HOSES,
    PEDAL_STOP,
    PIN_HOLE,
    ROD_GAP,
    TOE_POCKET,
)
from pedalwright.search.reasons import joined, reason
from pedalwright.search.tried import Candidate, named

BORE = "clutch.master.bore"
RELEASES = named("clutch.release", "clutch.stroke")
WISHES = named("clutch.effort", "clutch.over_stroke")
#: Pins tried on either side of the present one, mm.
PIN_STEPS = (-8.0, -4.0, 0.0, 4.0, 8.0)

COLUMNS = (
    Column("pad needed", "mm"),
    Column("pad there", "mm"),
    Column("effort", "N"),
    Column("piston", "mm"),
    Column("lift reached", "mm"),
)


def clutch_release(design: Design) -> Answer:
    """Whether the clutch is free before the toes meet the wall, and what would free it."""
    choice = choose(design, "clutch", list(_row(design)), _taste, keep=True)
    now = choice.candidates[choice.now]
    result = now.assessment.clutch.result
    return Answer(
        question="clutch",
        title="Does the clutch release, and what frees it?",
        says=_says(now),
        outcome=choice.outcome,
        columns=COLUMNS,
        rows=tuple(choice.row(i, _values) for i in choice.shown),
        bars=Bars(
            title="pad travel by cause, as it stands",
            unit="mm",
            bars=tuple(_causes(result)),
            bound=one(result.travel_available),
            bound_says="where the toes meet the wall",
        ),
        steps=_steps(design, choice),
        notes=tuple(_notes(choice, design)),
    )


def _taste(candidates: Candidate) -> tuple[Num, ...]:
    """The lightest pedal."""
    return (candidates.assessment.clutch.result.effort,)


def _row(design: Design) -> Iterator[tuple[str, Changes]]:
    """Masters that are sold; for a cable, pins further in and out."""
    if _has_master(design):
        for name, size in bore_row(number(design, BORE)):
            yield name, (Change(BORE, size, "mm"),)
        return
    pin = number(design, "clutch.pedal.pin_radius")
    for step in PIN_STEPS:
        yield f"cable pin at {pin + step:.1f} mm", pin_at(design, "clutch", pin + step)


def _releases(candidate: Candidate) -> bool:
    return not candidate.fails(RELEASES)


def _values(candidate: Candidate) -> tuple[float, ...]:
    result = candidate.assessment.clutch.result
    return (
        one(result.budget.total),
        one(result.travel_available),
        one(result.effort),
        one(result.master_stroke),
        one(result.lift_reached),
    )


def _says(now: Candidate) -> Sentence:
    result = now.assessment.clutch.result
    figures = (
        (one(result.budget.total), "mm"),
        (one(result.travel_available), "mm"),
        (one(result.effort), "N"),
    )
    if now.fails(named("clutch.release")):
        return sentence(
            "It does not release: the pad has to go {} and has {} before the toes meet the wall, "
            "which leaves {} of the {} the bearing must lift.",
            *figures[:2],
            (one(result.lift_reached), "mm"),
            (one(result.lift_needed), "mm"),
        )
    if now.fails(RELEASES):
        missed = [reason(finding) for finding in now.fails(RELEASES)]
        return sentence("It does not release: ") + joined(missed) + sentence(".")
    return sentence("It releases: the pad has to go {} and has {}, for {} on the pad.", *figures)


#: Causes of clutch travel in a builder's words.
CAUSES = {
    "dead_stroke": "dead stroke, rod gap",
    "free_play": "free play at the bearing",
    "lift": "lift of the bearing",
    "line_growth": "hoses and line",
    "structure": "parts giving",
    "total": "in all",
}


def _causes(result: ClutchResult) -> Iterator[Bar]:
    for field in fields(result.budget):
        yield Bar(CAUSES[field.name], one(getattr(result.budget, field.name)))


def _short(candidate: Candidate) -> float:
    """Pad travel missing to the release; negative: left over."""
    result = candidate.assessment.clutch.result
    return one(result.budget.total) - one(result.travel_available)


def _steps(design: Design, choice: Choice) -> tuple[Step, ...]:
    """Cures while it does not release; then what the wishes ask."""
    now = choice.candidates[choice.now]
    if now.fails(RELEASES):
        best = number(choice.candidates[choice.best].design, BORE) if _has_master(design) else 0.0
        cures = list(_cures(design, best))
        return ranked(design, cures, _short, _travel_won, enough=_releases)
    steps: list[Step] = []
    if now.fails(named("clutch.effort"), "should"):
        steps += ranked(design, list(_lighter(design)), _effort, _push_won)
    if now.fails(named("clutch.over_stroke"), "should"):
        steps.append(_stop(now.assessment.clutch.result))
    return tuple(steps)


def _travel_won(before: Candidate, after: Candidate) -> Sentence:
    left = -_short(after)
    end = "{} in hand" if left >= 0.0 else "still {} short"
    was, now = before.assessment.clutch.result, after.assessment.clutch.result
    return sentence(
        f"needs {{}} (was {{}}) and has {{}} (was {{}}): {end}",
        (one(now.budget.total), "mm"),
        (one(was.budget.total), "mm"),
        (one(now.travel_available), "mm"),
        (one(was.travel_available), "mm"),
        (abs(left), "mm"),
    )


def _push_won(before: Candidate, after: Candidate) -> Sentence:
    return sentence("holds with {} instead of {}", (_effort(after), "N"), (_effort(before), "N"))


def _effort(candidate: Candidate) -> float:
    return one(candidate.assessment.clutch.result.effort)


def _has_master(design: Design) -> bool:
    return design.clutch.master is not None


def _cures(design: Design, best: float) -> Iterator[Cure]:
    part = design.clutch
    pin = number(design, "clutch.pedal.pin_radius")
    if _has_master(design):
        fitted = number(design, BORE)
        larger = [entry for entry in bore_row(fitted) if entry[1] > fitted]
        for name, size in [entry for entry in larger if entry[1] == best] or larger[:1]:
            yield Cure(
                what=sentence(f"Fit a larger master cylinder, {name}."),
                changes=(Change(BORE, size, "mm"),),
                job=CLUTCH_CYLINDER,
            )
    yield Cure(
        what=sentence("Drill the pin hole {} further from the pivot.", (4.0, "mm")),
        changes=pin_at(design, "clutch", pin + 4.0),
        job=PIN_HOLE,
    )
    yield from _slack(design)
    if part.pad_room is None:
        yield Cure(
            what=sentence("Give the toes a pocket in the wall, {} deep.", (10.0, "mm")),
            changes=(Change("toes_to_wall", number(design, "toes_to_wall") - 10.0, "mm"),),
            job=TOE_POCKET,
        )
    yield from stiffer_mounts(design, "clutch")


def _slack(design: Design) -> Iterator[Cure]:
    release = design.clutch.release
    dead, play = one(release.dead_stroke), one(release.free_play)
    if dead > 1.0:
        yield Cure(
            what=sentence("Set the rod gap closer by {}, still with play to feel.", (0.5, "mm")),
            changes=(Change("clutch.release.dead_stroke", dead - 0.5, "mm"),),
            job=ROD_GAP,
        )
    if play > 1.0:
        yield Cure(
            what=sentence("Set the bearing's free play to {}.", (1.0, "mm")),
            changes=(Change("clutch.release.free_play", 1.0, "mm"),),
            job=FREE_PLAY,
        )
    growth = one(release.line_growth)
    if growth > 0.0 and not isinstance(release.actuator, (CableFork, RodFork)):
        yield Cure(
            what=sentence("Replace the hose by one that swells half as much."),
            changes=(Change("clutch.release.line_growth", growth / 2, "1"),),
            job=HOSES,
            assumed=True,
        )


def _lighter(design: Design) -> Iterator[Cure]:
    pin = number(design, "clutch.pedal.pin_radius")
    if _has_master(design):
        fitted = number(design, BORE)
        for name, size in [entry for entry in bore_row(fitted) if entry[1] < fitted][-2:]:
            yield Cure(
                what=sentence(f"Fit a smaller master cylinder, {name}."),
                changes=(Change(BORE, size, "mm"),),
                job=CLUTCH_CYLINDER,
            )
    yield Cure(
        what=sentence("Drill the pin hole {} nearer to the pivot.", (4.0, "mm")),
        changes=pin_at(design, "clutch", pin - 4.0),
        job=PIN_HOLE,
    )


def _notes(choice: Choice, design: Design) -> Iterator[Sentence]:
    result = choice.candidates[choice.now].assessment.clutch.result
    six, room = one(result.travel_at_six), one(result.travel_available)
    end = "would not release" if six > room else "would release"
    yield sentence(
        f"This pedal is {{}}:1 on average; a 6:1 clutch needs {{}} here, has {{}} and {end}.",
        (one(result.mean_ratio), "1"),
        (six, "mm"),
        (room, "mm"),
    )
    if _has_master(design):
        yield sentence("The row is judged with the stroke of your cylinder; check the one you buy.")
    for missed in choice.uncured:
        yield sentence("The row does not mend this: ") + missed


def _stop(result: ClutchResult) -> Step:
    needed = one(result.lift_needed)
    return Step(
        what=sentence("Fit a stop behind the pedal."),
        brings=sentence(
            "pushed to the wall it would lift the bearing {}, where {} releases it and {} is all "
            "that the cover should bear",
            (one(result.lift_at_wall), "mm"),
            (needed, "mm"),
            (needed + OVER_LIFT, "mm"),
        ),
        price=Price(minutes=PEDAL_STOP.minutes, buy=PEDAL_STOP.buy, worse=()),
    )
