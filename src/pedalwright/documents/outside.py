"""How numbers leave the house."""

import numpy as np

from pedalwright.core.units import Num


def outside(value: Num, unit: str) -> tuple[Num, str]:
    """Angles leave in degrees; every other inside unit is also the outside one."""
    if unit == "rad":
        return np.rad2deg(value), "deg"
    return value, unit
