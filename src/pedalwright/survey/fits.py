"""Straight lines and flat faces through marks, with what each mark stands off and their ±."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from pedalwright.core.points import Plane, Point
from pedalwright.core.units import Array, Num, mm, rad
from pedalwright.survey.equations import array, point

#: Step of a coordinate by which the ± of a fit is found, mm.
NUDGE = 1e-3


@dataclass(frozen=True, kw_only=True, slots=True)
class FittedFace:
    """The plane that lies closest to some marks."""

    plane: Plane
    #: How far each mark stands off it, positive on the side it looks to.
    off: tuple[mm, ...]
    #: Standard deviation of its height in the middle of the marks, and of its tilt.
    sigma: mm
    tilt_sigma: rad


@dataclass(frozen=True, kw_only=True, slots=True)
class FittedLine:
    """The straight line that passes closest to some marks, from the first to the last of them."""

    start: Point
    end: Point
    #: How far each mark stands off it.
    off: tuple[mm, ...]
    #: Standard deviations of the ends.
    start_sigma: Point
    end_sigma: Point


def fitted_face(marks: Array, looks: Point, covariance: Array) -> FittedFace:
    """A plane through three or more marks, (marks, 3), that looks roughly in a direction.

    `covariance` is that of all their coordinates in turn, (3 marks, 3 marks). The plane is nan
    where the marks lie in a line.
    """
    towards = array(looks)
    normal, middle = _plane(marks, towards)
    heights = (marks - middle) @ normal

    def height_and_tilt(moved: Array) -> Array:
        then, there = _plane(moved, towards)
        return np.array([normal @ (there - middle), *(then - normal)])

    scatter = _carried(height_and_tilt, marks, covariance)
    return FittedFace(
        plane=Plane(normal=point(normal), offset=float(normal @ middle)),
        off=tuple(float(height) for height in heights),
        sigma=float(np.sqrt(max(scatter[0, 0], 0.0))),
        tilt_sigma=float(np.sqrt(max(np.linalg.eigvalsh(scatter[1:, 1:])[-1], 0.0))),
    )


def fitted_line(marks: Array, covariance: Array) -> FittedLine:
    """A straight line along two or more marks, (marks, 3), in the order in which they stand."""

    def ends(moved: Array) -> Array:
        return np.concatenate(_ends(moved))

    start, end = _ends(marks)
    way = (end - start) / np.linalg.norm(end - start)
    across = (marks - start) - np.outer((marks - start) @ way, way)
    sigma = np.sqrt(np.maximum(np.diag(_carried(ends, marks, covariance)), 0.0))
    return FittedLine(
        start=point(start),
        end=point(end),
        off=tuple(float(off) for off in np.linalg.norm(across, axis=1)),
        start_sigma=point(sigma[:3]),
        end_sigma=point(sigma[3:]),
    )


def face_through(marks: Array, looks: Point) -> Plane:
    """The plane alone."""
    normal, middle = _plane(marks, array(looks))
    return Plane(normal=point(normal), offset=float(normal @ middle))


def line_along(marks: Array) -> tuple[Point, Point]:
    """The ends alone."""
    start, end = _ends(marks)
    return point(start), point(end)


def _plane(marks: Array, towards: Array) -> tuple[Array, Array]:
    """Unit normal and middle."""
    middle = marks.mean(axis=0)
    _, values, ways = np.linalg.svd(marks - middle, full_matrices=True)
    normal = ways[-1] * (1.0 if ways[-1] @ towards >= 0.0 else -1.0)
    if len(values) < 2 or values[1] < _IN_LINE * values[0]:
        normal = np.full(3, np.nan)
    return normal, middle


#: Marks whose spread across their line is less than this share of their spread along it make
#: no plane.
_IN_LINE = 0.02


def _ends(marks: Array) -> tuple[Array, Array]:
    middle = marks.mean(axis=0)
    way = np.linalg.svd(marks - middle)[2][0]
    way = way * (1.0 if way @ (marks[-1] - marks[0]) >= 0.0 else -1.0)
    along = (marks - middle) @ way
    return middle + along.min() * way, middle + along.max() * way


def _carried(worked: Callable[[Array], Array], marks: Array, covariance: Array) -> Array:
    """The covariance of what is worked out from marks, by moving each coordinate a little."""
    columns: list[Array] = []
    for number in range(marks.size):
        moved = np.zeros_like(marks)
        moved.flat[number] = NUDGE
        columns.append((worked(marks + moved) - worked(marks - moved)) / (2.0 * NUDGE))
    change = np.stack(columns, axis=-1)
    carried: Array = change @ covariance @ change.T
    return carried


def largest(off: tuple[Num, ...]) -> float:
    """The farthest that a mark stands off."""
    return max((abs(float(one)) for one in off), default=np.nan)
