"""A car on a slope, and what plumb line, level and phone read there: by rotations of scipy."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.spatial.transform import Rotation
from survey.nets import TRUE, held, place, tapes

from pedalwright.core.points import REARWARD, RIGHT, UP
from pedalwright.survey import Level, Slope, Station, Step, adjust, level

DOWN_BY_THE_BOW, OVER = st.floats(-12.0, 12.0), st.floats(-12.0, 12.0)


def slope(nose_down_deg: float, over_deg: float) -> Rotation:
    """From the car's axes to those of the ground under it; it is not turned about the plumb line.

    Nose down lifts the tail, over lifts the right side.
    """
    nose = Rotation.from_euler("y", -nose_down_deg, degrees=True)
    return nose * Rotation.from_euler("x", over_deg, degrees=True)


def tilts(car: Rotation) -> tuple[float, float]:
    """What a phone shows on the sill and on an edge across both, rad."""
    rearward, right, _ = car.as_matrix().T
    return float(np.arcsin(rearward[2])), float(np.arcsin(right[2]))


def test_a_car_that_stands_level_is_measured_along_its_axes() -> None:
    assert level(None, None) == level(0.0, 0.0) == Level(REARWARD, RIGHT, UP)


@given(DOWN_BY_THE_BOW, OVER)
def test_the_plumb_line_is_where_a_rotation_puts_it(nose_down: float, over: float) -> None:
    car = slope(nose_down, over)
    stood = level(*tilts(car))
    for mine, ground in zip((stood.rearward, stood.right, stood.up), np.eye(3), strict=True):
        expected = car.inv().apply(ground)
        assert [mine.x, mine.y, mine.z] == pytest.approx(expected, abs=1e-9)


@given(DOWN_BY_THE_BOW, OVER)
def test_readings_on_a_slope_place_the_mark_where_it_is_in_the_car(
    nose_down: float, over: float
) -> None:
    """Two tapes, and what was read by plumb line, level and phone."""
    car = slope(nose_down, over)
    stood, there = level(*tilts(car)), car.apply(TRUE)
    angle = float(np.arctan2(there[2], np.hypot(there[0], there[1])))
    sights = [
        *tapes(errors=(0.0, 0.0), names="AB"),
        Step(mark="P", base="A", axis="x", length=there[0], sigma=1.0, way=stood.rearward),
        Step(mark="P", base="", axis="y", length=there[1], sigma=1.0, way=stood.right),
        Step(mark="P", base="A", axis="z", length=there[2], sigma=1.0, way=stood.up),
        Slope(foot="A", head="P", angle=angle, sigma=0.004, up=stood.up),
    ]
    found = adjust([*held(), Station(name="P")], sights)
    assert place(found) == pytest.approx(TRUE, abs=1e-4)
    assert found.unit_weight == pytest.approx(0.0, abs=1e-4)
    assert found.suspicions == ()


def test_a_slope_that_nobody_told_of_is_a_contradiction() -> None:
    there = slope(4.0, 0.0).apply(TRUE)
    sights = [
        *tapes(),
        Step(mark="P", base="A", axis="z", length=float(there[2]), sigma=1.0),
    ]
    (suspicion,) = adjust([*held(), Station(name="P")], sights).suspicions
    assert suspicion.likely == ("P up of A",)
