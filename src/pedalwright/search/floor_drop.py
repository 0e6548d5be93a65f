"""How deep must the floor drop? The depths that fit every driver, what they cost, the tub."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

import numpy as np

from pedalwright.assess import Placed
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
from pedalwright.core.batch import pick
from pedalwright.core.units import Num
from pedalwright.design import Design
from pedalwright.driver.limits import LEAST_ANKLE
from pedalwright.search.changes import Changes, one
from pedalwright.search.cures import step_to
from pedalwright.search.depth_words import (
    DEPTHS,
    depth_words,
    left_words,
    named,
    range_words,
    tray_words,
)
from pedalwright.search.prices import Job
from pedalwright.search.reasons import joined, reason
from pedalwright.search.scan import Scan, Stretch, guessed_legs, of_legs, scan, who
from pedalwright.search.tray import tray
from pedalwright.search.tried import alone

#: Shown beyond either end of what fits, mm.
BEYOND = 25.0
#: Less than this is not worth a change where every demand is met, mm (ours).
WORTH = 10.0
FOOT_TUB = Job(600.0, "1.5 mm sheet for a tub, rivets, sealant")
HEEL_PLATE = Job(60.0, "plate or hard ply under the heels, screws")


def floor_drop(design: Design) -> Answer:
    """The range that fits all drivers, what is left above the ground, the size of the tub."""
    now = float(design.heel_rest.drop - design.heel_rest.plate)
    found = scan(DEPTHS, _at(design, DEPTHS), of_legs())
    bears, suits = found.bears(now), found.suits(now)
    take = _taken(found, suits, now)
    ground, drop = _ground(design), float(design.heel_rest.drop)
    shown = _shown(now, take, (bears, suits))
    names = [placed.name for placed in found.assessment.drivers]
    parts = ("sole", "ankle", "knee")
    angles = [Column(f"{name} {part}", "rad") for name in names for part in parts]
    return Answer(
        question="floor-drop",
        title="How deep must the floor drop?",
        says=_says(found, bears, suits, now, take),
        outcome=_outcome(found, suits, now),
        columns=(*angles, *([Column("to ground", "mm")] if np.isfinite(ground) else [])),
        rows=tuple(_row(found, depth, now, take, ground, drop) for depth in shown),
        bars=Bars(
            title="smallest angle at any ankle, by depth",
            unit="rad",
            bars=tuple(Bar(named(depth), _least_ankle(found, depth)) for depth in shown),
            bound=LEAST_ANKLE,
            bound_says="what a foot can hold",
        ),
        steps=tuple(_steps(design, found, now, take)),
        notes=tuple(_notes(design, found, take, ground)),
    )


def heels_at(design: Design, depth: float) -> Changes:
    """What to change so that the heels lie so deep: packing in a tub that is there, or a tub."""
    drop = float(design.heel_rest.drop)
    if depth <= drop:
        return (Change("heel_rest.plate", drop - depth, "mm"),)
    return (Change("heel_rest.drop", depth, "mm"), Change("heel_rest.plate", 0.0, "mm"))


def _at(design: Design, depths: Num) -> Design:
    """The car with its heels at many depths; a tub and packing come to the same."""
    rest = replace(design.heel_rest, drop=np.maximum(depths, 0.0), plate=np.maximum(-depths, 0.0))
    return replace(design, heel_rest=rest)


def _taken(found: Scan, suits: Stretch | None, now: float) -> float:
    """The nearest that suits; as it is, where demands are met and little would be won."""
    if suits is None or suits.holds(now):
        return now
    near = suits.low - WORTH < now < suits.high + WORTH
    return now if near and not found.missed(now) else suits.inside(now)


def _outcome(found: Scan, suits: Stretch | None, now: float) -> Outcome:
    if suits is None or found.hopeless() or found.missed(now):
        return "fails"
    return "passes" if suits.holds(now) else "short"


def _shown(now: float, take: float, stretches: Sequence[Stretch | None]) -> list[float]:
    """Where it is and where it should be, the ends of what fits and a step beyond them."""
    depths = {now, take, 0.0}
    for stretch in stretches:
        if stretch is not None:
            depths |= {stretch.low, stretch.high}
            depths |= {stretch.low - BEYOND, stretch.high + BEYOND}
    inside = sorted(depth for depth in depths if DEPTHS[0] < depth < DEPTHS[-1])
    return [depth for depth in inside if depth in {now, take} or _apart(depth, (now, take))]


def _apart(depth: float, others: Sequence[float]) -> bool:
    return all(abs(depth - other) >= 5.0 for other in others)


def _says(
    found: Scan, bears: Stretch | None, suits: Stretch | None, now: float, take: float
) -> Sentence:
    people = who(found.assessment.drivers)
    never = [sentence("No depth mends this: ") + r for r in _hopeless(found, take)[:1]]
    if bears is None or suits is None:
        lead = sentence(
            f"No depth from a heel plate of {{}} to a drop of {{}} fits {people}: ",
            (-DEPTHS[0], "mm"),
            (DEPTHS[-1], "mm"),
        )
        return lead + joined(found.missed(now)[:2]) + sentence(".")
    missed = found.missed(now)
    if missed:
        lead = depth_words(now, "A") + _lifted(found, now) + sentence(": ") + joined(missed[:2])
    else:
        lead = depth_words(now, "A") + sentence(f" fits {people}")
    told = lead + sentence(f". {people[0].upper()}{people[1:]} can have ") + range_words(bears)
    if (suits.low, suits.high) != (bears.low, bears.high):
        told = told + sentence("; joints are best within their bands with ") + range_words(suits)
    if take != now:
        told = told + sentence("; make it ") + depth_words(take, "a")
    return joined([told, *never], ". ") + sentence(".")


def _hopeless(found: Scan, place: float) -> list[Sentence]:
    return [reason(pick(missed, found.index(place))) for missed in found.hopeless()]


def _lifted(found: Scan, depth: float) -> Sentence:
    """How it stands the sole of whoever has the shorter foot, where that bends an ankle."""
    if all(finding.limit.code != "driver.ankle_min" for finding in found.failing(depth)):
        return sentence(" does not fit")
    i = found.index(depth)
    soles = [(_one_of(p.brake.rest.sole_angle, i), p.name) for p in found.assessment.drivers]
    steepest, name = max(soles)
    return sentence(f" stands the sole of {name} at {{}} on the brake", (steepest, "rad"))


def _row(found: Scan, depth: float, now: float, take: float, ground: float, drop: float) -> Row:
    i = found.index(depth)
    angles = [
        _one_of(angle, i)
        for placed in found.assessment.drivers
        for angle in (
            placed.brake.rest.sole_angle,
            _ankle(placed),
            placed.brake.rest.knee_angle,
        )
    ]
    missed, wished = found.missed(depth), found.missed(depth, "should")
    mark: Mark = "fails" if missed else "short" if wished else "passes"
    if depth == now:
        mark = "keep" if depth == take and not missed else "now"
    elif depth == take and not missed:
        mark = "take"
    left = [ground - max(depth, drop)] if np.isfinite(ground) else []
    return Row(
        name=named(depth),
        values=(*angles, *left),
        mark=mark,
        why=tuple((missed or wished)[:3]),
    )


def _ankle(placed: Placed) -> Num:
    """The smallest ankle with any pedal at rest."""
    rests = [seat.rest.ankle_angle for seat in (placed.clutch, placed.brake, placed.throttle)]
    least: Num = np.min(np.stack(np.broadcast_arrays(*rests)), axis=0)
    return least


def _one_of(value: Num, i: int) -> float:
    return one(np.asarray(value)[..., i] if np.ndim(value) else value)


def _least_ankle(found: Scan, depth: float) -> float:
    i = found.index(depth)
    return min(_one_of(_ankle(placed), i) for placed in found.assessment.drivers)


def _ground(design: Design) -> float:
    """From a level floor down to the ground; nan where nobody measured it."""
    floor, ground = design.survey.face("floor"), design.survey.face("ground")
    return one(floor.offset - ground.offset)


def _steps(design: Design, found: Scan, now: float, take: float) -> Iterator[Step]:
    if take == now:
        return
    before, after = alone(design), alone(design, heels_at(design, take))
    brings = sentence(
        "the smallest ankle at {} instead of {}",
        (_least_ankle(found, take), "rad"),
        (_least_ankle(found, now), "rad"),
    )
    drop = float(design.heel_rest.drop)
    if take <= drop:
        what = sentence("Put {} of packing under the heels.", (drop - take, "mm"))
        yield step_to(before, after, what, brings, HEEL_PLATE)
        return
    what = sentence("Let a foot-tub {} deep into the floor.", (take, "mm"))
    yield step_to(before, after, what, brings, FOOT_TUB)


def _notes(design: Design, found: Scan, take: float, ground: float) -> Iterator[Sentence]:
    drop = max(take, float(design.heel_rest.drop))
    if drop > 0.0:
        yield tray_words(tray(alone(design, heels_at(design, take)).design, drop))
        yield left_words(ground, drop)
    place = found.index(take)
    for missed in _hopeless(found, take):
        yield sentence("No depth mends this: ") + missed
    others = found.others(take)
    if others:
        yield sentence("Wishes that this depth leaves open: ") + joined(others[:4])
    yield sentence(
        "Sole and knee are those on the brake at rest, the ankle is the smallest on any pedal at "
        "rest. Depth counts from the floor of the car to the mat under the heels."
    )
    yield from guessed_legs(found.assessment.drivers, place)
