"""A car that did not stand level while it was measured.

Tapes do not care. Plumb line, level and phone know only which way is down: what they read is
along the level and the plumb line, not along the axes of the car.
"""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.points import REARWARD, RIGHT, UP, Point
from pedalwright.core.units import Num, rad
from pedalwright.survey.formulas import share_upright


@dataclass(frozen=True, slots=True)
class Level:
    """Along the level, as near to rearward and to the right as that goes; and plumb upwards."""

    rearward: Point = REARWARD
    right: Point = RIGHT
    up: Point = UP


def level(pitch: rad | None, roll: rad | None) -> Level:
    """Level and plumb line in car axes; a car of which nothing was said stood level."""
    if not pitch and not roll:
        return Level()
    rises = np.sin(0.0 if pitch is None else pitch), np.sin(0.0 if roll is None else roll)
    up = Point(*rises, _number(share_upright.rule(*rises)))
    rearward = (REARWARD - up * up.x).unit()
    return Level(rearward, up.cross(rearward), up)


def _number(value: Num) -> float:
    return float(value)
