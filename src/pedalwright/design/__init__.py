"""The frozen tree of what the builder measures and chooses."""

from pedalwright.design.tree import BrakeDesign, Carrier, ClutchDesign, Design, ThrottleDesign

__all__ = ["BrakeDesign", "Carrier", "ClutchDesign", "Design", "ThrottleDesign"]
