"""Sheet-metal parts and tubes that carry the pedals, each with the few sizes a builder gives.

Lengths are those of the finished part, outside to outside, as a rule finds them on it. A place is
a point in car axes; of a place on a sheet only its foot on the sheet counts, so that a hole in the
front wall may be given by how far right and how high it is.
"""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from pedalwright.core.points import Point
from pedalwright.core.units import N, mm

Edge = Literal["free", "pinned", "built in"]
Side = Literal["near", "far"]


@dataclass(frozen=True, kw_only=True, slots=True)
class Rivets:
    """Blind rivets in a row."""

    diameter: mm
    #: From rivet to rivet, at most.
    pitch: mm
    #: From the row to the edge of the part.
    edge: mm
    #: What one bears by its maker; left out, not judged.
    shear: N | None = None
    pull: N | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Bolts:
    """Bolts in a row, through and through."""

    diameter: mm
    pitch: mm
    edge: mm
    #: Marked on the head.
    grade: Literal["4.6", "5.8", "8.8", "10.9"] = "8.8"


@dataclass(frozen=True, kw_only=True, slots=True)
class RivetNuts:
    """Bolts into nuts that are riveted into the thinner sheet."""

    #: Of the thread.
    diameter: mm
    pitch: mm
    edge: mm
    #: What one nut bears in this sheet by its maker; left out, not judged.
    shear: N | None = None
    pull: N | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Stitches:
    """Short welds along the edge, or spot welds, evenly."""

    pitch: mm
    #: From their middle to the edge of the part.
    edge: mm
    #: Of a spot, or length of a stitch.
    diameter: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Glue:
    """Bonded all over."""


Joining: TypeAlias = Rivets | Bolts | RivetNuts | Stitches | Glue
#: Those that stand at places of their own.
Spaced: TypeAlias = Rivets | Bolts | RivetNuts | Stitches


@dataclass(frozen=True, kw_only=True, slots=True)
class Opening:
    """A round hole cut in a wall: for a column, a cylinder's spigot, or to save weight."""

    at: Point
    diameter: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Wall:
    """A flat panel of the body or bulkhead: part of a surveyed face, held at its edges.

    Its edges are named as the driver sees them; of a floor the top is at the front.
    """

    name: str
    #: The surveyed face it is; that is its near side.
    face: str
    #: Two opposite corners.
    low: Point
    high: Point
    thickness: mm
    #: As in the table of metals, such as `5251-H22`.
    metal: str
    bottom: Edge = "pinned"
    top: Edge = "pinned"
    left: Edge = "pinned"
    right: Edge = "pinned"
    openings: tuple[Opening, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Doubler:
    """A flat plate on a panel, to spread a load."""

    name: str
    #: The part it lies on.
    on: str
    middle: Point
    width: mm
    height: mm
    thickness: mm
    metal: str
    #: Near is the side where the feet are.
    side: Side = "near"
    joined: Joining


@dataclass(frozen=True, kw_only=True, slots=True)
class Cheeks:
    """A channel on a wall or floor: a base plate and two cheeks that carry the pivot's shaft.

    The cylinder may be bolted to the base plate, so that the push and the pivot's pull meet in one
    piece of metal; without one it is a pivot's bracket.
    """

    name: str
    #: The wall its base plate lies on, on the near side.
    on: str
    #: Middle of the shaft, midway between the cheeks.
    pivot: Point
    #: Middle of the cylinder's flange.
    cylinder: Point | None = None
    #: Of the cylinder's flange, up and down the cheeks.
    flange_height: mm = 40.0
    #: From cheek to cheek, inside.
    spacing: mm
    #: Of the base plate, from the cylinder (else from the pivot's foot) each way along the cheeks.
    below: mm
    above: mm
    #: How far the cheeks rise beyond the upper end of the base, to reach a rail.
    rise: mm = 0.0
    #: How far the cheeks stand off the wall at their upper end and at their lower end.
    depth_above: mm
    depth_below: mm
    #: Metal left round the middle of the shaft.
    round_pivot: mm = 20.0
    thickness: mm
    metal: str
    #: Inside, of the folds.
    bend: mm = 3.0
    #: Flanges turned outward at the upper end, to the rail; 0 for none.
    flange: mm = 0.0
    #: The tube that the flanges are bolted to; left out, none.
    rail: str = ""
    joined: Joining


@dataclass(frozen=True, kw_only=True, slots=True)
class Hanger:
    """Two straps that hang a pivot's shaft from a tube."""

    name: str
    rail: str
    #: Middle of the shaft, midway between the straps.
    pivot: Point
    spacing: mm
    #: Of the strap at the tube; at the shaft it is rounded.
    width: mm
    round_pivot: mm = 16.0
    thickness: mm
    metal: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Rail:
    """A surveyed tube that carries others; its size and wall stand with the survey."""

    name: str
    #: The surveyed tube.
    line: str
    metal: str
    start: Edge = "pinned"
    end: Edge = "pinned"


@dataclass(frozen=True, kw_only=True, slots=True)
class Tie:
    """A straight tube or rod from a part to the frame, or to another part."""

    name: str
    start: Point
    end: Point
    #: The parts it ends on; left out, the frame.
    start_on: str = ""
    end_on: str = ""
    #: Of a tube; 0 for a solid bar.
    outside: mm
    inside: mm = 0.0
    metal: str
    #: Whether its ends are welded on, or each turns on one bolt.
    ends: Literal["welded", "bolted"] = "bolted"


@dataclass(frozen=True, kw_only=True, slots=True)
class Gusset:
    """A plate square to two walls that meet, with a flange on each."""

    name: str
    #: The walls it ties together.
    one: str
    other: str
    #: Where it stands: anywhere in its plane.
    at: Point
    #: Along each wall, from where they meet.
    leg_one: mm
    leg_other: mm
    flange: mm
    #: To which side of the car its flanges are turned.
    turned: Literal["left", "right"] = "right"
    thickness: mm
    metal: str
    bend: mm = 3.0
    joined: Joining


@dataclass(frozen=True, kw_only=True, slots=True)
class Stiffener:
    """An angle along a panel: one leg on it, one standing off it."""

    name: str
    on: str
    start: Point
    end: Point
    #: Leg that stands off the panel, and leg that lies on it.
    height: mm
    foot: mm
    thickness: mm
    metal: str
    bend: mm = 2.0
    side: Side = "near"
    joined: Joining


@dataclass(frozen=True, kw_only=True, slots=True)
class Cover:
    """A lid with its edges turned in all round, over an opening of a wall.

    Made and counted; its help to the wall's stiffness is not counted on.
    """

    name: str
    on: str
    middle: Point
    width: mm
    height: mm
    #: Depth of the edges that are turned; 0 for a flat lid.
    depth: mm = 0.0
    #: Round at its ends, as an oval.
    shape: Literal["square", "round"] = "square"
    thickness: mm
    metal: str
    bend: mm = 2.0
    side: Side = "near"
    joined: Spaced


@dataclass(frozen=True, kw_only=True, slots=True)
class FootTub:
    """A tray let into a floor for the heels, with a flange all round that lies on the floor.

    Made and counted; the floor round it is judged without it.
    """

    name: str
    on: str
    middle: Point
    #: Of the hole it fills, along the car and across it.
    length: mm
    width: mm
    depth: mm
    flange: mm
    thickness: mm
    metal: str
    bend: mm = 3.0
    joined: Spaced


@dataclass(frozen=True, kw_only=True, slots=True)
class HeelPlate:
    """A plate on the floor that the heels rest against, its rear edge turned up."""

    name: str
    on: str
    middle: Point
    length: mm
    width: mm
    #: Of the edge turned up; 0 for a flat plate.
    lip: mm = 0.0
    thickness: mm
    metal: str
    bend: mm = 2.0
    joined: Spaced


@dataclass(frozen=True, kw_only=True, slots=True)
class Box:
    """Everything that carries the pedals, as it is described: the sheet metal and its tubes."""

    walls: tuple[Wall, ...] = ()
    doublers: tuple[Doubler, ...] = ()
    cheeks: tuple[Cheeks, ...] = ()
    hangers: tuple[Hanger, ...] = ()
    rails: tuple[Rail, ...] = ()
    ties: tuple[Tie, ...] = ()
    gussets: tuple[Gusset, ...] = ()
    stiffeners: tuple[Stiffener, ...] = ()
    covers: tuple[Cover, ...] = ()
    foot_tubs: tuple[FootTub, ...] = ()
    heel_plates: tuple[HeelPlate, ...] = ()


#: None described.
NO_BOX = Box()
