"""Laws of balance: axle loads, lock order, the limiter, friction at both ends."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given

from laws.brake_cases import (
    ASSISTED,
    CARS,
    DISCS,
    LIMITED,
    TANDEMS,
    Case,
    between,
    cases,
)
from pedalwright.brakes import (
    Car,
    Disc,
    earliest_rear_lock,
)
from pedalwright.brakes.formulas import (
    GRAVITY,
    critical_rate,
    front_adhesion,
    front_alone_grip,
    front_load,
    front_lock,
    ideal_share,
    rear_adhesion,
    rear_alone_grip,
    rear_load,
    rear_lock,
)
from pedalwright.core.units import Num


def loads(car: Car) -> dict[str, Num]:
    return {"psi": car.front_share, "h": car.cg_height, "L": car.wheelbase}


@given(CARS, between(0.0, 1.0))
def test_the_axles_carry_the_car(car: Car, z: float) -> None:
    front = front_load(car.mass, GRAVITY, z=z, **loads(car))
    rear = rear_load(car.mass, GRAVITY, z=z, **loads(car))
    assert front + rear == pytest.approx(car.mass * GRAVITY, rel=1e-12)
    share = ideal_share(z=z, **loads(car))
    assert share == pytest.approx(front / (front + rear), rel=1e-12)


@given(CARS, between(0.05, 1.0))
def test_with_the_ideal_share_both_axles_use_the_road_alike(car: Car, z: float) -> None:
    share = ideal_share(z=z, **loads(car))
    used = [f(phi=share, z=z, **loads(car)) for f in (front_adhesion, rear_adhesion)]
    assert used == pytest.approx([z, z], rel=1e-9)
    assert critical_rate(phi=share, **loads(car)) == pytest.approx(z, rel=1e-9)


@given(CARS, between(0.45, 0.8), between(0.1, 1.1))
def test_below_the_critical_rate_the_front_locks_first(car: Car, phi: float, mu: float) -> None:
    front = front_lock(mu=mu, phi=phi, **loads(car))
    rear = rear_lock(mu=mu, phi=phi, **loads(car))
    critical = critical_rate(phi=phi, **loads(car))
    assert (front < rear) == (min(front, rear) < critical)


@given(CARS, between(0.2, 1.0))
def test_an_axle_alone_brakes_with_its_load_times_the_grip(car: Car, mu: float) -> None:
    weight = car.mass * GRAVITY
    for grip, load in ((front_alone_grip, front_load), (rear_alone_grip, rear_load)):
        z = grip(mu=mu, **loads(car))
        assert z * weight == pytest.approx(
            mu * load(car.mass, GRAVITY, z=z, **loads(car)), rel=1e-9
        )


def test_a_lifted_rear_axle_has_no_finite_use_of_the_road() -> None:
    assert rear_adhesion(phi=0.7, z=1.0, psi=0.7, h=800.0, L=2000.0) == np.inf


@given(cases())
def test_the_curves_meet_at_the_critical_deceleration(case: Case) -> None:
    found = case.result()
    rates = np.asarray(found.decelerations)
    front_more = found.front_utilisation > found.rear_utilisation
    assert np.array_equal(front_more, rates < found.nominal.critical)
    assert earliest_rear_lock(found) <= found.nominal.critical


@given(cases(masters=TANDEMS | ASSISTED, plumbing=LIMITED))
def test_behind_a_limiter_the_front_locks_first_up_to_the_critical_deceleration(
    case: Case,
) -> None:
    found = case.result()
    rates = np.asarray(found.decelerations)
    below = rates < found.nominal.critical
    assert np.all((found.front_utilisation > found.rear_utilisation)[below])
    plain = replace(case, plumbing=replace(case.plumbing, limiter=None)).result()
    assert found.nominal.critical >= plain.nominal.critical * (1.0 - 1e-12) or (
        plain.nominal.critical < 0.0
    )
    assert np.all(np.diff(found.front_shares) >= -1e-12)


@given(cases(), DISCS, DISCS)
def test_crosswise_friction_is_not_mixed_in(case: Case, front: Disc, rear: Disc) -> None:
    """Low, usual and high friction put both axles at the same end."""
    ends = {"friction_low": 0.3, "friction": 0.36, "friction_high": 0.42}
    found = replace(case, front=replace(front, **ends), rear=replace(rear, **ends)).result()
    assert found.low.front_share == pytest.approx(found.high.front_share, rel=1e-12)
