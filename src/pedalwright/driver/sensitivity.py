"""How much the knee angle answers to a millimetre of seat or of leg."""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import Num, rad
from pedalwright.driver.legs import ahead, towards
from pedalwright.driver.parts import Body, Posture


@dataclass(frozen=True, kw_only=True, slots=True)
class KneeSensitivity:
    """Change of the knee angle, in rad per mm (per rad for the sole), with the heel fixed."""

    hip_to_ankle: Num
    hip_rearward: Num
    hip_up: Num
    thigh: Num
    shank: Num
    sole: Num


@no_answer_is_nan
def knee_sensitivity(body: Body, posture: Posture) -> KneeSensitivity:
    """Slopes of the law of cosines; they grow without bound towards a straight leg."""
    span = posture.hip - posture.ankle
    distance = span.length()
    straightness = body.thigh * body.shank * np.sin(posture.knee_angle)
    stretch = distance / straightness
    toward_hip = span * (1.0 / distance)
    bend = np.cos(posture.knee_angle)
    way = towards(posture.hip, posture.heel)
    ankle_moves = (
        ahead(posture.sole_angle + np.pi / 2, way) * body.ankle_forward
        - ahead(posture.sole_angle, way) * body.ankle_height
    )
    return KneeSensitivity(
        hip_to_ankle=stretch,
        hip_rearward=stretch * toward_hip.x,
        hip_up=stretch * toward_hip.z,
        thigh=-(body.thigh - body.shank * bend) / straightness,
        shank=-(body.shank - body.thigh * bend) / straightness,
        sole=-stretch * toward_hip.dot(ankle_moves),
    )


def knee_spread(found: KneeSensitivity, spread: Body) -> rad:
    """Uncertainty of the knee angle (1 SD) from those of thigh and shank, taken as independent."""
    return np.hypot(found.thigh * spread.thigh, found.shank * spread.shank)
