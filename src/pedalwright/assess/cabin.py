"""People and pedals in the footwell: legs, shoes, and what is left around what moves."""

from collections.abc import Iterator

import numpy as np

from pedalwright import driver, linkage
from pedalwright.assess.parts import BrakePedal, ClutchPedal, Placed, ThrottlePedal
from pedalwright.core.checks import Finding
from pedalwright.core.points import REARWARD, RIGHT, Plane
from pedalwright.core.units import Num
from pedalwright.core.working import subject
from pedalwright.design import Design


def placed(
    design: Design,
    person: driver.Driver,
    slide: Num,
    brake: BrakePedal,
    released: ClutchPedal,
    accelerator: ThrottlePedal,
) -> Placed:
    """One driver at the three pedals; `slide` is how far aft his box stands of the foremost."""
    heel = driver.heel_height(
        design.survey.face("floor").offset, design.heel_rest.drop, design.heel_rest.plate
    )
    aft = REARWARD * slide
    with subject(person.name):
        lengths = driver.body(person.person)
        with subject("clutch"):
            on_clutch = driver.place(
                person,
                released.lever.pad + aft,
                released.full.pad + aft,
                heel,
                heel_may_lift=design.clutch.heel == "may lift",
                lengths=lengths,
            )
        with subject("brake"):
            on_brake = driver.place(
                person,
                brake.lever.pad + aft,
                brake.hard_stop.pad + aft,
                heel,
                lengths=lengths,
            )
        with subject("throttle"):
            on_throttle = driver.place_on_accelerator(
                person,
                accelerator.lever.pad + aft,
                accelerator.pad_full + aft,
                heel,
                lengths=lengths,
            )
    return Placed(
        name=person.name,
        spread=driver.body_spread(person.person),
        clutch=on_clutch,
        brake=on_brake,
        throttle=on_throttle,
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
    """Every driver's shoe on every pedal, up and down."""
    return tuple(
        linkage.Shoe(
            about=f"{placed.name}, {pedal}",
            heel=posture.heel,
            toe=posture.toe,
            width=seat.body.shoe_width,
        )
        for placed in drivers
        for pedal, seat in (
            ("clutch", placed.clutch),
            ("brake", placed.brake),
            ("throttle", placed.throttle),
        )
        for posture in (seat.rest, seat.full)
    )


def driver_findings(design: Design, drivers: tuple[Placed, ...], wall: Plane) -> Iterator[Finding]:
    """Every driver on every pedal, within the footwell."""
    rim, column = design.survey.mark("rim_bottom"), design.survey.line("column")
    for placed in drivers:
        seats = (("clutch", placed.clutch), ("brake", placed.brake), ("throttle", placed.throttle))
        for pedal, seat in seats:
            about = f"{placed.name}, {pedal}"
            yield from driver.check(seat, about, rim=rim, column=column, wall=wall)


def row_findings(
    design: Design,
    drivers: tuple[Placed, ...],
    brake: BrakePedal,
    released: ClutchPedal,
    accelerator: ThrottlePedal,
) -> Iterator[Finding]:
    """The pads side by side, and the shoes on them, between the walls beside the outer two."""
    clutch_pad, throttle_pad = released.lever.pad, accelerator.lever.pad
    row = driver.Row(
        left_wall=clutch_pad.y - design.survey.room(clutch_pad, -RIGHT),
        clutch=driver.Pad(middle=clutch_pad.y, width=design.clutch.pedal.pad_width),
        brake=driver.Pad(middle=brake.lever.pad.y, width=design.brake.pedal.pad_width),
        accelerator=driver.Pad(middle=throttle_pad.y, width=design.throttle.pedal.pad_width),
        right_wall=throttle_pad.y + design.survey.room(throttle_pad, RIGHT),
    )
    yield from driver.check_row(row)
    for placed in drivers:
        yield from driver.check_shoes(row, placed.brake.body, placed.name)
