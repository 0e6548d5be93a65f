"""Coefficients of rectangular plates, by edge and load."""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shelf.tables import table


@dataclass(frozen=True, kw_only=True, slots=True)
class PlateRow:
    """Give and stress factor at one ratio of long to short side."""

    edge: str
    load: str
    sides: float
    give: float
    stress: float
    source: str
    mark: str


@dataclass(frozen=True, kw_only=True, slots=True)
class PlateCurve:
    """The factors over the ratio of sides, rising; all (rows,)."""

    sides: Array
    give: Array
    stress: Array


def coefficients(edge: str, load: str) -> PlateCurve:
    """The curve for an edge (`supported`, `clamped`) and a load (`uniform`, `point`)."""
    rows = [r for r in table(PlateRow, "plates") if (r.edge, r.load) == (edge, load)]
    return PlateCurve(
        sides=np.array([r.sides for r in rows]),
        give=np.array([r.give for r in rows]),
        stress=np.array([r.stress for r in rows]),
    )
