"""Larkfield, the invented two-seater: its first attempt's faults are found, and later cured.

The figures in `HAND` are hand estimates made before the program existed, good to 5 % unless a row
says more; ours are derived anew by `assess`.
"""

import pytest

from assess.judged import failing, figures, finding, judged
from pedalwright.assess import Assessment


@pytest.fixture(scope="module")
def first() -> Assessment:
    return judged("larkfield-first")


@pytest.fixture(scope="module")
def improved() -> Assessment:
    return judged("larkfield-improved")


FAULTS = [
    ("driver.ankle_min", "D1, brake, rest"),
    ("brakes.effort", ""),
    ("brakes.one_circuit", "rear circuit alone"),
    ("clutch.release", ""),
    ("throttle.full_opening", ""),
    ("structure.give", "brake, 500 N"),
]


@pytest.mark.parametrize(("code", "about"), FAULTS)
def test_the_first_attempt_has_the_fault(first: Assessment, code: str, about: str) -> None:
    assert (code, about) in failing(first)


@pytest.mark.parametrize(("code", "about"), FAULTS)
def test_the_improved_one_has_not(improved: Assessment, code: str, about: str) -> None:
    assert finding(improved, code, about).ok


def test_the_improved_one_meets_every_must(improved: Assessment) -> None:
    assert failing(improved) == set()


HAND_FIRST = {
    "driver.D1.brake.rest.sole": 67.0,
    "driver.D1.brake.rest.ankle": 69.0,
    "driver.D1.brake.pad_above_heel": 180.0,
    "linkage.brake.ratio": 4.0,
    "brakes.line_pressure_500N": 3.63,
    "brakes.deceleration_500N": 0.63 * 9.81,
    "brakes.front_share": 0.72,
    "brakes.effort_6_43": 517.0,
    "brakes.rear_alone_500N": 1.7,
    "clutch.travel_needed": 152.0,
    "clutch.travel_available": 146.5,
    "throttle.spindle_angle": 32.0,
}
HAND_IMPROVED = {
    "linkage.brake.ratio": 5.1,
    "linkage.brake.rod_angle_max": 2.2,
    "driver.D1.brake.pad_above_heel": 157.0,
    "driver.D1.clutch.pad_above_heel": 155.0,
    "driver.D1.brake.rest.knee": 105.0,
    "driver.D1.brake.full.knee": 125.0,
    "driver.D1.clutch.full.knee": 145.0,
    "driver.D1.brake.rest.ankle": 80.0,
    "driver.D1.brake.full.ankle": 92.0,
    "driver.D1.clutch.full.ankle": 99.0,
    "driver.D2.brake.rest.knee": 103.0,
    "driver.D2.brake.full.knee": 120.0,
    "driver.D2.clutch.full.knee": 136.0,
    "driver.D2.brake.rest.ankle": 86.0,
    "driver.D2.brake.full.ankle": 97.0,
    "driver.D2.clutch.full.ankle": 102.0,
    "brakes.line_pressure_500N": 4.81 * 500 / 350,
    "brakes.deceleration_500N": 0.84 * 9.81 * 500 / 350,
    "brakes.critical_deceleration": 1.1 * 9.81,
    "brakes.rear_alone_500N": 3.2,
    "brakes.pad_travel_hard_stop": 74.0,
    "clutch.travel_needed": 135.0,
    "clutch.travel_available": 150.0,
    "clutch.master_stroke": 27.0,
    "clutch.effort": 139.0,
    "clutch.travel_at_6_to_1": 165.0,
    "throttle.spindle_angle": 79.0,
}


@pytest.mark.parametrize(("name", "estimate"), HAND_FIRST.items(), ids=HAND_FIRST.keys())
def test_first_attempt_by_hand(first: Assessment, name: str, estimate: float) -> None:
    assert figures(first)[name] == pytest.approx(estimate, rel=0.05)


@pytest.mark.parametrize(("name", "estimate"), HAND_IMPROVED.items(), ids=HAND_IMPROVED.keys())
def test_improved_by_hand(improved: Assessment, name: str, estimate: float) -> None:
    assert figures(improved)[name] == pytest.approx(estimate, rel=0.05)


def test_the_first_mounts_give_tens_of_millimetres(first: Assessment) -> None:
    assert 20.0 < figures(first)["structure.give_500N"] < 100.0


def test_the_improved_flange_gives_at_most_one(improved: Assessment) -> None:
    assert figures(improved)["structure.flange_give_500N"] <= 1.0
