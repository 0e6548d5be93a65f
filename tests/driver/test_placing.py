"""Which posture a pedal gets: heel down, heel lifted, or turning about the heel."""

from dataclasses import replace

import numpy as np
import pytest
from driver.stands import FAR, on, tread

from pedalwright.core.points import Point
from pedalwright.core.working import working
from pedalwright.driver import HARDEST, Driver, Person, place, place_all
from pedalwright.driver.body import HIP_JOINTS_APART
from pedalwright.driver.feet import heel_fixed_on_pad
from pedalwright.driver.legs import heel_lifted

DRIVER = Driver(name="D", person=Person(stature=1750), hip=Point(1050.0, 350.0, 150.0), trunk=0.5)
RIGHT_HIP = Point(1050.0, 350.0 + HIP_JOINTS_APART / 2, 150.0)
LOW, FORWARD = Point(210.0, 400.0, 150.0), Point(150.0, 400.0, 140.0)
STEEP = Point(210.0, 400.0, 190.0)
HIGH = Point(210.0, 400.0, 215.0)


def test_the_heel_slides_on_its_rest_under_a_pad_it_can_reach() -> None:
    seated = on(DRIVER, LOW, FORWARD, 0.0)
    assert float(seated.lift_rest) == float(seated.lift_full) == 0.0
    assert float(seated.full.heel.x) < float(seated.rest.heel.x)
    assert float(seated.slide) == 0.0
    assert seated.full.ball.y == pytest.approx(400.0)


def test_a_pad_higher_than_the_sole_is_long_lifts_the_heel_by_what_is_told() -> None:
    seated = on(DRIVER, LOW, HIGH, 0.0)
    expected = heel_lifted(seated.body, RIGHT_HIP, DRIVER.trunk, HIGH, np.pi / 2)
    assert seated.lifts
    assert float(seated.lift_rest) == 0.0
    assert float(seated.lift_full) == pytest.approx(float(expected.heel.z))
    assert float(expected.heel.z) > 0.0
    assert float(seated.pad_above_heel) == 215.0
    assert np.rad2deg(seated.full.ankle_angle) == pytest.approx(90.0)
    assert float(seated.full.needed) == pytest.approx(float((HIGH - RIGHT_HIP).length()))


def test_a_clutch_foot_lifts_rather_than_bend_too_far_and_a_brake_foot_does_not() -> None:
    brake = on(DRIVER, STEEP, STEEP, 0.0)
    clutch = on(DRIVER, STEEP, STEEP, 0.0, heel="may lift")
    assert np.rad2deg(brake.rest.ankle_angle) < 75
    assert not brake.lifts
    assert np.rad2deg(clutch.rest.ankle_angle) == pytest.approx(90.0)
    assert clutch.lifts


def test_a_clutch_foot_that_is_too_short_with_the_heel_down_lifts_it() -> None:
    far = Point(80.0, 400.0, 202.0)
    kept = on(DRIVER, LOW, far, 0.0)
    assert np.isnan(kept.full.knee_angle)
    assert float(kept.full.shortfall) > 0.0
    lifted = on(DRIVER, LOW, far, 0.0, heel="may lift")
    assert np.isfinite(lifted.full.knee_angle)
    assert float(lifted.lift_full) > 0.0
    assert float(lifted.lift_rest) == 0.0


def test_a_clutch_foot_lifts_rather_than_stretch_the_knee_too_far() -> None:
    """The heel comes off where the knee would pass 160 degrees with it down, if that is enough."""
    near, far = Point(90.0, 400.0, 190.0), Point(54.0, 400.0, 185.0)
    kept, free = on(DRIVER, LOW, near, -12.0), on(DRIVER, LOW, near, -12.0, heel="may lift")
    assert np.rad2deg(kept.full.knee_angle) > 160.0
    assert np.rad2deg(free.full.knee_angle) < 160.0
    assert free.lifts
    kept, free = on(DRIVER, LOW, far, 0.0), on(DRIVER, LOW, far, 0.0, heel="may lift")
    assert 160.0 < np.rad2deg(kept.full.knee_angle) < 180.0
    assert float(free.full.knee_angle) == float(kept.full.knee_angle)
    assert not free.lifts


def test_the_accelerator_foot_turns_about_a_heel_that_stays() -> None:
    seated = on(DRIVER, LOW, FORWARD, 0.0, heel="stays", rounding=12.0)
    rest, full = seated.rest, seated.full
    assert (float(full.heel.x), float(full.heel.z)) == (float(rest.heel.x), 0.0)
    assert float(full.sole_angle) < float(rest.sole_angle)
    at_rest = heel_fixed_on_pad(seated.body, RIGHT_HIP, 0.5, rest.heel, LOW, 12.0)
    assert float(at_rest.along_sole) == pytest.approx(float(seated.body.heel_to_ball))
    pressed = heel_fixed_on_pad(seated.body, RIGHT_HIP, 0.5, rest.heel, FORWARD, 12.0)
    slide = float(pressed.along_sole - at_rest.along_sole)
    assert float(seated.slide) == pytest.approx(slide)
    assert slide > 1.0


def test_an_accelerator_out_of_the_heels_reach_lifts_it_too() -> None:
    seated = on(DRIVER, HIGH, HIGH, 0.0, heel="stays")
    assert seated.lifts
    assert float(seated.slide) == 0.0
    assert np.rad2deg(seated.rest.ankle_angle) == pytest.approx(90.0)


def test_a_leg_that_reaches_sideways_is_longer_to_span_and_opens_the_knee() -> None:
    """By Pythagoras: the same leg on a pad 85 in front of its hip joint, and 85 beside that."""
    straight = on(DRIVER, replaced(LOW, RIGHT_HIP.y), replaced(LOW, RIGHT_HIP.y), 0.0).rest
    aside = on(DRIVER, replaced(LOW, 350.0), replaced(LOW, 350.0), 0.0).rest
    level = float(straight.ankle.x - straight.hip.x)
    ball = float(LOW.x - RIGHT_HIP.x)
    longer = np.hypot(ball, 85.0) - abs(ball)
    rise = float(straight.ankle.z - straight.hip.z)
    assert float(aside.needed) == pytest.approx(np.hypot(abs(level) + longer, rise))
    assert float(aside.knee_angle) > float(straight.knee_angle)
    assert np.rad2deg(aside.splay) == pytest.approx(-np.rad2deg(np.arctan2(85.0, -ball)))
    assert float(straight.splay) == pytest.approx(0.0, abs=1e-12)


def replaced(point: Point, y: float) -> Point:
    return Point(point.x, y, point.z)


def test_knees_turned_out_go_to_their_own_sides_and_keep_their_angle() -> None:
    wide = replace(DRIVER, knees_out=np.deg2rad(20.0))
    for side in (1.0, -1.0):
        kept = on(DRIVER, LOW, FORWARD, 0.0, side=side).rest
        out = on(wide, LOW, FORWARD, 0.0, side=side).rest
        assert float(out.knee.y - kept.knee.y) * side > 20.0
        assert float(out.knee.z) < float(kept.knee.z)
        assert float(out.knee_angle) == pytest.approx(float(kept.knee_angle))
        assert float((out.knee - out.hip).length()) == pytest.approx(
            float((kept.knee - kept.hip).length())
        )


def test_a_sole_that_follows_a_hanging_pad_is_told_to_press_its_heel_into_the_floor() -> None:
    """C3-1 of the independent cases: flush on the pad the heel stands at 20.76, then at -24.69."""
    man = replace(
        DRIVER, person=Person(stature=1750, heel_to_ball=203.0), hip=Point(790.0, 0.0, 255.0)
    )
    pads = (Point(-55.0, 0.0, 200.0), Point(-128.6122, 0.0, 175.2306))
    seated = on(man, *pads, 0.0, faces=np.deg2rad([62.0, 80.0]))
    assert float(seated.heel_if_flush) == pytest.approx(-24.6854, abs=1e-3)
    assert float(seated.lift_full) == 0.0  # the heel is the stop
    up = on(man, pads[0], pads[0], 0.0, faces=np.deg2rad([62.0, 62.0]))
    assert float(up.heel_if_flush) == pytest.approx(20.7616, abs=1e-3)
    tilt = np.rad2deg(np.arcsin(175.2306 / 203.0)) - 80.0
    assert np.rad2deg(seated.tilt) == pytest.approx(abs(tilt), abs=1e-6)


def test_every_driver_and_pedal_at_once_is_each_by_itself() -> None:
    tall = replace(DRIVER, name="E", person=Person(stature=1900), hip=Point(1120.0, 350.0, 140.0))
    stroke = tread(LOW, FORWARD, Point(140.0, 400.0, 138.0), places=("rest", "full", HARDEST))
    gas = tread(replaced(LOW, 480.0), replaced(FORWARD, 480.0), heel="stays")
    together = place_all([(DRIVER, [stroke, gas]), (tall, [gas, stroke])], 0.0, FAR)
    singles = [
        place(one, [pedal], 0.0, FAR)[0]
        for one, pedal in ((DRIVER, stroke), (DRIVER, gas), (tall, gas), (tall, stroke))
    ]
    for seat, single in zip((s for row in together for s in row), singles, strict=True):
        assert seat.places == single.places
        for name in seat.places:
            assert seat.at(name).knee_angle == pytest.approx(single.at(name).knee_angle, rel=1e-12)
            assert seat.at(name).toe.x == pytest.approx(single.at(name).toe.x, rel=1e-12)


def test_a_seat_that_slides_back_is_asked_for_its_reach() -> None:
    """Hip and ankle of the leg at full travel, the hip 60 further back: by Pythagoras."""
    assert on(DRIVER, LOW, FORWARD, 0.0).reach_back is None
    seated = on(replace(DRIVER, seat_back=60.0), LOW, FORWARD, 0.0)
    gap = seated.full.ankle - seated.full.hip
    expected = Point(gap.x - 60.0, gap.y, gap.z).length()
    assert float(seated.reach_back) == pytest.approx(float(expected))


def test_a_driver_nobody_measured_is_placed_nowhere_and_nothing_breaks() -> None:
    nobody = replace(DRIVER, person=Person(stature=np.nan))
    seated = on(nobody, LOW, FORWARD, 0.0)
    assert np.isnan(seated.rest.knee_angle)


def test_the_working_tells_the_sums_of_rest_and_full_travel_apart() -> None:
    with working() as sheet:
        seated = on(DRIVER, LOW, FORWARD, 0.0)
    knees = {step.subject: step for step in sheet if step.formula.name == "driver.knee_angle"}
    assert list(knees) == ["D, brake, rest", "D, brake, full"]
    assert knees["D, brake, full"].value == pytest.approx(seated.full.knee_angle)
    assert np.ndim(knees["D, brake, full"].value) == 0
