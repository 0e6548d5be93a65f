"""What is left between leg or shoe and the car around them.

The lowest part of a steering wheel runs nearly straight across the car, so rims are judged
in the side view. Column, pivot tubes and walls are judged in space: legs pass them on either
side. Inside, a point is one array with x, y, z in front: a third of the steps.
"""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.points import Plane, Point
from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import Array, Num, mm
from pedalwright.driver.parts import Body, Posture
from pedalwright.survey.parts import Line, Obstacle

#: Flesh and clothes round the knee joint, and round the shin bone (common practice, no source).
KNEE_RADIUS, SHIN_RADIUS = 58.0, 48.0
#: Outline of a shoe: half its width at shares of its length from the heel, and its height there
#: (ours: from three trainers).
OUTLINE = ((0.45, 0.5), (0.85, 0.5), (1.0, 0.3))
SHOE_HEIGHT, TOE_HEIGHT = 60.0, 40.0
#: The instep as a rounded ridge: from and to, along the sole and above it, and its radius (ours).
INSTEP = ((0.35, 45.0), (0.70, 25.0))
INSTEP_RADIUS = 30.0
#: Points of the ridge that are held against a box.
RIDGE = np.linspace(0.0, 1.0, 7)


def knee_to_rim(posture: Posture, rim: Point) -> mm:
    """Knee to the lowest point of the rim, from the side."""
    return np.hypot(posture.knee.x - rim.x, posture.knee.z - rim.z) - KNEE_RADIUS


@no_answer_is_nan
def thigh_to_rim(posture: Posture, rim: Point) -> mm:
    """Thigh, as thick as the knee all along, to the lowest point of the rim, from the side."""
    hip, knee = posture.hip, posture.knee
    run, rise = knee.x - hip.x, knee.z - hip.z
    ahead, above = rim.x - hip.x, rim.z - hip.z
    share = np.clip((ahead * run + above * rise) / (run * run + rise * rise), 0.0, 1.0)
    return np.hypot(ahead - share * run, above - share * rise) - KNEE_RADIUS


@no_answer_is_nan
def shin_to_column(posture: Posture, column: Line) -> mm:
    """Shin to the outside of a steering column, in space."""
    knee, ankle = xyz(posture.knee), xyz(posture.ankle)
    start, end = xyz(column.start), xyz(column.end)
    if knee.ndim < start.ndim:
        knee, ankle = knee[..., np.newaxis], ankle[..., np.newaxis]
    near, far = _deep(start, knee), _deep(end, knee)
    return between_segments(knee, ankle, near, far) - SHIN_RADIUS - column.diameter / 2


def toe_to_wall(posture: Posture, wall: Plane) -> mm:
    """Tip of the shoe to a wall ahead, with the sole kept straight."""
    return wall.height(posture.toe)


@dataclass(frozen=True, slots=True)
class Shoe:
    """A shoe in space: x, y, z in front of places and variants."""

    heel: Array
    #: Unit directions: to the toes along the sole, towards the car's right, off the sole.
    along: Array
    across: Array
    up: Array
    length: mm
    width: mm

    @classmethod
    def of(cls, body: Body, posture: Posture) -> "Shoe":
        """The shoe of a leg."""
        heel, way = xyz(posture.heel), posture.across
        along = (xyz(posture.toe) - heel) / body.shoe_length
        up = np.array([way.y * along[2], -way.x * along[2], way.x * along[1] - way.y * along[0]])
        across = np.array([way.x, way.y, np.zeros_like(way.x)])
        return cls(heel, along, across, up, body.shoe_length, body.shoe_width)

    def to_planes(self, normals: Array, offsets: Num) -> Num:
        """Outline, sole and upper, to walls: (things, places, *variants).

        `normals` has x, y, z in front of the things, `offsets` the things.
        """
        heel, along, across, up = (
            part[:, np.newaxis] for part in (self.heel, self.along, self.across, self.up)
        )
        sole = _dot(normals, heel) - offsets
        upper = np.minimum(_dot(normals, up) * SHOE_HEIGHT, 0.0)
        run, lean = _dot(normals, along) * self.length, _dot(normals, across) * self.width
        return sole + upper + _least_of_outline(run, np.abs(lean))

    def toe_to_cover(self, cover: Plane) -> mm:
        """Top of the toecap to what covers the footwell."""
        top = self.heel + self.along * self.length + self.up * TOE_HEIGHT
        return _dot(_deep(xyz(cover.normal), top), top) - cover.offset

    def ridge(self) -> tuple[Array, Array]:
        """Both ends of the ridge of the upper."""
        (rear, high), (fore, low) = INSTEP
        along = self.along * self.length
        return (
            self.heel + along * rear + self.up * high,
            self.heel + along * fore + self.up * low,
        )

    def to_box(self, box: Obstacle) -> mm:
        """Top of the shoe to a box in the way: the nearest of some points along its ridge."""
        start, end = self.ridge()
        low, high = _deep(xyz(box.low), start), _deep(xyz(box.high), start)
        nearest: mm = np.inf
        for share in RIDGE:
            place = start + (end - start) * share
            outside: Array = np.maximum(np.maximum(low - place, place - high), 0.0)
            nearest = np.minimum(nearest, np.sqrt(_dot(outside, outside)))
        return nearest - INSTEP_RADIUS


def between_segments(a: Array, b: Array, c: Array, d: Array) -> Num:
    """Shortest distance of two segments: best place on one for the other, kept to its ends."""
    one, other, apart = b - a, d - c, a - c
    here: Num
    size_one, size_other, common = _dot(one, one), _dot(other, other), _dot(one, other)
    ahead_one, ahead_other = _dot(one, apart), _dot(other, apart)
    skew = size_one * size_other - common**2
    lines = np.divide(common * ahead_other - ahead_one * size_other, skew)
    here = np.where(skew > 0.0, _clipped(lines), 0.0)
    there = _clipped(np.divide(common * here + ahead_other, size_other))
    here = _clipped(np.divide(common * there - ahead_one, size_one))
    gap = np.asarray(apart + one * here - other * there)
    distance: Num = np.sqrt(_dot(gap, gap))
    return distance


def xyz(point: Point) -> Array:
    """A point as one array, coordinates in front."""
    x, y, z = point.x, point.y, point.z
    if np.ndim(x) == np.ndim(y) == np.ndim(z):
        return np.array([x, y, z])
    return np.stack(np.broadcast_arrays(x, y, z))


def _least_of_outline(run: Num, width: Num) -> Num:
    (rear, half), (fore, _), (tip, narrow) = OUTLINE
    broad = np.minimum(run * rear, run * fore) - width * half
    return np.minimum(broad, run * tip - width * narrow)


def _clipped(share: Num) -> Num:
    return np.minimum(np.maximum(share, 0.0), 1.0)


def _dot(one: Array, other: Array) -> Num:
    product = one * other
    total: Num = product[0] + product[1] + product[2]
    return total


def _deep(thing: Array, like: Array) -> Array:
    """Something in the car, with an axis for the places of a stroke where the leg has one."""
    missing = like.ndim - thing.ndim
    return thing.reshape(3, *(1,) * missing, *thing.shape[1:]) if missing > 0 else thing
