"""What is asked of the brakes, and by whom."""

from collections.abc import Iterator

import numpy as np

from pedalwright.brakes.formulas import (
    DESIGN_PUSH,
    GRAVITY,
    SECONDARY_DECELERATION,
    SERVICE_DECELERATION,
)
from pedalwright.brakes.parts import BrakeResult, Fluid
from pedalwright.brakes.solve import earliest_rear_lock
from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.core.units import mm

#: Least boiling point of fluid with some water in it, in K above 20 degrees Celsius.
BOILS = {"DOT 3": 120.0, "DOT 4": 135.0, "DOT 5": 160.0, "DOT 5.1": 160.0}

#: Rise at which ordinary linings fade, and the part of the metal's rise that the fluid takes.
FADES, TO_FLUID = 330.0, 1.0 / 3.0
#: Share of a full stop that hot brakes must still give.
HOT_SHARE = 0.75

R13H = "UN R13-H"

EFFORT = Limit(
    "brakes.effort",
    "A full service stop (6.43 m/s²) needs no more than 500 N on the pad.",
    "at most",
    "N",
    Source(R13H, "Annex 3, 2.1.1, to verify", "regulation"),
)
LIGHT = Limit(
    "brakes.touchy",
    "A full service stop needs at least a firm push, or the wheels lock unawares.",
    "at least",
    "N",
    Source(R13H, "Annex 3: 65 N the least effort, to verify", "regulation"),
)
FIRM = Limit(
    "brakes.firm",
    "Without a servo a full stop takes more than a light push, so that a foot can measure it.",
    "at least",
    "N",
    Source("common practice", "no source: 225 N, about 50 lbf", "trade"),
    "should",
)
ONE_CIRCUIT = Limit(
    "brakes.one_circuit",
    "With one circuit lost, 500 N on the pad still gives 2.44 m/s².",
    "at least",
    "m/s2",
    Source(R13H, "Annex 3, 2.2, to verify", "regulation"),
)
LOCK_ORDER = Limit(
    "brakes.lock_order",
    "The front wheels lock first at least up to 0.8 g, at every friction of the linings.",
    "at least",
    "m/s2",
    Source(R13H, "Annex 5, 3.1 (B), to verify", "regulation"),
)
LOST_TRAVEL = Limit(
    "brakes.lost_travel",
    "With one circuit lost the pad still stops short of the wall.",
    "at most",
    "mm",
    Source("common practice", "no source", "trade"),
    "should",
)
TRAVEL = Limit(
    "brakes.travel",
    "At a hard stop the pad has used no more than two thirds of its room.",
    "at most",
    "mm",
    Source("common practice", "no source", "trade"),
    "should",
)
ADHESION = Limit(
    "brakes.adhesion",
    "On every road the car brakes at least at 0.1 + 0.7 (grip - 0.2) before a wheel locks.",
    "at least",
    "1",
    Source(R13H, "Annex 5, 3.1 (A), to verify", "regulation"),
    "should",
)
SERVO_LOST = Limit(
    "brakes.servo_lost",
    "With the servo's help lost, 500 N on the pad still gives 2.44 m/s².",
    "at least",
    "m/s2",
    Source(R13H, "Annex 3, 2.2, to verify", "regulation"),
)
WORN_TRAVEL = Limit(
    "brakes.worn_travel",
    "With worn linings the pad still stops short of the wall.",
    "at most",
    "mm",
    Source("common practice", "no source", "trade"),
)
HOT_TRAVEL = Limit(
    "brakes.hot_travel",
    "With drums grown by five stops in a row the pad still stops short of the wall.",
    "at most",
    "mm",
    Source("pedalwright", "cast iron grows away from cooler shoes; nothing cools between", "ours"),
)
HOT_STOP = Limit(
    "brakes.hot_stop",
    "With the linings at their low friction, 500 N still give three quarters of a full stop.",
    "at least",
    "m/s2",
    Source(R13H, "Annex 3, 1.5: 75 % of what is prescribed cold, to verify", "regulation"),
)
GRAB = Limit(
    "brakes.grab",
    "No shoe comes within a tenth of the friction at which it grabs by itself.",
    "at most",
    "1",
    Source("geometry", "moments about the shoe's pivot; the tenth is ours", "ours"),
)
FLUID_HEAT = Limit(
    "brakes.fluid_heat",
    "Five stops in a row do not warm old fluid to where it boils.",
    "at most",
    "K",
    Source(
        "pedalwright",
        "a third of what the metal warms, a guess, against the least wet boiling points of "
        "FMVSS 116, S5.1.2, second-hand",
        "ours",
    ),
    "should",
)
FADE = Limit(
    "brakes.fade",
    "One stop from top speed leaves discs and drums cooler than where ordinary linings fade.",
    "at most",
    "K",
    Source("common practice", "no source: 350 degrees Celsius, from 20", "trade"),
    "should",
)


def check(brake: BrakeResult, pad_room: mm) -> Iterator[Finding]:
    """Judge the brakes; `pad_room` is the pad's arc before toes meet the wall, mm."""
    yield EFFORT.check(brake.effort_6_43, DESIGN_PUSH)
    yield LIGHT.check(brake.effort_6_43, 65.0)
    if brake.servo_lost_500 is None:
        yield FIRM.check(brake.effort_6_43, 225.0)
    yield ONE_CIRCUIT.check(brake.front_alone_500, SECONDARY_DECELERATION, "front circuit alone")
    yield ONE_CIRCUIT.check(brake.rear_alone_500, SECONDARY_DECELERATION, "rear circuit alone")
    yield HOT_STOP.check(brake.low_friction_500, HOT_SHARE * SERVICE_DECELERATION)
    yield LOCK_ORDER.check(earliest_rear_lock(brake), 0.8 * GRAVITY)
    yield TRAVEL.check(brake.pad_travel_hard_stop, pad_room * 2.0 / 3.0)
    yield LOST_TRAVEL.check(brake.pad_travel_front_alone, pad_room, "rear circuit lost")
    yield LOST_TRAVEL.check(brake.pad_travel_rear_alone, pad_room, "front circuit lost")
    yield ADHESION.check(brake.adhesion, 1.0)
    if brake.servo_lost_500 is not None:
        yield SERVO_LOST.check(brake.servo_lost_500, SECONDARY_DECELERATION)
    if brake.pad_travel_worn is not None:
        yield WORN_TRAVEL.check(brake.pad_travel_worn, pad_room)
    for about, share in (("front axle", brake.front_grab), ("rear axle", brake.rear_grab)):
        if share is not None:
            yield GRAB.check(share, 0.9, about)
    if brake.laden is not None:
        yield from _check_laden(brake.laden)


def check_hot(pad_travel: mm, pad_room: mm) -> Iterator[Finding]:
    """Judge the pad's arc to the hard stop with hot drums."""
    yield HOT_TRAVEL.check(pad_travel, pad_room)


def check_heat(brake: BrakeResult, fluid: Fluid | None) -> Iterator[Finding]:
    """Judge the heat of one fast stop and of five in a row, where what they heat was weighed."""
    for about, rise in (("front axle", brake.front_rise), ("rear axle", brake.rear_rise)):
        if rise is not None and rise.top_speed is not None:
            yield FADE.check(rise.top_speed, FADES, about)
        if rise is not None and fluid is not None:
            yield FLUID_HEAT.check(rise.five_stops * TO_FLUID, BOILS[fluid.grade], about)


def _check_laden(brake: BrakeResult) -> Iterator[Finding]:
    """The same demands with the load the car may carry."""
    yield EFFORT.check(brake.effort_6_43, DESIGN_PUSH, "laden")
    yield ONE_CIRCUIT.check(
        np.minimum(brake.front_alone_500, brake.rear_alone_500), SECONDARY_DECELERATION, "laden"
    )
    yield LOCK_ORDER.check(earliest_rear_lock(brake), 0.8 * GRAVITY, "laden")
    yield ADHESION.check(brake.adhesion, 1.0, "laden")
