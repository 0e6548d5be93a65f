"""Cases C07 to C10, C13, C14, C17, C21: brakes, solved independently with plain equations.

Strength: other program, printed to the digits given here. The lock points of C09 were found
there by root finding on the adhesion each axle uses, here in closed form.
"""

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from pedalwright.brakes import (
    BrakeResult,
    Braking,
    Car,
    Disc,
    Plumbing,
    Ratios,
    Rotor,
    brake_at,
    respond,
)
from pedalwright.brakes.drums.formulas import (
    duo_servo_factor,
    duplex_factor,
    grabbing_friction,
    leading_factor,
    passed_on,
    simplex_factor,
    trailing_factor,
)
from pedalwright.brakes.formulas import (
    GRAVITY,
    brake_torque,
    braking_rate,
    critical_rate,
    disc_factor,
    effort_for,
    front_adhesion,
    front_alone_grip,
    front_load,
    front_lock,
    ideal_share,
    mean_radius,
    new_pad_radius,
    rear_adhesion,
    rear_alone_grip,
    rear_load,
    rear_lock,
)
from pedalwright.brakes.stop.formulas import brake_heat, disc_rise, moving_energy
from pedalwright.brakes.stop.solve import rise as stop_rise
from pedalwright.hydraulics import Tandem
from pedalwright.hydraulics.formulas import bore_area

#: The car of C08: front share of the standing weight, centre of gravity, wheelbase.
CAR = Car(mass=900.0, front_share=1.1 / 2.3, wheelbase=2300.0, cg_height=460.0, tyre_radius=300.0)
LOADS = {"psi": CAR.front_share, "h": CAR.cg_height, "L": CAR.wheelbase}


def test_c07_torque_of_a_fixed_and_of_a_floating_calliper() -> None:
    one_side = 2.0 * bore_area(38.1)
    radius = mean_radius(128.0, 86.0)
    factor = disc_factor(0.4)
    assert one_side == pytest.approx(2280.2, abs=0.06)
    assert radius == 107.0
    assert new_pad_radius(128.0, 86.0) == pytest.approx(108.374, abs=0.0006)
    fixed = brake_torque(factor, 5.0, one_side, radius)
    floating = brake_torque(factor, 5.0, bore_area(54.0), 107.0)
    assert fixed / 1000.0 == pytest.approx(975.92, abs=0.006)
    assert floating / 1000.0 == pytest.approx(980.21, abs=0.006)


def test_c07_only_one_side_of_a_fixed_calliper_is_counted() -> None:
    disc = DISC_REAR
    assert torque_of(replace(disc, pistons_moved=2.0)) == torque_of(
        replace(disc, pistons_moved=4.0)
    )
    wrong = torque_of(replace(disc, pistons_one_side=2.0 * disc.pistons_one_side))
    assert wrong == pytest.approx(2.0 * torque_of(disc))


def torque_of(disc: Disc) -> float:
    return float(whole_chain(400.0, rear=disc).rear_torque)


@pytest.mark.parametrize(
    ("z", "front", "rear"),
    [(0.0, 4222.6, 4606.4), (0.5, 5105.5, 3723.5), (0.9, 5811.8, 3017.2), (1.0, 5988.4, 2840.6)],
)
def test_c08_axle_loads(z: float, front: float, rear: float) -> None:
    assert front_load(900.0, GRAVITY, z=z, **LOADS) == pytest.approx(front, abs=0.06)
    assert rear_load(900.0, GRAVITY, z=z, **LOADS) == pytest.approx(rear, abs=0.06)


def test_c08_ideal_share() -> None:
    assert ideal_share(z=0.9, **LOADS) == pytest.approx(0.6583, abs=0.00006)


@pytest.mark.parametrize(
    ("z", "front", "rear"),
    [
        (0.2, 0.2624, 0.1329),
        (0.4, 0.4872, 0.2898),
        (0.6, 0.6820, 0.4779),
        (0.8, 0.8523, 0.7077),
        (1.0, 1.0026, 0.9946),
    ],
)
def test_c09_adhesion_used_by_each_axle(z: float, front: float, rear: float) -> None:
    assert front_adhesion(phi=0.68, z=z, **LOADS) == pytest.approx(front, abs=0.00006)
    assert rear_adhesion(phi=0.68, z=z, **LOADS) == pytest.approx(rear, abs=0.00006)


def test_c09_critical_rate() -> None:
    assert critical_rate(phi=0.68, **LOADS) == pytest.approx(1.0087, abs=0.00006)


@pytest.mark.parametrize(
    ("mu", "z", "efficiency"), [(0.3, 0.2314, 77.14), (0.5, 0.4123, 82.46), (0.9, 0.8609, 95.65)]
)
def test_c09_first_lock(mu: float, z: float, efficiency: float) -> None:
    front = front_lock(mu=mu, phi=0.68, **LOADS)
    assert front < rear_lock(mu=mu, phi=0.68, **LOADS)
    assert front == pytest.approx(z, abs=0.00006)
    assert 100.0 * front / mu == pytest.approx(efficiency, abs=0.006)


def test_c09_at_its_lock_point_an_axle_uses_the_road_up() -> None:
    z_front = front_lock(mu=0.9, phi=0.68, **LOADS)
    z_rear = rear_lock(mu=0.9, phi=0.68, **LOADS)
    assert front_adhesion(phi=0.68, z=z_front, **LOADS) == pytest.approx(0.9)
    assert rear_adhesion(phi=0.68, z=z_rear, **LOADS) == pytest.approx(0.9)


DISC_FRONT = Disc(
    piston_bore=48.0,
    pistons_one_side=1.0,
    pistons_moved=1.0,
    effective_radius=105.0,
    friction_low=0.3,
    friction=0.38,
    friction_high=0.45,
    lift=0.2,
)
DISC_REAR = replace(DISC_FRONT, piston_bore=34.925, pistons_moved=2.0, effective_radius=110.0)
PLUMBING = Plumbing(hoses=900.0, dead_stroke=1.5, efficiency=0.92)


def whole_chain(push: float, rear: Disc = DISC_REAR) -> Braking:
    tandem = Tandem(bore=22.225, stroke=34.0)
    return brake_at(CAR, tandem, DISC_FRONT, rear, PLUMBING, push=push, ratio=5.0)


def test_c13_whole_chain_from_400_n_to_deceleration() -> None:
    found = whole_chain(400.0)
    z = braking_rate(found.deceleration, GRAVITY)
    share = found.front_share
    assert found.front_pressure == found.rear_pressure == pytest.approx(4.7429, abs=0.00006)
    assert found.front_torque / 1000.0 == pytest.approx(684.89, abs=0.006)
    assert found.rear_torque / 1000.0 == pytest.approx(379.85, abs=0.006)
    assert found.front_force + found.rear_force == pytest.approx(7098.3, abs=0.06)
    assert z == pytest.approx(0.8040, abs=0.00006)
    assert share == pytest.approx(0.6432, abs=0.00006)
    assert front_adhesion(phi=share, z=z, **LOADS) == pytest.approx(0.8092, abs=0.00006)
    assert rear_adhesion(phi=share, z=z, **LOADS) == pytest.approx(0.7946, abs=0.00006)
    assert critical_rate(phi=share, **LOADS) == pytest.approx(0.8249, abs=0.00006)
    assert effort_for(400.0, found.deceleration, 6.43) == pytest.approx(326.1, abs=0.06)


@pytest.mark.parametrize(
    ("axle", "from_torque", "from_grip", "reached", "grip"),
    [
        ("front", 0.6464, 0.4555, 4.468, front_alone_grip),
        ("rear", 0.3585, 0.3598, 3.517, rear_alone_grip),
    ],
)
def test_c14_one_circuit_lost_at_500_n(
    axle: str, from_torque: float, from_grip: float, reached: float, grip: Callable[..., float]
) -> None:
    found = whole_chain(500.0)
    force = found.front_force if axle == "front" else found.rear_force
    torque_rate = force / (CAR.mass * GRAVITY)
    road_rate = grip(mu=0.8, **LOADS)
    assert found.front_pressure == pytest.approx(5.9286, abs=0.00006)
    assert torque_rate == pytest.approx(from_torque, abs=0.00006)
    assert road_rate == pytest.approx(from_grip, abs=0.00006)
    assert np.minimum(torque_rate, road_rate) * GRAVITY == pytest.approx(reached, abs=0.0006)


def test_c14_push_for_the_least_deceleration_on_the_rear_alone() -> None:
    rear_alone = whole_chain(500.0).rear_force / CAR.mass
    assert rear_alone >= 2.44
    assert effort_for(500.0, rear_alone, 2.44) == pytest.approx(346.9, abs=0.06)


def test_c17_energy_and_rise_of_a_disc_in_one_stop() -> None:
    energy = moving_energy(900.0, 100.0 / 3.6)
    heat = brake_heat(energy, k_rot=1.05, share=0.68, q=0.95, n=2.0)
    assert energy / 1000.0 == pytest.approx(347.22, abs=0.006)
    assert heat / 1000.0 == pytest.approx(117.76, abs=0.006)
    assert disc_rise(heat, 4.5, 480.0) == pytest.approx(54.52, abs=0.006)


@pytest.mark.parametrize(
    ("mu", "leading", "trailing", "simplex", "duplex", "duo_servo"),
    [
        (0.30, 1.0000, 0.4286, 1.4286, 2.0000, 3.3333),
        (0.35, 1.3125, 0.4773, 1.7898, 2.6250, 4.9219),
        (0.40, 1.7143, 0.5217, 2.2360, 3.4286, 7.3469),
    ],
)
def test_c21_shoe_factors(
    mu: float, leading: float, trailing: float, simplex: float, duplex: float, duo_servo: float
) -> None:
    lead = leading_factor(mu, h=150.0, b=75.0, r=100.0)
    trail = trailing_factor(mu, h=150.0, b=75.0, r=100.0)
    second = leading_factor(mu, h=150.0, b=150.0 - 75.0, r=100.0)
    assert lead == pytest.approx(leading, abs=0.00006)
    assert trail == pytest.approx(trailing, abs=0.00006)
    assert simplex_factor(lead, trail) == pytest.approx(simplex, abs=0.00006)
    assert duplex_factor(lead) == pytest.approx(duplex, abs=0.00006)
    factor = duo_servo_factor(lead, passed_on(lead, mu), second)
    assert factor == pytest.approx(duo_servo, abs=0.00006)


def test_c21_simplex_torque_and_grabbing() -> None:
    factor = simplex_factor(
        leading_factor(0.35, h=150.0, b=75.0, r=100.0),
        trailing_factor(0.35, h=150.0, b=75.0, r=100.0),
    )
    torque = brake_torque(factor, 4.0, bore_area(19.05), 100.0)
    assert torque / 1000.0 == pytest.approx(204.05, abs=0.006)
    assert grabbing_friction(b=75.0, r=100.0) == 0.75
    assert leading_factor(0.76, h=150.0, b=75.0, r=100.0) == np.inf


def at_500(car: Car = CAR) -> BrakeResult:
    return respond(
        car,
        Tandem(bore=22.225, stroke=34.0),
        DISC_FRONT,
        DISC_REAR,
        PLUMBING,
        ratios=Ratios(hard_stop=5.0, front_alone=5.0, rear_alone=5.0),
        pad_travel=(70.0, 90.0, 90.0),
    )


def test_c14_through_the_room() -> None:
    found = at_500()
    assert found.at_grip.front_alone_500 == pytest.approx(4.468, abs=0.0006)
    assert found.at_grip.rear_alone_500 == pytest.approx(3.517, abs=0.0006)
    assert found.effort_rear_alone == pytest.approx(346.9, abs=0.06)
    assert found.effort_6_43 == pytest.approx(326.1, abs=0.06)


def test_c10_least_rate_over_the_limit_line_through_the_room() -> None:
    """C10's car: 68 % in front; the ratio of rate reached to rate asked is least at k = 0.6."""
    pistons = (
        replace(DISC_FRONT, piston_bore=48.0),
        replace(DISC_FRONT, piston_bore=48.0 * np.sqrt(0.32 / 0.68)),
    )
    found = respond(
        CAR,
        Tandem(bore=22.225, stroke=34.0),
        *pistons,
        PLUMBING,
        ratios=Ratios(hard_stop=5.0, front_alone=5.0, rear_alone=5.0),
        pad_travel=(70.0, 90.0, 90.0),
    )
    reached = {0.2: 0.1495, 0.4: 0.3188, 0.6: 0.5124, 0.8: 0.7358}
    over = {k: z / (0.1 + 0.7 * (k - 0.2)) for k, z in reached.items()}
    assert found.nominal.front_share == pytest.approx(0.68)
    assert found.adhesion <= min(over.values()) + 0.0006
    assert found.adhesion == pytest.approx(min(over.values()), rel=0.02)


def test_c17_through_the_room() -> None:
    heated = replace(DISC_FRONT, rotor=Rotor(mass=4.5))
    rise = stop_rise(CAR, heated, 0.68)
    assert rise is not None
    assert rise.one_stop == pytest.approx(54.52, abs=0.006)
