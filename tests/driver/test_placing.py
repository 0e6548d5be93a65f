"""Which posture a pedal gets: heel down, heel lifted, or turning about the heel."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.core.points import Point
from pedalwright.core.working import working
from pedalwright.driver import Driver, Person, place, place_on_accelerator
from pedalwright.driver.feet import heel_fixed_on_pad
from pedalwright.driver.legs import heel_lifted

DRIVER = Driver(name="D", person=Person(stature=1750), hip=Point(1050.0, 350.0, 150.0), trunk=0.5)
LOW, FORWARD = Point(210.0, 400.0, 150.0), Point(150.0, 400.0, 140.0)
STEEP = Point(210.0, 400.0, 190.0)
HIGH = Point(210.0, 400.0, 215.0)


def test_the_heel_slides_on_its_rest_under_a_pad_it_can_reach() -> None:
    seated = place(DRIVER, LOW, FORWARD, 0.0)
    assert float(seated.lift_rest) == float(seated.lift_full) == 0.0
    assert float(seated.full.heel.x) < float(seated.rest.heel.x)
    assert float(seated.slide) == 0.0
    assert seated.full.knee.y == 400.0


def test_a_pad_higher_than_the_sole_is_long_lifts_the_heel_by_what_is_told() -> None:
    seated = place(DRIVER, LOW, HIGH, 0.0)
    expected = heel_lifted(seated.body, DRIVER.hip, DRIVER.trunk, HIGH, np.pi / 2)
    assert seated.lifts
    assert float(seated.lift_rest) == 0.0
    assert float(seated.lift_full) == float(expected.heel.z) > 0.0
    assert float(seated.pad_above_heel) == 215.0
    assert np.rad2deg(seated.full.ankle_angle) == pytest.approx(90.0)


def test_a_clutch_foot_lifts_rather_than_bend_too_far_and_a_brake_foot_does_not() -> None:
    brake = place(DRIVER, STEEP, STEEP, 0.0)
    clutch = place(DRIVER, STEEP, STEEP, 0.0, heel_may_lift=True)
    assert np.rad2deg(brake.rest.ankle_angle) < 75
    assert not brake.lifts
    assert np.rad2deg(clutch.rest.ankle_angle) == pytest.approx(90.0)
    assert clutch.lifts


def test_a_clutch_foot_that_is_too_short_with_the_heel_down_lifts_it() -> None:
    far = Point(80.0, 400.0, 202.0)
    kept = place(DRIVER, LOW, far, 0.0)
    assert np.isnan(kept.full.knee_angle)
    assert float(kept.full.shortfall) > 0.0
    lifted = place(DRIVER, LOW, far, 0.0, heel_may_lift=True)
    assert np.isfinite(lifted.full.knee_angle)
    assert float(lifted.lift_full) > 0.0
    assert float(lifted.lift_rest) == 0.0


def test_the_accelerator_foot_turns_about_a_heel_that_stays() -> None:
    seated = place_on_accelerator(DRIVER, LOW, FORWARD, 0.0, rounding=12.0)
    rest, full = seated.rest, seated.full
    assert (float(full.heel.x), float(full.heel.z)) == (float(rest.heel.x), 0.0)
    assert float(full.sole_angle) < float(rest.sole_angle)
    at_rest = heel_fixed_on_pad(seated.body, DRIVER.hip, 0.5, rest.heel, LOW, 12.0)
    assert float(at_rest.along_sole) == pytest.approx(float(seated.body.heel_to_ball))
    pressed = heel_fixed_on_pad(seated.body, DRIVER.hip, 0.5, rest.heel, FORWARD, 12.0)
    slide = float(pressed.along_sole - at_rest.along_sole)
    assert float(seated.slide) == pytest.approx(slide)
    assert slide > 1.0


def test_an_accelerator_out_of_the_heels_reach_lifts_it_too() -> None:
    seated = place_on_accelerator(DRIVER, HIGH, HIGH, 0.0)
    assert seated.lifts
    assert float(seated.slide) == 0.0
    assert np.rad2deg(seated.rest.ankle_angle) == pytest.approx(90.0)


def test_a_driver_nobody_measured_is_placed_nowhere_and_nothing_breaks() -> None:
    nobody = replace(DRIVER, person=Person(stature=np.nan))
    seated = place(nobody, LOW, FORWARD, 0.0)
    assert np.isnan(seated.rest.knee_angle)


def test_the_working_tells_the_sums_of_rest_and_full_travel_apart() -> None:
    with working() as sheet:
        place(DRIVER, LOW, FORWARD, 0.0)
    knees = [step.subject for step in sheet if step.formula.name == "driver.knee_angle"]
    assert knees == ["rest", "full travel"]
