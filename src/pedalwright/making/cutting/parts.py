"""What is to be cut and from what: pieces of bar and of sheet, the stock there is, the plan.

Lengths in mm; plain numbers, because one cuts one car's parts at a time.
"""

from dataclasses import dataclass
from typing import Literal

Grain = Literal["any", "along", "across"]


@dataclass(frozen=True, kw_only=True, slots=True)
class Piece:
    """Pieces to cut from bar or tube."""

    name: str
    length: float
    count: int = 1


@dataclass(frozen=True, kw_only=True, slots=True)
class Bar:
    """Bars or tubes of one length: off-cuts there are, or a length a shop sells."""

    name: str
    length: float
    #: How many there are; None for as many as one buys.
    count: int | None = None
    #: Whether it has to be bought.
    bought: bool = True


@dataclass(frozen=True, kw_only=True, slots=True)
class CutBar:
    """One bar with what is cut from it, in order from the squared end."""

    bar: Bar
    pieces: tuple[Piece, ...]
    #: What is left at the other end, the last cut taken off.
    left: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Proof:
    """How good a plan is: what it costs, and what no plan can do without."""

    cost: float
    #: No plan costs less.
    bound: float

    @property
    def gap(self) -> float:
        """What the plan may be over the best one, as a share of its cost."""
        return 0.0 if self.cost <= self.bound else (self.cost - self.bound) / self.cost

    @property
    def best(self) -> bool:
        """Whether no plan can be better."""
        return self.gap < 1e-6


@dataclass(frozen=True, kw_only=True, slots=True)
class BarPlan:
    """How to cut bars."""

    bars: tuple[CutBar, ...]
    kerf: float
    trim: float
    #: Pieces for which there is no stock.
    missing: tuple[Piece, ...]
    #: Of the length bought.
    bought: Proof


@dataclass(frozen=True, kw_only=True, slots=True)
class Part:
    """Rectangles to cut from sheet: flat parts by the box around them."""

    name: str
    length: float
    width: float
    count: int = 1
    #: Whether the sheet's rolling direction has to run along the part's length, across it, or any.
    grain: Grain = "any"


@dataclass(frozen=True, kw_only=True, slots=True)
class Stock:
    """Sheets of one size, rolled along their length."""

    name: str
    length: float
    width: float
    #: How many there are; None for as many as one buys.
    count: int | None = None
    bought: bool = True


@dataclass(frozen=True, kw_only=True, slots=True)
class Placed:
    """A part on a sheet: its lower left corner from the sheet's, and how it lies."""

    part: Part
    x: float
    y: float
    #: Whether its length runs across the sheet.
    turned: bool

    @property
    def along(self) -> float:
        """Size along the sheet's length."""
        return self.part.width if self.turned else self.part.length

    @property
    def across(self) -> float:
        """Size across it."""
        return self.part.length if self.turned else self.part.width


@dataclass(frozen=True, kw_only=True, slots=True)
class CutSheet:
    """One sheet with what is cut from it."""

    stock: Stock
    parts: tuple[Placed, ...]

    @property
    def used_length(self) -> float:
        """How much of the sheet's length parts take up, from its left edge."""
        return max((placed.x + placed.along for placed in self.parts), default=0.0)


@dataclass(frozen=True, kw_only=True, slots=True)
class SheetPlan:
    """How to cut sheets."""

    sheets: tuple[CutSheet, ...]
    gap: float
    margin: float
    #: Parts for which there is no stock.
    missing: tuple[Part, ...]
    #: Of the number of sheets bought; the bound is by area.
    bought: Proof
    #: Of the area of all sheets taken into use; the bound is the parts' own area.
    area: Proof

    @property
    def filled(self) -> float:
        """Share of the sheets that becomes parts."""
        return 1.0 - self.area.gap
