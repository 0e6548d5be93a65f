"""Brakes at the wheels: effort, deceleration, balance, lock order, one circuit lost."""

from pedalwright.brakes.limits import check
from pedalwright.brakes.parts import (
    Balance,
    BrakeResult,
    Braking,
    Car,
    Curve,
    Disc,
    Drum,
    Plumbing,
    WheelBrake,
)
from pedalwright.brakes.solve import (
    DESIGN_PUSH,
    Ratios,
    brake_at,
    demand,
    earliest_rear_lock,
    respond,
)

__all__ = [
    "DESIGN_PUSH",
    "Balance",
    "BrakeResult",
    "Braking",
    "Car",
    "Curve",
    "Disc",
    "Drum",
    "Plumbing",
    "Ratios",
    "WheelBrake",
    "brake_at",
    "check",
    "demand",
    "earliest_rear_lock",
    "respond",
]
