"""Nets of tapes to try things on: true places, readings with chance errors, what was read wrong."""

from collections.abc import Sequence

import numpy as np

from pedalwright.core.points import Point
from pedalwright.survey import Adjustment, Distance, Station, adjust

#: Six punch marks of a footwell, none of them in one plane with all others.
HOOKS = {
    "A": (0.0, 0.0, 0.0),
    "B": (700.0, 0.0, 0.0),
    "C": (0.0, 560.0, 20.0),
    "D": (690.0, 545.0, 0.0),
    "E": (30.0, 40.0, 420.0),
    "F": (20.0, 590.0, 405.0),
}
#: Where the mark is that all of them are taped to.
TRUE = np.array([320.0, 250.0, 180.0])


def held() -> list[Station]:
    return [Station(name=name, at=Point(*at)) for name, at in HOOKS.items()]


def tapes(
    to: str = "P", errors: Sequence[float] = (0.0,) * 6, names: str = "ABCDEF"
) -> list[Distance]:
    return [
        Distance(
            hook=name,
            to=to,
            length=float(np.linalg.norm(np.array(HOOKS[name]) - TRUE)) + error,
            sigma=1.0,
        )
        for name, error in zip(names, errors, strict=True)
    ]


def adjusted(errors: Sequence[float], names: str = "ABCDEF") -> Adjustment:
    return adjust([*held(), Station(name="P")], tapes("P", errors, names))


def place(adjustment: Adjustment, name: str = "P") -> np.ndarray:
    found = adjustment.mark(name)
    assert found is not None
    return np.array([found.at.x, found.at.y, found.at.z])
