"""Distances in space that can be read off without a calculation."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.core.points import Point
from pedalwright.driver import (
    Body,
    Pad,
    Posture,
    Row,
    knee_to_rim,
    shin_to_column,
    shoe_room,
    sole_at,
    thigh_to_rim,
)
from pedalwright.driver.clearances import KNEE_RADIUS, SHIN_RADIUS
from pedalwright.survey.parts import Line

LEG = Body(
    thigh=430,
    shank=420,
    heel_to_ball=200,
    ankle_forward=50,
    ankle_height=90,
    shoe_length=290,
    shoe_width=100,
)


def with_shin(knee: Point, ankle: Point) -> Posture:
    sample = sole_at(LEG, Point(700.0, 0.0, 200.0), 0.4, Point(0.0, 0.0, 0.0), 1.0)
    return replace(sample, knee=knee, ankle=ankle)


ALONG = with_shin(Point(400.0, 0.0, 0.0), Point(0.0, 0.0, 0.0))


@pytest.mark.parametrize(
    ("start", "end", "apart"),
    [
        pytest.param((200, -300, 150), (200, 300, 150), 150, id="crosses above the middle"),
        pytest.param((500, -300, 0), (500, 300, 0), 100, id="passes beyond the knee"),
        pytest.param((200, 120, 0), (200, 600, 0), 120, id="ends short of the shin"),
        pytest.param((-300, 90, 120), (900, 90, 120), 150, id="parallel"),
        pytest.param((200, -300, 0), (200, 300, 0), 0, id="through the shin"),
    ],
)
def test_shin_to_column_in_space(
    start: tuple[float, float, float], end: tuple[float, float, float], apart: float
) -> None:
    column = Line(name="column", start=Point(*start), end=Point(*end), diameter=20.0)
    expected = apart - SHIN_RADIUS - 10.0
    assert float(shin_to_column(ALONG, column)) == pytest.approx(expected, abs=1e-9)


def test_no_pair_of_points_is_nearer_than_the_distance_told() -> None:
    """Any shin and column, against the nearest of 201 x 201 points along them."""
    rng = np.random.default_rng(3)
    along = np.linspace(0.0, 1.0, 201)
    for _ in range(40):
        knee, ankle, start, end = (Point(*rng.uniform(-400.0, 400.0, 3)) for _ in range(4))
        shin = knee + (ankle - knee) * along[:, np.newaxis]
        shaft = start + (end - start) * along
        nearest = float(np.min((shin - shaft).length()))
        column = Line(name="column", start=start, end=end, diameter=20.0)
        told = float(shin_to_column(with_shin(knee, ankle), column)) + SHIN_RADIUS + 10.0
        assert told <= nearest + 1e-9
        assert told == pytest.approx(nearest, abs=5.0)


def test_a_batch_of_columns_equals_its_singles() -> None:
    heights = np.array([0.0, 40.0, 150.0])
    many = Line(
        name="column",
        start=Point(200.0, -300.0, heights),
        end=Point(200.0, 300.0, heights),
        diameter=20.0,
    )
    found = shin_to_column(ALONG, many)
    assert found == pytest.approx(heights - SHIN_RADIUS - 10.0)


def test_the_rim_is_judged_from_the_side() -> None:
    posture = with_shin(Point(400.0, 90.0, 300.0), Point(0.0, 90.0, 100.0))
    posture = replace(posture, hip=Point(800.0, 90.0, 300.0))
    above_the_thigh = Point(600.0, -50.0, 400.0)
    assert float(knee_to_rim(posture, Point(400.0, -50.0, 400.0))) == 100 - KNEE_RADIUS
    assert float(thigh_to_rim(posture, above_the_thigh)) == pytest.approx(100 - KNEE_RADIUS)
    assert float(knee_to_rim(posture, above_the_thigh)) > 100


def test_room_beside_the_shoes() -> None:
    row = Row(
        left_wall=100,
        clutch=Pad(middle=180, width=55),
        brake=Pad(middle=290, width=60),
        accelerator=Pad(middle=395, width=45),
        right_wall=460,
    )
    room = shoe_room(row, 96)
    assert (room.between_shoes, room.left_wall, room.right_wall) == (14, 32, 17)
