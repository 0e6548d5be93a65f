"""The clutch: travel from plate lift to pad, effort, what the room allows."""

from pedalwright.clutch.limits import check
from pedalwright.clutch.parts import (
    Budget,
    ClutchResult,
    ConcentricBearing,
    Need,
    Release,
    SlaveCylinder,
)
from pedalwright.clutch.solve import budget, need, respond

__all__ = [
    "Budget",
    "ClutchResult",
    "ConcentricBearing",
    "Need",
    "Release",
    "SlaveCylinder",
    "budget",
    "check",
    "need",
    "respond",
]
