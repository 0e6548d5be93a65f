"""Points as rows of arrays."""

from collections.abc import Iterable

import numpy as np

from pedalwright.core.points import Point
from pedalwright.core.units import Array


def xyz(point: Point) -> Array:
    """One point as a row."""
    return np.array([point.x, point.y, point.z], dtype=np.float64)


def rows(points: Iterable[Point]) -> Array:
    """Some points as rows, (points, 3)."""
    found = [xyz(point) for point in points]
    return np.array(found) if found else np.zeros((0, 3))


def point(row: Array) -> Point:
    """A row as a point."""
    return Point(float(row[0]), float(row[1]), float(row[2]))
