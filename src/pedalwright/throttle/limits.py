"""What is asked of the accelerator."""

from collections.abc import Iterator

import numpy as np

from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.linkage.formulas import least_engaged
from pedalwright.throttle.parts import Opening

FULL_OPENING = Limit(
    "throttle.full_opening",
    "The pedal at its stop opens the throttle fully, or to within one degree of it.",
    "at least",
    "rad",
    Source("carburettor maker's data", "spindle turn from closed to open", "ours"),
)
BEYOND = Limit(
    "throttle.beyond",
    "The pedal's stop comes soon after full opening, so that the linkage is not forced.",
    "at most",
    "rad",
    Source("common practice", "no source: 8 degrees of the spindle", "trade"),
    "should",
)
DEAD_POINT = Limit(
    "throttle.dead_point",
    "No rod comes near to being in line with its lever, where the throttle would stick.",
    "at least",
    "rad",
    Source("common practice", "no source: 30 degrees", "trade"),
)
ONE_SPRING = Limit(
    "throttle.one_spring",
    "With any one spring lost the others still close it against half as much friction again.",
    "at least",
    "N*mm",
    Source("FMVSS 124", "S5.1: two sources of energy; factor 1.5 common practice", "regulation"),
)
RETURN = Limit(
    "throttle.return_force",
    "From anywhere in its stroke the pad comes back with a force one can feel.",
    "at least",
    "N",
    Source("common practice", "no source: 10 N above friction", "trade"),
    "should",
)
EFFORT = Limit(
    "throttle.effort",
    "The pad can be held down for an hour.",
    "at most",
    "N",
    Source("common practice", "no source: 15 to 40 N, 60 N the most", "trade"),
    "should",
)
EQUAL = Limit(
    "throttle.equal",
    "Every carburettor opens as far as the first, all the way.",
    "at most",
    "rad",
    Source("common practice", "no source: 1 degree, and less near closed", "trade"),
    "should",
)
ROCK = Limit(
    "throttle.rock",
    "An engine that rocks by 10 mm hardly opens the throttle, pedal held.",
    "at most",
    "rad",
    Source("geometry", "the rod's length kept; 3 degrees, which a driver feels", "ours"),
    "should",
)
THREAD_IN = Limit(
    "throttle.thread_in",
    "Each ball joint holds at least its diameter's length of thread.",
    "at least",
    "mm",
    Source("common practice", "no source: one diameter of thread", "trade"),
)
THREAD_LEFT = Limit(
    "throttle.thread_left",
    "Behind each ball joint a diameter of bare thread is left to lock and to adjust.",
    "at least",
    "mm",
    Source("common practice", "no source: one diameter of thread", "trade"),
    "should",
)
#: The last degree opens the bore by less than a fiftieth, and not at all once a shaft of a fifth
#: of the bore hides the plate.
NEARLY = np.deg2rad(1.0)
#: Spindle turn the pedal may ask for beyond full opening.
SPARE = np.deg2rad(8.0)
#: Closing torque over friction with one spring lost.
IN_HAND = 1.5


def check(opening: Opening) -> Iterator[Finding]:
    """Judge the accelerator."""
    yield FULL_OPENING.check(opening.at_stop, opening.full_opening - NEARLY)
    yield BEYOND.check(opening.at_stop, opening.full_opening + SPARE)
    yield DEAD_POINT.check(opening.rod_to_lever, np.deg2rad(30.0))
    yield ONE_SPRING.check(opening.one_spring_lost, IN_HAND * opening.friction)
    yield RETURN.check(opening.return_force, 10.0)
    yield EFFORT.check(opening.effort, 60.0)
    if opening.unequal is not None:
        yield EQUAL.check(opening.unequal, np.deg2rad(1.0))
    if opening.rock_turn is not None:
        yield ROCK.check(opening.rock_turn, np.deg2rad(3.0))
    for rod in opening.rods:
        for where, end in (("driving", rod.ends.driving), ("driven", rod.ends.driven)):
            about, least = f"{rod.about}, {where} end", least_engaged(end.thread)
            yield THREAD_IN.check(end.engaged, least, about)
            yield THREAD_LEFT.check(end.bare, least, about)
