"""Where the knee comes to be: the leg from the hip to a foot that is known, or to the ball.

A leg and its foot lie in one upright plane, through the hip joint and the ball of the foot, so
a leg that reaches sideways is longer to span and its toes point where it points. Directions in
that plane are angles from straight ahead upwards: a sole at 0 lies flat with the toes in front,
at 90 degrees it stands. All in closed form; where the leg cannot reach, the posture is nan and
says how much is missing.
"""

from dataclasses import dataclass

import numpy as np
from numpy import pi

from pedalwright.core.points import REARWARD, Point
from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import Truth, mm, rad
from pedalwright.driver.formulas.foot import heel_behind_ball, pad_above_heel, sole_angle
from pedalwright.driver.formulas.leg import (
    ankle_angle,
    ball_to_knee,
    hip_angle,
    hip_to_ankle,
    knee_angle,
)
from pedalwright.driver.parts import Body, Posture

FORWARD = -REARWARD


@dataclass(frozen=True, kw_only=True, slots=True)
class Foot:
    """A foot that is placed, and what its leg has to span."""

    #: Level, from the hip towards the foot.
    way: Point
    heel: Point
    sole: rad
    #: Distance to span and length of the straight leg, where the ankle does not say it.
    needed: mm | None = None
    reach: mm | None = None

    @property
    def reaches(self) -> Truth:
        """True where the leg is known to be long enough."""
        if self.needed is None or self.reach is None:
            return False
        return np.less_equal(self.needed, self.reach)


def ahead(angle: rad, way: Point = FORWARD) -> Point:
    """The direction at an angle above straight ahead."""
    level = np.cos(angle)
    return Point(way.x * level, way.y * level, np.sin(angle))


def towards(hip: Point, foot: Point) -> Point:
    """The level direction from a hip to a foot."""
    x, y = foot.x - hip.x, foot.y - hip.y
    run = np.hypot(x, y)
    return Point(x / run, y / run, 0.0)


def sole_at(
    body: Body, hip: Point, trunk: rad, heel: Point, angle: rad, splay: rad = 0.0
) -> Posture:
    """The leg down to a foot whose heel and sole angle are known."""
    foot = Foot(way=towards(hip, heel), heel=heel, sole=angle)
    return posture(body, hip, trunk, foot, splay)


def heel_on_floor(
    body: Body, hip: Point, trunk: rad, ball: Point, heel_height: mm, splay: rad = 0.0
) -> Posture:
    """The heel slides on its rest while the ball of the foot follows the pad.

    nan where the pad is higher above the heel's rest than the sole is long.
    """
    return posture(body, hip, trunk, foot_on_floor(body, hip, ball, heel_height), splay)


def heel_lifted(
    body: Body, hip: Point, trunk: rad, ball: Point, ankle: rad, splay: rad = 0.0
) -> Posture:
    """The heel is off the floor, the ankle held: shank and foot move as one piece."""
    return posture(body, hip, trunk, foot_lifted(body, hip, ball, ankle), splay)


@no_answer_is_nan
def foot_on_floor(body: Body, hip: Point, ball: Point, heel_height: mm) -> Foot:
    """The foot with its ball on the pad and its heel on the rest."""
    way = towards(hip, ball)
    angle = sole_angle(pad_above_heel(ball.z, heel_height), body.heel_to_ball)
    behind = heel_behind_ball(body.heel_to_ball, angle)
    heel = Point(ball.x - way.x * behind, ball.y - way.y * behind, heel_height)
    return Foot(way=way, heel=heel, sole=angle)


@no_answer_is_nan
def foot_lifted(body: Body, hip: Point, ball: Point, ankle: rad) -> Foot:
    """The foot with its ball on the pad and its ankle held.

    The knee is the upper one of thigh and of what lies rigid between knee and ball.
    """
    along, up = body.heel_to_ball - body.ankle_forward, body.ankle_height
    foot, slope = np.hypot(along, up), np.arctan2(up, along)
    reach = ball_to_knee(body.shank, foot, ankle, slope)
    way = towards(hip, ball)
    run, rise = np.hypot(ball.x - hip.x, ball.y - hip.y), ball.z - hip.z
    needed = np.hypot(run, rise)
    knee_ahead, knee_up = _upper(run, rise, needed, body.thigh, reach)
    bend = ankle + slope
    inside = np.arctan2(body.shank * np.sin(bend), foot - body.shank * np.cos(bend))
    shin = np.mod(np.arctan2(knee_up - rise, knee_ahead - run), 2.0 * pi)
    angle = shin + slope + inside - pi
    return Foot(
        way=way,
        heel=ball - ahead(angle, way) * body.heel_to_ball,
        sole=angle,
        needed=needed,
        reach=body.thigh + reach,
    )


@no_answer_is_nan
def posture(body: Body, hip: Point, trunk: rad, foot: Foot, splay: rad = 0.0) -> Posture:
    """The leg between a hip joint and a foot that is placed; the upper knee of two.

    `splay` turns the knee out of the upright plane, about the line from hip to ankle, positive
    towards the car's right. Hip and ankle are then judged as seen square to the plane.
    """
    way, heel, sole = foot.way, foot.heel, foot.sole
    level, stands = np.cos(sole), np.sin(sole)
    run = (heel.x - hip.x) * way.x + (heel.y - hip.y) * way.y
    ankle_ahead = run + body.ankle_forward * level - body.ankle_height * stands
    ankle_up = heel.z - hip.z + body.ankle_forward * stands + body.ankle_height * level
    span = hip_to_ankle(ankle_ahead, ankle_up)
    knee_ahead, knee_up = _upper(ankle_ahead, ankle_up, span, body.thigh, body.shank, splay)
    knee = _at(hip, way, knee_ahead, knee_up)
    if np.any(splay):
        knee = knee + Point(way.y, -way.x, 0.0) * _aside(span, body.thigh, body.shank, splay)
    along = Point(way.x * level, way.y * level, stands)
    return Posture(
        hip=hip,
        knee=knee,
        ankle=_at(hip, way, ankle_ahead, ankle_up),
        heel=heel,
        ball=heel + along * body.heel_to_ball,
        toe=heel + along * body.shoe_length,
        knee_angle=knee_angle(body.thigh, body.shank, span),
        ankle_angle=ankle_angle(_angle_of(knee_ahead - ankle_ahead, knee_up - ankle_up), sole),
        hip_angle=hip_angle(trunk, np.arctan2(knee_up, knee_ahead)),
        sole_angle=sole,
        needed=span if foot.needed is None else foot.needed,
        reach=body.thigh + body.shank if foot.reach is None else foot.reach,
    )


@no_answer_is_nan
def knee_between(hip: Point, ankle: Point, thigh: mm, shank: mm, splay: rad = 0.0) -> Point:
    """The upper of the two places where the knee can be, turned outwards by `splay`.

    In space: `splay` turns the knee about the line hip-ankle, positive towards the car's right.
    """
    way = towards(hip, ankle)
    run, rise = np.hypot(ankle.x - hip.x, ankle.y - hip.y), ankle.z - hip.z
    span = np.hypot(run, rise)
    knee_ahead, knee_up = _upper(run, rise, span, thigh, shank, splay)
    aside = Point(way.y, -way.x, 0.0) * _aside(span, thigh, shank, splay)
    return _at(hip, way, knee_ahead, knee_up) + aside


@no_answer_is_nan
def hip_for_ankle(body: Body, heel: Point, sole: rad, ankle: rad, hip_height: mm) -> Point:
    """Where the hip has to be for a foot and an ankle that suit; the rearward of two answers."""
    joint = heel + _ankle_from_heel(body, sole)
    knee = joint + ahead(sole + ankle) * body.shank
    drop = knee.z - hip_height
    return Point(knee.x + np.sqrt(body.thigh**2 - drop**2), heel.y, hip_height)


def _upper(run: mm, rise: mm, span: mm, thigh: mm, shank: mm, splay: rad = 0.0) -> tuple[mm, mm]:
    """Upper knee ahead of the hip and above it, for an end that lies `run` ahead and `rise` up."""
    share = (thigh**2 - shank**2 + span**2) / (2.0 * span**2)
    off = _off(span, thigh, shank) * np.cos(splay) * np.sign(run) / span
    return run * share - rise * off, rise * share + run * off


def _aside(span: mm, thigh: mm, shank: mm, splay: rad) -> mm:
    return _off(span, thigh, shank) * np.sin(splay)


def _off(span: mm, thigh: mm, shank: mm) -> mm:
    """Knee off the line between the two ends."""
    return np.sqrt(thigh**2 - ((thigh**2 - shank**2 + span**2) / (2.0 * span)) ** 2)


def _at(hip: Point, way: Point, run: mm, rise: mm) -> Point:
    return Point(hip.x + way.x * run, hip.y + way.y * run, hip.z + rise)


def _ankle_from_heel(body: Body, sole: rad) -> Point:
    along = ahead(sole)
    off_the_sole = Point(along.z, 0.0, -along.x)
    return along * body.ankle_forward + off_the_sole * body.ankle_height


def _angle_of(run: mm, rise: mm) -> rad:
    """The inverse of `ahead`, from 0 to a full turn: shins lean rearward past 90 degrees."""
    return np.mod(np.arctan2(rise, run), 2.0 * pi)
