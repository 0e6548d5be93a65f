"""What the builder has already: sheets and off-cuts, bars, donor arms, the fastener box.

Each thing has the name he knows it by. Lengths in mm; a count nobody knows is nan, and then it is
not counted on.
"""

from dataclasses import dataclass
from math import pi
from typing import Literal

from pedalwright.core.units import Ratio, mm, rad


@dataclass(frozen=True, kw_only=True, slots=True)
class StockSheet:
    """Plates, sheets or off-cuts of one size, rolled along their length."""

    name: str
    #: As in the table of materials, `5083-O/H111`; what is not in there is cut for nothing that
    #: has to bear a load.
    metal: str
    thickness: mm
    length: mm
    width: mm
    count: Ratio = 1.0


@dataclass(frozen=True, kw_only=True, slots=True)
class BentStrip:
    """A strip of a sheet, bent once on one's own tool and measured before and after.

    What its legs gain tells where the neutral line of that sheet lies in that tool.
    """

    name: str
    #: Of the sheet it was cut from.
    metal: str
    thickness: mm
    #: Before it was bent.
    length: mm
    #: Both legs after bending, outside, with a square.
    leg_one: mm
    leg_two: mm
    #: Inside, as it came out: try drill shanks in the corner.
    radius: mm
    #: Turned through.
    angle: rad = pi / 2


@dataclass(frozen=True, kw_only=True, slots=True)
class Folder:
    """What one bends sheet with."""

    #: Longest bend it takes.
    longest: mm | None = None
    #: Shortest flange it turns, outside.
    least_flange: mm | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class StockBar:
    """Bars, tubes or rods of one length."""

    name: str
    shape: Literal["tube", "round", "threaded rod"]
    #: Outside; of a threaded rod its thread.
    outside: mm
    #: Bore of a tube.
    inside: mm | None = None
    length: mm
    count: Ratio = 1.0


@dataclass(frozen=True, kw_only=True, slots=True)
class DonorArm:
    """The arm of another car that the pedal of its name is made from."""

    #: `brake` or `clutch`.
    name: str
    metal: Literal["steel", "cast", "alloy", "unknown"]
    #: From its pivot to the middle of its pad, and to the hole of its rod pin.
    pad_radius: mm
    pin_radius: mm
    pin_hole: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class StockRivets:
    """Blind rivets of one size."""

    name: str
    body: Literal["soft alloy", "alloy", "steel", "stainless"] = "alloy"
    diameter: mm
    length: mm
    count: Ratio
    #: How many are sold together.
    pack: Ratio = 10.0


@dataclass(frozen=True, kw_only=True, slots=True)
class StockBolts:
    """Bolts of one size, metric coarse thread."""

    name: str
    grade: Literal["4.6", "5.6", "5.8", "6.8", "8.8", "10.9", "12.9"] = "8.8"
    thread: mm
    length: mm
    count: Ratio


@dataclass(frozen=True, kw_only=True, slots=True)
class StockNuts:
    """Nuts of one kind and thread."""

    name: str
    kind: Literal[
        "plain", "nylon-insert locking nut", "all-metal locking nut", "castle nut", "rivet nut"
    ]
    thread: mm
    count: Ratio


@dataclass(frozen=True, kw_only=True, slots=True)
class Stock:
    """Everything on the shelf; what is not named there has to be bought."""

    #: Width of the saw's cut.
    kerf: mm = 1.5
    sheets: tuple[StockSheet, ...] = ()
    #: Left out, bends are worked out by standard and table.
    strips: tuple[BentStrip, ...] = ()
    folder: Folder | None = None
    bars: tuple[StockBar, ...] = ()
    arms: tuple[DonorArm, ...] = ()
    rivets: tuple[StockRivets, ...] = ()
    bolts: tuple[StockBolts, ...] = ()
    nuts: tuple[StockNuts, ...] = ()


#: Nothing is there.
EMPTY = Stock()
