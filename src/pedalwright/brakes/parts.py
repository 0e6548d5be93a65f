"""The car as its tyres feel it, and the brakes at its wheels."""

from dataclasses import dataclass
from typing import TypeAlias

from pedalwright.core.units import MPa, N, Nmm, Ratio, kg, m_s2, mm, mm3


@dataclass(frozen=True, kw_only=True, slots=True)
class Car:
    """Masses and lengths of the car with its driver in it."""

    mass: kg
    #: Share of the weight on the front axle, standing.
    front_share: Ratio
    wheelbase: mm
    #: Centre of gravity above the ground.
    cg_height: mm
    tyre_radius: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Disc:
    """A disc brake at one wheel of an axle; the other wheel has the same."""

    piston_bore: mm
    #: Pistons on ONE side of the disc: these press, the other side answers.
    pistons_one_side: Ratio
    #: Pistons that must be moved by fluid, all sides.
    pistons_moved: Ratio
    effective_radius: mm
    #: Lining friction: worst, usual, best.
    friction_low: Ratio
    friction: Ratio
    friction_high: Ratio
    #: Piston movement from rest until the linings press.
    lift: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Drum:
    """A drum brake at one wheel of an axle; the other wheel has the same."""

    cylinder_bore: mm
    pistons_moved: Ratio
    drum_radius: mm
    #: Brake factor (self-help): drag force at the drum over the force of one piston.
    factor_low: Ratio
    factor: Ratio
    factor_high: Ratio
    lift: mm


WheelBrake: TypeAlias = Disc | Drum


@dataclass(frozen=True, kw_only=True, slots=True)
class Plumbing:
    """What the fluid loses on the way."""

    #: Swelling of all hoses at the hard stop, both circuits together.
    hoses: mm3
    #: Piston movement before the port is covered and pressure begins, rod gap included.
    dead_stroke: mm
    #: Force that arrives at the linings over force on the rod.
    efficiency: Ratio


@dataclass(frozen=True, kw_only=True, slots=True)
class Braking:
    """How the car brakes at one push on the pad."""

    front_pressure: MPa
    rear_pressure: MPa
    #: At one wheel.
    front_torque: Nmm
    rear_torque: Nmm
    front_force: N
    rear_force: N
    front_share: Ratio
    deceleration: m_s2


@dataclass(frozen=True, kw_only=True, slots=True)
class Balance:
    """Lock order at one friction of the linings."""

    front_share: Ratio
    #: Deceleration up to which the front wheels lock first.
    critical: m_s2


@dataclass(frozen=True, kw_only=True, slots=True)
class TakeUp:
    """Rod travel up to the hard stop, by cause; the sum is the stroke at the hard stop."""

    dead_stroke: mm
    front_lift: mm
    rear_lift: mm
    hoses: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Budget:
    """Pad travel at the design push, by cause; the causes sum to `total`."""

    dead_stroke: mm
    front_lift: mm
    rear_lift: mm
    hoses: mm
    #: Arm, rod and what they are bolted to; `structure` splits it further.
    structure: mm
    total: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Curve:
    """Pad travel over push, from where the linings touch; axis 0 is the pushes."""

    push: N
    travel: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class BrakeResult:
    """All that the brakes room can say."""

    at_500: Braking
    effort_6_43: N
    ideal_share: Ratio
    low: Balance
    nominal: Balance
    high: Balance
    front_alone_500: m_s2
    rear_alone_500: m_s2
    pad_travel_hard_stop: mm
    pad_travel_front_alone: mm
    pad_travel_rear_alone: mm
    #: Adhesion each axle uses, over deceleration; axis 0 is the decelerations.
    decelerations: m_s2
    front_utilisation: Ratio
    rear_utilisation: Ratio
