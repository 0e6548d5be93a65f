"""What is asked of arm, pins, rod, pivot and mounts.

How the arm is judged. Student-formula rules ask that a brake pedal and its box do not fail
under 2000 N; series cars may even keep a few millimetres of set at that push, and none to
speak of at 1250 N. So the arm must not yield at 1250 N and must not fold at 2000 N, and it
should not yield at 2000 N either. Pins, shaft and tube are cheap: they must not yield at
2000 N with 15 % in hand, as fittings have it; a rod that bows gives no warning: half as much
again.
"""

from collections.abc import Iterator

import numpy as np

from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.core.units import N
from pedalwright.structure.fixings.limits import check_fixing
from pedalwright.structure.parts import Loaded, Strength, Stress

#: Strength in hand for pins and fittings.
FITTING = 1.15
#: Strength in hand against bowing of the rod.
BOWING = 1.5
#: Give at the pad, and of the cylinder's flange, for each newton on the pad, mm/N.
PAD_GIVE = 5.0 / 500.0
FLANGE_GIVE = 1.0 / 500.0

_STUDENT_RULE = Source("Formula SAE Rules 2024", "T.3.2.2: 2000 N without failure", "standard")
_SERIES_CARS = Source("series car acceptance", "1250 N: set at most 2 mm, to verify", "trade")
_CLUTCH = Source("common practice", "no source: a clutch pedal stands 1000 to 1500 N", "trade")
_FITTING = Source("common practice", "no source: the hardest push, 15 % in hand", "trade")

ARM_PANIC = Limit(
    "structure.arm_1250",
    "A frightened push leaves the arm straight: nowhere does it begin to yield.",
    "at most",
    "MPa",
    _SERIES_CARS,
)
ARM_ABUSE = Limit(
    "structure.arm_2000",
    "The hardest push does not fold the arm, even with its whole section yielding.",
    "at most",
    "MPa",
    _STUDENT_RULE,
)
ARM_YIELD = Limit(
    "structure.arm_yield",
    "Better still, the hardest push leaves the arm straight too.",
    "at most",
    "MPa",
    Source("pedalwright", "first yield at 2000 N, factor 1.0", "ours"),
    "should",
)
CLUTCH_PANIC = Limit(
    "structure.clutch_arm_1000",
    "A hard push leaves the clutch's arm straight: nowhere does it begin to yield.",
    "at most",
    "MPa",
    _CLUTCH,
)
CLUTCH_ABUSE = Limit(
    "structure.clutch_arm_1500",
    "The hardest push does not fold the clutch's arm, even with its whole section yielding.",
    "at most",
    "MPa",
    _CLUTCH,
    "should",
)
FATIGUE = Limit(
    "structure.fatigue",
    "Years of ordinary pushes do not crack the arm where it works hardest, drilled and not welded.",
    "at most",
    "1",
    Source("EN 1993-1-9", "category 90, factor 1.35, from memory; pushes ours", "standard"),
)
SIDE_LOAD = Limit(
    "structure.side_load",
    "A foot that slips off sideways does not bend the arm.",
    "at most",
    "MPa",
    Source("common practice", "no source: 200 N across the pad", "trade"),
    "should",
)
PIN = Limit(
    "structure.pin_bending",
    "The clevis pin does not yield in bending and shear together, with 15 % in hand.",
    "at most",
    "MPa",
    _FITTING,
)
PIN_BEARING = Limit(
    "structure.pin_bearing",
    "The clevis pin does not squeeze its hole in the arm long, with 15 % in hand.",
    "at most",
    "MPa",
    _FITTING,
)
ROD = Limit(
    "structure.rod_buckling",
    "The push rod does not bow, with half as much again in hand.",
    "at most",
    "N",
    Source("common practice", "no source: the hardest push, factor 1.5", "trade"),
)
PIVOT_TUBE = Limit(
    "structure.pivot_tube",
    "The arm's tube does not yield between its bushes, with 15 % in hand.",
    "at most",
    "MPa",
    _FITTING,
)
PIVOT_SHAFT = Limit(
    "structure.pivot",
    "The pivot's shaft does not yield where the cheeks hold it, with 15 % in hand.",
    "at most",
    "MPa",
    _FITTING,
)
RELAY_ARM = Limit(
    "structure.relay_arm",
    "The relay lever's arms do not yield at their tube, with 15 % in hand.",
    "at most",
    "MPa",
    _FITTING,
)
RELAY_TUBE = Limit(
    "structure.relay_tube",
    "The relay lever's tube does not yield between its arms, with 15 % in hand.",
    "at most",
    "MPa",
    _FITTING,
)
BUSH = Limit(
    "structure.pivot_bush",
    "The hardest push does not crush the pivot's bushes.",
    "at most",
    "MPa",
    Source("bush makers' tables", "static pressure, to verify", "trade"),
    "should",
)
GIVE = Limit(
    "structure.give",
    "The pad gives no more than 5 mm for 500 N because parts give; brakes come on top.",
    "at most",
    "mm",
    Source(
        "pedalwright",
        "QC/T 788 (to verify) allows 5 mm to the pedal on a rig; here the body counts too",
        "ours",
    ),
)
FLANGE = Limit(
    "structure.flange_give",
    "The cylinder's flange moves no more than 1 mm for 500 N on the pad.",
    "at most",
    "mm",
    Source("pedalwright", "ratio times 1 mm is all the sponginess a pedal can bear", "ours"),
)


def check(strength: Strength, about: str) -> Iterator[Finding]:
    """Judge a brake pedal; `about` names it."""
    panic, abuse = strength.panic, strength.abuse
    yield _stress(ARM_PANIC, panic.arm, 1.0, _under(about, panic))
    yield _stress(ARM_ABUSE, abuse.arm_collapse, 1.0, _under(about, abuse))
    yield _stress(ARM_YIELD, abuse.arm, 1.0, _under(about, abuse))
    yield from _whatever_it_moves(strength, about)


def check_clutch(strength: Strength, about: str) -> Iterator[Finding]:
    """Judge a clutch pedal; `about` names it."""
    panic, abuse = strength.panic, strength.abuse
    yield _stress(CLUTCH_PANIC, panic.arm, 1.0, _under(about, panic))
    yield _stress(CLUTCH_ABUSE, abuse.arm_collapse, 1.0, _under(about, abuse))
    yield from _whatever_it_moves(strength, about)


def _whatever_it_moves(strength: Strength, about: str) -> Iterator[Finding]:
    abuse = strength.abuse
    yield FATIGUE.check(strength.damage, 1.0, f"{about}, over the years")
    yield _stress(SIDE_LOAD, strength.sideways, 1.0, f"{about}, sideways")
    yield _stress(PIN, abuse.pin, FITTING, _under(about, abuse))
    yield _stress(PIN_BEARING, abuse.pin_bearing, FITTING, _under(about, abuse))
    yield ROD.check(abuse.rod_force, strength.buckling_load / BOWING, _under(about, abuse))
    yield _stress(PIVOT_TUBE, abuse.pivot_tube, FITTING, _under(about, abuse))
    yield _stress(PIVOT_SHAFT, abuse.pivot_shaft, FITTING, _under(about, abuse))
    yield _stress(BUSH, abuse.bush, 1.0, _under(about, abuse))
    frightened = strength.panic.push / abuse.push
    for fixing, name in ((strength.flange, "cylinder's flange"), (strength.bracket, "bracket")):
        if fixing is not None:
            yield from check_fixing(fixing, frightened, f"{_under(about, abuse)}, {name}")
    if strength.relay is not None:
        relay = strength.relay
        yield _stress(RELAY_ARM, relay.arm, FITTING, _under(about, abuse))
        yield _stress(RELAY_TUBE, relay.tube, FITTING, _under(about, abuse))
        bows = relay.buckling_load / BOWING
        yield ROD.check(relay.rod_force, bows, f"{_under(about, abuse)}, from the relay lever")
    give = strength.give
    push = f"{about}, {_newtons(give.push)}"
    yield GIVE.check(give.total, PAD_GIVE * give.push, push)
    yield FLANGE.check(strength.flange_give, FLANGE_GIVE * give.push, push)


def _stress(limit: Limit, stress: Stress, in_hand: float, about: str) -> Finding:
    return limit.check(stress.size, stress.bears / in_hand, about)


def _under(about: str, loaded: Loaded) -> str:
    return f"{about}, {_newtons(loaded.push)}"


def _newtons(push: N) -> str:
    return f"{np.max(push) if np.ndim(push) else float(push):.0f} N"
