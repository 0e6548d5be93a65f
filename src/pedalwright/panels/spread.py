"""Where the faces of a folded part lie in space, in the middle of the sheet.

Faces are drawn to the outer mould lines; the middles of two legs meet half a thickness further in,
by the tangent of half the angle. The radius of the fold is left out: the legs meet in a line.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import cos, sin, tan

from pedalwright.core.points import Point
from pedalwright.drawing import XY
from pedalwright.panels.faces import Face, Fold
from pedalwright.panels.plane import SAME, apart, crossing, direction, edges, from_segment, inward
from pedalwright.shell.parts import Plane


@dataclass(frozen=True, slots=True)
class Joint:
    """Where a face hangs on the one before it, in the middle of both."""

    fold: str
    parent: str
    start: Point
    end: Point


@dataclass(frozen=True, slots=True)
class Flat:
    """One face in space."""

    face: Face
    plane: Plane
    #: The middle of the sheet: mould lines drawn in to where the middles meet.
    outline: tuple[XY, ...]
    #: None for the first face.
    joint: Joint | None


def flats(face: Face, lying: Plane, thickness: float) -> Iterator[Flat]:
    """The face that lies there, and all that hang on it, nearest first."""
    yield from _walk(face, lying, thickness, None, 0.0)


def _walk(
    face: Face, plane: Plane, thickness: float, joint: Joint | None, hung: float
) -> Iterator[Flat]:
    """A face, drawn in by `hung` along y = 0 where it hangs, and by every fold of its own."""
    sides = edges(face.outline)
    drawn_in = [_drawn_in(side, face, thickness, hung if joint else 0.0) for side in sides]
    yield Flat(face, plane, _shrunk(sides, drawn_in), joint)
    for fold in face.folds:
        by = half_gap(fold, thickness)
        lies, meets = _beyond(fold, plane, by)
        yield from _walk(fold.face, lies, thickness, Joint(fold.name, face.name, *meets), by)


def half_gap(fold: Fold, thickness: float) -> float:
    """From a mould line to where the middles of the two legs meet, along either leg."""
    return thickness / 2 * tan(abs(fold.angle) / 2)


def _beyond(fold: Fold, plane: Plane, by: float) -> tuple[Plane, tuple[Point, Point]]:
    """Where the face beyond a fold lies, and the line in which the middles meet."""
    c, s = direction(fold.start, fold.end)
    along = plane.along * c + plane.across * s
    away = plane.across * c - plane.along * s
    out = away * cos(fold.angle) + plane.normal * sin(fold.angle)
    corner = plane.point(fold.start) - away * by
    meets = corner, corner + along * apart(fold.start, fold.end)
    return Plane(origin=corner - out * by, along=along, across=out), meets


def _drawn_in(side: tuple[XY, XY], face: Face, thickness: float, hung: float) -> float:
    """How far a side lies in from its mould line."""
    start, end = side
    if hung and abs(start[1]) < SAME and abs(end[1]) < SAME:
        return hung
    return max(
        (
            half_gap(fold, thickness)
            for fold in face.folds
            if from_segment(fold.start, *side) < SAME and from_segment(fold.end, *side) < SAME
        ),
        default=0.0,
    )


def _shrunk(sides: list[tuple[XY, XY]], by: list[float]) -> tuple[XY, ...]:
    """The outline with every side moved in by its own distance.

    A corner beside one side that moves goes in square to it, so that the fold keeps its length.
    """
    corners: list[XY] = []
    for i, side in enumerate(sides):
        one, two = direction(*sides[i - 1]), direction(*side)
        first, last = inward(side[0], one, by[i - 1]), inward(side[0], two, by[i])
        if not by[i - 1] or not by[i]:
            corners.append(last if by[i] else first)
            continue
        met = crossing(first, one, last, two)
        corners += [first, last] if met is None and apart(first, last) > SAME else [met or last]
    return tuple(corners)
