"""From pedal to pedal: the foot swung about its heel, seen square to the sole."""

from dataclasses import dataclass

from pedalwright.core.units import mm, rad
from pedalwright.driver.formulas.foot import (
    ball_drawn_back,
    shoe_edge_aside,
    swing_angle,
    toe_aside,
)
from pedalwright.driver.parts import Body


@dataclass(frozen=True, kw_only=True, slots=True)
class ToeSwing:
    """What a swing of the foot from the brake to the accelerator needs."""

    angle: rad
    #: Sideways, of the tip and of the outer corner of the shoe.
    toe_aside: mm
    edge_aside: mm
    ball_drawn_back: mm
    #: Shoe to the side wall before the swing.
    wall_gap: mm


def toe_swing(body: Body, pitch: mm, heel_to_wall: mm) -> ToeSwing:
    """The heel stays; `pitch` is pad middle to pad middle, across the car."""
    angle = swing_angle(pitch, body.heel_to_ball)
    return ToeSwing(
        angle=angle,
        toe_aside=toe_aside(body.shoe_length, angle),
        edge_aside=shoe_edge_aside(body.shoe_length, body.shoe_width, angle),
        ball_drawn_back=ball_drawn_back(body.heel_to_ball, angle),
        wall_gap=heel_to_wall - body.shoe_width / 2,
    )
