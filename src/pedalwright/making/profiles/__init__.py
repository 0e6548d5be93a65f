"""Profiles: flat parts that are sawn and drilled, and the card that says how."""

from pedalwright.making.profiles.arms import Joggle, pedal_arm, relay_arms, seen_from, strap
from pedalwright.making.profiles.drawn import (
    bend_line_words,
    bore_words,
    profile_drawing,
    profile_of,
)
from pedalwright.making.profiles.drilling import DrillRow, drill_card
from pedalwright.making.profiles.hull import Disc, hull
from pedalwright.making.profiles.parts import BendLine, Bore, Corner, Mark, Profile
from pedalwright.making.profiles.shape import area, around, polygon

__all__ = [
    "BendLine",
    "Bore",
    "Corner",
    "Disc",
    "DrillRow",
    "Joggle",
    "Mark",
    "Profile",
    "area",
    "around",
    "bend_line_words",
    "bore_words",
    "drill_card",
    "hull",
    "pedal_arm",
    "polygon",
    "profile_drawing",
    "profile_of",
    "relay_arms",
    "seen_from",
    "strap",
]
