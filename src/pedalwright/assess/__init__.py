"""From a design to everything that can be said about it."""

from pedalwright.assess.headlines import Headline, headlines
from pedalwright.assess.parts import (
    Assessment,
    BrakePedal,
    ClutchPedal,
    Placed,
    ThrottlePedal,
)
from pedalwright.assess.wiring import assess

__all__ = [
    "Assessment",
    "BrakePedal",
    "ClutchPedal",
    "Headline",
    "Placed",
    "ThrottlePedal",
    "assess",
    "headlines",
]
