"""A pedal box on a slide, as a whole and driver by driver."""

from dataclasses import replace

import pytest

from pedalwright.assess import Assessment, Placed, assess
from pedalwright.design import Design
from pedalwright.project import car_text, read

BY = 60.0


@pytest.fixture(scope="module")
def improved() -> Design:
    return read(car_text("larkfield-improved")).design


def with_slides(design: Design, *, d1: float | None, d2: float | None) -> Design:
    slides = {"D1": d1, "D2": d2}
    drivers = tuple(replace(person, slide=slides[person.name]) for person in design.drivers)
    return replace(design, drivers=drivers)


def of(assessment: Assessment, name: str) -> Placed:
    return next(placed for placed in assessment.drivers if placed.name == name)


def test_a_box_further_back_has_more_room_ahead_and_the_same_linkage(improved: Design) -> None:
    still, back = assess(improved), assess(replace(improved, slide=BY))
    for one, other in ((still.brake, back.brake), (still.clutch, back.clutch)):
        assert other.lever.pivot.x - one.lever.pivot.x == pytest.approx(BY)
        assert other.room > one.room + 0.9 * BY
        assert other.stroke.ratio == pytest.approx(one.stroke.ratio, rel=1e-9)
    assert back.brake.result.effort_6_43 == pytest.approx(still.brake.result.effort_6_43, rel=1e-9)
    assert of(back, "D1").brake.rest.ball.x == pytest.approx(of(still, "D1").brake.rest.ball.x + BY)


def test_each_leg_is_at_its_own_place_and_the_wall_at_the_foremost(improved: Design) -> None:
    still = assess(improved)
    mixed = assess(with_slides(improved, d1=BY, d2=None))
    moved = assess(replace(improved, slide=BY))
    assert mixed.brake.room == pytest.approx(still.brake.room)
    assert mixed.clutch.room == pytest.approx(still.clutch.room)
    for pedal in ("clutch", "brake", "throttle"):
        short, tall = getattr(of(mixed, "D1"), pedal), getattr(of(mixed, "D2"), pedal)
        assert tall.rest == getattr(of(still, "D2"), pedal).rest
        wanted = getattr(of(moved, "D1"), pedal).rest.knee_angle
        assert short.rest.knee_angle == pytest.approx(wanted, rel=1e-9)


def test_a_driver_may_have_it_further_forward_than_drawn(improved: Design) -> None:
    forward = assess(with_slides(improved, d1=None, d2=-20.0))
    assert forward.brake.lever.pivot.x == pytest.approx(improved.brake.pedal.pivot.x - 20.0)
    assert forward.brake.room < assess(improved).brake.room
    still = of(assess(improved), "D1").brake.rest
    assert of(forward, "D1").brake.rest.knee_angle == pytest.approx(still.knee_angle, rel=1e-9)
