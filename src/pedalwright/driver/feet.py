"""Feet that touch a pad otherwise than with the ball on its centre.

The accelerator is worked with the heel fixed, so the sole slides on the pad. A flat pad can
turn the sole with it. A thick curved sole rolls.
"""

import numpy as np
from numpy import pi

from pedalwright.core.points import Point
from pedalwright.core.solve import no_answer_is_nan, swing_roots
from pedalwright.core.units import mm, rad
from pedalwright.driver.formulas.foot import contact_along_sole, sole_on_round_pad
from pedalwright.driver.legs import ahead, sole_at, towards
from pedalwright.driver.parts import Body, OnPad, Posture


def sole_on_pad(body: Body, hip: Point, trunk: rad, ball: Point, face: rad) -> Posture:
    """The sole lies flush on a flat pad and turns with it; `face` is the pad's angle.

    The heel goes where the pad takes it: below the floor means that in truth the heel rests
    and the sole leaves the pad.
    """
    heel = ball - ahead(face, towards(hip, ball)) * body.heel_to_ball
    return sole_at(body, hip, trunk, heel, face)


@no_answer_is_nan
def heel_fixed_on_pad(
    body: Body, hip: Point, trunk: rad, heel: Point, pad_centre: Point, rounding: mm
) -> OnPad:
    """The foot turns about its heel and lies on a round pad (an accelerator roller)."""
    way = towards(hip, heel)
    angle, contact = turned_about_heel(heel, way, pad_centre, rounding)
    return OnPad(
        posture=sole_at(body, hip, trunk, heel, angle),
        contact=heel + ahead(angle, way) * contact,
        along_sole=contact,
    )


@no_answer_is_nan
def turned_about_heel(heel: Point, way: Point, pad_centre: Point, rounding: mm) -> tuple[rad, mm]:
    """Angle of a sole that turns about its heel on a round pad; where it touches, from the heel."""
    gap = pad_centre - heel
    run = gap.x * way.x + gap.y * way.y
    distance = np.hypot(run, gap.z)
    angle = sole_on_round_pad(np.arctan2(gap.z, run), rounding, distance)
    return angle, contact_along_sole(distance, rounding)


@no_answer_is_nan
def curved_sole_on_pad(
    body: Body, hip: Point, trunk: rad, heel: Point, pad: Point, face: rad, curve: mm
) -> OnPad:
    """The heel is fixed and the sole is round under the ball (radius `curve`) on a flat pad.

    `pad` is any point of the pad's face, `face` its angle. The rounding touches the sole's line
    at the ball, so its centre is as far above the sole as it is large.
    """
    way = towards(hip, heel)
    off = ahead(face + pi / 2, way)
    turn, _ = swing_roots(curve, body.heel_to_ball, curve - off.dot(heel - pad))
    angle = face + turn
    along, square = ahead(angle, way), ahead(angle + pi / 2, way)
    contact = heel + along * body.heel_to_ball + square * curve - off * curve
    return OnPad(
        posture=sole_at(body, hip, trunk, heel, angle),
        contact=contact,
        along_sole=(contact - heel).dot(along),
    )
