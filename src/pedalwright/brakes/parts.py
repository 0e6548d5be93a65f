"""The car as its tyres feel it, its plumbing, and what the brakes come to.

Parking brakes are out of reach here: their cables, levers and what they hold on a slope.
"""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from pedalwright.core.units import K, MPa, N, Nmm, Ratio, kg, m_s, m_s2, mm, mm3
from pedalwright.hydraulics.parts import Limiter, Reservoirs, ResidualValves


@dataclass(frozen=True, kw_only=True, slots=True)
class Load:
    """What the car may carry besides its driver."""

    mass: kg
    #: Share of the load on the front axle; below zero behind the rear axle.
    front_share: Ratio
    #: Centre of gravity above the ground, of car and load together.
    cg_height: mm


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
    #: Friction of tyres on a dry road.
    grip: Ratio = 0.8
    load: Load | None = None
    top_speed: m_s | None = None


Grade: TypeAlias = Literal["DOT 3", "DOT 4", "DOT 5", "DOT 5.1"]


@dataclass(frozen=True, kw_only=True, slots=True)
class Fluid:
    """The brake fluid."""

    grade: Grade
    #: In both circuits together; left out, its compression is not counted.
    volume: mm3 | None = None
    #: 1600 to 2000 MPa cold and without air (from memory); free air ruins it.
    bulk_modulus: MPa = 1700.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Plumbing:
    """What the fluid loses on the way."""

    #: Swelling of all hoses at the hard stop, both circuits together.
    hoses: mm3
    #: Piston movement before the port is covered and pressure begins, rod gap included.
    dead_stroke: mm
    #: Force that arrives at the linings over force on the rod.
    efficiency: Ratio
    #: Part of the dead stroke that is play between rod and piston.
    rod_gap: mm | None = None
    fluid: Fluid | None = None
    #: In the rear circuit.
    limiter: Limiter | None = None
    residual: ResidualValves | None = None
    reservoirs: Reservoirs | None = None


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
class Bend:
    """What a limiter makes of the rear axle's braking."""

    #: Braking rate at which it begins to hold back.
    knee: Ratio
    #: Past the knee the rear brakes with start + slope x rate, as shares of the weight.
    slope: Ratio
    start: Ratio


@dataclass(frozen=True, kw_only=True, slots=True)
class Split:
    """How braking is shared between the axles, over the braking rate."""

    #: Front share, below the knee if there is one.
    front_share: Ratio
    bend: Bend | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Balance:
    """Lock order at one friction of the linings."""

    #: At the design push.
    front_share: Ratio
    #: Deceleration up to which the front wheels lock first.
    critical: m_s2


@dataclass(frozen=True, kw_only=True, slots=True)
class Gripped:
    """What the road makes of the brakes, at the tyres' grip."""

    #: Deceleration at which the first wheels lock, as a share of the best the road could give.
    first_lock: m_s2
    efficiency: Ratio
    #: Push on the pad that locks them.
    lock_effort: N
    #: Reached at the design push: whole, and with one circuit lost.
    reached_500: m_s2
    front_alone_500: m_s2
    rear_alone_500: m_s2


@dataclass(frozen=True, kw_only=True, slots=True)
class Rise:
    """How much warmer a disc or drum gets, without cooling."""

    #: Stops from 100 km/h: one, and five in a row.
    one_stop: K
    five_stops: K
    #: One stop from the top speed, where that is known.
    top_speed: K | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class TakeUp:
    """Rod travel up to the hard stop, by cause; the sum is the stroke at the hard stop.

    A cause nobody gave numbers for is 0 here and named by `not_counted`.
    """

    dead_stroke: mm
    front_lift: mm
    rear_lift: mm
    hoses: mm
    #: Play between rod and piston.
    free_play: mm = 0.0
    linings: mm = 0.0
    callipers: mm = 0.0
    fluid: mm = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Budget:
    """Pad travel at the design push, by cause; the causes sum to `total`."""

    free_play: mm
    dead_stroke: mm
    front_lift: mm
    rear_lift: mm
    linings: mm
    callipers: mm
    hoses: mm
    fluid: mm
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
    #: Deceleration at the design push with all linings at their low friction.
    low_friction_500: m_s2
    ideal_share: Ratio
    low: Balance
    nominal: Balance
    high: Balance
    front_alone_500: m_s2
    rear_alone_500: m_s2
    #: Push for 2.44 m/s2 with one circuit lost.
    effort_front_alone: N
    effort_rear_alone: N
    pad_travel_hard_stop: mm
    pad_travel_front_alone: mm
    pad_travel_rear_alone: mm
    #: Adhesion each axle uses, over deceleration; axis 0 is the decelerations.
    decelerations: m_s2
    front_utilisation: Ratio
    rear_utilisation: Ratio
    #: Front share as it is, and as both axles would use the road alike.
    front_shares: Ratio
    ideal_shares: Ratio
    at_grip: Gripped
    #: Braking rate at the first lock over the rate asked for, the least on all grips.
    adhesion: Ratio
    #: How torque follows friction: 1 for a disc, more for a shoe that helps itself.
    front_sensitivity: Ratio | None
    rear_sensitivity: Ratio | None
    #: Highest lining friction over the friction at which a shoe grabs by itself.
    front_grab: Ratio | None
    rear_grab: Ratio | None
    front_rise: Rise | None
    rear_rise: Rise | None
    #: Deceleration at the design push with the servo's help lost.
    servo_lost_500: m_s2 | None
    pad_travel_worn: mm | None
    #: The same with the load the car may carry.
    laden: "BrakeResult | None" = None
