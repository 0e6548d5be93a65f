"""Brackwater, the invented car on drums: a fix that looks right and is not, and one that is.

The figures in `HAND` are hand estimates made before the program existed, good to 5 %; ours are
derived anew by `assess`.
"""

import pytest

from assess.judged import failing, figures, finding, judged
from pedalwright.assess import Assessment, assess
from pedalwright.project import car_text, changed, read

G = 9.81


@pytest.fixture(scope="module")
def first() -> Assessment:
    return judged("brackwater-first")


@pytest.fixture(scope="module")
def fix1() -> Assessment:
    return judged("brackwater-fix1")


@pytest.fixture(scope="module")
def fix2() -> Assessment:
    return judged("brackwater-fix2")


FAULTS = [
    ("driver.heel_lift", "D1, brake"),
    ("brakes.lock_order", ""),
    ("throttle.full_opening", ""),
    ("structure.give", "brake, 500 N"),
    ("structure.flange_give", "brake, 500 N"),
]


@pytest.mark.parametrize(("code", "about"), FAULTS)
def test_the_first_attempt_has_the_fault(first: Assessment, code: str, about: str) -> None:
    assert (code, about) in failing(first)


@pytest.mark.parametrize(("code", "about"), FAULTS)
def test_the_second_fix_has_not(fix2: Assessment, code: str, about: str) -> None:
    assert finding(fix2, code, about).ok


def test_the_tempting_fix_cures_the_balance_and_leaves_one_circuit_too_weak(
    first: Assessment, fix1: Assessment
) -> None:
    brakes = {about for about in failing(fix1) if about[0].partition(".")[0] == "brakes"}
    assert brakes == {("brakes.one_circuit", "rear circuit alone")}
    # It touches nothing else that was wrong.
    assert failing(fix1) - brakes == failing(first) - {("brakes.lock_order", "")}


def test_the_second_fix_meets_every_must(fix2: Assessment) -> None:
    assert failing(fix2) == set()


def test_what_the_second_fix_leaves_to_be_wished(fix2: Assessment) -> None:
    """The clutch pad is 33 from the outer wall, the shoe on the brake 5 from the column."""
    assert {("driver.gap_clutch_wall", ""), ("linkage.clear_shoe", "D1, brake")} <= failing(
        fix2, "should"
    )
    assert finding(fix2, "driver.gap_clutch_wall", "").value == pytest.approx(33.0, rel=0.05)
    assert finding(fix2, "linkage.clear_shoe", "D1, brake").value == pytest.approx(5.0, abs=2.5)


HAND_FIRST = {
    "linkage.brake.ratio": 4.3,
    "driver.D1.brake.pad_above_heel": 206.0,
    "brakes.critical_deceleration_low": 0.66 * G,
    "throttle.spindle_angle": 32.0,
}
HAND_FIX1 = {
    "brakes.critical_deceleration": 1.02 * G,
    "brakes.rear_alone_500N": 2.345,
}
HAND_FIX2 = {
    "linkage.brake.ratio": 5.0,
    "brakes.deceleration_500N": 0.58 * G * 500 / 350,
    "brakes.critical_deceleration": 1.02 * G,
    "brakes.rear_alone_500N": 2.69,
    "throttle.spindle_angle": 75.0,
    "linkage.clutch.ratio": 3.4,
    "clutch.travel_needed": ((7.0 + 1.0) * 4.2 + 1.5) * 3.4,
    "clutch.effort": 1100.0 / (4.2 * 3.4 * 0.85),
}


@pytest.mark.parametrize(("name", "estimate"), HAND_FIRST.items(), ids=HAND_FIRST.keys())
def test_first_attempt_by_hand(first: Assessment, name: str, estimate: float) -> None:
    assert figures(first)[name] == pytest.approx(estimate, rel=0.05)


@pytest.mark.parametrize(("name", "estimate"), HAND_FIX1.items(), ids=HAND_FIX1.keys())
def test_first_fix_by_hand(fix1: Assessment, name: str, estimate: float) -> None:
    assert figures(fix1)[name] == pytest.approx(estimate, rel=0.05)


@pytest.mark.parametrize(("name", "estimate"), HAND_FIX2.items(), ids=HAND_FIX2.keys())
def test_second_fix_by_hand(fix2: Assessment, name: str, estimate: float) -> None:
    assert figures(fix2)[name] == pytest.approx(estimate, rel=0.05)


def test_the_sole_is_shorter_than_the_first_pad_is_high(first: Assessment) -> None:
    heel = finding(first, "driver.heel_lift", "D1, brake")
    assert heel.bound == pytest.approx(201.0, rel=0.005)


def test_the_floors_bracket_is_pushed_back_and_the_bulkhead_forward(first: Assessment) -> None:
    """For 500 N: 3.2 times on the bracket, rearward; 4.2 times on the bulkhead, forward."""
    forces = first.brake.forces
    bracket = -forces.pivot.x
    assert bracket == pytest.approx(3.2 * 500.0, rel=0.05)
    assert forces.piston == pytest.approx(4.2 * 500.0, rel=0.05)


def test_with_a_better_lining_the_second_fix_stops_harder() -> None:
    """0.82 g for 350 N once the linings of both axles grip at 0.42 instead of 0.35."""
    project = read(car_text("brackwater-fix2"))
    better = changed(project, {"brake.front.factor": "4.4", "brake.rear.factor": "2.6"})
    at_500 = figures(assess(better.design))["brakes.deceleration_500N"]
    assert at_500 * 350 / 500 / G == pytest.approx(0.82, rel=0.05)


def test_the_masters_strokes_by_hand(fix2: Assessment) -> None:
    """8.5 in front, 7.1 behind: the bar's bearing moves half of their sum."""
    assert figures(fix2)["linkage.brake.piston_travel"] == pytest.approx((8.5 + 7.1) / 2, rel=0.05)
