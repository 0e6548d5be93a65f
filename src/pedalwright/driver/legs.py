"""Where the knee comes to be: the leg from the hip to a foot that is known, or to the ball.

Seen from the side, in the upright plane of the pad. Directions are angles from straight
ahead upwards: a sole at 0 lies flat with the toes in front, at 90 degrees it stands. All in
closed form; where the leg cannot reach, the posture is nan and says how much is missing.
"""

import numpy as np
from numpy import pi

from pedalwright.core.points import UP, Point
from pedalwright.core.solve import no_answer_is_nan, wrapped
from pedalwright.core.units import mm, rad
from pedalwright.driver.formulas.foot import heel_behind_ball, pad_above_heel, sole_angle
from pedalwright.driver.formulas.leg import (
    ankle_angle,
    ball_to_knee,
    hip_angle,
    hip_to_ankle,
    knee_angle,
)
from pedalwright.driver.parts import Body, Posture


def ahead(angle: rad) -> Point:
    """The direction at an angle above straight ahead."""
    return Point(-np.cos(angle), 0.0, np.sin(angle))


@no_answer_is_nan
def sole_at(body: Body, hip: Point, trunk: rad, heel: Point, angle: rad) -> Posture:
    """The leg down to a foot whose heel and sole angle are known."""
    hip, ankle = _beside(hip, heel), heel + _ankle_from_heel(body, angle)
    knee = knee_between(hip, ankle, body.thigh, body.shank)
    gap = ankle - hip
    needed, reach = hip_to_ankle(gap.x, gap.z), body.thigh + body.shank
    return _posture(body, trunk, (hip, knee, ankle, heel), angle, needed, reach)


@no_answer_is_nan
def heel_on_floor(body: Body, hip: Point, trunk: rad, ball: Point, heel_height: mm) -> Posture:
    """The heel slides on its rest while the ball of the foot follows the pad.

    nan where the pad is higher above the heel's rest than the sole is long.
    """
    angle = sole_angle(pad_above_heel(ball.z, heel_height), body.heel_to_ball)
    heel = Point(ball.x + heel_behind_ball(body.heel_to_ball, angle), ball.y, heel_height)
    return sole_at(body, hip, trunk, heel, angle)


@no_answer_is_nan
def heel_lifted(body: Body, hip: Point, trunk: rad, ball: Point, ankle: rad) -> Posture:
    """The heel is off the floor, the ankle held: shank and foot move as one piece."""
    along, up = body.heel_to_ball - body.ankle_forward, body.ankle_height
    foot, slope = np.hypot(along, up), np.arctan2(up, along)
    reach = ball_to_knee(body.shank, foot, ankle, slope)
    hip = _beside(hip, ball)
    knee = knee_between(hip, ball, body.thigh, reach)
    bend = ankle + slope
    inside = np.arctan2(body.shank * np.sin(bend), foot - body.shank * np.cos(bend))
    angle = _angle_of(knee - ball) + slope + inside - pi
    heel = ball - ahead(angle) * body.heel_to_ball
    joint = heel + _ankle_from_heel(body, angle)
    needed = (ball - hip).length()
    return _posture(body, trunk, (hip, knee, joint, heel), angle, needed, body.thigh + reach)


@no_answer_is_nan
def knee_between(hip: Point, ankle: Point, thigh: mm, shank: mm, splay: rad = 0.0) -> Point:
    """The upper of the two places where the knee can be, turned outwards by `splay`.

    In space: `splay` turns the knee about the line hip-ankle, positive towards the car's right.
    """
    span = ankle - hip
    distance = span.length()
    along = span * (1.0 / distance)
    foot = (thigh**2 - shank**2 + distance**2) / (2.0 * distance)
    off = np.sqrt(thigh**2 - foot**2)
    upper = (UP - along * along.z).unit()
    right = along.cross(upper)
    return hip + along * foot + (upper * np.cos(splay) + right * np.sin(splay)) * off


@no_answer_is_nan
def hip_for_ankle(body: Body, heel: Point, sole: rad, ankle: rad, hip_height: mm) -> Point:
    """Where the hip has to be for a foot and an ankle that suit; the rearward of two answers."""
    joint = heel + _ankle_from_heel(body, sole)
    knee = joint + ahead(sole + ankle) * body.shank
    drop = knee.z - hip_height
    return Point(knee.x + np.sqrt(body.thigh**2 - drop**2), heel.y, hip_height)


def _posture(
    body: Body,
    trunk: rad,
    joints: tuple[Point, Point, Point, Point],
    sole: rad,
    needed: mm,
    reach: mm,
) -> Posture:
    hip, knee, ankle, heel = joints
    along, span, thigh = ahead(sole), ankle - hip, knee - hip
    return Posture(
        hip=hip,
        knee=knee,
        ankle=ankle,
        heel=heel,
        ball=heel + along * body.heel_to_ball,
        toe=heel + along * body.shoe_length,
        knee_angle=knee_angle(body.thigh, body.shank, np.hypot(span.x, span.z)),
        ankle_angle=ankle_angle(_angle_of(knee - ankle), sole),
        hip_angle=hip_angle(trunk, wrapped(_angle_of(thigh))),
        sole_angle=sole,
        needed=needed,
        reach=reach,
    )


def _ankle_from_heel(body: Body, sole: rad) -> Point:
    along = ahead(sole)
    off_the_sole = Point(along.z, 0.0, -along.x)
    return along * body.ankle_forward + off_the_sole * body.ankle_height


def _angle_of(direction: Point) -> rad:
    """The inverse of `ahead`, from 0 to a full turn: shins lean rearward past 90 degrees."""
    return np.mod(np.arctan2(direction.z, -direction.x), 2.0 * pi)


def _beside(hip: Point, foot: Point) -> Point:
    """The hip seen from the side, in the upright plane of the foot."""
    return Point(hip.x, foot.y, hip.z)
