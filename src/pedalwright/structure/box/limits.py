"""What is asked of a box as a whole."""

import numpy as np

from pedalwright.core.checks import Finding, Limit, Source

DESCRIBED = Limit(
    "structure.box",
    "The box that carries the pedals is described so that its give can be worked out.",
    "at least",
    "1",
    Source("pedalwright", "nothing that contradicts itself, nothing loose", "ours"),
)
LOOP = Limit(
    "structure.load_loop",
    "The cylinder's push and the pivot's pull meet in the metal between them, not in the frame.",
    "at least",
    "1",
    Source("common practice", "no source: at most three joints from flange to shaft", "trade"),
    "should",
)
#: Joints on the way from the flange to the shaft, at most.
JOINTS = 3.0


def check_described(faults: int) -> Finding:
    """Whether it can be judged at all."""
    return DESCRIBED.check(0.0 if faults else 1.0, 1.0)


def check_loop(joints: float, pedal: str) -> Finding:
    """Whether the loop closes: 1 where few joints lie in its way, 0 where it is open."""
    return LOOP.check(np.where(np.isnan(joints), np.nan, joints <= JOINTS) * 1.0, 1.0, pedal)
