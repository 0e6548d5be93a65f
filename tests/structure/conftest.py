"""One brake pedal for the tests of the room: every check passes, most with little in hand."""

from collections.abc import Callable
from dataclasses import replace
from math import cos, radians
from typing import Any

import pytest

from pedalwright.structure import (
    BRAKE_LOADS,
    Arm,
    ClevisPin,
    Mount,
    Pivot,
    PushRod,
    Strength,
    respond,
)

PARTS: dict[str, Any] = {
    "arm": Arm(
        thickness=8.0,
        depth_at_pivot=32.0,
        depth_at_pad=32.0,
        pin_hole=12.0,
        elastic=210000.0,
        poisson=0.3,
        yield_strength=380.0,
    ),
    "pivot": Pivot(
        tube_outside=22.0,
        tube_inside=16.0,
        shaft_diameter=16.0,
        span=60.0,
        bush_length=15.0,
        tube_yield=235.0,
        shaft_yield=355.0,
        bush_pressure=25.0,
    ),
    "clevis_pin": ClevisPin(
        diameter=12.0, inner_thickness=8.0, fork_thickness=6.0, gap=0.5, yield_strength=300.0
    ),
    "push_rod": PushRod(outside=8.16, elastic=210000.0, yield_strength=640.0),
    "mount": Mount(cylinder_stiffness=5000.0, pivot_stiffness=8000.0),
}
PLACED: dict[str, Any] = {
    "pad_radius": 272.0,
    "pin_radius": 54.5,
    "pin_angle": 0.0,
    "pad_offset": 15.0,
    "ratio": 5.05,
    "rod_length": 106.0,
    "rod_share": 5.05 / cos(radians(2.0)),
    "pivot_share": 4.05,
    "loads": BRAKE_LOADS,
}


@pytest.fixture
def pedal() -> Callable[..., Strength]:
    """The pedal's strength with changes: `pedal(arm={"thickness": 10.0}, ratio=4.0)`."""

    def changed(**changes: Any) -> Strength:
        parts = {name: replace(part, **changes.pop(name, {})) for name, part in PARTS.items()}
        return respond(**parts, **{**PLACED, **changes})

    return changed
