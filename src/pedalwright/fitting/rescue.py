"""A hole that is not where it should be: live with it, or bring the pin back.

The hole of a shortened donor arm is such a hole too. Every way out is a design of its own,
assessed like any other.
"""

from dataclasses import dataclass, replace
from typing import Literal, TypeAlias

import numpy as np

from pedalwright.core.units import Num, Ratio, mm, rad
from pedalwright.design import Design
from pedalwright.fitting.formulas import apart, bush_hole, land, land_needed
from pedalwright.fitting.outcomes import Outcome, outcome
from pedalwright.fitting.pedals import Fitted, PedalName, fitted, refitted, with_pedal
from pedalwright.structure.formulas.arm import depth_at

Way: TypeAlias = Literal["keep", "bush", "drill afresh", "fill and drill", "side plates"]
Metal: TypeAlias = Literal["steel", "cast", "alloy", "unknown"]
#: Why a way is closed, or is open but not counted on.
Because: TypeAlias = Literal[
    "",
    "holes run together",
    "thin land",
    "arm too narrow",
    "metal not to be welded",
    "hole too far out",
]

#: Minutes at the bench (ours: one arm, a drill press, filing and trying the pin included).
MINUTES: dict[Way, float] = {
    "keep": 10.0,
    "bush": 60.0,
    "drill afresh": 30.0,
    "fill and drill": 50.0,
    "side plates": 90.0,
}
#: Thinnest wall of a bush (ours: what can be turned and pressed in without folding).
BUSH_WALL = 1.5
#: Each of two side plates that carry the pin in the arm's stead.
SIDE_PLATE = 3.0
#: Share the ratio may change and still be called the pedal that was wanted (ours).
SAME_RATIO = 0.05


@dataclass(frozen=True, kw_only=True, slots=True)
class Hole:
    """A hole as it is on the arm."""

    #: From the pivot.
    radius: mm
    diameter: mm
    #: From the pad's line, in the sense of the stroke, like the pin's.
    angle: rad = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Rescue:
    """One way out, and what it comes to."""

    way: Way
    possible: bool
    because: Because
    minutes: float
    design: Design
    outcome: Outcome
    #: Against the pedal as wanted: shares of ratio, effort and travel, and of strength in hand.
    ratio_change: Ratio
    effort_change: Ratio
    travel_change: Ratio
    strength_change: Num
    #: Musts that the wanted pedal meets and this one does not.
    newly_fails: tuple[str, ...]
    #: Hole to make in the arm, or nought.
    drill: mm

    @property
    def as_wanted(self) -> bool:
        """It can be done, keeps the ratio within 5 %, and fails nothing new."""
        same = np.all(np.abs(self.ratio_change) <= SAME_RATIO)
        return self.possible and not self.newly_fails and bool(same)


@dataclass(frozen=True, kw_only=True, slots=True)
class RescuePlan:
    """Every way to deal with one wrong hole, least work first.

    Ways that give the wanted pedal come before others, and those that cannot be done last.
    """

    wanted: Outcome
    hole: Hole
    #: Wrong hole to wanted place, centre to centre, and the metal between the two edges.
    off_by: mm
    land: mm
    land_needed: mm
    ways: tuple[Rescue, ...]

    @property
    def best(self) -> Rescue | None:
        """The least work that keeps the ratio and fails nothing the wanted pedal meets."""
        return next((way for way in self.ways if way.as_wanted), None)


def hole_rescue(
    design: Design, name: PedalName, hole: Hole, *, metal: Metal = "unknown"
) -> RescuePlan:
    """What can be done about a hole beside the place where `design` wants the pin.

    The cylinder stays where it is; every rod is set anew to the pin it gets.
    """
    made = fitted(design, name)
    pin = made.carrier.clevis_pin.diameter
    off_by = apart(made.pedal.pin_radius, hole.radius, made.pedal.pin_angle - hole.angle)
    between, needed = land(off_by, pin, hole.diameter), land_needed(pin, hole.diameter)
    wanted = outcome(design, name)
    bushed = _drilled(made, bush_hole(pin, off_by, BUSH_WALL))
    filled: Because = "" if metal == "steel" else "metal not to be welded"
    tries: tuple[tuple[Way, Because, Fitted, mm], ...] = (
        ("keep", _on_arm(made, hole), _kept(made, hole), 0.0),
        ("bush", _holds_bush(bushed, hole), bushed, bushed.carrier.arm.pin_hole),
        ("drill afresh", _clear(between, needed), made, pin),
        ("fill and drill", filled, made, pin),
        ("side plates", "", _plated(made), pin),
    )
    ways = [
        _rescue(way, because, refitted(design, name, tried), name, wanted, drill)
        for way, because, tried, drill in tries
    ]
    ways.sort(key=lambda way: (not way.as_wanted, not way.possible, way.minutes))
    return RescuePlan(
        wanted=wanted,
        hole=hole,
        off_by=off_by,
        land=between,
        land_needed=needed,
        ways=tuple(ways),
    )


def _rescue(
    way: Way, because: Because, design: Design, name: PedalName, wanted: Outcome, drill: mm
) -> Rescue:
    found = outcome(design, name)
    return Rescue(
        way=way,
        possible=because == "",
        because=because,
        minutes=MINUTES[way],
        design=design,
        outcome=found,
        ratio_change=found.ratio / wanted.ratio - 1.0,
        effort_change=found.effort / wanted.effort - 1.0,
        travel_change=found.travel / wanted.travel - 1.0,
        strength_change=found.strength_margin - wanted.strength_margin,
        newly_fails=tuple(code for code in found.fails if code not in wanted.fails),
        drill=drill,
    )


def _kept(made: Fitted, hole: Hole) -> Fitted:
    pedal = replace(made.pedal, pin_radius=hole.radius, pin_angle=hole.angle)
    return with_pedal(_drilled(made, hole.diameter), pedal, cylinder_follows=False)


def _drilled(made: Fitted, diameter: mm) -> Fitted:
    arm = replace(made.carrier.arm, pin_hole=diameter)
    return replace(made, carrier=replace(made.carrier, arm=arm))


def _plated(made: Fitted) -> Fitted:
    """The fork has to reach round the plates, so its pin bends more."""
    pin = made.carrier.clevis_pin
    wider = replace(pin, inner_thickness=pin.inner_thickness + 2 * SIDE_PLATE)
    return replace(made, carrier=replace(made.carrier, clevis_pin=wider))


def _on_arm(made: Fitted, hole: Hole) -> Because:
    return "" if np.all(hole.radius < made.pedal.pad_radius) else "hole too far out"


def _holds_bush(made: Fitted, hole: Hole) -> Because:
    """Bored round the wrong hole, half the arm's thickness is left on either side (ours)."""
    arm, pad_radius = made.carrier.arm, made.pedal.pad_radius
    depth = depth_at(arm.depth_at_pad, arm.depth_at_pivot, pad_radius - hole.radius, pad_radius)
    beside = (depth - arm.pin_hole) / 2 - hole.radius * np.abs(np.sin(hole.angle))
    return "" if np.all(beside >= arm.thickness / 2) else "arm too narrow"


def _clear(between: mm, needed: mm) -> Because:
    if np.all(between >= needed):
        return ""
    return "thin land" if np.all(between > 0.0) else "holes run together"
