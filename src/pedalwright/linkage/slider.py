"""One lever, one rod, one piston, in closed form, on an axis of any direction.

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

from pedalwright.core.points import Point
from pedalwright.core.solve import swing_roots, wrapped
from pedalwright.core.units import N, Num, mm, rad
from pedalwright.linkage.circles import circle, radius, turned
from pedalwright.linkage.formulas import pad_arc, pedal_ratio, rod_angle
from pedalwright.linkage.parts import Lever, Position, Rod


def slide(lever: Lever, rod: Rod, angle: rad) -> Position:
    """Everything about the lever turned by `angle`; angle is () or (stations, variants)."""
    pin = turned(lever, lever.pin, angle)
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
    pin_radius = radius(lever, lever.pin)
    return Position(
        angle=angle,
        pad=turned(lever, lever.pad, angle),
        pin=pin,
        socket=socket,
        pad_travel=pad_arc(radius(lever, lever.pad), angle),
        piston_travel=np.where(turning_arm > 0.0, travel, np.nan),
        ratio=pedal_ratio(radius(lever, lever.pad), beta, arm),
        rod_angle=beta,
        rod_to_arm=np.arcsin(np.minimum(arm / pin_radius, 1.0)),
    )


def angle_of_slide(lever: Lever, rod: Rod, piston_travel: mm) -> rad:
    """The angle at which the piston has moved so far; nan where the linkage cannot get there."""
    held = _Held.by(lever, rod)
    socket = rod.socket + rod.direction * piston_travel
    still, cosine, sine = circle(lever, lever.pin)
    gap = still - socket
    wanted = (held.length**2 - gap.dot(gap) - cosine.dot(cosine)) / 2.0
    pulled, pushed = swing_roots(gap.dot(cosine), gap.dot(sine), wanted)
    angle = wrapped(np.where(held.ahead > 0.0, pushed, pulled))
    ahead = (socket - turned(lever, lever.pin, angle)).dot(rod.direction) * held.ahead
    return np.where(ahead > 0.0, angle, np.nan)


def rod_on_pin(lever: Lever, rod: Rod, pin: Point, socket: Point, along_rod: N) -> Point:
    """Force of a rod on the lever's pin, for the force along the rod."""
    held = _Held.by(lever, rod)
    return (socket - pin) * (-held.ahead * along_rod / held.length)


@dataclass(frozen=True, slots=True)
class _Held:
    """The rod as set at rest: its length, and +1 for a push rod, -1 for a pull rod."""

    length: mm
    ahead: Num

    @classmethod
    def by(cls, lever: Lever, rod: Rod) -> "_Held":
        span = rod.socket - lever.pin
        return cls(span.length(), np.sign(span.dot(rod.direction)))
