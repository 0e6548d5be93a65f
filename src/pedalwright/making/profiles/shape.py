"""Sizes of outlines with arcs: as fine polygons, their area, what a bulge means."""

from itertools import pairwise
from math import acos, atan, atan2, ceil, hypot, pi, sin

from pedalwright.drawing import XY, polar
from pedalwright.making.profiles.parts import Corner

#: How far a polygon may stand off the arc it stands for.
CHORD = 0.002


def sides(outline: tuple[Corner, ...]) -> list[tuple[Corner, XY]]:
    """Each corner with the place where its side ends."""
    ends = [corner.at for corner in (*outline[1:], outline[0])]
    return list(zip(outline, ends, strict=True))


def arc(start: XY, end: XY, bulge: float) -> tuple[XY, float, float, float]:
    """Centre, radius, and the angles it runs from and to; the second is larger if anticlockwise."""
    turn = 4 * atan(bulge)
    chord = hypot(end[0] - start[0], end[1] - start[1])
    radius = chord / (2 * abs(sin(turn / 2)))
    along = atan2(end[1] - start[1], end[0] - start[0])
    side = along + (pi / 2 if bulge > 0.0 else -pi / 2) - turn / 2
    centre = polar(start, radius, side)
    first = atan2(start[1] - centre[1], start[0] - centre[0])
    return centre, radius, first, first + turn


def polygon(outline: tuple[Corner, ...], chord: float = CHORD) -> tuple[XY, ...]:
    """The outline as straight pieces, nowhere farther off than `chord`."""
    points: list[XY] = []
    for corner, end in sides(outline):
        points.append(corner.at)
        if corner.bulge:
            centre, radius, first, last = arc(corner.at, end, corner.bulge)
            step = 2 * acos(1.0 - min(chord / radius, 1.0))
            n = max(1, ceil(abs(last - first) / step))
            points += (polar(centre, radius, first + i / n * (last - first)) for i in range(1, n))
    return tuple(points)


def area(outline: tuple[Corner, ...]) -> float:
    """Area within, arcs exact; positive anticlockwise."""
    straight = sum((a.at[0] * b[1] - b[0] * a.at[1]) / 2 for a, b in sides(outline))
    caps = 0.0
    for corner, end in sides(outline):
        if corner.bulge:
            _, radius, first, last = arc(corner.at, end, corner.bulge)
            turn = last - first
            caps += radius**2 * (turn - sin(turn)) / 2
    return straight + caps


def around(outline: tuple[Corner, ...]) -> float:
    """Length of the saw's way round."""
    total = 0.0
    for corner, end in sides(outline):
        if corner.bulge:
            _, radius, first, last = arc(corner.at, end, corner.bulge)
            total += radius * abs(last - first)
        else:
            total += hypot(end[0] - corner.at[0], end[1] - corner.at[1])
    return total


def corners(points: tuple[XY, ...]) -> tuple[Corner, ...]:
    """An outline of straight sides."""
    return tuple(Corner(at=point) for point in points)


def straight_pieces(outline: tuple[Corner, ...]) -> list[tuple[XY, XY]]:
    """The fine polygon, piece by piece."""
    points = polygon(outline)
    return list(pairwise((*points, points[0])))
