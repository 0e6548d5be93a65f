"""A pedal box as it is made: panels where they lie, rows of fasteners through them, tubes.

Recipes turn the few sizes of a part into this; strength meshes it, making unfolds it, drawings
look at it. A face of a panel is called by both names, `brake cheeks.left`.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal

from pedalwright.core.points import Point
from pedalwright.panels.faces import Face
from pedalwright.panels.metals import Metal
from pedalwright.panels.parts import Edge, Spaced
from pedalwright.panels.spread import Flat, flats
from pedalwright.shell.parts import Plane


@dataclass(frozen=True, kw_only=True, slots=True)
class Panel:
    """One piece of sheet, folded or flat."""

    name: str
    face: Face
    #: The middle of the thickness of its first face.
    lying: Plane
    thickness: float
    metal: Metal
    #: Whether the strength of the box counts on it.
    counted: bool = True
    #: How many are made alike.
    count: int = 1

    def flats(self) -> tuple[Flat, ...]:
        """Every face in space, in the middle of the thickness."""
        return tuple(flats(self.face, self.lying, self.thickness))

    def flat(self, face: str) -> Flat:
        """One face by its name."""
        return next(flat for flat in self.flats() if flat.face.name == face)

    def sheet(self, face: str = "") -> str:
        """What a face of this panel is called among all; the first where none is named."""
        return f"{self.name}.{face or self.face.name}"


@dataclass(frozen=True, kw_only=True, slots=True)
class Row:
    """Fasteners alike through the same faces."""

    name: str
    joining: Spaced
    places: tuple[Point, ...]
    #: Faces in the order of the stack, `wall.plate`.
    through: tuple[str, ...]
    #: All thicknesses together.
    stack: float
    counted: bool = True


@dataclass(frozen=True, kw_only=True, slots=True)
class Glued:
    """A face bonded all over another."""

    layer: str
    base: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Clamp:
    """Where something stiff is fixed to a face: a flange, a boss, the foot of a tube."""

    name: str
    sheet: str
    centre: Point
    width: float
    #: 0 for round.
    height: float = 0.0
    #: The point that stands for it, where not its centre.
    master: Point | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Shaft:
    """A pivot's shaft between two clamps; loads act at its middle."""

    name: str
    one: Clamp
    other: Clamp


@dataclass(frozen=True, kw_only=True, slots=True)
class Tube:
    """A straight tube; it hangs on whatever is named at its ends, and carries what hangs on it."""

    name: str
    start: Point
    end: Point
    #: Outside width and depth; depth 0 for round. Wall 0 for a solid bar.
    width: float
    depth: float
    wall: float
    metal: Metal
    start_held: Edge = "free"
    end_held: Edge = "free"
    #: Clamps at its ends; left out, none.
    start_on: Clamp | None = None
    end_on: Clamp | None = None
    #: Bolted ends turn on their bolt.
    turns: bool = False
    #: Clamps that are welded or bolted to it along its length.
    carries: tuple[Clamp, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Held:
    """A straight edge that the frame holds."""

    name: str
    #: Whose edge it is.
    part: str
    start: Point
    end: Point
    how: Literal["pinned", "built in"]


@dataclass(frozen=True, kw_only=True, slots=True)
class Made:
    """All there is of a box."""

    panels: tuple[Panel, ...] = ()
    rows: tuple[Row, ...] = ()
    glued: tuple[Glued, ...] = ()
    #: Faces that may press on one another where they lie on one another: layer and base.
    touching: tuple[tuple[str, str], ...] = ()
    shafts: tuple[Shaft, ...] = ()
    tubes: tuple[Tube, ...] = ()
    held: tuple[Held, ...] = ()

    def __add__(self, other: "Made") -> "Made":
        return Made(
            panels=(*self.panels, *other.panels),
            rows=(*self.rows, *other.rows),
            glued=(*self.glued, *other.glued),
            touching=(*self.touching, *other.touching),
            shafts=(*self.shafts, *other.shafts),
            tubes=(*self.tubes, *other.tubes),
            held=(*self.held, *other.held),
        )

    def panel(self, name: str) -> Panel | None:
        """A panel by its name; None where there is none."""
        return next((panel for panel in self.panels if panel.name == name), None)


def named(panels: Iterable[Panel]) -> Iterator[tuple[str, Panel, Flat]]:
    """Every face of every panel, by the name it goes by among all."""
    for panel in panels:
        for flat in panel.flats():
            yield panel.sheet(flat.face.name), panel, flat
