"""Bending: flat pieces of folded sheet, proved by folding them up again."""

from pedalwright.making.bending.flat import unfold
from pedalwright.making.bending.fold import folded
from pedalwright.making.bending.limits import CURES, check, check_strip, drawn_oval
from pedalwright.making.bending.neutral import (
    neutral_by_din,
    neutral_by_table,
    neutral_of_strip,
)
from pedalwright.making.bending.order import BendStep, bend_order
from pedalwright.making.bending.parts import (
    FlatBend,
    FlatFace,
    FlatHole,
    FlatPattern,
    Neutral,
    Sheet,
    TestStrip,
)
from pedalwright.making.bending.relief import reliefs
from pedalwright.panels.faces import Face, Fold, Hole

__all__ = [
    "CURES",
    "BendStep",
    "Face",
    "FlatBend",
    "FlatFace",
    "FlatHole",
    "FlatPattern",
    "Fold",
    "Hole",
    "Neutral",
    "Sheet",
    "TestStrip",
    "bend_order",
    "check",
    "check_strip",
    "drawn_oval",
    "folded",
    "neutral_by_din",
    "neutral_by_table",
    "neutral_of_strip",
    "reliefs",
    "unfold",
]
