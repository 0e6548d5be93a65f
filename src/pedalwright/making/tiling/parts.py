"""Sheets of paper that join up to one drawing at true size. Lengths in mm."""

from collections.abc import Mapping
from dataclasses import dataclass

from pedalwright.drawing import XY, Box

#: True length of both check bars.
BAR = 100.0
#: From the paper's edge to anything printed: what cheap printers leave white.
MARGIN = 12.0
#: What two sheets show alike, for the crosses to be laid on each other.
OVERLAP = 12.0
#: Strips for the upright bar on the left, and for the words and the level bar below.
LEFT, BELOW = 10.0, 26.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Paper:
    """A size of paper."""

    name: str
    short: float
    long: float


A4 = Paper(name="A4", short=210.0, long=297.0)
LETTER = Paper(name="Letter", short=215.9, long=279.4)
PAPERS: Mapping[str, Paper] = {paper.name.lower(): paper for paper in (A4, LETTER)}


@dataclass(frozen=True, kw_only=True, slots=True)
class Printer:
    """How long the check bars came out, printed without correction.

    Bar X lies along the paper's short edge, bar Y along its long edge, however the sheet is
    printed: a printer stretches the paper's way through it, not the drawing's.
    """

    bar_x: float = BAR
    bar_y: float = BAR

    @property
    def corrected(self) -> bool:
        """Whether anything is stretched."""
        return (self.bar_x, self.bar_y) != (BAR, BAR)


@dataclass(frozen=True, kw_only=True, slots=True)
class Cross:
    """A cross in the overlap of two sheets, of the same name on both."""

    name: str
    at: XY


@dataclass(frozen=True, kw_only=True, slots=True)
class Tile:
    """One sheet."""

    #: Row letter from the top, column number from the left: A1.
    name: str
    row: int
    column: int
    #: What it shows of the drawing.
    window: Box
    crosses: tuple[Cross, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Tiling:
    """All sheets of one drawing."""

    paper: Paper
    landscape: bool
    #: Rows and columns of the whole; sheets that would be empty are left out.
    rows: int
    columns: int
    tiles: tuple[Tile, ...]
    #: What to draw level and upright lengths with.
    stretch_x: float
    stretch_y: float

    @property
    def width(self) -> float:
        """Of the paper as it is read."""
        return self.paper.long if self.landscape else self.paper.short

    @property
    def height(self) -> float:
        """Of the paper as it is read."""
        return self.paper.short if self.landscape else self.paper.long
