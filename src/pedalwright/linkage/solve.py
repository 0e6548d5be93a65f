"""Lever, rod and piston over the whole stroke, in closed form, on an axis of any direction.

A pin on a circle about the pivot is held by a rod of fixed length to a socket that slides
along the cylinder. Both ways are closed: angle to piston travel by the rod triangle, piston
travel to angle by a cos(angle) + b sin(angle) = c. Push rods take the root with the socket
ahead of the pin, pull rods the one behind it; which of the two a rod is, is read from where
the socket stands at rest. Of the two angles at which the rod reaches the same socket, a push
rod works at the second and a pull rod at the first: at the other the piston runs back. From
the first dead point on, and where the rod cannot be assembled, every answer is nan.
"""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.points import RIGHT, Plane, Point
from pedalwright.core.solve import no_answer_is_nan, swing_roots, wrapped
from pedalwright.core.units import Num, mm, rad
from pedalwright.core.working import unrecorded
from pedalwright.linkage.formulas import (
    pad_arc,
    pedal_ratio,
    piston_force,
    rod_angle,
    rod_force,
    side_force,
)
from pedalwright.linkage.parts import Forces, Lever, Pedal, Position, Rod

#: Stations of a stroke in every curve and every "over the stroke" answer.
STATIONS = 41
#: What may be lost of an angle in the arithmetic.
_ROUNDING = 1e-9


def lever(pedal: Pedal) -> Lever:
    """The pedal's points at rest. The axis is turned so that a push is a positive angle."""
    up = -1.0 if pedal.hinge == "hanging" else 1.0
    axis = RIGHT * -up
    to_pad = Point(np.sin(pedal.pad_lean), 0.0, up * np.cos(pedal.pad_lean))
    return Lever(
        pivot=pedal.pivot,
        axis=axis,
        pad=pedal.pivot + to_pad * pedal.pad_radius + RIGHT * pedal.pad_offset,
        pin=pedal.pivot + to_pad.turned(axis, pedal.pin_angle) * pedal.pin_radius,
    )


@no_answer_is_nan
def position(lever: Lever, rod: Rod, angle: rad) -> Position:
    """Everything about the lever turned by `angle`; angle is () or (stations, variants)."""
    pin = _turned(lever, lever.pin, angle)
    held = _Held.by(lever, rod)
    offset = pin - rod.socket
    along = offset.dot(rod.direction)
    sideways = (offset - rod.direction * along).length()
    reach = np.sqrt(held.length**2 - sideways**2)
    travel = along + held.ahead * reach
    socket = rod.socket + rod.direction * travel
    rod_line = (socket - pin) * (held.ahead / held.length)
    turning_arm = rod_line.dot(lever.axis.cross(pin - lever.pivot))
    arm = np.where(turning_arm > 0.0, turning_arm, np.nan)
    beta = rod_angle(sideways, reach)
    pin_radius = _radius(lever, lever.pin)
    return Position(
        angle=angle,
        pad=_turned(lever, lever.pad, angle),
        pin=pin,
        socket=socket,
        pad_travel=pad_arc(_radius(lever, lever.pad), angle),
        piston_travel=np.where(turning_arm > 0.0, travel, np.nan),
        ratio=pedal_ratio(_radius(lever, lever.pad), beta, arm),
        rod_angle=beta,
        rod_to_arm=np.arcsin(np.minimum(arm / pin_radius, 1.0)),
    )


def sweep(lever: Lever, rod: Rod, full_angle: rad) -> Position:
    """The whole stroke from rest to `full_angle`; shapes (stations,) or (stations, variants)."""
    with unrecorded():
        return position(lever, rod, np.linspace(0.0, full_angle, STATIONS))


def pad_after(lever: Lever, pad_travel: mm) -> Point:
    """Pad centre after a travel along its arc, whatever the lever drives."""
    return _turned(lever, lever.pad, pad_travel / _radius(lever, lever.pad))


@no_answer_is_nan
def angle_at_travel(lever: Lever, rod: Rod, piston_travel: mm) -> rad:
    """The angle at which the piston has moved so far; nan where the linkage cannot get there.

    Negative for a piston pulled back from rest.
    """
    held = _Held.by(lever, rod)
    socket = rod.socket + rod.direction * piston_travel
    still, cosine, sine = _circle(lever, lever.pin)
    gap = still - socket
    wanted = (held.length**2 - gap.dot(gap) - cosine.dot(cosine)) / 2.0
    pulled, pushed = swing_roots(gap.dot(cosine), gap.dot(sine), wanted)
    angle = wrapped(np.where(held.ahead > 0.0, pushed, pulled))
    ahead = (socket - _turned(lever, lever.pin, angle)).dot(rod.direction) * held.ahead
    return np.where(ahead > 0.0, angle, np.nan)


def pad_travel_at(lever: Lever, rod: Rod, piston_travel: mm) -> mm:
    """Arc of the pad for a piston travel; the short way where nothing else is asked."""
    return _radius(lever, lever.pad) * angle_at_travel(lever, rod, piston_travel)


@no_answer_is_nan
def angle_at_face(lever: Lever, face: Plane, gap: mm) -> rad:
    """The angle at which the pad centre comes within `gap` of a wall; nan if it never does.

    Negative for a pad that is nearer than that already at rest.
    """
    still, cosine, sine = _circle(lever, lever.pad)
    _, nearing = swing_roots(
        face.normal.dot(cosine), face.normal.dot(sine), gap - face.height(still)
    )
    angle = wrapped(nearing)
    too_near = face.height(lever.pad) < gap
    return np.where(too_near | (angle > -_ROUNDING), angle, np.nan)


@no_answer_is_nan
def forces(lever: Lever, rod: Rod, here: Position, push: Num) -> Forces:
    """A push square to the arm, along the pad's path."""
    square = lever.axis.cross(here.pad - lever.pivot).unit()
    return forces_of(lever, rod, here, square * push)


@no_answer_is_nan
def forces_of(lever: Lever, rod: Rod, here: Position, foot: Point) -> Forces:
    """A push of any direction on the pad centre: moments give the rod, the pivot the remainder."""
    pad_radius = _radius(lever, lever.pad)
    moment = lever.axis.dot((here.pad - lever.pivot).cross(foot))
    piston = piston_force(moment / pad_radius, here.ratio)
    along_rod = rod_force(piston, here.rod_angle)
    held = _Held.by(lever, rod)
    on_lever = (here.socket - here.pin) * (-held.ahead * along_rod / held.length)
    pivot = -(foot + on_lever)
    return Forces(
        piston=piston,
        rod=along_rod,
        side=side_force(piston, here.rod_angle),
        pivot=pivot,
        pivot_size=pivot.length(),
    )


@dataclass(frozen=True, slots=True)
class _Held:
    """The rod as set at rest: its length, and +1 for a push rod, -1 for a pull rod."""

    length: mm
    ahead: Num

    @classmethod
    def by(cls, lever: Lever, rod: Rod) -> "_Held":
        span = rod.socket - lever.pin
        return cls(span.length(), np.sign(span.dot(rod.direction)))


def _turned(lever: Lever, point: Point, angle: rad) -> Point:
    return lever.pivot + (point - lever.pivot).turned(lever.axis, angle)


def _circle(lever: Lever, point: Point) -> tuple[Point, Point, Point]:
    """The point's circle: centre, and the two directions that cos and sin of the angle multiply."""
    arm = point - lever.pivot
    along = lever.axis * lever.axis.dot(arm)
    return lever.pivot + along, arm - along, lever.axis.cross(arm)


def _radius(lever: Lever, point: Point) -> mm:
    return lever.axis.cross(point - lever.pivot).length()
