"""Numbers a builder gave, how far off each may be, and what moves with it."""

from dataclasses import dataclass
from typing import Literal

from pedalwright.core.units import Num


@dataclass(frozen=True, kw_only=True, slots=True)
class Move:
    """How far one number of a design goes when a number of the file is out by its ±."""

    #: Of the design, such as `survey.faces.floor.plane.offset`.
    path: str
    by: Num


@dataclass(frozen=True, kw_only=True, slots=True)
class Doubt:
    """A number of the file that may be off."""

    #: Where it stands in the file, and what it is called where the path says little.
    path: str
    name: str
    #: In its inside unit.
    plus_minus: float
    unit: str
    #: How the builder came by it, and why it is no better.
    tag: Literal["measured", "assumed", "default"]
    why: str
    #: One number of the design, or many: a tape moves every mark of its net.
    moves: tuple[Move, ...]
