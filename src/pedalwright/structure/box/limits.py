"""What is asked of a box: as a whole, and of its parts when it is worked in full."""

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
_FASTENERS = Source("EN 1993-1-8", "table 3.4, from memory; the hardest push", "standard")

PANIC = Limit(
    "structure.panel_panic",
    "A frightened push leaves the sheet straight: one thickness from bolts and welds none yields.",
    "at most",
    "MPa",
    Source("pedalwright", "equivalent stress after von Mises, by linear sums", "ours"),
)
ABUSE = Limit(
    "structure.panel_abuse",
    "The hardest push does not tear the sheet.",
    "at most",
    "MPa",
    Source("pedalwright", "stress by linear sums against the tensile strength", "ours"),
)
BULGE = Limit(
    "structure.panel_bulge",
    "At a hard stop no panel bulges so far that it begins to carry like a net.",
    "at most",
    "mm",
    Source(
        "Timoshenko and Woinowsky-Krieger", "half the thickness; beyond it a band holds", "handbook"
    ),
    "should",
)
TOGETHER = Limit(
    "structure.row",
    "The hardest worked fastener of a row bears shear, pull and its hole together.",
    "at most",
    "1",
    _FASTENERS,
)
MISSING = Limit(
    "structure.row_one_missing",
    "With the hardest worked fastener of a row gone the others still bear a frightened push.",
    "at most",
    "1",
    Source("common practice", "no source: one nut is always forgotten", "trade"),
    "should",
)
AGREES = Limit(
    "structure.box_agrees",
    "With fine triangles, and sheets that press on one another, the pad sinks as far as was said.",
    "at most",
    "1",
    Source(
        "pedalwright",
        "3 per cent of what the condensed box says",
        "ours",
    ),
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
