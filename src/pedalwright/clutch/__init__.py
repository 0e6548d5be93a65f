"""The clutch: travel from plate lift to pad, effort, what the room allows."""

from pedalwright.clutch.limits import TOLERABLE_EFFORT, check
from pedalwright.clutch.parts import (
    Budget,
    CableBends,
    CableFork,
    CableWire,
    ClutchResult,
    ConcentricBearing,
    Diaphragm,
    EffortCurve,
    Fluid,
    LoadPoint,
    Need,
    PlateBite,
    Release,
    RodFork,
    SlaveCylinder,
    StopWindow,
)
from pedalwright.clutch.solve import budget, need, respond

__all__ = [
    "TOLERABLE_EFFORT",
    "Budget",
    "CableBends",
    "CableFork",
    "CableWire",
    "ClutchResult",
    "ConcentricBearing",
    "Diaphragm",
    "EffortCurve",
    "Fluid",
    "LoadPoint",
    "Need",
    "PlateBite",
    "Release",
    "RodFork",
    "SlaveCylinder",
    "StopWindow",
    "budget",
    "check",
    "need",
    "respond",
]
