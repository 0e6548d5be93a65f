"""What carries the push: arm, pin, rod, pivot and mounts, how hard they work, how far they give."""

from pedalwright.structure.limits import check, check_clutch
from pedalwright.structure.parts import (
    Arm,
    ClevisPin,
    Give,
    Loaded,
    Loads,
    Mount,
    Pivot,
    Pushes,
    PushRod,
    PushTest,
    RelayArms,
    Relaying,
    RelayStrength,
    Strength,
    Stress,
)
from pedalwright.structure.solve import BRAKE_LOADS, CLUTCH_LOADS, respond

__all__ = [
    "BRAKE_LOADS",
    "CLUTCH_LOADS",
    "Arm",
    "ClevisPin",
    "Give",
    "Loaded",
    "Loads",
    "Mount",
    "Pivot",
    "PushRod",
    "PushTest",
    "Pushes",
    "RelayArms",
    "RelayStrength",
    "Relaying",
    "Strength",
    "Stress",
    "check",
    "check_clutch",
    "respond",
]
