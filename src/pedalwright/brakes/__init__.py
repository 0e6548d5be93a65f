"""Brakes at the wheels: effort, deceleration, balance, lock order, one circuit lost, heat.

Parking brakes are out of reach: their cables, their levers and what they hold on a slope.
"""

from pedalwright.brakes.balance.solve import adhesion_limit
from pedalwright.brakes.drums.solve import drum_factor, grab_share, sensitivity
from pedalwright.brakes.formulas import DESIGN_PUSH
from pedalwright.brakes.limits import check, check_heat, check_hot
from pedalwright.brakes.parts import (
    Balance,
    Bend,
    BrakeResult,
    Braking,
    Budget,
    Car,
    Curve,
    Fluid,
    Gripped,
    Load,
    Plumbing,
    Rise,
    Split,
    TakeUp,
)
from pedalwright.brakes.solve import (
    Ratios,
    brake_at,
    earliest_rear_lock,
    respond,
)
from pedalwright.brakes.stop.solve import hot
from pedalwright.brakes.travel import budget, force_travel, pressure_share, take_up
from pedalwright.brakes.volumes import (
    Pressed,
    demand,
    not_counted,
    pressed,
    takes_pressure,
    wear_volumes,
    worn,
)
from pedalwright.brakes.wheels import (
    Disc,
    Drum,
    Elasticity,
    Lining,
    Rotor,
    ShoeDrum,
    Wear,
    WheelBrake,
)

__all__ = [
    "DESIGN_PUSH",
    "Balance",
    "Bend",
    "BrakeResult",
    "Braking",
    "Budget",
    "Car",
    "Curve",
    "Disc",
    "Drum",
    "Elasticity",
    "Fluid",
    "Gripped",
    "Lining",
    "Load",
    "Plumbing",
    "Pressed",
    "Ratios",
    "Rise",
    "Rotor",
    "ShoeDrum",
    "Split",
    "TakeUp",
    "Wear",
    "WheelBrake",
    "adhesion_limit",
    "brake_at",
    "budget",
    "check",
    "check_heat",
    "check_hot",
    "demand",
    "drum_factor",
    "earliest_rear_lock",
    "force_travel",
    "grab_share",
    "hot",
    "not_counted",
    "pressed",
    "pressure_share",
    "respond",
    "sensitivity",
    "take_up",
    "takes_pressure",
    "wear_volumes",
    "worn",
]
