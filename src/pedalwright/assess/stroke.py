"""One pedal pressed part of the way: where it stands, and every driver's leg on it."""

from dataclasses import dataclass, replace
from typing import Literal

from pedalwright import driver, linkage
from pedalwright.assess.cabin import footwell, tread, treads
from pedalwright.assess.parts import Assessment, Placed
from pedalwright.assess.slides import foremost, place_of, slid
from pedalwright.core.points import REARWARD, Point
from pedalwright.core.units import mm
from pedalwright.core.working import unrecorded
from pedalwright.design import Design
from pedalwright.driver import Driver, Posture, Seated
from pedalwright.linkage import Lever, Pedal, Position, Rod

PedalName = Literal["brake", "clutch", "throttle"]
PEDAL_NAMES: tuple[PedalName, ...] = ("brake", "clutch", "throttle")
#: Where legs stand that were assessed already.
ENDS = {0.0: "rest", 1.0: "full"}


@dataclass(frozen=True, slots=True)
class Leg:
    """One driver's leg on a pedal."""

    name: str
    posture: Posture


@dataclass(frozen=True, kw_only=True, slots=True)
class Pressed:
    """A pedal somewhere on its stroke, with the box where one of the drivers has it."""

    pedal: Pedal
    #: None for an accelerator, as is `position`: what it drives is no rod and cylinder.
    rod: Rod | None
    lever: Lever
    position: Position | None
    pad: Point
    #: Pad centre at the end of the stroke.
    pad_full: Point
    #: Arc of the pad to here, and to the end of the stroke.
    travel: mm
    full_travel: mm
    #: How far aft the box stands of where its numbers were measured.
    slide: mm
    #: Each leg with the box where its own driver has it, the first one the one named.
    legs: tuple[Leg, ...]


def pressed(
    design: Design, assessment: Assessment, which: PedalName, share: float, first: str = ""
) -> Pressed:
    """The pedal at a share of its stroke: 0 is at rest, 1 its end.

    The end is the brake's hard stop, the end of the clutch's stroke, the accelerator's stop.
    `first` is the driver who has the box; left out, or unknown, the design's first.
    """
    people = sorted(design.drivers, key=lambda person: person.name != first)
    slide = place_of(design, people[0]) if people else design.slide
    full = _full_travel(design, assessment, which)
    travel: mm = share * full if share > 0.0 else 0.0  # a stroke nobody knows begins all the same
    there = slid(design, slide)
    pedal, rod = _parts(there, which)
    names = [person.name for person in people]
    with unrecorded():
        if share in ENDS:
            legs = _at_an_end(assessment, which, names, ENDS[share])
        else:
            legs = _between(design, people, assessment, which, (travel, full))
        lever = linkage.lever(pedal)
        return Pressed(
            pedal=pedal,
            rod=rod,
            lever=lever,
            position=None
            if rod is None
            else linkage.position(lever, rod, linkage.angle_of_arc(lever, travel)),
            pad=linkage.pad_after(lever, travel),
            pad_full=linkage.pad_after(lever, full),
            travel=travel,
            full_travel=full,
            slide=slide,
            legs=tuple(Leg(person.name, leg) for person, leg in zip(people, legs, strict=True)),
        )


def _full_travel(design: Design, assessment: Assessment, which: PedalName) -> mm:
    match which:
        case "brake":
            return assessment.brake.hard_stop.pad_travel
        case "clutch":
            return assessment.clutch.full.pad_travel
        case "throttle":
            return design.throttle.opening.pad_room


def pedal_of(design: Design, which: str) -> Pedal:
    """One of the three pedals."""
    pedals = {
        "brake": design.brake.pedal,
        "clutch": design.clutch.pedal,
        "throttle": design.throttle.pedal,
    }
    return pedals[which]


def _parts(design: Design, which: PedalName) -> tuple[Pedal, Rod | None]:
    match which:
        case "brake":
            return design.brake.pedal, design.brake.rod
        case "clutch":
            return design.clutch.pedal, design.clutch.rod
        case "throttle":
            return design.throttle.pedal, None


def _at_an_end(
    assessment: Assessment, which: PedalName, names: list[str], end: str
) -> list[Posture]:
    seats = {placed.name: _seat(placed, which) for placed in assessment.drivers}
    return [seats[name].at(end) for name in names]


def _seat(placed: Placed, which: PedalName) -> Seated:
    return {"brake": placed.brake, "clutch": placed.clutch, "throttle": placed.throttle}[which]


def _between(
    design: Design,
    people: list[Driver],
    assessment: Assessment,
    which: PedalName,
    arcs: tuple[mm, mm],
) -> list[Posture]:
    """Each leg as `assess` places it, at one more place of the stroke."""
    front = foremost(design)
    design = slid(design, front)
    feet = treads(design, assessment.brake, assessment.clutch, assessment.throttle)
    own = {"clutch": feet.clutch, "brake": feet.brake, "throttle": feet.throttle}[which]
    pedal, _ = _parts(design, which)
    here, full = arcs
    places = {"rest": 0.0, "here": here, "full": full}
    foot = tread(which, pedal, linkage.lever(pedal), places, own.heel, own.side)
    floor, rest = design.survey.face("floor").offset, design.heel_rest
    heel = driver.heel_height(floor, rest.drop, rest.plate)
    room = footwell(design)

    def leg(person: Driver) -> Posture:
        aft = REARWARD * (place_of(design, person) - front)
        (seat,) = driver.place(person, (replace(foot, pads=foot.pads + aft),), heel, room)
        return seat.at("here")

    return [leg(person) for person in people]
