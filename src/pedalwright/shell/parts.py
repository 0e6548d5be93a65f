"""What can be put on the bench: sheets, seams, fasteners, bars, rigid patches and supports.

Everything is geometry with a name; places are points in the axes of the model, and a sheet's own
outline is drawn in its plane. What meets is said, never guessed from places that happen to agree:
two sheets are one along a seam, hang together at a fastener, or press on one another at a contact,
and otherwise pass by like strangers.
"""

from dataclasses import dataclass
from typing import Literal

from pedalwright.core.points import Point
from pedalwright.shell.mesh import Material
from pedalwright.shell.sections import Section

#: A place in the plane of a sheet.
Place = tuple[float, float]


@dataclass(frozen=True, kw_only=True, slots=True)
class Plane:
    """Where a sheet lies: a corner, and the directions of its two coordinates (unit, square)."""

    origin: Point
    along: Point
    across: Point

    @property
    def normal(self) -> Point:
        """The side that the sheet's face is on."""
        return self.along.cross(self.across)

    def point(self, place: Place) -> Point:
        """A place of the sheet as a point of the model."""
        return self.origin + self.along * place[0] + self.across * place[1]

    def place(self, point: Point) -> Place:
        """The foot of a point on the plane."""
        reach = point - self.origin
        return float(reach.dot(self.along)), float(reach.dot(self.across))

    def height(self, point: Point) -> float:
        """How far a point lies off the plane, on the side of the face."""
        return float((point - self.origin).dot(self.normal))


@dataclass(frozen=True, kw_only=True, slots=True)
class Hole:
    """A round hole."""

    centre: Place
    diameter: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Sheet:
    """A flat piece of sheet; its outline lies in the middle of its thickness."""

    name: str
    plane: Plane
    #: Corners in order, either way round.
    outline: tuple[Place, ...]
    thickness: float
    material: Material
    holes: tuple[Hole, ...] = ()
    #: Openings that are not round.
    openings: tuple[tuple[Place, ...], ...] = ()
    #: Wished side of the triangles, where it differs from the bench's.
    size: float | None = None
    #: The part it belongs to, where a part is folded from several flat pieces; else itself.
    part: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Seam:
    """A straight fold or a continuous weld: the sheets share their nodes along it."""

    name: str
    start: Point
    end: Point
    sheets: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Bond:
    """A sheet glued or welded all over another one: it has no nodes of its own."""

    layer: str
    base: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Contact:
    """Where two sheets lie on one another they may press, not pull."""

    layer: str
    base: str
    name: str = "contact"


@dataclass(frozen=True, kw_only=True, slots=True)
class Fastener:
    """A rivet, bolt or spot weld through sheets that lie on one another."""

    name: str
    at: Point
    #: From one side of the stack to the other.
    sheets: tuple[str, ...]
    #: Stiffness of each joint between two sheets: across the fastener, and along it.
    shear: float
    axial: float
    #: About each axis; never nil, or a single fastener would be a pivot.
    turn: float = 2e4
    #: The sheet within this diameter goes with the head; nil: it hangs on one node.
    head: float = 0.0
    #: What its energy is put down to, where it is one of a row; else itself.
    part: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Spot:
    """A point of a sheet that is wanted as a node, for a load, a support or to be read."""

    name: str
    at: Point
    sheet: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Patch:
    """A part of a sheet that goes with something stiff: a washer, a boss, a welded foot."""

    name: str
    sheet: str
    centre: Point
    #: Round, or as long as this along the sheet's first coordinate ...
    width: float
    #: ... and across it; nil: round.
    height: float = 0.0
    #: The point that stands for it, where not its centre.
    master: Point | None = None


Fit = Literal["weld", "pin", "ball", "slide"]


@dataclass(frozen=True, kw_only=True, slots=True)
class End:
    """One end of a bar."""

    at: Point
    #: What it is fixed to: a spot, a patch, an end of a bar (`rod.start`); None: nothing.
    to: str | None = None
    fit: Fit = "weld"
    #: The pin's axis, or the way of the slide.
    axis: Point | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Bar:
    """A straight bar or tube; tapered if its sections differ. Its ends are `name.start`, `.end`."""

    name: str
    start: End
    end: End
    section: Section
    material: Material
    #: Section at the end, where it is another.
    end_section: Section | None = None
    #: A direction that lies in the plane of the section's z axis.
    up: Point
    part: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Support:
    """Something that does not move, at a named point or along a line."""

    name: str
    #: A spot, a patch or a bar's end; or the ends of a straight line on sheets.
    at: str | tuple[Point, Point]
    #: What it holds: x y z moves, X Y Z turns. With stiffnesses, how stiffly (N/mm, N·mm/rad).
    holds: str = "xyzXYZ"
    stiffness: tuple[float, ...] | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Bench:
    """Everything that is put on the bench."""

    sheets: tuple[Sheet, ...] = ()
    seams: tuple[Seam, ...] = ()
    bonds: tuple[Bond, ...] = ()
    contacts: tuple[Contact, ...] = ()
    fasteners: tuple[Fastener, ...] = ()
    spots: tuple[Spot, ...] = ()
    patches: tuple[Patch, ...] = ()
    bars: tuple[Bar, ...] = ()
    supports: tuple[Support, ...] = ()
    #: Wished side of the triangles.
    size: float = 12.0
