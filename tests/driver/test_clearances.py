"""Distances in space that can be read off without a calculation."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.core.points import Plane, Point
from pedalwright.driver import (
    Body,
    Posture,
    knee_to_rim,
    shin_to_column,
    sole_at,
    thigh_to_rim,
)
from pedalwright.driver.clearances import (
    INSTEP_RADIUS,
    KNEE_RADIUS,
    OUTLINE,
    SHIN_RADIUS,
    SHOE_HEIGHT,
    TOE_HEIGHT,
    Shoe,
    between_segments,
    xyz,
)
from pedalwright.survey.parts import Line, Obstacle

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


def along_the_car(body: Body = LEG, lean: float = 1.0) -> tuple[Posture, Shoe]:
    """A leg straight along the car in y 0, its heel at the datum."""
    posture = sole_at(body, Point(700.0, 0.0, 200.0), 0.4, Point(0.0, 0.0, 0.0), lean)
    return posture, Shoe.of(body, posture)


def corners(posture: Posture, body: Body) -> list[Point]:
    """The shoe's outline at the sole and at the top of the upper, corner by corner."""
    sole = (posture.toe - posture.heel).unit()
    up = posture.across.cross(sole)
    return [
        posture.heel
        + sole * (body.shoe_length * share)
        + posture.across * (body.shoe_width * half * side)
        + up * height
        for share, half in OUTLINE
        for side in (-1.0, 1.0)
        for height in (0.0, SHOE_HEIGHT)
    ]


@pytest.mark.parametrize("seed", range(12))
def test_the_outline_of_a_shoe_is_as_near_to_a_wall_as_its_nearest_corner(seed: int) -> None:
    rng = np.random.default_rng(seed)
    hip = Point(700.0, *rng.uniform(-200, 200, 1), 200.0)
    posture = sole_at(LEG, hip, 0.4, Point(*rng.uniform(-30, 30, 3)), rng.uniform(0.2, 1.5))
    wall = Plane(normal=Point(*rng.normal(size=3)).unit(), offset=rng.uniform(-400, -200))
    shoe = Shoe.of(LEG, posture)
    normal = xyz(wall.normal)[:, np.newaxis]
    told = shoe.to_planes(normal, np.array([wall.offset]))
    expected = min(float(wall.height(corner)) for corner in corners(posture, LEG))
    assert float(told[0]) == pytest.approx(expected, abs=1e-9)


def test_the_ridge_of_the_instep_against_a_tube_square_above_it() -> None:
    """Flat on the floor: a tube across at half the shoe, 120 up, 22 thick.

    The ridge falls from 45 at 98.0 to 25 at 196.0 ahead of the heel (shoe 280 long).
    """
    body = replace(LEG, shoe_length=280.0)
    posture, shoe = along_the_car(body, lean=0.0)
    tube = Line(name="tube", start=Point(-140, -200, 120), end=Point(-140, 200, 120), diameter=22.0)
    a, b = shoe.ridge()
    gap = between_segments(a, b, xyz(tube.start), xyz(tube.end))
    share = (140.0 - 98.0) / 98.0
    slope = np.arctan2(20.0, 98.0)
    above = (120.0 - (45.0 - 20.0 * share)) * np.cos(slope)
    assert float(gap) == pytest.approx(above, abs=1e-9)
    assert float(posture.toe.x) == -280.0


def test_a_box_above_the_instep() -> None:
    """Its underside 100 up over all of the ridge: nearest at the ridge's rear end, 45 up."""
    _, shoe = along_the_car(lean=0.0)
    box = Obstacle(name="box", low=Point(-300, -100, 100), high=Point(0, 100, 300))
    assert float(shoe.to_box(box)) == pytest.approx(100.0 - 45.0 - INSTEP_RADIUS)


def test_the_toecap_under_a_cover() -> None:
    _, shoe = along_the_car(lean=0.0)
    cover = Plane(normal=Point(0.0, 0.0, -1.0), offset=-150.0)
    assert float(shoe.toe_to_cover(cover)) == pytest.approx(150.0 - TOE_HEIGHT)


def test_a_wide_foot_swung_by_its_leg_takes_more_room_across() -> None:
    """The leg reaches 100 to the side over 700: the toes point where the leg points."""
    posture = sole_at(LEG, Point(700.0, 100.0, 200.0), 0.4, Point(0.0, 0.0, 0.0), 0.0)
    turn = np.arctan2(100.0, 700.0)
    tip = LEG.shoe_length * np.sin(turn)
    assert float(posture.toe.y) == pytest.approx(-tip)
    shoe = Shoe.of(LEG, posture)
    right = shoe.to_planes(np.array([[0.0], [-1.0], [0.0]]), np.zeros(1))
    ball = -np.sin(turn) * LEG.shoe_length * OUTLINE[0][0]
    assert -float(right[0]) == pytest.approx(ball + np.cos(turn) * LEG.shoe_width / 2)
