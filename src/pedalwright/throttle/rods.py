"""A rod with ball joints between two levers on axes of any direction, in closed form.

Each pin keeps to a circle, and the rod keeps its length. Written for the driven pin that is
A cos(phi) + B sin(phi) = C, where A, B and C follow from where the driving pin is. The driven
lever keeps to the side on which it was assembled. From the first dead point on, of either
lever, the answer is nan; the angle of rod and lever says so before.
"""

from dataclasses import dataclass, replace

import numpy as np

from pedalwright.core.points import Point
from pedalwright.core.units import Num, mm, mm2, rad
from pedalwright.throttle.formulas import rod_gearing, rod_turn
from pedalwright.throttle.parts import BallRod, Turn


@dataclass(frozen=True, slots=True)
class _Circle:
    """A pin's circle: its centre, and the arms that cos and sin of the turn multiply."""

    centre: Point
    cosine: Point
    sine: Point
    radius: mm

    @classmethod
    def about(cls, pivot: Point, axis: Point, pin: Point) -> "_Circle":
        axis, arm = axis.unit(), pin - pivot
        along = axis * axis.dot(arm)
        return cls(pivot + along, arm - along, axis.cross(arm), (arm - along).length())


@dataclass(frozen=True, slots=True)
class _Turned:
    """A circle's pin, turned: what its arm and its path measure along any direction."""

    circle: _Circle
    cos: Num
    sin: Num

    @classmethod
    def by(cls, circle: _Circle, angle: rad) -> "_Turned":
        return cls(circle, np.cos(angle), np.sin(angle))

    def arm(self, along: Point) -> mm2:
        """Arm from the axis to the pin, along a direction."""
        return along.dot(self.circle.cosine) * self.cos + along.dot(self.circle.sine) * self.sin

    def path(self, along: Point) -> mm2:
        """Way of the pin per radian, along a direction."""
        return along.dot(self.circle.sine) * self.cos - along.dot(self.circle.cosine) * self.sin


@dataclass(frozen=True, slots=True)
class _Equation:
    """A cos(phi) + B sin(phi) = C for the driven lever."""

    a: mm2
    b: mm2
    c: mm2


@dataclass(frozen=True, slots=True)
class Linked:
    """Two pins on their circles with a rod between them, as it was fitted."""

    driving: _Circle
    driven: _Circle
    length: mm

    @classmethod
    def by(cls, rod: BallRod) -> "Linked":
        """The rod is as long as its pins are apart."""
        return cls(
            driving=_Circle.about(rod.driving_pivot, rod.driving_axis, rod.driving_pin),
            driven=_Circle.about(rod.driven_pivot, rod.driven_axis, rod.driven_pin),
            length=(rod.driven_pin - rod.driving_pin).length(),
        )

    def moved(self, way: Point) -> "Linked":
        """The same rod and levers, with the driven axis carried along a way."""
        return replace(self, driven=replace(self.driven, centre=self.driven.centre + way))

    def turned(self, angle: rad) -> Turn:
        """The driven lever's turn for the driving one's, both from where the rod was fitted."""
        fitted, near = _Turned.by(self.driving, 0.0), _Turned.by(self.driving, angle)
        start, now = self._equation(fitted), self._equation(near)
        side = -np.sign(start.b)
        phi = rod_turn(now.a, now.b, now.c, side)
        driving_arm = self._driving_arm(near, np.cos(phi), np.sin(phi))
        driven_arm = -side * np.sqrt(now.a**2 + now.b**2 - now.c**2) / self.length
        clear = np.minimum(
            driving_arm * np.sign(self._driving_arm(fitted, 1.0, 0.0)) / self.driving.radius,
            np.abs(driven_arm) / self.driven.radius,
        )
        out_of_reach = np.isnan(phi) & np.isfinite(start.c + angle)
        return Turn(
            angle=np.where(clear > 0.0, phi, np.nan),
            gearing=np.where(clear > 0.0, rod_gearing(driving_arm, driven_arm), np.nan),
            rod_to_lever=np.arcsin(np.where(out_of_reach, 0.0, np.minimum(clear, 1.0))),
        )

    def turned_back(self, angle: rad) -> rad:
        """The driving lever's turn for the driven one's: the same rod, read from its other end."""
        return Linked(self.driven, self.driving, self.length).turned(angle).angle

    def _equation(self, near: _Turned) -> _Equation:
        """From the rod's length squared, with the driving pin where it is."""
        apart = self.driven.centre - self.driving.centre
        reach = apart.dot(apart) + self.driving.radius**2 - 2 * near.arm(apart)
        return _Equation(
            a=apart.dot(self.driven.cosine) - near.arm(self.driven.cosine),
            b=apart.dot(self.driven.sine) - near.arm(self.driven.sine),
            c=(self.length**2 - self.driven.radius**2 - reach) / 2,
        )

    def _driving_arm(self, near: _Turned, cos: Num, sin: Num) -> mm:
        """Lever arm of the rod about the driving axis, with the driven lever where it is.

        The part of the rod that is the driving lever's own arm is square to its path.
        """
        apart = self.driven.centre - self.driving.centre
        far = near.path(self.driven.cosine) * cos + near.path(self.driven.sine) * sin
        return (near.path(apart) + far) / self.length
