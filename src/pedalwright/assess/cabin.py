"""People and pedals in the footwell: legs, shoes, and what is left around what moves."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np

from pedalwright import brakes, driver, linkage, structure
from pedalwright.assess.parts import BrakePedal, ClutchPedal, Placed, ThrottlePedal
from pedalwright.assess.slides import place_of
from pedalwright.brakes.travel import PUSHES
from pedalwright.core.checks import Finding
from pedalwright.core.points import REARWARD, RIGHT, Plane, Point, at
from pedalwright.core.units import N, Num
from pedalwright.design import Design
from pedalwright.driver.parts import Heel
from pedalwright.survey.parts import Line


@dataclass(frozen=True, kw_only=True, slots=True)
class Treads:
    """The three pedals as feet meet them, and which hand the car is."""

    clutch: driver.Tread
    brake: driver.Tread
    throttle: driver.Tread
    #: The accelerator's pad as it is for cruising.
    cruising: Point
    #: 1 where the clutch is on the car's left, else -1.
    hand: float

    def moved(self, aft: Num) -> tuple[driver.Tread, ...]:
        """The three with the box slid rearward."""
        if isinstance(aft, float) and aft == 0.0:
            return self.clutch, self.brake, self.throttle
        return tuple(
            replace(tread, pads=tread.pads + REARWARD * aft)
            for tread in (self.clutch, self.brake, self.throttle)
        )


def treads(
    design: Design,
    brake: BrakePedal,
    released: ClutchPedal,
    accelerator: ThrottlePedal,
    *,
    between: bool = False,
) -> Treads:
    """Where the pads are at the places of their strokes that a leg is judged at.

    All at rest and at full travel, the brake also under the hardest push with all that gives.
    With `between` also where the brake's linings touch and an everyday push has it, where the
    clutch bites, and where the accelerator is for cruising.
    """
    hand = -1.0 if np.any(accelerator.lever.pad.y < brake.lever.pad.y) else 1.0
    curve, stop = brake.curve.travel, design.throttle.opening.pad_room
    hardest = at(curve, _push(brakes.DESIGN_PUSH))
    on_brake: dict[str, Num] = {
        "rest": 0.0,
        "full": brake.hard_stop.pad_travel,
        driver.HARDEST: hardest,
    }
    on_clutch: dict[str, Num] = {"rest": 0.0, "full": released.full.pad_travel}
    on_throttle: dict[str, Num] = {"rest": 0.0, "full": stop}
    if between:
        on_brake |= {"bite": at(curve, 0), driver.NORMAL: at(curve, _push(driver.NORMAL_PUSH))}
        on_throttle |= {driver.CRUISING: stop * driver.CRUISING_SHARE}
        if released.result.bite is not None:
            on_clutch |= {"bite": np.minimum(released.result.bite, released.full.pad_travel)}
    clutch, gas = design.clutch.pedal, design.throttle.pedal
    heel: Heel = "may lift" if design.clutch.heel == "may lift" else "slides"
    return Treads(
        clutch=tread("clutch", clutch, released.lever, on_clutch, heel, -hand),
        brake=tread("brake", design.brake.pedal, brake.lever, on_brake, "slides", hand),
        throttle=tread("throttle", gas, accelerator.lever, on_throttle, "stays", hand),
        cruising=linkage.pad_after(accelerator.lever, stop * driver.CRUISING_SHARE),
        hand=hand,
    )


def toe_wall(design: Design) -> Plane:
    """What is ahead of the toes: the front wall, or the bottom of a pocket in it."""
    wall = design.survey.face("front_wall")
    return Plane(normal=wall.normal, offset=wall.offset - design.toe_pocket)


def footwell(design: Design) -> driver.Footwell:
    """What legs and shoes may meet, of what was measured and of what is built in."""
    survey = design.survey
    pivots = (
        ("brake pivot", design.brake.pedal, design.brake.carrier.pivot),
        ("clutch pivot", design.clutch.pedal, design.clutch.carrier.pivot),
    )
    return driver.Footwell(
        rim=survey.mark("rim_bottom"),
        column=survey.line("column"),
        wall=toe_wall(design),
        sides=tuple(f.plane for f in survey.faces if _looks(f.plane.normal.y, either=True)),
        covers=tuple(f.plane for f in survey.faces if _looks(-f.plane.normal.z)),
        pivots=tuple(_tube(name, pedal, pivot) for name, pedal, pivot in pivots),
        boxes=survey.obstacles,
    )


def placed(design: Design, front: Num, feet: Treads, room: driver.Footwell) -> tuple[Placed, ...]:
    """Every driver at the three pedals, the box where he has it; `front` is the foremost place."""
    heel = driver.heel_height(
        design.survey.face("floor").offset, design.heel_rest.drop, design.heel_rest.plate
    )
    seats = driver.place_all(
        [(one, feet.moved(place_of(design, one) - front)) for one in design.drivers], heel, room
    )
    return tuple(
        Placed(
            name=one.name,
            person=one.person,
            clutch=clutch,
            brake=brake,
            throttle=throttle,
        )
        for one, (clutch, brake, throttle) in zip(design.drivers, seats, strict=True)
    )


def around(
    design: Design, brake: BrakePedal, released: ClutchPedal, accelerator: ThrottlePedal
) -> linkage.Clearances:
    """The three pedals in a row, each over its own stroke."""
    stop, thin = design.throttle.opening.pad_room, linkage.ACCELERATOR_ARM
    clutch_arm, brake_arm = design.clutch.carrier.arm, design.brake.carrier.arm
    moving = (
        ("clutch", released.lever, design.clutch.pedal, clutch_arm, released.full.angle),
        ("brake", brake.lever, design.brake.pedal, brake_arm, brake.hard_stop.angle),
    )
    pedals = tuple(
        linkage.Moving(
            name=name,
            lever=lever,
            pedal=pedal,
            arm_thickness=arm.thickness,
            arm_depth=np.maximum(arm.depth_at_pivot, arm.depth_at_pad),
            full_angle=angle,
        )
        for name, lever, pedal, arm, angle in moving
    )
    third = linkage.Moving(
        name="throttle",
        lever=accelerator.lever,
        pedal=design.throttle.pedal,
        arm_thickness=thin[0],
        arm_depth=thin[1],
        full_angle=linkage.angle_of_arc(accelerator.lever, stop),
    )
    survey = design.survey
    return linkage.clearances((*pedals, third), survey.lines, survey.faces, survey.obstacles)


def shoes(drivers: tuple[Placed, ...]) -> tuple[linkage.Shoe, ...]:
    """Every driver's shoe on every pedal, over its stroke."""
    return tuple(
        linkage.Shoe(
            about=f"{placed.name}, {pedal}",
            heel=seat.stroke.heel,
            toe=seat.stroke.toe,
            across=seat.stroke.across,
            width=seat.body.shoe_width,
        )
        for placed in drivers
        for pedal, seat in (
            ("clutch", placed.clutch),
            ("brake", placed.brake),
            ("throttle", placed.throttle),
        )
    )


def driver_findings(drivers: tuple[Placed, ...], full_stop: N) -> Iterator[Finding]:
    """Every driver, as measured and on every pedal; `full_stop` is the push that one takes."""
    for one in drivers:
        yield from driver.check_body(one.person, one.brake.body, one.name)
        for pedal, seat in (
            ("clutch", one.clutch),
            ("brake", one.brake),
            ("throttle", one.throttle),
        ):
            yield from driver.check(seat, f"{one.name}, {pedal}")
        yield from driver.check_push(one.brake, full_stop, f"{one.name}, brake")


def row(design: Design, feet: Treads) -> driver.Row:
    """The pads side by side at rest, counted from the clutch's side."""
    hand = feet.hand
    clutch, brake, throttle = (
        tread.pads.at(0) for tread in (feet.clutch, feet.brake, feet.throttle)
    )
    return driver.Row(
        left_wall=clutch.y * hand - design.survey.room(clutch, RIGHT * -hand),
        clutch=driver.Pad(middle=clutch.y * hand, width=design.clutch.pedal.pad_width),
        brake=driver.Pad(middle=brake.y * hand, width=design.brake.pedal.pad_width),
        accelerator=driver.Pad(middle=throttle.y * hand, width=design.throttle.pedal.pad_width),
        right_wall=throttle.y * hand + design.survey.room(throttle, RIGHT * hand),
    )


def row_findings(design: Design, drivers: tuple[Placed, ...], feet: Treads) -> Iterator[Finding]:
    """The pads side by side, and the shoes on them, between the walls beside the outer two."""
    side_by_side = row(design, feet)
    yield from driver.check_row(side_by_side)
    yield from driver.check_steps(driver.steps(feet.brake, feet.throttle, feet.cruising))
    for one in drivers:
        beside = driver.beside(side_by_side, one.clutch, one.brake, one.throttle, feet.hand)
        yield from driver.check_shoes(beside, one.name)


def tread(
    name: str,
    pedal: linkage.Pedal,
    lever: linkage.Lever,
    arcs: dict[str, Num],
    heel: Heel,
    side: float,
) -> driver.Tread:
    """A pedal at those arcs of its pad; places in front of the variants."""
    pad = lever.pad
    sizes = (*arcs.values(), pad.x, pad.y, pad.z, pedal.pad_lean, pedal.pad_face)
    batched = [np.shape(size) for size in sizes if np.ndim(size)]
    travel = np.empty((len(arcs), *np.broadcast_shapes(*batched)))
    for place, arc in enumerate(arcs.values()):
        travel[place] = arc
    angles, pads = linkage.angle_of_arc(lever, travel), linkage.pad_after(lever, travel)
    hangs = 1.0 if pedal.hinge == "hanging" else -1.0
    return driver.Tread(
        name=name,
        places=tuple(arcs),
        pads=Point(pads.x, pads.y + 0.0 * angles, pads.z),
        faces=driver.face_angle(hangs, pedal.pad_lean, pedal.pad_face, angles),
        heel=heel,
        side=side,
    )


def _push(push: float) -> int:
    """The place of a push on the curve of the brake pedal."""
    return int(np.flatnonzero(push == PUSHES)[0])


def _looks(share: Num, *, either: bool = False) -> bool:
    """True where a face looks that way, within 45 degrees."""
    facing = np.abs(share) if either else share
    return bool(np.all(facing > np.cos(np.pi / 4)))


def _tube(name: str, pedal: linkage.Pedal, pivot: structure.Pivot) -> Line:
    """The pivot tube, centred on the arm."""
    along = (pedal.axis or RIGHT) * (pivot.span / 2)
    return Line(
        name=name, start=pedal.pivot - along, end=pedal.pivot + along, diameter=pivot.tube_outside
    )
