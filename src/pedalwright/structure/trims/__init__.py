"""Members of the frame that are trimmed for toe room, and what goes back."""

from pedalwright.structure.trims.limits import check_trim
from pedalwright.structure.trims.parts import (
    CoverPlates,
    Gussets,
    PutBack,
    Section,
    Triangle,
    Trim,
    Trimmed,
)
from pedalwright.structure.trims.solve import modulus, sized, trimmed, whole

__all__ = [
    "CoverPlates",
    "Gussets",
    "PutBack",
    "Section",
    "Triangle",
    "Trim",
    "Trimmed",
    "check_trim",
    "modulus",
    "sized",
    "trimmed",
    "whole",
]
