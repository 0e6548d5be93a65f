"""What is asked of levers and rods."""

from collections.abc import Iterable, Iterator

import numpy as np

from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.core.units import mm
from pedalwright.linkage.clearances import Clearance, Clearances
from pedalwright.linkage.parts import Position, Stroke

ROD_ANGLE = Limit(
    "linkage.rod_angle",
    "The rod stays nearly in line with its cylinder, so that the piston is not pushed sideways.",
    "at most",
    "rad",
    Source("common practice", "no source: 3 degrees wished, 5 the limit", "trade"),
    "should",
)
DEAD_POINT = Limit(
    "linkage.dead_point",
    "Rod and arm stay well clear of being in line, where the pedal would lock.",
    "at least",
    "rad",
    Source("pedalwright", "half the leverage is left at 30 degrees", "ours"),
)

_MOVING = Source("common practice", "no source: a finger's breadth less play and give", "trade")
CLEAR_TUBE = Limit(
    "linkage.clear_tube",
    "Arm and pad pass tubes and shafts with room for play and give.",
    "at least",
    "mm",
    _MOVING,
)
CLEAR_FACE = Limit(
    "linkage.clear_face",
    "Arm and pad keep clear of walls and floor over the whole stroke.",
    "at least",
    "mm",
    _MOVING,
)
CLEAR_OBSTACLE = Limit(
    "linkage.clear_obstacle",
    "Arm and pad keep clear of what else is in the way.",
    "at least",
    "mm",
    _MOVING,
)
CLEAR_PEDAL = Limit(
    "linkage.clear_pedal",
    "Neighbouring pedals pass each other, wherever each of them is.",
    "at least",
    "mm",
    _MOVING,
)
CLEAR_SHOE = Limit(
    "linkage.clear_shoe",
    "The shoe on the pad does not brush a tube, whether the pedal is up or down.",
    "at least",
    "mm",
    Source("common practice", "no source: 10 mm, so that a welt does not catch", "trade"),
    "should",
)
#: Room between moving metal and anything else; room beside a shoe.
METAL_ROOM, SHOE_ROOM = 5.0, 10.0


def check_clearances(found: Clearances) -> Iterator[Finding]:
    """Judge what is left around arms and pads."""
    for limit, row in (
        (CLEAR_TUBE, found.lines),
        (CLEAR_FACE, found.faces),
        (CLEAR_OBSTACLE, found.obstacles),
    ):
        for about, distance in _least(row):
            yield limit.check(distance, METAL_ROOM, about)
    for pair in found.pedals:
        yield CLEAR_PEDAL.check(pair.distance, METAL_ROOM, f"{pair.pedal}, {pair.thing}")


def check_shoes(found: Iterable[Clearance]) -> Iterator[Finding]:
    """Judge what is left around shoes."""
    for about, distance in _least(found):
        yield CLEAR_SHOE.check(distance, SHOE_ROOM, about)


def check(stroke: Position | Stroke, about: str) -> Iterator[Finding]:
    """Judge a whole stroke; axis 0 is the stations."""
    yield ROD_ANGLE.check(np.max(stroke.rod_angle, axis=0), np.deg2rad(5.0), about)
    yield DEAD_POINT.check(np.min(stroke.rod_to_arm, axis=0), np.deg2rad(30.0), about)


def _least(found: Iterable[Clearance]) -> Iterator[tuple[str, mm]]:
    """For each mover what comes nearest; nan if one of the things was not measured."""
    by_mover: dict[str, mm] = {}
    for one in found:
        before = by_mover.get(one.pedal, np.inf)
        by_mover[one.pedal] = np.minimum(before, one.distance)
    yield from by_mover.items()
