"""The frozen tree of what the builder measures and chooses."""

from pedalwright.design.hands import mirrored, other_side
from pedalwright.design.tree import BrakeDesign, Carrier, ClutchDesign, Design, ThrottleDesign

__all__ = [
    "BrakeDesign",
    "Carrier",
    "ClutchDesign",
    "Design",
    "ThrottleDesign",
    "mirrored",
    "other_side",
]
