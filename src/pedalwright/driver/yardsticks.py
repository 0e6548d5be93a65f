"""Where average drivers sit, by the SAE's equations: something to compare with, never a limit.

Seat height `h30` is hip above heel; seat curves give the hip's distance behind the ball of
the foot. They are for ordinary cars, heights 127 to 405 mm. Our own basis is the driver who
was measured: people of one stature stray 36 mm (1 SD) from any such rule.
"""

from dataclasses import dataclass
from typing import Annotated

import numpy as np

from pedalwright.core.units import Num, Ratio, mm, rad
from pedalwright.core.working import formula
from pedalwright.driver.parts import Seated
from pedalwright.shelf.seat_curves import seat_curves

#: Seat heights that the curves were drawn for, mm.
LOWEST, HIGHEST = 127.0, 405.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Sitting:
    """Where a driver's hip is, and where those of most drivers would be at his seat's height."""

    #: Hip above heel, and behind the ball of the foot.
    height: mm
    behind: mm
    #: Behind the ball for half of all drivers, and for 95 in 100; nan where no curve reaches.
    half: mm
    most: mm


def sitting(seated: Seated) -> Sitting:
    """A driver with his foot on the accelerator at rest, beside the seat curves."""
    rest = seated.rest
    height = rest.hip.z - seated.heel_height
    within = np.where((height >= LOWEST) & (height <= HIGHEST), height, np.nan)
    return Sitting(
        height=height,
        behind=rest.hip.x - rest.ball.x,
        half=hip_chosen_by(50.0, within),
        most=hip_chosen_by(95.0, within),
    )


@formula("A_47", source="SAE J4004", empirical=True)
def shoe_plane_angle(h30: mm) -> rad:
    """Angle of the shoe's sole above the horizontal, for a seat height."""
    return np.radians(2.522e-7 * h30**3 - 3.961e-4 * h30**2 + 4.644e-2 * h30 + 73.374)


@formula("A_pedal", source="SAE J1516", empirical=True)
def pedal_plane_angle(h30: mm) -> rad:
    """Angle of the pedal plane above the horizontal, by the older rule, for a seat height."""
    return np.radians(78.96 - 0.015 * h30 - 0.000173 * h30**2)


@formula("X", source="SAE J1517", empirical=True)
def hip_behind_ball(h30: mm, a: mm, b: Ratio, c: Annotated[Num, "1/mm"]) -> mm:
    """Hip behind the ball of the foot for which a share of drivers would choose less, by height.

    `a`, `b` and `c` belong to that share; the shelf has them.
    """
    return a + b * h30 - c * h30**2


@formula("L_53", source="SAE J4004", empirical=True)
def hip_behind_heel(x: mm, alpha: rad) -> mm:
    """Hip behind the heel, from its distance behind the ball of the foot and the sole's angle.

    Heel to ball is 203 mm in the shoe the SAE draws with.
    """
    return x - 203 * np.cos(alpha)


@formula("X_ref", source="SAE J4004, from memory", empirical=True)
def seat_reference(h30: mm, l6: mm, t: Ratio) -> mm:
    """Hip behind the ball of the foot at the reference point, by seat height and wheel distance.

    `l6` is ball of the foot to wheel centre along the car, `t` 1 with a clutch pedal, else 0.
    """
    return 718 - 0.24 * h30 + 0.41 * l6 - 18.2 * t


@formula("X_eye", source="SAE J941, from memory", empirical=True)
def eyes_behind_ball(h30: mm, l6: mm, t: Ratio) -> mm:
    """Middle of all drivers' eyes behind the ball of the foot."""
    return 664 + 0.587 * l6 - 0.176 * h30 - 12.5 * t


@formula("Z_eye", source="SAE J941, from memory", empirical=True)
def eyes_above_heel(h30: mm) -> mm:
    """Middle of all drivers' eyes above the heel."""
    return 638 + h30


@formula("X_mean", source="UMTRI seating model, from memory", empirical=True)
def mean_hip_behind_ball(h: mm, h30: mm, tau: rad, l6: mm, t: Ratio) -> mm:
    """Hip behind the ball of the foot that drivers of one stature choose on the average.

    `tau` is the angle of the seat cushion. One person strays from it by 36 mm (1 SD).
    """
    return 16.8 + 0.433 * h - 0.24 * h30 - 2.19 * np.degrees(tau) + 0.41 * l6 - 18.2 * t


@formula("H_hip", source="Drillis and Contini, as quoted by Winter")
def standing_hip_height(h: mm) -> mm:
    """Hip joint above the floor of somebody standing barefoot."""
    return 0.530 * h


@formula("H_knee", source="Drillis and Contini, as quoted by Winter")
def standing_knee_height(h: mm) -> mm:
    """Knee joint above the floor of somebody standing barefoot."""
    return 0.285 * h


@formula("T", source="de Leva 1996, mean stature from memory")
def thigh_by_de_leva(h: mm) -> mm:
    """Hip joint to knee joint of a man: a second opinion."""
    return 422.2 / 1741 * h


@formula("S", source="de Leva 1996, mean stature from memory")
def shank_by_de_leva(h: mm) -> mm:
    """Knee joint to ankle joint of a man: a second opinion."""
    return 440.3 / 1741 * h


def hip_chosen_by(share: float, h30: mm) -> mm:
    """Hip behind the ball of the foot, for a share of drivers in 100 and a seat height."""
    curve = next(c for c in seat_curves() if c.share == share)
    return hip_behind_ball(h30, curve.a, curve.b, curve.c)
