"""Where things stand on a drawing of a pedal, seen from the car's left, front to the left.

The paper's x is the car's x, its y the car's z; both in mm of the real thing.
"""

from math import atan2, hypot, pi

from pedalwright.core.points import Point
from pedalwright.drawing import XY
from pedalwright.linkage import Lever, Pedal


def seen(point: Point) -> XY:
    """A point of the car on the paper."""
    return float(point.x), float(point.z)


def towards(start: XY, end: XY) -> XY:
    """The direction from one place to another, of length 1."""
    length = hypot(end[0] - start[0], end[1] - start[1])
    return (end[0] - start[0]) / length, (end[1] - start[1]) / length


def swing(centre: XY, start: XY, end: XY) -> tuple[float, float]:
    """The two directions between which something turns about a centre, less than half a turn.

    From +x, rad, the smaller first, so that an arc from one to the other runs anticlockwise.
    """
    first, last = (atan2(at[1] - centre[1], at[0] - centre[0]) for at in (start, end))
    turned = (last - first + pi) % (2.0 * pi) - pi
    return (first, first + turned) if turned >= 0.0 else (first + turned, first)


def beside(start: XY, end: XY, way: float) -> XY:
    """A direction to the left of the way from one place to another (+1), or to its right (-1)."""
    x, y = towards(start, end)
    return -way * y, way * x


def pad_outline(pedal: Pedal, lever: Lever, pad: Point) -> tuple[XY, ...]:
    """The pad of a pedal wherever its centre has come to: its height along the face, its body."""
    face, depth = pad_halves(pedal, lever, pad)
    return tuple(
        seen(pad + corner) for corner in (face + depth, depth - face, -face - depth, face - depth)
    )


def pad_halves(pedal: Pedal, lever: Lever, pad: Point) -> tuple[Point, Point]:
    """From a pad's centre to its upper edge, and to the side the foot does not touch."""
    across = lever.axis
    span = pad - lever.pivot
    along = (span - across * across.dot(span)).unit().turned(across, pedal.pad_face)
    return along * (pedal.pad_height / 2.0), across.cross(along) * (pedal.pad_thickness / 2.0)
