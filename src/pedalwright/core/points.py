"""Points and directions in car axes.

x points rearward, y to the car's right, z up (the sense of ISO 4130), from the datum the
builder scribed. The triad is right-handed: rearward x right = up. A positive angle about
+y carries up towards rearward, so it carries the pad of a hanging pedal forward, away from
the driver. All coordinates in mm; each may be a batch.
"""

from dataclasses import dataclass
from typing import Final, cast

import numpy as np

from pedalwright.core.units import Array, Num


def at(number: Num, place: int | slice) -> Num:
    """One place, or some, of many on an axis in front of the variants."""
    one: Num = cast("Array", number)[place]
    return one


@dataclass(slots=True, unsafe_hash=True)
class Point:
    """A point, or a direction, in car axes.

    Never changed once made. The type checkers see to it and not the class: a frozen one takes
    three times as long to make, and one assessment makes some fourteen hundred.
    """

    x: Final[Num]
    y: Final[Num]
    z: Final[Num]

    def __add__(self, other: "Point") -> "Point":
        return Point(self.x + other.x, self.y + other.y, self.z + other.z)

    def __sub__(self, other: "Point") -> "Point":
        return Point(self.x - other.x, self.y - other.y, self.z - other.z)

    def __neg__(self) -> "Point":
        return Point(-self.x, -self.y, -self.z)

    def __mul__(self, factor: Num) -> "Point":
        return Point(self.x * factor, self.y * factor, self.z * factor)

    def dot(self, other: "Point") -> Num:
        """Scalar product."""
        return self.x * other.x + self.y * other.y + self.z * other.z

    def cross(self, other: "Point") -> "Point":
        """Vector product, right-handed."""
        return Point(
            self.y * other.z - self.z * other.y,
            self.z * other.x - self.x * other.z,
            self.x * other.y - self.y * other.x,
        )

    def length(self) -> Num:
        """Distance from the origin."""
        return np.sqrt(self.dot(self))

    def unit(self) -> "Point":
        """The same direction with length 1; nan for a zero vector."""
        return self * (1.0 / self.length())

    def turned(self, axis: "Point", angle: Num) -> "Point":
        """This direction turned about a unit axis through the origin (Rodrigues' formula)."""
        along = axis * axis.dot(self)
        across = self - along
        return along + across * np.cos(angle) + axis.cross(self) * np.sin(angle)

    def at(self, place: int | slice) -> "Point":
        """One place, or some, of many on an axis in front."""
        return Point(at(self.x, place), at(self.y, place), at(self.z, place))

    def mirrored(self) -> "Point":
        """The point on the other side of the car's centre plane."""
        return Point(self.x, -self.y, self.z)


REARWARD = Point(1.0, 0.0, 0.0)
RIGHT = Point(0.0, 1.0, 0.0)
UP = Point(0.0, 0.0, 1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Plane:
    """A flat face: `normal` (unit) points to the side where the feet are."""

    normal: Point
    offset: Num

    def height(self, point: Point) -> Num:
        """Distance of a point from the plane, positive on the feet's side."""
        return self.normal.dot(point) - self.offset
