"""The clutch: travel from plate lift to pad, effort, what the room allows."""

from pedalwright.clutch.limits import check
from pedalwright.clutch.parts import (
    Budget,
    CableFork,
    ClutchResult,
    ConcentricBearing,
    Fluid,
    Need,
    Release,
    SlaveCylinder,
)
from pedalwright.clutch.solve import budget, need, respond

__all__ = [
    "Budget",
    "CableFork",
    "ClutchResult",
    "ConcentricBearing",
    "Fluid",
    "Need",
    "Release",
    "SlaveCylinder",
    "budget",
    "check",
    "need",
    "respond",
]
