"""Tiling: a drawing at true size over as many sheets of paper as it takes."""

from pedalwright.making.tiling.parts import A4, LETTER, PAPERS, Cross, Paper, Printer, Tile, Tiling
from pedalwright.making.tiling.solve import tiled

__all__ = ["A4", "LETTER", "PAPERS", "Cross", "Paper", "Printer", "Tile", "Tiling", "tiled"]
