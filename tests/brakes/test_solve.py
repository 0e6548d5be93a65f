"""From pressure to deceleration: which brake is which, and what is left with a circuit lost."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.brakes import (
    BrakeResult,
    Car,
    Disc,
    Drum,
    Plumbing,
    Ratios,
    brake_at,
    demand,
    earliest_rear_lock,
    respond,
)
from pedalwright.core.working import working
from pedalwright.hydraulics import Tandem

CAR = Car(mass=900.0, front_share=0.48, wheelbase=2300.0, cg_height=460.0, tyre_radius=300.0)
TANDEM = Tandem(bore=20.64, stroke=36.0)
DISC = Disc(
    piston_bore=54.0,
    pistons_one_side=1.0,
    pistons_moved=2.0,
    effective_radius=112.0,
    friction_low=0.30,
    friction=0.36,
    friction_high=0.42,
    lift=0.28,
)
DRUM = Drum(
    cylinder_bore=19.05,
    pistons_moved=2.0,
    drum_radius=127.0,
    factor_low=2.0,
    factor=2.2,
    factor_high=2.6,
    lift=0.85,
)
PLUMBING = Plumbing(hoses=900.0, dead_stroke=1.5, efficiency=0.92)
SYSTEM = (CAR, TANDEM, DISC, DRUM, PLUMBING)


def found(car: Car = CAR) -> BrakeResult:
    return respond(
        car,
        *SYSTEM[1:],
        ratios=Ratios(hard_stop=5.2, front_alone=5.6, rear_alone=5.8),
        pad_travel=(74.0, 120.0, 130.0),
    )


@pytest.mark.parametrize(
    ("friction", "mu", "factor"), [("low", 0.30, 2.0), ("nominal", 0.36, 2.2), ("high", 0.42, 2.6)]
)
def test_each_friction_takes_its_own_numbers(friction: str, mu: float, factor: float) -> None:
    here = brake_at(*SYSTEM, push=500.0, ratio=5.2, friction=friction)  # type: ignore[arg-type]
    pressure = 500.0 * 5.2 * 0.92 / (np.pi / 4.0 * 20.64**2)
    disc = 2.0 * mu * pressure * np.pi / 4.0 * 54.0**2 * 112.0
    drum = factor * pressure * np.pi / 4.0 * 19.05**2 * 127.0
    assert here.front_torque == pytest.approx(disc)
    assert here.rear_torque == pytest.approx(drum)
    force = 2.0 * (disc + drum) / 300.0
    assert here.front_force + here.rear_force == pytest.approx(force)
    assert here.deceleration == pytest.approx(force / 900.0)


def test_a_lost_circuit_is_judged_at_its_own_deeper_pedal() -> None:
    result = found()
    share = result.at_500.front_share
    whole = result.at_500.deceleration
    assert result.front_alone_500 == pytest.approx(whole * share * 5.6 / 5.2)
    assert result.rear_alone_500 == pytest.approx(whole * (1.0 - share) * 5.8 / 5.2)
    travels = (
        result.pad_travel_hard_stop,
        result.pad_travel_front_alone,
        result.pad_travel_rear_alone,
    )
    assert travels == (74.0, 120.0, 130.0)


def test_the_ideal_share_is_that_of_the_stop_itself() -> None:
    result = found()
    z = result.at_500.deceleration / 9.81
    assert result.ideal_share == pytest.approx(0.48 + z * 460.0 / 2300.0)


def test_the_earliest_lock_counts_over_all_frictions() -> None:
    result = found()
    ends = [result.low.critical, result.nominal.critical, result.high.critical]
    assert len({round(float(end), 6) for end in ends}) == 3
    assert earliest_rear_lock(result) == min(ends)


def test_the_curves_run_to_one_g() -> None:
    result = found()
    rates = np.asarray(result.decelerations) / 9.81
    assert rates[[0, -1]] == pytest.approx([0.1, 1.0])
    assert np.shape(result.front_utilisation) == np.shape(result.rear_utilisation) == (19,)
    assert np.all(np.diff(result.rear_utilisation) > 0.0)


def test_a_missing_number_stays_missing() -> None:
    result = found(replace(CAR, cg_height=np.nan))
    assert np.isnan(result.ideal_share)
    assert np.isnan(earliest_rear_lock(result))
    assert np.isfinite(result.at_500.deceleration)
    assert np.all(np.isfinite(result.decelerations))


def test_both_wheels_of_an_axle_and_half_of_the_hoses() -> None:
    fluid = demand(DISC, DRUM, PLUMBING)
    assert fluid.front == pytest.approx(4.0 * np.pi / 4.0 * 54.0**2 * 0.28 + 450.0)
    assert fluid.rear == pytest.approx(4.0 * np.pi / 4.0 * 19.05**2 * 0.85 + 450.0)


def test_the_curves_leave_no_working() -> None:
    with working() as sheet:
        found()
    symbols = [step.formula.symbol for step in sheet]
    assert symbols.count("z_crit") == 3
    assert "f_front" not in symbols
    assert all(np.ndim(step.value) == 0 for step in sheet)
