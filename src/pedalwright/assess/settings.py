"""What is set with spanner and rule, where the design says it: stops, rod ends, return springs."""

from collections.abc import Iterator

import numpy as np

from pedalwright import linkage
from pedalwright.assess.parts import BrakePedal, ClutchPedal
from pedalwright.core.checks import Finding
from pedalwright.core.units import rad
from pedalwright.design import BrakeDesign, ClutchDesign, Design


def settings(design: Design, brake: BrakePedal, released: ClutchPedal) -> Iterator[Finding]:
    """Findings about both pedals; nothing is asked about what is not there."""
    yield from _brake_stop(design.brake, brake)
    yield from _clutch_stop(design.clutch, released)
    yield from _rest(design.brake, brake.lever, brake.hard_stop.angle, "brake")
    yield from _rest(design.clutch, released.lever, released.full.angle, "clutch")


def _brake_stop(part: BrakeDesign, made: BrakePedal) -> Iterator[Finding]:
    """A brake's stop must let the other circuit's brakes bite when one is lost."""
    if part.stop is not None:
        needed = np.maximum(made.front_alone.pad_travel, made.rear_alone.pad_travel)
        yield from linkage.check_stop(part.stop, "brake", needed=needed, room=made.room)


def _clutch_stop(part: ClutchDesign, made: ClutchPedal) -> Iterator[Finding]:
    if part.stop is None:
        return
    needed, room = made.result.budget.total, made.room
    if made.result.fluid is None:
        yield from linkage.check_stop(part.stop, "clutch", needed=needed, room=room)
        return
    angle = linkage.angle_of_arc(made.lever, part.stop.full_travel)
    piston = linkage.position(made.lever, part.rod, angle).piston_travel
    stroke = made.result.fluid.cylinder_stroke
    yield from linkage.check_stop(
        part.stop, "clutch", needed=needed, room=room, piston=piston, stroke=stroke
    )


def _rest(
    part: BrakeDesign | ClutchDesign, lever: linkage.Lever, full_angle: rad, about: str
) -> Iterator[Finding]:
    if part.rod_ends is not None:
        yield from linkage.check_rod_ends(part.rod_ends, about)
    if part.rod.length is not None:
        wanted = linkage.rod_wanted(lever, part.rod)
        yield from linkage.check_made_rod(wanted, part.rod.length, part.rod_ends, about)
    if part.rest_stop is not None:
        yield from linkage.check_rest_stop(part.rest_stop, part.pedal.pad_radius, about)
    if part.return_spring is not None:
        full = (
            full_angle if part.stop is None else linkage.angle_of_arc(lever, part.stop.full_travel)
        )
        yield from linkage.check_spring(linkage.sprung(part.return_spring, lever, full), about)
