"""From line pressure to deceleration, lock order and what one circuit alone can do."""

from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from pedalwright.brakes.balance import solve as balance
from pedalwright.brakes.balance.formulas import effort_past_knee, gripped_rate
from pedalwright.brakes.drums.solve import drum_factor, grab_share, sensitivity
from pedalwright.brakes.formulas import (
    DESIGN_PUSH,
    GRAVITY,
    SECONDARY_DECELERATION,
    SERVICE_DECELERATION,
    axle_force,
    brake_torque,
    braking_rate,
    deceleration,
    disc_factor,
    effort_for,
    force_share,
    front_adhesion,
    front_alone_grip,
    ideal_share,
    pad_push,
    rear_adhesion,
    rear_alone_grip,
)
from pedalwright.brakes.parts import (
    Balance,
    BrakeResult,
    Braking,
    Car,
    Gripped,
    Plumbing,
    Split,
)
from pedalwright.brakes.stop.solve import rise
from pedalwright.brakes.wheels import Disc, Drum, ShoeDrum, WheelBrake
from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import MPa, N, Num, Ratio, m_s2, mm, mm2
from pedalwright.core.working import subject, unrecorded
from pedalwright.hydraulics import Masters, Tandem, helped, pressures, servo_of, unhelped
from pedalwright.hydraulics.formulas import bore_area

Friction = Literal["low", "nominal", "high"]


@dataclass(frozen=True, kw_only=True, slots=True)
class Ratios:
    """Pedal ratio at the hard stop, and at the deeper hard stop with one circuit lost."""

    hard_stop: Ratio
    front_alone: Ratio
    rear_alone: Ratio


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
    p_front, p_rear = pressures(masters, push, ratio, plumbing.efficiency, plumbing.limiter)
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


@dataclass(frozen=True, kw_only=True, slots=True)
class Chain:
    """Everything between the pedal's rod and the wheels."""

    masters: Masters
    front: WheelBrake
    rear: WheelBrake
    plumbing: Plumbing

    def at(self, car: Car, ratio: Ratio, friction: Friction = "nominal") -> Braking:
        """Braking at the design push."""
        return brake_at(
            car,
            self.masters,
            self.front,
            self.rear,
            self.plumbing,
            push=DESIGN_PUSH,
            ratio=ratio,
            friction=friction,
        )

    def unlimited(self) -> "Chain":
        """The same with its limiter taken out."""
        return replace(self, plumbing=replace(self.plumbing, limiter=None))

    def split(self, car: Car, ratio: Ratio, stop: Braking, friction: Friction = "nominal") -> Split:
        """How the braking is shared over the braking rate; `stop` is at the design push."""
        limiter = self.plumbing.limiter
        if limiter is None:
            return Split(front_share=stop.front_share)
        with unrecorded():
            free = self.unlimited().at(car, ratio, friction)
        with subject("limiter"):
            rate = braking_rate(free.deceleration, GRAVITY)
            return balance.split(free.front_share, rate, free.rear_pressure, limiter)

    def effort(
        self,
        car: Car,
        ratio: Ratio,
        stop: Braking,
        wanted: m_s2,
        *,
        front: Ratio = 1.0,
        rear: Ratio = 1.0,
    ) -> N:
        """Push for a deceleration, with 1 for an axle that brakes and 0 for one that does not."""
        limiter, servo = self.plumbing.limiter, servo_of(self.masters)
        if limiter is None:
            known = (stop.front_force * front + stop.rear_force * rear) / car.mass
            if servo is None:
                return effort_for(DESIGN_PUSH, known, wanted)
            force = effort_for(helped(servo, DESIGN_PUSH * ratio), known, wanted)
            return pad_push(unhelped(servo, force), ratio)
        with unrecorded():
            free = self.unlimited().at(car, ratio)
        known = helped(servo, DESIGN_PUSH * ratio)
        force = effort_past_knee(
            known,
            free.front_force * front / car.mass,
            free.rear_force * rear / car.mass,
            known * limiter.knee / free.rear_pressure,
            limiter.slope,
            wanted,
        )
        return pad_push(unhelped(servo, force), ratio)

    def without_servo(self, car: Car, ratio: Ratio) -> m_s2 | None:
        """Deceleration at the design push with the servo's help lost; None where there is none."""
        if not isinstance(self.masters, Tandem) or self.masters.servo is None:
            return None
        with subject("500 N, servo lost"):
            plain = replace(self, masters=replace(self.masters, servo=None))
            return plain.at(car, ratio).deceleration


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
    worn_travel: mm | None = None,
) -> BrakeResult:
    """All that can be said at the hard stop.

    `pad_travel` is the pad's arc at the hard stop, with the front alone, with the rear alone;
    `worn_travel` that at the hard stop with worn linings. A limiter holds its knee with a
    circuit lost, too.
    """
    chain = Chain(masters=masters, front=front, rear=rear, plumbing=plumbing)
    with subject("500 N"):
        stop = chain.at(car, ratios.hard_stop)
    with subject("500 N, rear circuit lost"):
        on_front = chain.at(car, ratios.front_alone)
        front_alone = deceleration(on_front.front_force, car.mass)
    with subject("500 N, front circuit lost"):
        on_rear = chain.at(car, ratios.rear_alone)
        rear_alone = deceleration(on_rear.rear_force, car.mass)
    with subject("standing load and transfer"):
        z = braking_rate(stop.deceleration, GRAVITY)
        ideal = ideal_share(car.front_share, z, car.cg_height, car.wheelbase)
    with unrecorded():
        low = chain.at(car, ratios.hard_stop, "low")
        high = chain.at(car, ratios.hard_stop, "high")
    shared = chain.split(car, ratios.hard_stop, stop)
    with unrecorded():
        low_shared = chain.split(car, ratios.hard_stop, low, "low")
        high_shared = chain.split(car, ratios.hard_stop, high, "high")
        rates = np.linspace(np.full_like(ideal, 0.1), 1.0, 19)
        shares = balance.share_at(shared, rates) + np.zeros_like(rates)
        loads = (car.front_share, car.cg_height, car.wheelbase)
        ideals = ideal_share(car.front_share, rates, car.cg_height, car.wheelbase)
        used_front = front_adhesion(shares, rates, *loads)
        used_rear = rear_adhesion(shares, rates, *loads)
        adhesion = balance.adhesion(shared, car)
    with subject("service stop"):
        effort = chain.effort(car, ratios.hard_stop, stop, SERVICE_DECELERATION)
    with subject("2.44 m/s2, rear circuit lost"):
        on_front_alone = chain.effort(
            car, ratios.front_alone, on_front, SECONDARY_DECELERATION, rear=0.0
        )
    with subject("2.44 m/s2, front circuit lost"):
        on_rear_alone = chain.effort(
            car, ratios.rear_alone, on_rear, SECONDARY_DECELERATION, front=0.0
        )
    with subject("front axle"):
        front_rise = rise(car, front, stop.front_share)
    with subject("rear axle"):
        rear_rise = rise(car, rear, 1.0 - stop.front_share)
    heavier = balance.laden(car)
    with subject("laden"):
        laden = (
            None
            if heavier is None
            else respond(
                heavier,
                masters,
                front,
                rear,
                plumbing,
                ratios=ratios,
                pad_travel=pad_travel,
                worn_travel=worn_travel,
            )
        )
    with unrecorded():
        powers, grabs = (
            (sensitivity(front), sensitivity(rear)),
            (grab_share(front), grab_share(rear)),
        )
    return BrakeResult(
        at_500=stop,
        effort_6_43=effort,
        low_friction_500=low.deceleration,
        ideal_share=ideal,
        low=_balance(car, low, low_shared, "low friction"),
        nominal=_balance(car, stop, shared, "usual friction"),
        high=_balance(car, high, high_shared, "high friction"),
        front_alone_500=front_alone,
        rear_alone_500=rear_alone,
        effort_front_alone=on_front_alone,
        effort_rear_alone=on_rear_alone,
        pad_travel_hard_stop=pad_travel[0],
        pad_travel_front_alone=pad_travel[1],
        pad_travel_rear_alone=pad_travel[2],
        decelerations=rates * GRAVITY,
        front_utilisation=used_front,
        rear_utilisation=used_rear,
        front_shares=shares,
        ideal_shares=ideals,
        at_grip=_gripped(car, chain, ratios.hard_stop, stop, shared, (front_alone, rear_alone)),
        adhesion=adhesion,
        front_sensitivity=powers[0],
        rear_sensitivity=powers[1],
        front_grab=grabs[0],
        rear_grab=grabs[1],
        front_rise=front_rise,
        rear_rise=rear_rise,
        servo_lost_500=chain.without_servo(car, ratios.hard_stop),
        pad_travel_worn=worn_travel,
        laden=laden,
    )


def earliest_rear_lock(result: BrakeResult) -> m_s2:
    """The lowest critical deceleration over low, usual and high friction of the linings."""
    return np.minimum(
        np.minimum(result.low.critical, result.nominal.critical), result.high.critical
    )


def _balance(car: Car, stop: Braking, shared: Split, name: str) -> Balance:
    with subject(name):
        z = balance.critical(shared, car)
    return Balance(front_share=stop.front_share, critical=z * GRAVITY)


def _gripped(
    car: Car,
    chain: Chain,
    ratio: Ratio,
    stop: Braking,
    shared: Split,
    alone: tuple[m_s2, m_s2],
) -> Gripped:
    """What a road of the tyres' grip allows."""
    loads = (car.front_share, car.cg_height, car.wheelbase)
    weight = car.mass * GRAVITY
    with subject("grip"):
        lock = balance.first_lock(shared, car, car.grip)
        effort = chain.effort(car, ratio, stop, lock * GRAVITY)
        whole = gripped_rate(stop.front_force / weight, stop.rear_force / weight, car.grip, *loads)
        front = front_alone_grip(car.grip, *loads) * GRAVITY
        rear = rear_alone_grip(car.grip, *loads) * GRAVITY
    return Gripped(
        first_lock=lock * GRAVITY,
        efficiency=lock / car.grip,
        lock_effort=effort,
        reached_500=whole * GRAVITY,
        front_alone_500=np.minimum(alone[0], front),
        rear_alone_500=np.minimum(alone[1], rear),
    )


def piston_area(brake: WheelBrake) -> mm2:
    """Area of one piston at the wheel."""
    return bore_area(brake.piston_bore if isinstance(brake, Disc) else brake.cylinder_bore)


def _torque(brake: WheelBrake, pressure: MPa, friction: Friction) -> Num:
    if isinstance(brake, Disc):
        area = piston_area(brake) * brake.pistons_one_side
        factor = disc_factor(_linings(brake, friction))
        return brake_torque(factor, pressure, area, brake.effective_radius)
    if isinstance(brake, Drum):
        factors = {"low": brake.factor_low, "nominal": brake.factor, "high": brake.factor_high}
        factor = factors[friction]
    else:
        factor = drum_factor(brake, _linings(brake, friction))
    return brake_torque(factor, pressure, piston_area(brake), brake.drum_radius)


def _linings(brake: Disc | ShoeDrum, friction: Friction) -> Ratio:
    mu = {"low": brake.friction_low, "nominal": brake.friction, "high": brake.friction_high}
    return mu[friction]
