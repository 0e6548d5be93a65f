"""What was measured on the car: named points, lines, faces and obstacles, in car axes.

A thing that was not measured is answered with nan coordinates, so what depends on it is
left unjudged and everything else still runs.
"""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.points import Plane, Point
from pedalwright.core.units import mm

NOWHERE = Point(np.nan, np.nan, np.nan)
_HALF_FACING = np.cos(np.pi / 4)


@dataclass(frozen=True, kw_only=True, slots=True)
class Mark:
    """A named point."""

    name: str
    at: Point


@dataclass(frozen=True, kw_only=True, slots=True)
class Line:
    """A straight tube, rail or shaft between two points."""

    name: str
    start: Point
    end: Point
    #: Outside diameter, or width across.
    diameter: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Face:
    """A flat wall, floor or panel."""

    name: str
    plane: Plane


@dataclass(frozen=True, kw_only=True, slots=True)
class Obstacle:
    """Something in the way, as a box parallel to the car axes between two corners."""

    name: str
    low: Point
    high: Point


@dataclass(frozen=True, kw_only=True, slots=True)
class Survey:
    """The footwell as it is."""

    marks: tuple[Mark, ...] = ()
    lines: tuple[Line, ...] = ()
    faces: tuple[Face, ...] = ()
    obstacles: tuple[Obstacle, ...] = ()

    def mark(self, name: str) -> Point:
        """Where a named point is; nan coordinates when it was not measured."""
        return next((m.at for m in self.marks if m.name == name), NOWHERE)

    def line(self, name: str) -> Line:
        """A named tube or rail; nan coordinates when it was not measured."""
        unmeasured = Line(name=name, start=NOWHERE, end=NOWHERE, diameter=np.nan)
        return next((m for m in self.lines if m.name == name), unmeasured)

    def face(self, name: str) -> Plane:
        """A named face; nan when it was not measured."""
        unmeasured = Plane(normal=NOWHERE, offset=np.nan)
        return next((m.plane for m in self.faces if m.name == name), unmeasured)

    def room(self, point: Point, way: Point) -> mm:
        """From a point along a direction to the first face that looks back; nan if there is none.

        A face counts when it lies within 45 degrees of square to the direction.
        """
        looks = [(m.plane, m.plane.normal.dot(way)) for m in self.faces]
        rooms = [
            plane.height(point) / -facing
            for plane, facing in looks
            if np.all(facing < -_HALF_FACING)
        ]
        nearest: mm = np.min(np.stack(np.broadcast_arrays(*rooms)), axis=0) if rooms else np.nan
        return nearest
