"""What is asked of levers and rods."""

from collections.abc import Iterable, Iterator

import numpy as np

from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.core.units import mm
from pedalwright.linkage.adjusters import (
    RestStop,
    RodEnd,
    RodEnds,
    Sprung,
    Stop,
    rest_reach,
    rod_reach,
)
from pedalwright.linkage.clearances import Clearance, Clearances
from pedalwright.linkage.formulas import least_engaged, locknut_height
from pedalwright.linkage.parts import Position, Stroke

#: Rod against cylinder: what is put up with at the ends of a stroke.
ROD_ANGLE_MOST = np.deg2rad(5.0)

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
STOP_AFTER_WORK = Limit(
    "linkage.stop_after_work",
    "The pedal's stop lets the pedal finish its work first.",
    "at least",
    "mm",
    Source("pedalwright", "needed travel with all that gives, one circuit lost included", "ours"),
)
STOP_BEFORE_WALL = Limit(
    "linkage.stop_before_wall",
    "The pedal meets its stop before the toes meet the wall.",
    "at most",
    "mm",
    Source("common practice", "no source: a wall is no stop", "trade"),
    "should",
)
STOP_SAVES_PISTON = Limit(
    "linkage.stop_saves_piston",
    "The pedal meets its stop before the piston meets the end of its cylinder.",
    "at most",
    "mm",
    Source("common practice", "a makers' instruction for hydraulic clutch release", "trade"),
)
THREAD_LEFT = Limit(
    "linkage.thread_left",
    "Each rod end, and each stop's nut, holds at least a diameter of thread.",
    "at least",
    "mm",
    Source("common practice", "a diameter in steel; a trade guide asks for 0.3 in", "trade"),
)
LOCK_NUT = Limit(
    "linkage.lock_nut",
    "Behind each rod end and stop there is bare thread for its lock-nut.",
    "at least",
    "mm",
    Source("common practice", "0.8 of the thread, the height of an ordinary nut", "trade"),
)
REST_REACH = Limit(
    "linkage.rest_reach",
    "The screw of the rest stop raises and lowers the pad enough to level it with the others.",
    "at least",
    "mm",
    Source("pedalwright", "5 mm either way: what the height of two pads is out", "ours"),
    "should",
)
ADJUSTER = Limit(
    "linkage.adjuster_reach",
    "The rod can be made longer and shorter by what a hand build is out.",
    "at least",
    "mm",
    Source("pedalwright", "the ± of pin, socket and bracket together", "ours"),
)
ROD_FITS = Limit(
    "linkage.rod_fits",
    "A rod that is there already can be set to reach from its pin to its socket.",
    "at most",
    "mm",
    Source("geometry", "what its ends can be screwed; half a millimetre without", "ours"),
)
SPRING_RETURN = Limit(
    "linkage.spring_return",
    "The return spring pulls the pad back from anywhere in its stroke.",
    "at least",
    "N",
    Source("common practice", "no source: 10 N on the pad beyond friction and weight", "trade"),
)
SPRING_STRESS = Limit(
    "linkage.spring_stress",
    "At full travel the return spring is not drawn out so far that it tires.",
    "at most",
    "MPa",
    Source(
        "pedalwright",
        "0.35 of the wire's strength, for a pedal works often; EN 13906-2 (to verify) allows 0.45",
        "ours",
    ),
    "should",
)
#: What a rod without adjustment may be out: it comes out of the play of pin and hole.
ROD_PLAY = 0.5
#: How far a rest stop should be able to move the pad either way.
REST_MOVE = 5.0
#: Force back on the pad, and share of the wire's strength that a pedal's spring may use.
RETURN_PUSH, SPRING_SHARE = 10.0, 0.35
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
    yield ROD_ANGLE.check(np.max(stroke.rod_angle, axis=0), ROD_ANGLE_MOST, about)
    yield DEAD_POINT.check(np.min(stroke.rod_to_arm, axis=0), np.deg2rad(30.0), about)


def check_stop(
    stop: Stop, about: str, *, needed: mm, room: mm, piston: mm | None = None, stroke: mm = np.nan
) -> Iterator[Finding]:
    """Judge a stop by the travel that work needs, by the wall, and by a piston at the stop."""
    yield STOP_AFTER_WORK.check(stop.full_travel, needed, about)
    yield STOP_BEFORE_WALL.check(stop.full_travel, room, about)
    if piston is not None:
        yield STOP_SAVES_PISTON.check(piston, stroke, about)


def check_rod_ends(ends: RodEnds, about: str) -> Iterator[Finding]:
    """Judge thread, lock-nuts and reach of one rod."""
    for where, end in (("pedal end", ends.pedal), ("cylinder end", ends.cylinder)):
        if end is not None:
            yield from _check_thread(end, f"{about}, {where}")
    reach = rod_reach(ends)
    yield ADJUSTER.check(np.minimum(reach.longer, reach.shorter), ends.take_up, about)


def check_rest_stop(stop: RestStop, pad_radius: mm, about: str) -> Iterator[Finding]:
    """Judge the screw that a pedal rests on."""
    yield from _check_thread(stop.screw, f"{about}, rest stop")
    yield REST_REACH.check(rest_reach(stop, pad_radius), REST_MOVE, about)


def check_made_rod(wanted: mm, made: mm, ends: RodEnds | None, about: str) -> Iterator[Finding]:
    """Judge a rod that is there already by the length it should have."""
    room: mm = ROD_PLAY
    if ends is not None:
        reach = rod_reach(ends)
        room = np.maximum(np.where(wanted > made, reach.longer, reach.shorter), ROD_PLAY)
    yield ROD_FITS.check(np.abs(wanted - made), room, about)


def check_spring(found: Sprung, about: str) -> Iterator[Finding]:
    """Judge a return spring over the stroke; axis 0 is the stations."""
    yield SPRING_RETURN.check(np.min(found.on_pad, axis=0), RETURN_PUSH, about)
    yield SPRING_STRESS.check(np.max(found.stress, axis=0), SPRING_SHARE * found.strength, about)


def _check_thread(end: RodEnd, about: str) -> Iterator[Finding]:
    yield THREAD_LEFT.check(end.engaged, least_engaged(end.thread), about)
    yield LOCK_NUT.check(end.bare, locknut_height(end.thread), about)


def _least(found: Iterable[Clearance]) -> Iterator[tuple[str, mm]]:
    """For each mover what comes nearest; nan if one of the things was not measured."""
    by_mover: dict[str, mm] = {}
    for one in found:
        before = by_mover.get(one.pedal, np.inf)
        by_mover[one.pedal] = np.minimum(before, one.distance)
    yield from by_mover.items()
