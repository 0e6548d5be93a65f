"""The forces of one push from the foot to the frame, every part in equilibrium.

What closes in the metal never reaches the frame: then that bears the foot's push and no more.
Where it does not close, the frame bears the rod's push at one place and the pivot's pull at
another, each several times the foot's.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field
from math import isfinite, isnan
from typing import Literal

import numpy as np

from pedalwright import linkage
from pedalwright.assess.box import boxed, seats_of, walls_and_tubes
from pedalwright.assess.parts import Assessment, BrakePedal, ClutchPedal
from pedalwright.assess.slides import foremost, slid
from pedalwright.core.faults import InputError
from pedalwright.core.points import Point
from pedalwright.core.units import N, Nmm
from pedalwright.design import BrakeDesign, ClutchDesign, Design
from pedalwright.linkage import Position
from pedalwright.panels.box import made
from pedalwright.panels.made import Made
from pedalwright.shell.parts import Plane
from pedalwright.structure.box.parts import Seat
from pedalwright.structure.box.path import (
    Path,
    flange_to_frame,
    held_middles,
    shaft_to_frame,
    to_shaft,
)
from pedalwright.structure.box.ways import in_use

#: Closed in the metal; open but for the frame; mounts of which only the stiffness was said; a box
#: that cannot be judged.
Closing = Literal["closed", "open", "said", "not judged"]
#: What carries the cylinder and the pivot where no box is described.
MOUNT_SAID = "mount, as stiff as was said"
FRAME = "frame"
#: What the rod ends in, or a cable.
FAR = ("cylinder", "cable's end")
#: A line of action this much along a plane does not cut it anywhere useful.
_ALONG = 0.2


def _nothing() -> Point:
    return Point(0.0, 0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Act:
    """A force on a part, by another, and where; with what turns it besides."""

    by: str
    at: Point
    force: Point
    moment: Point = field(default_factory=_nothing)

    @property
    def size(self) -> N:
        """How hard."""
        return self.force.length()


@dataclass(frozen=True, slots=True)
class Body:
    """One part, or several that are fixed to each other, and all that acts on it."""

    name: str
    acts: tuple[Act, ...]

    @property
    def left_over(self) -> tuple[N, Nmm]:
        """The size of the sum of its forces, and of their moments about the first one's place."""
        force, moment = _nothing(), _nothing()
        for act in self.acts:
            force += act.force
            moment += act.moment + (act.at - self.acts[0].at).cross(act.force)
        return force.length(), moment.length()


@dataclass(frozen=True, kw_only=True, slots=True)
class Loop:
    """One push on one pedal, at the end of its stroke."""

    pedal: str
    push: N
    here: Position
    pivot: Point
    closing: Closing
    #: From the foot on: pedal, rods, cylinder, what carries them, the frame.
    bodies: tuple[Body, ...]
    #: The way the piston moves.
    ahead: Point
    #: From flange to pivot, where it closes.
    through: Path
    #: From flange to frame and from pivot to frame, where it does not.
    out: tuple[Path, Path]
    #: Those parts of the box that its forces can reach.
    made: Made | None

    def body(self, name: str) -> Body:
        """One of them."""
        return next(body for body in self.bodies if body.name == name)

    @property
    def far(self) -> str:
        """What the last rod, or a cable, ends in."""
        return next(b.name for b in reversed(self.bodies) if b.name in FAR)

    @property
    def on_frame(self) -> tuple[Act, ...]:
        """What the frame bears."""
        return self.body(FRAME).acts


def load_loop(design: Design, assessment: Assessment, pedal: Literal["brake", "clutch"]) -> Loop:
    """The loop of one pedal at the push its give is judged at."""
    design = slid(design, foremost(design))
    part: BrakeDesign | ClutchDesign = design.brake if pedal == "brake" else design.clutch
    found: BrakePedal | ClutchPedal = assessment.brake if pedal == "brake" else assessment.clutch
    here = _pressed(found)
    seat = next((one for one in seats_of(design) if one.pedal == pedal), None)
    closing, whole = _closing(design, seat)
    through, out = Path(), (Path(), Path())
    if seat is not None and whole is not None:
        if closing == "closed":
            through = to_shaft(whole, seat)
        else:
            out = (flange_to_frame(whole, seat), shaft_to_frame(whole, seat))
    push = found.strength.give.push
    cable = isinstance(part, ClutchDesign) and part.master is None
    names = _carriers(closing, seat, through, out, "cable's" if cable else "cylinder's")
    panel = None if seat is None or whole is None else whole.panel(seat.cylinder_on)
    base = None if panel is None else panel.lying
    ends = (
        [] if whole is None else [at for name in out[1].parts for at in held_middles(whole, name)]
    )
    pedals = tuple(_pedal_parts(f"{pedal} pedal", part, found, push, names, base))
    pushed = -pedals[0].acts[-1].force
    ahead = max(ends, key=lambda at: float(pushed.dot(at)), default=None)
    carriers = tuple(_carried(names, pedals, base, ahead))
    frame = tuple(
        Act(body.name, act.at, -act.force, -act.moment)
        for body in (*pedals, *carriers)
        for act in body.acts
        if act.by == FRAME
    )
    return Loop(
        pedal=pedal,
        push=push,
        here=here,
        pivot=found.lever.pivot,
        closing=closing,
        ahead=part.rod.direction,
        bodies=(*pedals, *carriers, Body(FRAME, frame)),
        through=through,
        out=out,
        made=None if whole is None or seat is None else in_use(whole, (seat,)),
    )


def _closing(design: Design, seat: Seat | None) -> tuple[Closing, Made | None]:
    if seat is None:
        return "said", None
    box = boxed(design)
    held = box.brake if seat.pedal == "brake" else box.clutch
    joints = float("nan") if held is None else held.joints
    try:
        whole = made(design.box, walls_and_tubes(design))
    except InputError:
        return "not judged", None
    if isnan(joints):
        return "not judged", None
    return ("closed" if isfinite(joints) else "open"), whole


def _pedal_parts(
    foot_of: str,
    part: BrakeDesign | ClutchDesign,
    found: BrakePedal | ClutchPedal,
    push: N,
    on: tuple[str, str],
    base: Plane | None,
) -> Iterator[Body]:
    """The pedal, its rods and relay lever, and the cylinder."""
    lever, rod, here = found.lever, part.rod, _pressed(found)
    cable = isinstance(part, ClutchDesign) and part.master is None
    first, far = "cable" if cable else "push rod", FAR[cable]
    foot = lever.axis.cross(here.pad - lever.pivot).unit() * push
    bears = linkage.forces_of(lever, rod, here, foot)
    at_pin = -(foot + bears.pivot)  # of the rod on the pedal
    turns = -((here.pad - lever.pivot).cross(foot) + (here.pin - lever.pivot).cross(at_pin))
    turns = turns - lever.axis * lever.axis.dot(turns)
    yield Body(
        foot_of,
        (
            Act("foot", here.pad, foot),
            Act(first, here.pin, at_pin),
            Act(on[1], lever.pivot, bears.pivot, turns),
        ),
    )
    ahead = -at_pin
    if here.relay is not None and rod.relay is not None:
        relay = here.relay
        second = (here.socket - relay.driving_pin).unit() * bears.rod
        second = second * np.sign(second.dot(rod.direction))
        yield _rod(first, (foot_of, here.pin), ("relay lever", relay.driven_pin), ahead)
        tube = second - ahead
        yield Body(
            "relay lever",
            (
                Act(first, relay.driven_pin, ahead),
                Act("second rod", relay.driving_pin, -second),
                Act(FRAME, rod.relay.pivot, tube, _left(relay, rod.relay.pivot, ahead, second)),
            ),
        )
        ends = (("relay lever", relay.driving_pin), (far, here.socket))
        yield _rod("second rod", *ends, second)
        last, ahead = "second rod", second
    else:
        yield _rod(first, (foot_of, here.pin), (far, here.socket), ahead)
        last = first
    yield Body(
        far,
        (Act(last, here.socket, ahead), Act(on[0], _through(here.socket, ahead, base), -ahead)),
    )


def _pressed(found: BrakePedal | ClutchPedal) -> Position:
    return found.hard_stop if isinstance(found, BrakePedal) else found.full


def _through(at: Point, force: Point, base: Plane | None) -> Point:
    """Where a line of action comes through a plane; the place itself where it hardly does."""
    way = force.unit()
    if base is None or not abs(float(way.dot(base.normal))) > _ALONG:
        return at
    return at - way * (base.height(at) / way.dot(base.normal))


def _left(relay: linkage.Relayed, pivot: Point, first: Point, second: Point) -> Point:
    """What turns a relay lever's tube besides the force on it."""
    moments = (relay.driven_pin - pivot).cross(first) - (relay.driving_pin - pivot).cross(second)
    return -moments


def _rod(name: str, one: tuple[str, Point], other: tuple[str, Point], along: Point) -> Body:
    return Body(name, (Act(one[0], one[1], along), Act(other[0], other[1], -along)))


def _carriers(
    closing: Closing, seat: Seat | None, through: Path, out: tuple[Path, Path], far: str
) -> tuple[str, str]:
    """What carries the flange and what the pivot: one name where they are one."""
    if seat is None or closing in {"said", "not judged"}:
        words = MOUNT_SAID if closing == "said" else "part of a box that cannot be judged"
        return f"{far} {words}", f"pivot's {words}"
    if closing == "closed":
        both = " to ".join(dict.fromkeys((through.parts[0], through.parts[-1])))
        return both, both
    on = seat.pivot_on, *out[1].parts[-1:]
    return " on ".join(out[0].parts) or seat.cylinder_on, " on ".join(on)


def _carried(
    names: tuple[str, str],
    pedals: tuple[Body, ...],
    base: Plane | None,
    ahead: Point | None,
) -> Iterator[Body]:
    """What carries cylinder and pivot, between them and the frame."""
    cylinder, lever = pedals[-1], pedals[0]
    flange, pivot = cylinder.acts[-1], lever.acts[-1]
    on_flange = Act(cylinder.name, flange.at, -flange.force)
    on_pivot = Act(lever.name, pivot.at, -pivot.force, -pivot.moment)
    if names[0] == names[1]:
        yield _held(names[0], (on_flange, on_pivot), base, ahead)
    else:
        yield _held(names[0], (on_flange,), base, None)
        yield _held(names[1], (on_pivot,), None, ahead)


def _held(name: str, acts: tuple[Act, ...], base: Plane | None, near: Point | None) -> Body:
    """A part with what the frame does to hold it: one force on its line of action.

    Of that line the place where it comes through the part's base is taken, else the one nearest to
    where the frame holds it ahead of the push; what is left turns about the line itself.
    """
    force, moment = _nothing(), _nothing()
    start = acts[0].at
    for act in acts:
        force += act.force
        moment += act.moment + (act.at - start).cross(act.force)
    square = force.dot(force)
    way = force.unit()
    at = start + force.cross(moment) * (1.0 / square)
    at = _through(at, force, base)
    if base is None and near is not None:
        at += way * way.dot(near - at)
    return Body(name, (*acts, Act(FRAME, at, -force, -way * way.dot(moment))))
