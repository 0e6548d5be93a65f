"""Saltmarsh, the invented coupe typed in inches: two drivers, a fixed seat, pedals that slide.

The figures in `HAND` are hand estimates made before the program existed, good to 5 %; ours are
derived anew by `assess`.
"""

import numpy as np
import pytest

from assess.judged import failing, figures, finding, judged
from pedalwright.assess import Assessment, assess
from pedalwright.project import car_text, changed, read

G = 9.81
INCH, LBF = 25.4, 4.448222


@pytest.fixture(scope="module")
def first() -> Assessment:
    return judged("saltmarsh-first")


@pytest.fixture(scope="module")
def improved() -> Assessment:
    return judged("saltmarsh-improved")


FAULTS = [
    ("clutch.stroke", ""),
    ("clutch.release", ""),
    ("driver.reach", "D1, clutch, full"),
]


@pytest.mark.parametrize(("code", "about"), FAULTS)
def test_the_first_attempt_has_the_fault(first: Assessment, code: str, about: str) -> None:
    assert (code, about) in failing(first)


@pytest.mark.parametrize(("code", "about"), FAULTS)
def test_the_improved_one_has_not(improved: Assessment, code: str, about: str) -> None:
    assert finding(improved, code, about).ok


def test_nothing_else_fails_in_the_first_attempt(first: Assessment) -> None:
    """A leg that does not reach has no knee and no ankle to judge, either."""
    nowhere = {("driver.knee_full", FAULTS[2][1]), ("driver.ankle_min", FAULTS[2][1])}
    assert failing(first) == {*FAULTS, *nowhere}


def test_the_improved_one_meets_every_must(improved: Assessment) -> None:
    assert failing(improved) == set()


def test_the_big_shoe_on_the_accelerator_touches_the_wall(improved: Assessment) -> None:
    assert ("driver.shoe_wall", "D2, accelerator") in failing(improved, "should")
    room = finding(improved, "driver.shoe_wall", "D2, accelerator").value
    assert room == pytest.approx(0.0, abs=2.5)
    assert finding(improved, "driver.shoe_wall", "D1, accelerator").ok


def test_the_first_brake_is_touchy(first: Assessment, improved: Assessment) -> None:
    assert ("brakes.firm", "") in failing(first, "should")
    assert finding(improved, "brakes.firm", "").ok


HAND_FIRST = {
    "linkage.brake.ratio": 5.2,
    "brakes.deceleration_500N": 0.82 * G * 500 / (60 * LBF),
    "brakes.critical_deceleration": 0.88 * G,
    "clutch.master_stroke": 1.70 * INCH,
}
HAND_IMPROVED = {
    "linkage.brake.ratio": 5.2,
    "linkage.clutch.ratio": 5.2,
    "linkage.brake.pivot_force_500N": 6.1 * 500,
    "brakes.deceleration_500N": 0.96 * G * 500 / (100 * LBF),
    "brakes.critical_deceleration": 1.07 * G,
    "clutch.travel_needed": 4.6 * INCH,
    "clutch.travel_available": 5.0 * INCH,
    "clutch.effort": 31 * LBF,
    "throttle.spindle_angle": np.rad2deg(2.4 / 7.5 * 5.0 / 1.1),
    "driver.D1.clutch.rest.knee": 110.0,
    "driver.D1.clutch.full.knee": 148.0,
    "driver.D2.clutch.rest.knee": 100.0,
    "driver.D2.clutch.full.knee": 124.0,
}


@pytest.mark.parametrize(("name", "estimate"), HAND_FIRST.items(), ids=HAND_FIRST.keys())
def test_first_attempt_by_hand(first: Assessment, name: str, estimate: float) -> None:
    assert figures(first)[name] == pytest.approx(estimate, rel=0.05)


@pytest.mark.parametrize(("name", "estimate"), HAND_IMPROVED.items(), ids=HAND_IMPROVED.keys())
def test_improved_by_hand(improved: Assessment, name: str, estimate: float) -> None:
    assert figures(improved)[name] == pytest.approx(estimate, rel=0.05)


def test_the_next_smaller_clutch_cylinder_would_not_release() -> None:
    """13/16 needs 5.3 of the 5.0 there is."""
    smaller = changed(read(car_text("saltmarsh-improved")), {"clutch.master.bore": "13/16 in"})
    assessment = assess(smaller.design)
    assert figures(assessment)["clutch.travel_needed"] == pytest.approx(5.3 * INCH, rel=0.05)
    assert ("clutch.release", "") in failing(assessment)


def test_inches_and_pounds_are_read_as_such() -> None:
    car = read(car_text("saltmarsh-improved")).design
    assert car.car.mass == pytest.approx(1950 * 0.45359237, rel=1e-12)
    assert car.drivers[0].person.stature == pytest.approx(62 * INCH, rel=1e-12)
    assert car.clutch.release.release_load == pytest.approx(320 * LBF, rel=1e-6)
    assert car.brake.plumbing.hoses == pytest.approx(0.06 * INCH**3, rel=1e-12)
