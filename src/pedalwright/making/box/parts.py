"""A part of the pedal box as it comes to the bench: its flat piece with bends, holes and marks."""

from dataclasses import dataclass
from typing import Literal

from pedalwright.core.points import Point
from pedalwright.making.bending import BendStep, FlatPattern
from pedalwright.making.profiles import Profile
from pedalwright.panels.made import Panel

What = Literal["rivets", "bolts", "rivet nuts", "welds"]


@dataclass(frozen=True, kw_only=True, slots=True)
class Piece:
    """One panel, to make or, of a wall that is on the car already, to drill."""

    panel: Panel
    #: Whether it is there already: a surveyed wall is drilled, never made.
    there: bool
    pattern: FlatPattern
    #: As it is marked out: bends by their middles, holes with what goes through them.
    profile: Profile
    #: How it is bent, in order.
    steps: tuple[BendStep, ...]
    #: The panel it lies on; of one that is there already, none.
    lies_on: tuple[str, ...] = ()
    #: Parts that are cut and bent just like it, and those of which it is the mirror image.
    alike: tuple[str, ...] = ()
    mirrored: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        """As the builder calls it."""
        return self.panel.name

    @property
    def up(self) -> str:
        """Where the top of its template points on the car."""
        return f"{_way(self.panel.lying.across)} in the car"

    @property
    def seen(self) -> str:
        """From where one looks at the template's face."""
        return _seen(self.panel.lying.normal)


@dataclass(frozen=True, kw_only=True, slots=True)
class Joint:
    """Fasteners alike through the same parts, from the far side to the near side."""

    #: As its holes are called: `F3`, its fifth hole `F3.5`.
    mark: str
    name: str
    what: What
    diameter: float
    count: int
    parts: tuple[str, ...]


_WAYS: tuple[tuple[Point, str, str], ...] = (
    (Point(1.0, 0.0, 0.0), "rearward", "seen from behind, from where the driver sits"),
    (Point(-1.0, 0.0, 0.0), "forward", "seen from the front of the car"),
    (Point(0.0, 1.0, 0.0), "right", "seen from the car's right"),
    (Point(0.0, -1.0, 0.0), "left", "seen from the car's left"),
    (Point(0.0, 0.0, 1.0), "up", "seen from above"),
    (Point(0.0, 0.0, -1.0), "down", "seen from below"),
)


def _way(direction: Point) -> str:
    return _nearest(direction)[1]


def _seen(normal: Point) -> str:
    return _nearest(normal)[2]


def _nearest(direction: Point) -> tuple[Point, str, str]:
    return max(_WAYS, key=lambda way: float(way[0].dot(direction)))
