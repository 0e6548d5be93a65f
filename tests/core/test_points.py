"""Points and planes in car axes: the senses that everything else leans on."""

import numpy as np
import pytest

from pedalwright.core.points import REARWARD, RIGHT, UP, Plane, Point


def xyz(point: Point) -> tuple[float, float, float]:
    return float(point.x), float(point.y), float(point.z)


def test_rearward_right_up_is_a_right_handed_triad() -> None:
    assert REARWARD.cross(RIGHT) == UP
    assert RIGHT.cross(UP) == REARWARD
    assert UP.cross(REARWARD) == RIGHT


def test_a_positive_turn_about_right_carries_up_towards_rearward() -> None:
    assert xyz(UP.turned(RIGHT, np.pi / 2)) == pytest.approx(xyz(REARWARD), abs=1e-15)


def test_it_carries_a_hanging_pad_forward() -> None:
    forward = (-UP).turned(RIGHT, np.radians(10.0))
    assert forward.x < 0.0


def test_turning_keeps_what_lies_along_the_axis() -> None:
    axis = Point(1.0, 2.0, -0.5).unit()
    point = Point(3.0, -4.0, 5.0)
    turned = point.turned(axis, 1.1)
    assert axis.dot(turned) == pytest.approx(axis.dot(point))
    assert turned.length() == pytest.approx(point.length())
    across = point - axis * axis.dot(point)
    assert across.dot(turned - axis * axis.dot(point)) == pytest.approx(
        across.dot(across) * np.cos(1.1)
    )
    assert axis.dot(across.cross(turned)) == pytest.approx(across.dot(across) * np.sin(1.1))


def test_arithmetic() -> None:
    one, two = Point(1.0, 2.0, 3.0), Point(4.0, 6.0, 3.0)
    assert two - one == Point(3.0, 4.0, 0.0)
    assert one + (two - one) == two
    assert (two - one).length() == 5.0
    assert xyz((two - one).unit()) == pytest.approx((0.6, 0.8, 0.0))
    assert -one == Point(-1.0, -2.0, -3.0)
    assert one.mirrored() == Point(1.0, -2.0, 3.0)


def test_a_plane_measures_towards_the_feet() -> None:
    wall = Plane(normal=REARWARD, offset=10.0)
    assert wall.height(Point(55.0, 3.0, 7.0)) == 45.0
    assert wall.height(Point(4.0, 3.0, 7.0)) == -6.0


def test_a_point_may_be_a_batch() -> None:
    path = UP.turned(RIGHT, np.linspace(0.0, np.pi, 5))
    assert np.shape(path.x) == (5,)
    assert path.length() == pytest.approx(np.ones(5))
