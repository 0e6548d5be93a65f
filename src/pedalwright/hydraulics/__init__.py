"""Cylinders, balance bars, lines and the fluid they move."""

from pedalwright.hydraulics.limits import check
from pedalwright.hydraulics.parts import (
    BalanceBar,
    Circuit,
    Cylinder,
    Demand,
    Masters,
    Strokes,
    Tandem,
    Twin,
)
from pedalwright.hydraulics.solve import circuits, pressures, rod_travel, shortest_reserve, strokes

__all__ = [
    "BalanceBar",
    "Circuit",
    "Cylinder",
    "Demand",
    "Masters",
    "Strokes",
    "Tandem",
    "Twin",
    "check",
    "circuits",
    "pressures",
    "rod_travel",
    "shortest_reserve",
    "strokes",
]
