"""How far it is from a point to the nearest wall that looks back at it."""

import numpy as np
import pytest

from pedalwright.core.points import RIGHT, UP, Plane, Point
from pedalwright.survey import Face, Survey

LEFT = -RIGHT
#: A wall on the left at y -500, one that slants 45 degrees inward further aft, and a floor.
WALL = Face(name="wall", plane=Plane(normal=RIGHT, offset=-500.0))
POST = Face(name="post", plane=Plane(normal=RIGHT, offset=-450.0))
FLOOR = Face(name="floor", plane=Plane(normal=UP, offset=0.0))
SLANTING = Face(
    name="slanting", plane=Plane(normal=Point(-np.sin(0.1), np.cos(0.1), 0.0), offset=-400.0)
)
PAD = Point(200.0, -300.0, 180.0)


def test_the_nearest_of_those_that_look_back_counts() -> None:
    survey = Survey(faces=(FLOOR, WALL, POST))
    assert survey.room(PAD, LEFT) == 150.0


def test_a_wall_behind_is_not_one_ahead() -> None:
    assert np.isnan(Survey(faces=(FLOOR, WALL)).room(PAD, RIGHT))


def test_room_is_measured_along_the_direction_not_square_to_the_wall() -> None:
    room = Survey(faces=(SLANTING,)).room(PAD, LEFT)
    touched = PAD + LEFT * room
    assert SLANTING.plane.height(touched) == pytest.approx(0.0, abs=1e-9)
    assert room == pytest.approx(SLANTING.plane.height(PAD) / np.cos(0.1), rel=1e-12)


def test_a_row_of_cars_gets_a_row_of_rooms() -> None:
    pads = Point(200.0, np.array([-300.0, -310.0]), 180.0)
    room = Survey(faces=(WALL,)).room(pads, LEFT)
    assert np.asarray(room).tolist() == [200.0, 190.0]
