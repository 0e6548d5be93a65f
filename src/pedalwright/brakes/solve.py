"""From line pressure to deceleration, lock order and what one circuit alone can do."""

from dataclasses import dataclass
from typing import Literal

import numpy as np

from pedalwright.brakes.formulas import (
    DESIGN_PUSH,
    GRAVITY,
    SERVICE_DECELERATION,
    axle_force,
    brake_torque,
    braking_rate,
    critical_rate,
    deceleration,
    disc_factor,
    effort_for,
    force_share,
    front_adhesion,
    ideal_share,
    rear_adhesion,
)
from pedalwright.brakes.parts import (
    Balance,
    BrakeResult,
    Braking,
    Car,
    Disc,
    Plumbing,
    WheelBrake,
)
from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import MPa, N, Num, Ratio, m_s2, mm2, mm3
from pedalwright.core.working import subject, unrecorded
from pedalwright.hydraulics import Demand, Masters, pressures
from pedalwright.hydraulics.formulas import bore_area, lift_volume

Friction = Literal["low", "nominal", "high"]


@dataclass(frozen=True, kw_only=True, slots=True)
class Ratios:
    """Pedal ratio at the hard stop, and at the deeper hard stop with one circuit lost."""

    hard_stop: Ratio
    front_alone: Ratio
    rear_alone: Ratio


def lifts(front: WheelBrake, rear: WheelBrake) -> tuple[mm3, mm3]:
    """Fluid that brings the linings of both wheels of an axle to their discs, front and rear."""
    with subject("front axle"):
        front_lift = lift_volume(2 * front.pistons_moved, _piston_area(front), front.lift)
    with subject("rear axle"):
        rear_lift = lift_volume(2 * rear.pistons_moved, _piston_area(rear), rear.lift)
    return front_lift, rear_lift


def demand(front: WheelBrake, rear: WheelBrake, plumbing: Plumbing) -> Demand:
    """Fluid each circuit takes up to the hard stop: two wheels' lift and half of the hoses."""
    front_lift, rear_lift = lifts(front, rear)
    return Demand(front=front_lift + plumbing.hoses / 2, rear=rear_lift + plumbing.hoses / 2)


@no_answer_is_nan
def brake_at(
    car: Car,
    masters: Masters,
    front: WheelBrake,
    rear: WheelBrake,
    plumbing: Plumbing,
    *,
    push: N,
    ratio: Ratio,
    friction: Friction = "nominal",
) -> Braking:
    """The whole chain from a push on the pad to deceleration, wheels rolling."""
    p_front, p_rear = pressures(masters, push, ratio, plumbing.efficiency)
    with subject("front axle"):
        t_front = _torque(front, p_front, friction)
        f_front = axle_force(t_front, car.tyre_radius)
    with subject("rear axle"):
        t_rear = _torque(rear, p_rear, friction)
        f_rear = axle_force(t_rear, car.tyre_radius)
    return Braking(
        front_pressure=p_front,
        rear_pressure=p_rear,
        front_torque=t_front,
        rear_torque=t_rear,
        front_force=f_front,
        rear_force=f_rear,
        front_share=force_share(f_front, f_rear),
        deceleration=deceleration(f_front + f_rear, car.mass),
    )


@no_answer_is_nan
def respond(
    car: Car,
    masters: Masters,
    front: WheelBrake,
    rear: WheelBrake,
    plumbing: Plumbing,
    *,
    ratios: Ratios,
    pad_travel: tuple[Num, Num, Num],
) -> BrakeResult:
    """All that can be said at the hard stop.

    `pad_travel` is the pad's arc at the hard stop, with the front alone, with the rear alone.
    """

    def at(ratio: Ratio, friction: Friction = "nominal") -> Braking:
        return brake_at(
            car, masters, front, rear, plumbing, push=DESIGN_PUSH, ratio=ratio, friction=friction
        )

    with subject("500 N"):
        stop = at(ratios.hard_stop)
    with subject("500 N, rear circuit lost"):
        front_alone = deceleration(at(ratios.front_alone).front_force, car.mass)
    with subject("500 N, front circuit lost"):
        rear_alone = deceleration(at(ratios.rear_alone).rear_force, car.mass)
    with subject("standing load and transfer"):
        z = braking_rate(stop.deceleration, GRAVITY)
        ideal = ideal_share(car.front_share, z, car.cg_height, car.wheelbase)
    with unrecorded():
        low, high = at(ratios.hard_stop, "low"), at(ratios.hard_stop, "high")
        rates = np.linspace(np.full_like(ideal, 0.1), 1.0, 19)
        loads = (car.front_share, car.cg_height, car.wheelbase)
        used_front = front_adhesion(stop.front_share, rates, *loads)
        used_rear = rear_adhesion(stop.front_share, rates, *loads)
    return BrakeResult(
        at_500=stop,
        effort_6_43=effort_for(DESIGN_PUSH, stop.deceleration, SERVICE_DECELERATION),
        ideal_share=ideal,
        low=_balance(car, low.front_share, "low friction"),
        nominal=_balance(car, stop.front_share, "usual friction"),
        high=_balance(car, high.front_share, "high friction"),
        front_alone_500=front_alone,
        rear_alone_500=rear_alone,
        pad_travel_hard_stop=pad_travel[0],
        pad_travel_front_alone=pad_travel[1],
        pad_travel_rear_alone=pad_travel[2],
        decelerations=rates * GRAVITY,
        front_utilisation=used_front,
        rear_utilisation=used_rear,
    )


def earliest_rear_lock(result: BrakeResult) -> m_s2:
    """The lowest critical deceleration over low, usual and high friction of the linings."""
    return np.minimum(
        np.minimum(result.low.critical, result.nominal.critical), result.high.critical
    )


def _balance(car: Car, share: Ratio, name: str) -> Balance:
    with subject(name):
        z = critical_rate(share, car.front_share, car.cg_height, car.wheelbase)
    return Balance(front_share=share, critical=z * GRAVITY)


def _piston_area(brake: WheelBrake) -> mm2:
    return bore_area(brake.piston_bore if isinstance(brake, Disc) else brake.cylinder_bore)


def _torque(brake: WheelBrake, pressure: MPa, friction: Friction) -> Num:
    if isinstance(brake, Disc):
        mu = {"low": brake.friction_low, "nominal": brake.friction, "high": brake.friction_high}
        area = _piston_area(brake) * brake.pistons_one_side
        return brake_torque(disc_factor(mu[friction]), pressure, area, brake.effective_radius)
    factor = {"low": brake.factor_low, "nominal": brake.factor, "high": brake.factor_high}
    return brake_torque(factor[friction], pressure, _piston_area(brake), brake.drum_radius)
