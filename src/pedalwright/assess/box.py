"""The pedal box under both pedals: where they hang on it, and how it answers them."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from pedalwright.core.batch import over
from pedalwright.core.checks import Finding
from pedalwright.core.faults import Fault
from pedalwright.core.points import Point
from pedalwright.core.units import Num
from pedalwright.design import BrakeDesign, ClutchDesign, Design
from pedalwright.linkage import Forces, Lever, Position
from pedalwright.structure.box.held import held
from pedalwright.structure.box.limits import check_described, check_loop
from pedalwright.structure.box.parts import NOT_HELD, Held, Push, Seat, Unheld
from pedalwright.survey.parts import Survey


@dataclass(frozen=True, kw_only=True, slots=True)
class Boxed:
    """How the box answers each pedal; None for a pedal that does not hang on it."""

    brake: Held | None = None
    clutch: Held | None = None
    #: Why it could not be judged.
    faults: tuple[Fault, ...] = ()


def boxed(design: Design) -> Boxed:
    """The box under both pedals, condensed once for as long as it stays as it is."""
    seats = seats_of(design)
    if not seats:
        return Boxed()
    survey = walls_and_tubes(design)
    try:
        answer = held(design.box, survey, seats)
    except TypeError:  # arrays have no hash: a batch, of which all share one box
        answer = held(*over(_middle, (design.box, survey, seats)))
    faults = answer.faults if isinstance(answer, Unheld) else ()
    each = [NOT_HELD] * len(seats) if isinstance(answer, Unheld) else answer
    of = {seat.pedal: own for seat, own in zip(seats, each, strict=True)}
    return Boxed(brake=of.get("brake"), clutch=of.get("clutch"), faults=faults)


def box_findings(box: Boxed) -> Iterator[Finding]:
    """Whether the box can be judged at all, and whether push and pull meet in it."""
    on = [(name, one) for name, one in (("brake", box.brake), ("clutch", box.clutch)) if one]
    if on:
        yield check_described(len(box.faults))
    for name, one in on:
        yield check_loop(one.joints, name)


def seats_of(design: Design) -> tuple[Seat, ...]:
    """The pedals that hang on the box."""
    return tuple(_seats(design))


def walls_and_tubes(design: Design) -> Survey:
    """What of the survey a box stands on."""
    return Survey(lines=design.survey.lines, faces=design.survey.faces)


def unit_push(lever: Lever, here: Position, unit: Forces) -> Push:
    """What one newton square to the arm does to flange and shaft."""
    return of_foot(lever, here, unit, lever.axis.cross(here.pad - lever.pivot).unit())


def of_foot(lever: Lever, here: Position, unit: Forces, foot: Point) -> Push:
    """What a foot on the pad does to flange and shaft: together they bear it."""
    pivot = -unit.pivot
    flange = foot - pivot
    # What is left of the moments about the pivot: the axis itself turns freely.
    turns = (here.pad - lever.pivot).cross(foot) - (here.pin - lever.pivot).cross(flange)
    return Push(
        at_flange=here.socket,
        flange=flange,
        at_pivot=lever.pivot,
        pivot=pivot,
        turns=turns - lever.axis * lever.axis.dot(turns),
    )


def _seats(design: Design) -> Iterator[Seat]:
    pedals: tuple[tuple[str, BrakeDesign | ClutchDesign], ...] = (
        ("brake", design.brake),
        ("clutch", design.clutch),
    )
    for name, part in pedals:
        mount = part.carrier.mount
        if not mount.in_box or part.rod.relay is not None:
            continue
        yield Seat(
            pedal=name,
            cylinder_on=mount.cylinder_on,
            cylinder=mount.flange_at or _place(design, mount.cylinder_on, part.rod.socket),
            flange_width=mount.flange_width,
            flange_height=mount.flange_height,
            pivot_on=mount.pivot_on,
            tube_outside=part.carrier.pivot.tube_outside,
            tube_inside=part.carrier.pivot.tube_inside,
        )


def _place(design: Design, on: str, socket: Point) -> Point:
    """Where a flange is bolted: where the part was made for it, else where the rod points."""
    for cheeks in design.box.cheeks:
        if cheeks.name == on and cheeks.cylinder is not None:
            return cheeks.cylinder
    for doubler in design.box.doublers:
        if doubler.name == on:
            return doubler.middle
    return socket


def _middle(number: Num) -> float:
    """A box is one box: variants share that of their middle."""
    return float(np.median(number))
