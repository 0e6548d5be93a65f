"""What was measured on the car: named points, lines, faces and obstacles, in car axes.

A thing that was not measured is answered with nan coordinates, so what depends on it is
left unjudged and everything else still runs.
"""

from dataclasses import dataclass, field
from typing import Literal

import numpy as np

from pedalwright.core.batch import WORKED_OUT
from pedalwright.core.points import Plane, Point
from pedalwright.core.units import mm, rad
from pedalwright.survey.outcome import Outcome

NOWHERE = Point(np.nan, np.nan, np.nan)
_HALF_FACING = np.cos(np.pi / 4)


@dataclass(frozen=True, kw_only=True, slots=True)
class Mark:
    """A named point: a punch mark, the corner of a tube, whatever a tape can find again."""

    name: str
    #: Left out, or "?" for a coordinate, where tapes, offsets and angles have to find it. What is
    #: given with ±0 is held; what is given with a ± is one more reading.
    at: Point
    #: Where it is on the car, for whoever holds the tape.
    about: str = ""
    #: Of two places that fit the tapes equally well, the one farther this way is meant.
    side: Point | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Tape:
    """A tape in a straight line between two marks."""

    #: The mark its hook, or its first line, is held to.
    hook: str
    #: The mark it is read at.
    to: str
    #: What is read; several readings, each taken anew, are averaged.
    reading: tuple[mm, ...]
    #: Added to what is read: the length of the tape's case for an inside measure, or -100 mm
    #: where the 100 mm line was held to the mark instead of the hook.
    add: mm | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Offset:
    """How far a mark stands from another along the car's axes, by plumb line, level and rule."""

    mark: str
    #: The mark it is measured from; left out, the datum.
    base: str = ""
    #: Each that was measured; forward, left and down are less than nought.
    rearward: mm | None = None
    right: mm | None = None
    up: mm | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Rise:
    """How steeply a straight edge rises from one mark to another, by phone or protractor."""

    foot: str
    head: str
    #: From the level; several readings are averaged.
    angle: tuple[rad, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Line:
    """A straight tube, rail or shaft between two points; a wheel arch is a thick one."""

    name: str
    start: Point
    end: Point
    #: Outside diameter, or width across.
    diameter: mm
    #: Two or more marks along its middle, instead of start and end.
    marks: tuple[str, ...] = ()
    #: Of a rectangular rail, the way up; left out, the tube is round.
    height: mm | None = None
    #: Thickness of its wall; left out, not known.
    wall: mm | None = None
    #: Whether any of it may be cut away for room.
    may_cut: Literal["no", "yes"] = "no"


@dataclass(frozen=True, kw_only=True, slots=True)
class Face:
    """A flat wall, floor or panel."""

    name: str
    plane: Plane
    #: Three or more marks on it, instead of the plane.
    marks: tuple[str, ...] = ()
    #: With marks: about the way it looks, to the side where the feet are.
    looks: Point | None = None


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
    tapes: tuple[Tape, ...] = ()
    offsets: tuple[Offset, ...] = ()
    rises: tuple[Rise, ...] = ()
    #: Class of the tape, I, II or III in an oval on its blade; left out, the tape's own error is
    #: not counted.
    tape_class: Literal["I", "II", "III"] | None = None
    #: How steeply the sill rose rearward while the car was measured, by phone; left out, it stood
    #: level. Plumb line, level and phone are turned by it.
    pitch: rad | None = None
    #: How steeply a straight edge across both sills rose to the right.
    roll: rad | None = None
    #: What the readings say of each other; None where every mark has coordinates.
    outcome: Outcome | None = field(default=None, metadata={WORKED_OUT: True})

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
