"""What is left between leg or shoe and the car around them.

The lowest part of a steering wheel runs nearly straight across the car, so rims are judged
in the side view. A column is judged in space: legs pass it on either side.
"""

import numpy as np

from pedalwright.core.points import Plane, Point
from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import mm
from pedalwright.driver.parts import Posture
from pedalwright.survey.parts import Line

#: Flesh and clothes round the knee joint, and round the shin bone (common practice, no source).
KNEE_RADIUS, SHIN_RADIUS = 58.0, 48.0


def knee_to_rim(posture: Posture, rim: Point) -> mm:
    """Knee to the lowest point of the rim, from the side."""
    return _flat(posture.knee - rim).length() - KNEE_RADIUS


@no_answer_is_nan
def thigh_to_rim(posture: Posture, rim: Point) -> mm:
    """Thigh, as thick as the knee all along, to the lowest point of the rim, from the side."""
    hip, knee = _flat(posture.hip), _flat(posture.knee)
    return _to_segment(_flat(rim), hip, knee) - KNEE_RADIUS


@no_answer_is_nan
def shin_to_column(posture: Posture, column: Line) -> mm:
    """Shin to the outside of a steering column, in space."""
    apart = _between_segments(posture.knee, posture.ankle, column.start, column.end)
    return apart - SHIN_RADIUS - column.diameter / 2


def toe_to_wall(posture: Posture, wall: Plane) -> mm:
    """Tip of the shoe to a wall ahead, with the sole kept straight."""
    return wall.height(posture.toe)


def _flat(point: Point) -> Point:
    return Point(point.x, 0.0, point.z)


def _to_segment(point: Point, start: Point, end: Point) -> mm:
    along = end - start
    share = np.clip(np.divide((point - start).dot(along), along.dot(along)), 0.0, 1.0)
    return (point - start - along * share).length()


def _between_segments(a: Point, b: Point, c: Point, d: Point) -> mm:
    """Shortest distance of two segments: best place on one for the other, kept to its ends."""
    one, other, apart = b - a, d - c, a - c
    size_one, size_other, common = one.dot(one), other.dot(other), one.dot(other)
    ahead_one, ahead_other = one.dot(apart), other.dot(apart)
    skew = size_one * size_other - common**2
    lines = np.divide(common * ahead_other - ahead_one * size_other, skew)
    here = np.where(skew > 0.0, np.clip(lines, 0.0, 1.0), 0.0)
    there = np.clip(np.divide(common * here + ahead_other, size_other), 0.0, 1.0)
    here = np.clip(np.divide(common * there - ahead_one, size_one), 0.0, 1.0)
    return (apart + one * here - other * there).length()
