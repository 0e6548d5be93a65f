"""Boxes askew: distances against a search over all their points."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.strategies import DrawFn, SearchStrategy
from scipy.optimize import lsq_linear

from pedalwright.core.points import RIGHT, UP, Plane, Point
from pedalwright.linkage.boxes import Box, level_box, separation


def between(low: float, high: float) -> SearchStrategy[float]:
    return st.floats(low, high, allow_nan=False)


@st.composite
def boxes(draw: DrawFn) -> Box:
    axis = Point(draw(between(-1, 1)), 1.0, draw(between(-1, 1))).unit()
    along = Point(0.0, 0.0, 1.0).cross(axis).unit().turned(axis, draw(between(-3, 3)))
    return Box(
        middle=draw(points(80.0)),
        along=along,
        through=axis.cross(along),
        across=axis,
        half_along=draw(between(5, 120)),
        half_through=draw(between(2, 30)),
        half_across=draw(between(2, 40)),
    )


@st.composite
def points(draw: DrawFn, size: float = 200.0) -> Point:
    return Point(*(draw(between(-size, size)) for _ in range(3)))


def array(point: Point) -> np.ndarray:
    return np.array([point.x, point.y, point.z], dtype=float)


def sides(box: Box) -> tuple[np.ndarray, np.ndarray]:
    edges = np.column_stack([array(edge) for edge in (box.along, box.through, box.across)])
    return edges, np.array([box.half_along, box.half_through, box.half_across], dtype=float)


def searched(box: Box, ways: np.ndarray, start: np.ndarray, half: np.ndarray) -> float:
    """Least distance of the box to start + ways @ u, |u| <= half: bounded least squares."""
    edges, halves = sides(box)
    matrix = np.hstack([edges * halves, -ways * half])
    fit = lsq_linear(matrix, start - array(box.middle), bounds=(-1.0, 1.0), tol=1e-14)
    return float(np.sqrt(2.0 * fit.cost))


@settings(max_examples=60)
@given(boxes(), points(), points())
def test_a_tube_is_as_near_as_a_search_finds(box: Box, start: Point, end: Point) -> None:
    way, middle = array(end - start) / 2, array(start + end) / 2
    wanted = searched(box, way[:, None], middle, np.ones(1))
    found = float(box.to_segment(start, end))
    assert max(found, 0.0) == pytest.approx(wanted, abs=0.1)


@settings(max_examples=60)
@given(boxes(), boxes())
def test_two_boxes_meet_exactly_where_a_search_says_so(one: Box, other: Box) -> None:
    """And it never says more than there is."""
    edges, halves = sides(other)
    wanted = searched(one, edges, array(other.middle), halves)
    found = float(separation(one, other))
    assert found <= wanted + 1e-4
    if wanted > 1e-3:
        assert found > 0.0


@given(boxes(), points())
def test_a_point_is_inside_where_all_its_coordinates_are(box: Box, point: Point) -> None:
    edges, halves = sides(box)
    seen = np.abs(edges.T @ (array(point) - array(box.middle)))
    assert (box.to_point(point) < 0.0) == bool(np.all(seen < halves))
    outside = np.maximum(seen - halves, 0.0)
    if np.any(outside > 0.0):
        assert box.to_point(point) == pytest.approx(np.hypot.reduce(outside), rel=1e-9)


@given(boxes(), between(-100, 100))
def test_the_lowest_corner_of_eight_counts(box: Box, offset: float) -> None:
    face = Plane(normal=UP, offset=offset)
    edges, halves = sides(box)
    signs = np.array(np.meshgrid(*[[-1, 1]] * 3)).reshape(3, -1)
    corners = array(box.middle)[:, None] + edges @ (signs * halves[:, None])
    assert box.above(face) == pytest.approx(np.min(corners[2]) - offset, abs=1e-9)


def test_level_boxes_are_a_ruler_apart() -> None:
    here = level_box(Point(0.0, 0.0, 0.0), Point(10.0, 20.0, 30.0))
    there = level_box(Point(0.0, 25.0, 0.0), Point(10.0, 40.0, 30.0))
    assert separation(here, there) == pytest.approx(5.0)
    assert here.to_segment(Point(-5, 24, 15), Point(15, 24, 15)) == pytest.approx(4.0)
    assert here.reach(RIGHT) == 10.0


def test_a_tube_through_the_middle_touches() -> None:
    box = level_box(Point(0.0, 0.0, 0.0), Point(10.0, 20.0, 30.0))
    inside = box.to_segment(Point(5.0, 10.0, -50.0), Point(5.0, 10.0, 80.0))
    assert inside <= 0.0
