"""What is asked of levers and rods."""

from collections.abc import Iterator

import numpy as np

from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.linkage.parts import Position, Stroke

ROD_ANGLE = Limit(
    "linkage.rod_angle",
    "The rod stays nearly in line with its cylinder, so that the piston is not pushed sideways.",
    "at most",
    "rad",
    Source("common practice", "no source: 3 degrees wished, 5 the limit", "trade"),
    "should",
)
DEAD_POINT = Limit(
    "linkage.dead_point",
    "Rod and arm stay well clear of being in line, where the pedal would lock.",
    "at least",
    "rad",
    Source("pedalwright", "half the leverage is left at 30 degrees", "ours"),
)


def check(stroke: Position | Stroke, about: str) -> Iterator[Finding]:
    """Judge a whole stroke; axis 0 is the stations."""
    yield ROD_ANGLE.check(np.max(stroke.rod_angle, axis=0), np.deg2rad(5.0), about)
    yield DEAD_POINT.check(np.min(stroke.rod_to_arm, axis=0), np.deg2rad(30.0), about)
