"""Cylinders, balance bars, servos, valves, lines and the fluid they move."""

from pedalwright.hydraulics.bar import bar
from pedalwright.hydraulics.limits import check, check_bar, check_reservoirs, check_residual
from pedalwright.hydraulics.parts import (
    BalanceBar,
    BarTilt,
    BarTube,
    Boost,
    Circuit,
    Cylinder,
    Demand,
    Limiter,
    Masters,
    Reservoirs,
    ResidualValves,
    Servo,
    Strokes,
    Tandem,
    Twin,
)
from pedalwright.hydraulics.servo import gain, helped, servo_of, unhelped
from pedalwright.hydraulics.solve import circuits, pressures, rod_travel, shortest_reserve, strokes

__all__ = [
    "BalanceBar",
    "BarTilt",
    "BarTube",
    "Boost",
    "Circuit",
    "Cylinder",
    "Demand",
    "Limiter",
    "Masters",
    "Reservoirs",
    "ResidualValves",
    "Servo",
    "Strokes",
    "Tandem",
    "Twin",
    "bar",
    "check",
    "check_bar",
    "check_reservoirs",
    "check_residual",
    "circuits",
    "gain",
    "helped",
    "pressures",
    "rod_travel",
    "servo_of",
    "shortest_reserve",
    "strokes",
    "unhelped",
]
