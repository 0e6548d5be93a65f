"""Flat parts that are sawn and drilled: an outline of straights and arcs, bores, lines to bend.

Lengths in mm, angles in rad; seen from the side that shows. Plain numbers: one makes one part at
a time.
"""

from dataclasses import dataclass
from typing import Literal

from pedalwright.drawing import XY

Way = Literal["up", "down"]


@dataclass(frozen=True, kw_only=True, slots=True)
class Corner:
    """A place of an outline, and how the side that begins there is bent."""

    at: XY
    #: Tangent of a quarter of the arc's angle, positive anticlockwise; 0 for a straight side.
    bulge: float = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Bore:
    """A round hole."""

    name: str
    centre: XY
    diameter: float
    #: What goes through it.
    use: str = ""
    #: The part it is drilled together with.
    matched: str = ""
    #: Whether it is reamed for a pin or a bush, not just drilled.
    reamed: bool = False
    #: Whether it waits until the part is bent.
    after_bending: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class BendLine:
    """Where a profile is bent."""

    name: str
    start: XY
    end: XY
    way: Way
    angle: float
    radius: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Mark:
    """A place to scribe: the pad's middle, where a spring's eye goes."""

    name: str
    at: XY


@dataclass(frozen=True, kw_only=True, slots=True)
class Scribed:
    """An outline to scribe: where another part lies, or what it wants cut out."""

    name: str
    outline: tuple[XY, ...]
    cut: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class Profile:
    """A flat part as it is marked out."""

    name: str
    #: Anticlockwise.
    outline: tuple[Corner, ...]
    bores: tuple[Bore, ...] = ()
    bends: tuple[BendLine, ...] = ()
    marks: tuple[Mark, ...] = ()
    scribed: tuple[Scribed, ...] = ()
    metal: str = ""
    thickness: float = float("nan")
    count: int = 1
