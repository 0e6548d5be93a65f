"""From a split of braking to lock order, lock points and what the road allows."""

import numpy as np

from pedalwright.brakes.balance.formulas import (
    critical_past_knee,
    front_lock_past_knee,
    knee_rate,
    rear_lock_past_knee,
    rear_slope,
    rear_start,
    share_past_knee,
)
from pedalwright.brakes.formulas import (
    GRAVITY,
    critical_rate,
    front_lock,
    laden_share,
    rear_lock,
    utilisation_limit,
)
from pedalwright.brakes.parts import Bend, Car, Split
from pedalwright.core.units import MPa, Ratio, m_s2
from pedalwright.core.working import unrecorded
from pedalwright.hydraulics.parts import Limiter

#: Grips of the road on which the rule's limit line is drawn.
GRIPS = np.linspace(0.2, 0.8, 13)


def split(share: Ratio, rate: Ratio, rear_pressure: MPa, limiter: Limiter | None) -> Split:
    """How braking is shared; the first three as they would be without the limiter."""
    if limiter is None:
        return Split(front_share=share)
    knee = knee_rate(rate, limiter.knee, rear_pressure)
    slope = rear_slope(share, limiter.slope)
    return Split(
        front_share=share,
        bend=Bend(knee=knee, slope=slope, start=rear_start(share, slope, knee)),
    )


def share_at(shared: Split, rate: Ratio) -> Ratio:
    """Front share at a braking rate."""
    bend = shared.bend
    if bend is None:
        return shared.front_share
    past = share_past_knee(rate, bend.slope, bend.start)
    return np.where(rate > bend.knee, past, shared.front_share)


def critical(shared: Split, car: Car) -> Ratio:
    """Braking rate up to which the front wheels lock first."""
    straight = critical_rate(shared.front_share, car.front_share, car.cg_height, car.wheelbase)
    bend = shared.bend
    if bend is None:
        return straight
    past = critical_past_knee(bend.slope, bend.start, car.front_share, car.cg_height, car.wheelbase)
    return np.where(straight > bend.knee, past, straight)


def first_lock(shared: Split, car: Car, grip: Ratio) -> Ratio:
    """Braking rate at which the first wheels lock on a road of this grip."""
    loads = (car.front_share, car.cg_height, car.wheelbase)
    front = front_lock(grip, shared.front_share, *loads)
    rear = rear_lock(grip, shared.front_share, *loads)
    bend = shared.bend
    if bend is None:
        return np.minimum(front, rear)
    front_past = front_lock_past_knee(grip, bend.slope, bend.start, *loads)
    rear_past = rear_lock_past_knee(grip, bend.slope, bend.start, *loads)
    return np.minimum(
        np.where(front > bend.knee, front_past, front),
        np.where(rear > bend.knee, rear_past, rear),
    )


def adhesion(shared: Split, car: Car) -> Ratio:
    """Braking rate at the first lock over the rate asked for, the least on all grips."""
    level = np.zeros_like(shared.front_share + car.front_share + car.cg_height + car.wheelbase)
    grips = np.expand_dims(GRIPS, tuple(range(1, 1 + np.ndim(level)))) + level
    over: Ratio = np.min(first_lock(shared, car, grips) / utilisation_limit(grips), axis=0)
    return over


def adhesion_limit() -> tuple[m_s2, Ratio]:
    """The rule's line on a chart: decelerations, and the most adhesion an axle may use at each."""
    with unrecorded():
        return utilisation_limit(GRIPS) * GRAVITY, GRIPS


def laden(car: Car) -> Car | None:
    """The car with the load it may carry; None where none was given."""
    load = car.load
    if load is None:
        return None
    return Car(
        mass=car.mass + load.mass,
        front_share=laden_share(car.mass, car.front_share, load.mass, load.front_share),
        wheelbase=car.wheelbase,
        cg_height=load.cg_height,
        tyre_radius=car.tyre_radius,
        grip=car.grip,
        top_speed=car.top_speed,
    )
