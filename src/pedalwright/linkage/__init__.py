"""Levers, rods and the pistons they push, over the whole stroke."""

from pedalwright.linkage.dead_points import locks_at
from pedalwright.linkage.formulas import mean_ratio
from pedalwright.linkage.limits import check
from pedalwright.linkage.parts import (
    Felt,
    Forces,
    Lever,
    Pedal,
    Position,
    Relay,
    Relayed,
    Rod,
    Stroke,
)
from pedalwright.linkage.solve import (
    STATIONS,
    angle_at_face,
    angle_at_travel,
    felt_at_pin,
    forces,
    forces_of,
    lever,
    pad_after,
    pad_travel_at,
    pedal_rod_length,
    position,
    stroke,
    sweep,
)

__all__ = [
    "STATIONS",
    "Felt",
    "Forces",
    "Lever",
    "Pedal",
    "Position",
    "Relay",
    "Relayed",
    "Rod",
    "Stroke",
    "angle_at_face",
    "angle_at_travel",
    "check",
    "felt_at_pin",
    "forces",
    "forces_of",
    "lever",
    "locks_at",
    "mean_ratio",
    "pad_after",
    "pad_travel_at",
    "pedal_rod_length",
    "position",
    "stroke",
    "sweep",
]
