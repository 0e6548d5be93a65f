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
class _Products:
    """What the driven circle measures along the driving one: no turn changes these.

    `c` and `s` stand for the arms that cos and sin of a turn multiply, the driven circle's first;
    `apart` runs from the driving circle's centre to the driven one's.
    """

    c_c: mm2
    c_s: mm2
    s_c: mm2
    s_s: mm2
    apart_c: mm2
    apart_s: mm2
    #: The driven circle's own arms along `apart`.
    c_apart: mm2
    s_apart: mm2
    apart_apart: mm2

    @classmethod
    def of(cls, driving: _Circle, driven: _Circle) -> "_Products":
        apart = driven.centre - driving.centre
        return cls(
            c_c=driven.cosine.dot(driving.cosine),
            c_s=driven.cosine.dot(driving.sine),
            s_c=driven.sine.dot(driving.cosine),
            s_s=driven.sine.dot(driving.sine),
            apart_c=apart.dot(driving.cosine),
            apart_s=apart.dot(driving.sine),
            c_apart=apart.dot(driven.cosine),
            s_apart=apart.dot(driven.sine),
            apart_apart=apart.dot(apart),
        )


@dataclass(frozen=True, slots=True)
class Linked:
    """Two pins on their circles with a rod between them, as it was fitted."""

    driving: _Circle
    driven: _Circle
    length: mm
    products: _Products

    @classmethod
    def by(cls, rod: BallRod) -> "Linked":
        """The rod is as long as its pins are apart."""
        return cls.between(
            _Circle.about(rod.driving_pivot, rod.driving_axis, rod.driving_pin),
            _Circle.about(rod.driven_pivot, rod.driven_axis, rod.driven_pin),
            (rod.driven_pin - rod.driving_pin).length(),
        )

    @classmethod
    def between(cls, driving: _Circle, driven: _Circle, length: mm) -> "Linked":
        """A rod of that length between two circles."""
        return cls(driving, driven, length, _Products.of(driving, driven))

    def moved(self, way: Point) -> "Linked":
        """The same rod and levers, with the driven axis carried along a way."""
        carried = replace(self.driven, centre=self.driven.centre + way)
        return Linked.between(self.driving, carried, self.length)

    def turned(self, angle: rad) -> Turn:
        """The driven lever's turn for the driving one's, both from where the rod was fitted."""
        cos, sin = np.cos(angle), np.sin(angle)
        a, b, c = self._equation(cos, sin)
        _, start_b, start_c = self._equation(1.0, 0.0)
        side = -np.sign(start_b)
        phi = rod_turn(a, b, c, side)
        driving_arm = self._driving_arm(cos, sin, np.cos(phi), np.sin(phi))
        driven_arm = -side * np.sqrt(a**2 + b**2 - c**2) / self.length
        clear = np.minimum(
            driving_arm * np.sign(self._driving_arm(1.0, 0.0, 1.0, 0.0)) / self.driving.radius,
            np.abs(driven_arm) / self.driven.radius,
        )
        out_of_reach = np.isnan(phi) & np.isfinite(start_c + angle)
        return Turn(
            angle=np.where(clear > 0.0, phi, np.nan),
            gearing=np.where(clear > 0.0, rod_gearing(driving_arm, driven_arm), np.nan),
            rod_to_lever=np.arcsin(np.where(out_of_reach, 0.0, np.minimum(clear, 1.0))),
        )

    def turned_back(self, angle: rad) -> rad:
        """The driving lever's turn for the driven one's: the same rod, read from its other end."""
        return Linked.between(self.driven, self.driving, self.length).turned(angle).angle

    def _equation(self, cos: Num, sin: Num) -> tuple[mm2, mm2, mm2]:
        """A, B and C from the rod's length squared, with the driving lever turned so far."""
        p = self.products
        along = p.apart_c * cos + p.apart_s * sin
        reach = p.apart_apart + self.driving.radius**2 - 2 * along
        return (
            p.c_apart - (p.c_c * cos + p.c_s * sin),
            p.s_apart - (p.s_c * cos + p.s_s * sin),
            (self.length**2 - self.driven.radius**2 - reach) / 2,
        )

    def _driving_arm(self, cos: Num, sin: Num, driven_cos: Num, driven_sin: Num) -> mm:
        """Lever arm of the rod about the driving axis, both levers turned so far.

        Measured along the way the driving pin goes; the part of the rod that is the driving
        lever's own arm is square to that.
        """
        p = self.products
        between_axes = p.apart_s * cos - p.apart_c * sin
        by_cos = p.c_s * cos - p.c_c * sin
        by_sin = p.s_s * cos - p.s_c * sin
        return (between_axes + by_cos * driven_cos + by_sin * driven_sin) / self.length
