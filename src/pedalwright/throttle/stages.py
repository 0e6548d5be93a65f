"""One stage of the chain turned: rods by the closed spatial four-bar, cables by their quadrants.

A square rod is a ball rod whose points follow from two radii and a length, so both kinds of rod
have one solver. The driven lever keeps to the side on which it was assembled; from the first
dead point on, where it would swing back, the answer is nan.
"""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.points import RIGHT, Point
from pedalwright.core.solve import wrapped
from pedalwright.core.units import Num, Ratio, mm2, rad
from pedalwright.throttle.formulas import cable_turn, rod_turn
from pedalwright.throttle.parts import BallRod, Cable, SquareRod, Stage, Turn


def turned(stage: Stage, angle: rad, middle: rad) -> Turn:
    """What a stage makes of its driving lever's turn from rest.

    `angle` may be (stations,) or (stations, variants); `middle` is the driving lever's turn at
    the pedal's mid-travel, where a square rod is square.
    """
    if isinstance(stage, Cable):
        ratio = stage.driving_radius / stage.driven_radius + 0.0 * angle
        return Turn(
            angle=cable_turn(stage.driving_radius, angle, stage.slack, stage.driven_radius),
            gearing=ratio,
            rod_to_lever=np.full_like(ratio, np.pi / 2),
        )
    if isinstance(stage, BallRod):
        return _rod(stage, angle)
    square = _placed(stage)
    start, there = _rod(square, -middle), _rod(square, angle - middle)
    return Turn(
        angle=there.angle - start.angle,
        gearing=there.gearing,
        rod_to_lever=there.rod_to_lever,
    )


def _placed(stage: SquareRod) -> BallRod:
    """The rod at mid-travel, in a plane: levers upright, rod level."""
    zero = 0.0 * stage.rod_length
    return BallRod(
        driving_pivot=Point(zero, 0.0, 0.0),
        driving_axis=RIGHT,
        driving_pin=Point(zero, 0.0, stage.driving_radius),
        driven_pivot=Point(stage.rod_length, 0.0, stage.driving_radius - stage.driven_radius),
        driven_axis=RIGHT,
        driven_pin=Point(stage.rod_length, 0.0, stage.driving_radius),
    )


@dataclass(frozen=True, slots=True)
class _Equation:
    """A cos(phi) + B sin(phi) = C for the driven lever."""

    a: mm2
    b: mm2
    c: mm2


def _rod(stage: BallRod, angle: rad) -> Turn:
    still = _equation(stage, stage.driving_pin)
    side = np.sign(-wrapped(np.arctan2(still.b, still.a)))
    arm = stage.driving_pin - stage.driving_pivot
    pin = stage.driving_pivot + arm.turned(stage.driving_axis, angle)
    now = _equation(stage, pin)
    phi = wrapped(rod_turn(now.a, now.b, now.c, side))
    driven_arm = (stage.driven_pin - stage.driven_pivot).turned(stage.driven_axis, phi)
    rod = stage.driven_pivot + driven_arm - pin
    drives = stage.driving_axis.cross(pin - stage.driving_pivot)
    follows = stage.driven_axis.cross(driven_arm)
    before = (stage.driven_pin - stage.driving_pin).dot(
        stage.driven_axis.cross(stage.driven_pin - stage.driven_pivot)
    )
    alive = rod.dot(follows) * np.sign(before) > 0.0
    gearing: Ratio = np.where(alive, rod.dot(drives) / rod.dot(follows), np.nan)
    return Turn(
        angle=np.where(alive, phi, np.nan),
        gearing=gearing,
        rod_to_lever=np.minimum(_off_dead(rod, drives), _off_dead(rod, follows)),
    )


def _equation(stage: BallRod, driving_pin: Point) -> _Equation:
    arm = stage.driven_pin - stage.driven_pivot
    along = stage.driven_axis * stage.driven_axis.dot(arm)
    cosine, sine = arm - along, stage.driven_axis.cross(arm)
    gap = stage.driven_pivot + along - driving_pin
    rod = stage.driven_pin - stage.driving_pin
    wanted: Num = (rod.dot(rod) - gap.dot(gap) - cosine.dot(cosine)) / 2
    return _Equation(gap.dot(cosine), gap.dot(sine), wanted)


def _off_dead(rod: Point, pull: Point) -> rad:
    """Angle between rod and lever, 0 in line, 90 degrees square; `pull` is the pin's direction."""
    return np.arcsin(np.minimum(np.abs(rod.dot(pull)) / (rod.length() * pull.length()), 1.0))
