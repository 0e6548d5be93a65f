"""Rows of fasteners as they come from the panels, and what has to be in the box.

Lengths in mm, forces in N; plain numbers, because one builds one car at a time.
"""

from dataclasses import dataclass
from typing import Literal

Body = Literal["soft alloy", "alloy", "steel", "stainless"]
Locking = Literal["nylon-insert locking nut", "all-metal locking nut", "castle nut and split pin"]

Kind = Literal[
    "blind rivet",
    "rivet nut",
    "bolt",
    "nut",
    "washer",
    "split pin",
    "clevis pin",
    "fork",
    "bush",
]


@dataclass(frozen=True, kw_only=True, slots=True)
class Layer:
    """One of the sheets that a fastener holds together, from the head's side on."""

    name: str
    thickness: float
    #: What it shows to the water, as in the galvanic table; a coat counts before the metal.
    surface: str
    #: Tensile strength, MPa; nan where not known.
    strength: float = float("nan")


@dataclass(frozen=True, kw_only=True, slots=True)
class RivetRow:
    """Blind rivets of one size through the same sheets."""

    name: str
    count: int
    layers: tuple[Layer, ...]
    diameter: float
    body: Body = "alloy"
    #: Length in hand or wanted; left out, the length is chosen by the grip.
    length: float | None = None
    #: Whether jointing compound or paint keeps the metals apart.
    barrier: bool = False
    #: Whether the sheets part engine and cabin, so that fumes must not pass.
    sealed: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class BoltRow:
    """Bolts of one size through the same sheets."""

    name: str
    count: int
    layers: tuple[Layer, ...]
    #: Such as `M8`.
    size: str
    grade: str = "8.8"
    #: Whether something turns on it: then it is not clamped, and pinned instead.
    turns: bool = False
    #: Whether it gets hot, beside an exhaust.
    hot: bool = False
    #: Whether it holds in a thread that cannot fall off: a rivet nut, a weld nut.
    captive: bool = False
    washers: Literal["plain", "penny"] = "plain"
    surface: str = "zinc"
    barrier: bool = False
    sealed: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class Item:
    """A thing in the fastener box, by dimension."""

    kind: Kind
    #: Rivet diameter or thread, such as `4.8` or `M8`.
    size: str
    #: None for nuts and washers, and for a bolt whose grip nobody has measured.
    length: float | None = None
    #: Body of a rivet, property class, kind of nut or washer.
    make: str = ""

    @property
    def words(self) -> str:
        """As a shop understands it."""
        length = f" × {self.length:g}" if self.length is not None else ""
        return f"{self.kind} {self.size}{length}" + (f", {self.make}" if self.make else "")


@dataclass(frozen=True, kw_only=True, slots=True)
class Count:
    """How many of an item are wanted, are there and have to be bought."""

    item: Item
    need: int
    spare: int
    have: int
    buy: int

    @property
    def short(self) -> int:
        """How many are lacking, spare ones left aside."""
        return max(0, self.need - self.have)


@dataclass(frozen=True, kw_only=True, slots=True)
class SetRivet:
    """How a row of rivets is set."""

    row: RivetRow
    total: float
    #: Shortest rivet whose grip takes in the sheets; None if there is none.
    length: float | None
    hole: float
    #: Of one rivet.
    shear: float
    pull: float


@dataclass(frozen=True, kw_only=True, slots=True)
class SetBolt:
    """How a row of bolts is tightened."""

    row: BoltRow
    total: float
    #: Length it must have.
    least: float
    #: None if none that one can buy is long enough.
    length: float | None
    locking: Locking | Literal["threadlocker"]
    #: For a clamped bolt, N·mm: middle friction, and dry and greased; nan where it turns.
    torque: float
    torque_greased: float
    torque_dry: float
    preload: float
    #: Under washer or head, MPa, on the softest sheet outside.
    pressure: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Substitute:
    """Another fastener instead, and its price."""

    instead: str
    #: Its shear strength over the first one's.
    strength: float
    #: How many bear as much as the row does.
    count: int
    hole: float
    remark: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Contact:
    """Two metals that touch."""

    row: str
    one: str
    other: str
    #: mV between them.
    apart: float
    #: The one that is eaten; empty where they are alike.
    eaten: str
    barrier: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class Treatment:
    """What goes between the sheets of a row before it is closed."""

    row: str
    what: Literal["barrier", "jointing compound", "sealant"]
    why: str
