"""A point of a lever goes round on a circle about the lever's axis."""

from pedalwright.core.points import Point
from pedalwright.core.units import mm, rad
from pedalwright.linkage.parts import Lever


def turned(lever: Lever, point: Point, angle: rad) -> Point:
    """Where a point of the lever is after a turn."""
    return lever.pivot + (point - lever.pivot).turned(lever.axis, angle)


def circle(lever: Lever, point: Point) -> tuple[Point, Point, Point]:
    """The point's circle: centre, and the two directions that cos and sin of the angle multiply."""
    arm = point - lever.pivot
    along = lever.axis * lever.axis.dot(arm)
    return lever.pivot + along, arm - along, lever.axis.cross(arm)


def radius(lever: Lever, point: Point) -> mm:
    """Distance of a point of the lever from the axis."""
    return lever.axis.cross(point - lever.pivot).length()
