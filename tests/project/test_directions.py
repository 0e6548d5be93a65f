"""Directions in words and numbers."""

from math import cos, radians, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pedalwright.core.points import Point
from pedalwright.project.directions import WORDS, direction
from pedalwright.project.entries import Trouble

#: exact
TURNED = [
    ("rearward 30 deg up", Point(cos(radians(30)), 0.0, sin(radians(30)))),
    ("Up 10° left", Point(0.0, -sin(radians(10)), cos(radians(10)))),
    ("right 2.86 forward", Point(-sin(radians(2.86)), cos(radians(2.86)), 0.0)),
    ("down 15°30' rearward", Point(sin(radians(15.5)), 0.0, -cos(radians(15.5)))),
    ([3, 0, "-4"], Point(0.6, 0.0, -0.8)),
]


@pytest.mark.parametrize(("typed", "meant"), TURNED)
def test_a_direction_is_turned_from_one_word_to_another(typed: object, meant: Point) -> None:
    found = direction(typed)
    assert isinstance(found, Point)
    assert [found.x, found.y, found.z] == pytest.approx([meant.x, meant.y, meant.z], abs=1e-15)


def test_opposite_words_are_opposite() -> None:
    for one, other in (("forward", "rearward"), ("left", "right"), ("up", "down")):
        assert WORDS[one] == WORDS[other] * -1.0


@given(
    start=st.sampled_from(sorted(WORDS)),
    end=st.sampled_from(sorted(WORDS)),
    angle=st.floats(-90, 90).map(lambda a: round(a, 2)),
)
def test_every_direction_has_length_one(start: str, end: str, angle: float) -> None:
    found = direction(f"{start} {angle} deg {end}")
    square = WORDS[start].dot(WORDS[end]) == 0.0
    assert isinstance(found, Point) == square
    if isinstance(found, Point):
        assert found.length() == pytest.approx(1.0, rel=1e-15)
        assert found.dot(WORDS[start]) == pytest.approx(cos(radians(angle)), abs=1e-15)


@pytest.mark.parametrize(
    "typed",
    [
        "",
        "north",
        "up up",
        "up 30 N left",
        "up left",
        5,
        [1, 2],
        [1, 2, "x"],
        [0, 0, 0],
        ["1 mm", 0, 0],
        [True, 0, 0],
    ],
)
def test_what_is_no_direction_is_refused(typed: object) -> None:
    assert isinstance(direction(typed), Trouble)
