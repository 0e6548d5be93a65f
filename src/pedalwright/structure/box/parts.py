"""Where the pedals hang on the box, and how the box answers their forces."""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.faults import Fault
from pedalwright.core.points import Point
from pedalwright.core.units import Array, N, mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Seat:
    """One pedal's cylinder and pivot, and the parts of the box that carry them."""

    #: `brake` or `clutch`.
    pedal: str
    #: The part that the cylinder's flange is bolted to, and where.
    cylinder_on: str
    cylinder: Point
    #: Of the flange, across the part and up it.
    flange_width: mm
    flange_height: mm
    #: The part that the pivot's shaft turns in.
    pivot_on: str
    #: The pedal's tube on the shaft.
    tube_outside: mm
    tube_inside: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Push:
    """Forces of one pedal on the box for each newton on its pad."""

    #: On the flange, at the socket.
    at_flange: Point
    flange: Point
    #: On the shaft, at its middle, and what turns it.
    at_pivot: Point
    pivot: Point
    turns: Point


@dataclass(frozen=True, slots=True)
class Held:
    """How one pedal's flange and shaft move, for forces on either.

    Six freedoms of the flange, then six of the shaft: moves in x, y, z, then turns.
    """

    #: (12, 12).
    give: Array
    #: The same by part of the box, (parts, 12, 12); it sums to `give`.
    by_part: Array
    parts: tuple[str, ...]
    #: The points that stand for flange and shaft.
    flange: Point
    shaft: Point
    #: From the part that carries the flange to the one that carries the shaft; without end where
    #: their forces meet in the frame only.
    joints: float


#: A box that could not be judged: everything it does is unknown.
NOT_HELD = Held(
    np.full((12, 12), np.nan),
    np.zeros((0, 12, 12)),
    (),
    Point(np.nan, np.nan, np.nan),
    Point(np.nan, np.nan, np.nan),
    np.nan,
)


@dataclass(frozen=True, slots=True)
class Carried:
    """A pedal on its box: how that answers, and what the pedal does to it."""

    held: Held
    unit: Push


@dataclass(frozen=True, slots=True)
class Unheld:
    """A box that cannot be judged, and why."""

    faults: tuple[Fault, ...]


@dataclass(frozen=True, slots=True)
class PartGive:
    """How far the pad moves because one part of the box gives."""

    part: str
    give: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class BoxGive:
    """What the box gives at one push on the pad."""

    push: N
    #: The pad's share of the flange's move, of the shaft's; they sum to `total`.
    flange: mm
    pivot: mm
    total: mm
    #: How far the flange itself moves along the cylinder.
    flange_moves: mm
    #: Who gives; they sum to `total`.
    by_part: tuple[PartGive, ...]
    #: Joints from the flange's part to the shaft's; without end where the loop is open.
    joints: float
