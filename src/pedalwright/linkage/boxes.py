"""Boxes that lie askew, and how near they come to tubes, planes and other boxes.

Everything is batched: a box may be one, or many at many stations of a stroke.
"""

from dataclasses import dataclass
from typing import TypeAlias

import numpy as np

from pedalwright.core.points import Plane, Point
from pedalwright.core.units import Num, mm

#: Halvings of a tube's length while the nearest place on it is looked for.
_HALVINGS = 7
_HAIR = 1e-6

Triple: TypeAlias = tuple[Num, Num, Num]


@dataclass(frozen=True, kw_only=True, slots=True)
class Box:
    """Middle, three unit directions square to each other, and half the size along each."""

    middle: Point
    along: Point
    through: Point
    across: Point
    half_along: mm
    half_through: mm
    half_across: mm

    def reach(self, direction: Point) -> mm:
        """From the middle to the furthest corner in a direction of length 1."""
        return (
            self.half_along * np.abs(direction.dot(self.along))
            + self.half_through * np.abs(direction.dot(self.through))
            + self.half_across * np.abs(direction.dot(self.across))
        )

    def above(self, face: Plane) -> mm:
        """The lowest corner above a face; negative where it goes through."""
        return face.height(self.middle) - self.reach(face.normal)

    def to_point(self, point: Point) -> mm:
        """To the surface; negative inside."""
        return _outside(self._seen(point - self.middle), self._halves)

    def to_segment(self, start: Point, end: Point) -> mm:
        """The shortest distance to a straight line between two points; not above 0 if it enters.

        The distance has one lowest place along the line, so its slope tells on which side of a
        place that is. The slope itself is made of straight pieces: the last step is along one.
        """
        begins, goes = self._seen(start - self.middle), self._seen(end - start)
        pairs = [
            _Between.faces(begin, go, half)
            for begin, go, half in zip(begins, goes, self._halves, strict=True)
        ]

        def slope(share: Num) -> Num:
            return pairs[0].slope(share) + pairs[1].slope(share) + pairs[2].slope(share)

        low, high = np.zeros(()), np.ones(())
        for _ in range(_HALVINGS):
            middle = (low + high) / 2
            falls = slope(middle) < 0.0
            low, high = np.where(falls, middle, low), np.where(falls, high, middle)
        before, behind = np.minimum(slope(low), 0.0), np.maximum(slope(high), 0.0)
        steep = behind - before
        lowest = low - (high - low) * before / np.where(steep > 0.0, steep, 1.0)
        return _outside(_along(begins, goes, lowest), self._halves)

    def _seen(self, vector: Point) -> Triple:
        """A vector in the box's own directions."""
        return vector.dot(self.along), vector.dot(self.through), vector.dot(self.across)

    @property
    def _halves(self) -> Triple:
        return self.half_along, self.half_through, self.half_across


def _along(begins: Triple, goes: Triple, share: Num) -> Triple:
    return (
        begins[0] + goes[0] * share,
        begins[1] + goes[1] * share,
        begins[2] + goes[2] * share,
    )


@dataclass(frozen=True, kw_only=True, slots=True)
class _Between:
    """Where a straight line runs between one pair of a box's faces, as shares of its length."""

    enters: Num
    leaves: Num
    #: Square of its run across them.
    weight: Num

    @classmethod
    def faces(cls, begin: mm, go: mm, half: mm) -> "_Between":
        """A line that runs along them is taken to run across by a hair."""
        run = np.where(np.abs(go) < _HAIR, _HAIR, go)
        middle, width = -begin / run, half / np.abs(run)
        return cls(enters=middle - width, leaves=middle + width, weight=run**2)

    def slope(self, share: Num) -> Num:
        """This pair's part in how fast half the squared distance grows along the line."""
        outside: Num = share - np.minimum(np.maximum(share, self.enters), self.leaves)
        return self.weight * outside


def _outside(place: Triple, halves: Triple) -> mm:
    one, two, three = (np.abs(side) - half for side, half in zip(place, halves, strict=True))
    nearest = Point(np.maximum(one, 0.0), np.maximum(two, 0.0), np.maximum(three, 0.0))
    return nearest.length() + np.minimum(np.maximum(np.maximum(one, two), three), 0.0)


def level_box(low: Point, high: Point) -> Box:
    """A box parallel to the car axes between two corners."""
    size = high - low
    return Box(
        middle=(low + high) * 0.5,
        along=Point(1.0, 0.0, 0.0),
        through=Point(0.0, 0.0, 1.0),
        across=Point(0.0, 1.0, 0.0),
        half_along=size.x / 2,
        half_through=size.z / 2,
        half_across=size.y / 2,
    )


def separation(one: Box, other: Box) -> mm:
    """How far two boxes can be told apart by a plane: their distance at least; negative: they meet.

    The planes tried are those of their faces and those square to one edge of each, so that
    boxes that do not meet are always told apart; corner to corner they are further apart than
    it says.
    """
    faces = [*_edges(one), *_edges(other)]
    crossed = [a.cross(b) for a in _edges(one) for b in _edges(other)]
    apart = other.middle - one.middle
    gaps = [_gap(one, other, apart, direction) for direction in (*faces, *crossed)]
    furthest = gaps[0]
    for gap in gaps[1:]:
        furthest = np.maximum(furthest, gap)
    return furthest


def _edges(box: Box) -> tuple[Point, Point, Point]:
    return box.along, box.through, box.across


def _gap(one: Box, other: Box, apart: Point, direction: Point) -> mm:
    """Between two boxes seen along a direction; parallel edges have none, and say nothing."""
    length = direction.length()
    seen = direction * (1.0 / np.where(length > 1e-6, length, 1.0))
    gap = np.abs(apart.dot(seen)) - one.reach(seen) - other.reach(seen)
    return np.where(length > 1e-6, gap, -np.inf)
