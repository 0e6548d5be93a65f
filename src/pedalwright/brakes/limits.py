"""What is asked of the brakes, and by whom."""

from collections.abc import Iterator

from pedalwright.brakes.formulas import DESIGN_PUSH, GRAVITY
from pedalwright.brakes.parts import BrakeResult
from pedalwright.brakes.solve import earliest_rear_lock
from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.core.units import mm

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


def check(brake: BrakeResult, pad_room: mm) -> Iterator[Finding]:
    """Judge the brakes; `pad_room` is the pad's arc before toes meet the wall, mm."""
    yield EFFORT.check(brake.effort_6_43, DESIGN_PUSH)
    yield LIGHT.check(brake.effort_6_43, 65.0)
    yield ONE_CIRCUIT.check(brake.front_alone_500, 2.44, "front circuit alone")
    yield ONE_CIRCUIT.check(brake.rear_alone_500, 2.44, "rear circuit alone")
    yield LOCK_ORDER.check(earliest_rear_lock(brake), 0.8 * GRAVITY)
    yield TRAVEL.check(brake.pad_travel_hard_stop, pad_room * 2.0 / 3.0)
    yield LOST_TRAVEL.check(brake.pad_travel_front_alone, pad_room, "rear circuit lost")
    yield LOST_TRAVEL.check(brake.pad_travel_rear_alone, pad_room, "front circuit lost")
