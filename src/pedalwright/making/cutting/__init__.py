"""Cutting: bars, tubes and sheets from the stock there is."""

from pedalwright.making.cutting.bars import cut_bars
from pedalwright.making.cutting.limits import CURES, check_bars, check_sheets
from pedalwright.making.cutting.parts import (
    Bar,
    BarPlan,
    CutBar,
    CutSheet,
    Part,
    Piece,
    Placed,
    Proof,
    SheetPlan,
    Stock,
)
from pedalwright.making.cutting.sheets import cut_sheets

__all__ = [
    "CURES",
    "Bar",
    "BarPlan",
    "CutBar",
    "CutSheet",
    "Part",
    "Piece",
    "Placed",
    "Proof",
    "SheetPlan",
    "Stock",
    "check_bars",
    "check_sheets",
    "cut_bars",
    "cut_sheets",
]
