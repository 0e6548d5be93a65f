"""Brakes at the wheels: effort, deceleration, balance, lock order, one circuit lost."""

from pedalwright.brakes.formulas import DESIGN_PUSH
from pedalwright.brakes.limits import check
from pedalwright.brakes.parts import (
    Balance,
    BrakeResult,
    Braking,
    Budget,
    Car,
    Curve,
    Disc,
    Drum,
    Plumbing,
    TakeUp,
    WheelBrake,
)
from pedalwright.brakes.solve import (
    Ratios,
    brake_at,
    demand,
    earliest_rear_lock,
    respond,
)
from pedalwright.brakes.travel import budget, force_travel, take_up

__all__ = [
    "DESIGN_PUSH",
    "Balance",
    "BrakeResult",
    "Braking",
    "Budget",
    "Car",
    "Curve",
    "Disc",
    "Drum",
    "Plumbing",
    "Ratios",
    "TakeUp",
    "WheelBrake",
    "brake_at",
    "budget",
    "check",
    "demand",
    "earliest_rear_lock",
    "force_travel",
    "respond",
    "take_up",
]
