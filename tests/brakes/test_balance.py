"""A limiter's bent line in closed form, against walking up the push until a wheel locks."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from pedalwright.brakes import (
    BrakeResult,
    Braking,
    Car,
    Disc,
    Load,
    Plumbing,
    Ratios,
    brake_at,
    respond,
)
from pedalwright.brakes.balance.formulas import gripped_rate
from pedalwright.brakes.formulas import GRAVITY
from pedalwright.hydraulics import Boost, Limiter, Masters, Servo, Tandem

CAR = Car(mass=900.0, front_share=0.46, wheelbase=2300.0, cg_height=480.0, tyre_radius=300.0)
TANDEM = Tandem(bore=20.64, stroke=36.0)
SERVO = Servo(points=(Boost(push=100.0, force=100.0), Boost(push=900.0, force=3300.0)))
FRONT = Disc(
    piston_bore=54.0,
    pistons_one_side=1.0,
    pistons_moved=2.0,
    effective_radius=112.0,
    friction_low=0.30,
    friction=0.36,
    friction_high=0.42,
    lift=0.28,
)
REAR = replace(FRONT, piston_bore=42.0)
PLUMBING = Plumbing(
    hoses=900.0, dead_stroke=1.5, efficiency=0.92, limiter=Limiter(knee=2.5, slope=0.3)
)
RATIO = 5.0


def found(
    plumbing: Plumbing = PLUMBING, masters: Masters = TANDEM, car: Car = CAR, rear: Disc = REAR
) -> BrakeResult:
    ratios = Ratios(hard_stop=RATIO, front_alone=RATIO, rear_alone=RATIO)
    return respond(
        car, masters, FRONT, rear, plumbing, ratios=ratios, pad_travel=(70.0, 90.0, 90.0)
    )


def at(push: float, plumbing: Plumbing = PLUMBING, masters: Masters = TANDEM) -> Braking:
    return brake_at(CAR, masters, FRONT, REAR, plumbing, push=push, ratio=RATIO)


def uses(push: float, plumbing: Plumbing = PLUMBING) -> tuple[float, float, float]:
    """Rate, and what each axle uses of the road, from forces and moments alone."""
    here = at(push, plumbing)
    weight = CAR.mass * GRAVITY
    z = (here.front_force + here.rear_force) / weight
    front_load = weight * (CAR.front_share + z * CAR.cg_height / CAR.wheelbase)
    return float(z), here.front_force / front_load, here.rear_force / (weight - front_load)


def walk(until: float, crossing: str, plumbing: Plumbing = PLUMBING) -> float:
    """Rate at the first push where a use reaches `until`, or the rear's passes the front's."""
    before = 1.0
    for push in np.linspace(1.0, 1500.0, 3000):
        _, front, rear = uses(push, plumbing)
        if (rear > front) if crossing == "rear" else (max(front, rear) > until):
            break
        before = push
    low, high = before, push
    for _ in range(60):
        middle = (low + high) / 2.0
        _, front, rear = uses(middle, plumbing)
        past = (rear > front) if crossing == "rear" else (max(front, rear) > until)
        low, high = (low, middle) if past else (middle, high)
    return uses(low, plumbing)[0]


LIMITERS = [Limiter(knee=k, slope=m) for k in (1.0, 2.5, 4.5) for m in (0.0, 0.3, 0.6)]


@pytest.mark.parametrize("limiter", LIMITERS)
def test_the_rear_takes_over_where_the_walk_finds_it(limiter: Limiter) -> None:
    plumbing = replace(PLUMBING, limiter=limiter)
    critical = found(plumbing).nominal.critical / GRAVITY
    assert critical == pytest.approx(walk(0.0, "rear", plumbing), rel=1e-9)


@pytest.mark.parametrize("limiter", LIMITERS)
@pytest.mark.parametrize("grip", [0.3, 0.6, 0.9])
def test_the_first_wheel_locks_where_the_walk_finds_it(limiter: Limiter, grip: float) -> None:
    plumbing = replace(PLUMBING, limiter=limiter)
    gripped = found(plumbing, car=replace(CAR, grip=grip)).at_grip
    assert gripped.first_lock / GRAVITY == pytest.approx(walk(grip, "any", plumbing), rel=1e-9)
    z, front, rear = uses(float(gripped.lock_effort), plumbing)
    assert max(front, rear) == pytest.approx(grip, rel=1e-9)
    assert gripped.efficiency == pytest.approx(z / grip, rel=1e-9)


def test_a_limiter_keeps_the_rear_wheels_rolling_longer() -> None:
    plain = found(replace(PLUMBING, limiter=None))
    assert found().nominal.critical > plain.nominal.critical + 1.0
    open_valve = found(replace(PLUMBING, limiter=Limiter(knee=2.5, slope=1.0)))
    assert open_valve.nominal.critical == pytest.approx(plain.nominal.critical, rel=1e-9)
    assert open_valve.effort_6_43 == pytest.approx(plain.effort_6_43, rel=1e-12)


def test_a_knee_past_the_crossing_comes_too_late() -> None:
    late = found(replace(PLUMBING, limiter=Limiter(knee=12.0, slope=0.0)))
    plain = found(replace(PLUMBING, limiter=None))
    assert late.nominal.critical == pytest.approx(plain.nominal.critical, rel=1e-12)


def test_the_curves_follow_the_bent_line() -> None:
    result = found()
    for i in (2, 9, 14):
        wanted = np.asarray(result.decelerations)[i]
        push = np.interp(
            wanted, [at(p).deceleration for p in range(0, 1501, 1)], np.arange(0, 1501, 1)
        )
        z, front, rear = uses(float(push))
        assert z * GRAVITY == pytest.approx(wanted, rel=1e-3)
        assert np.asarray(result.front_utilisation)[i] == pytest.approx(front, rel=2e-3)
        assert np.asarray(result.rear_utilisation)[i] == pytest.approx(rear, rel=2e-3)
    assert np.all(np.diff(result.front_shares) >= 0.0)


@pytest.mark.parametrize("limiter", [None, PLUMBING.limiter, Limiter(knee=2.5, slope=0.0)])
@pytest.mark.parametrize("servo", [None, SERVO])
def test_the_effort_gives_the_deceleration(limiter: Limiter | None, servo: Servo | None) -> None:
    plumbing, masters = replace(PLUMBING, limiter=limiter), replace(TANDEM, servo=servo)
    result = found(plumbing, masters)
    assert at(float(result.effort_6_43), plumbing, masters).deceleration == pytest.approx(6.43)
    front = at(float(result.effort_front_alone), plumbing, masters).front_force
    assert front / CAR.mass == pytest.approx(2.44)
    if np.isfinite(result.effort_rear_alone):
        rear = at(float(result.effort_rear_alone), plumbing, masters).rear_force
        assert rear / CAR.mass == pytest.approx(2.44)
    assert (result.servo_lost_500 is None) == (servo is None)


def test_a_rear_axle_held_back_for_good_never_reaches_it_alone() -> None:
    held = found(replace(PLUMBING, limiter=Limiter(knee=1.0, slope=0.0)))
    assert held.effort_rear_alone == np.inf


def test_without_its_servo_the_car_brakes_as_if_it_had_none() -> None:
    assisted = found(masters=replace(TANDEM, servo=SERVO))
    assert assisted.servo_lost_500 == found().at_500.deceleration
    assert assisted.at_500.deceleration > 1.5 * found().at_500.deceleration


@given(st.floats(0.05, 1.5), st.floats(0.05, 1.0), st.floats(0.1, 1.1), st.floats(0.35, 0.6))
def test_grip_is_each_axles_own(front: float, rear: float, mu: float, psi: float) -> None:
    """Axle by axle: the smaller of the brake's force and grip times load, until it settles."""
    h, L = 480.0, 2300.0
    z = 0.0
    for _ in range(400):
        transfer = z * h / L
        z = min(front, mu * (psi + transfer)) + min(rear, mu * (1.0 - psi - transfer))
    assume(psi + z * h / L < 1.0)
    assert gripped_rate(front, rear, mu, psi, h, L) == pytest.approx(z, rel=1e-9)


def test_a_load_is_weighed_in() -> None:
    loaded = replace(CAR, load=Load(mass=150.0, front_share=0.2, cg_height=510.0))
    result = found(car=loaded).laden
    assert result is not None
    by_hand = replace(
        CAR, mass=1050.0, front_share=(900.0 * 0.46 + 150.0 * 0.2) / 1050.0, cg_height=510.0
    )
    assert result.nominal.critical == pytest.approx(found(car=by_hand).nominal.critical)
    assert result.effort_6_43 == pytest.approx(found(car=by_hand).effort_6_43)
    assert result.laden is None
