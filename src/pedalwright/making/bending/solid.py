"""The bent part in space, straight from its mould lines.

It knows nothing of the flat piece: two outer faces meet in the mould line, so each face lies where
its fold's angle puts it. Together with folding the flat piece up it proves the pattern.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from pedalwright.core.points import REARWARD, RIGHT, UP, Point
from pedalwright.drawing import XY
from pedalwright.panels.faces import Face
from pedalwright.panels.plane import direction


@dataclass(frozen=True, slots=True)
class Placed:
    """A face in space: where the origin of its coordinates lies in its middle plane, and its axes.

    `out` points to the shown side.
    """

    face: Face
    origin: Point
    along: Point
    across: Point
    out: Point

    def place(self, point: XY) -> Point:
        """A point of the face in space."""
        return self.origin + self.along * point[0] + self.across * point[1]


def placed(face: Face, thickness: float) -> Iterator[Placed]:
    """Every face of a part, the first one in the plane z = 0 with the shown side up."""
    yield from _placed(Placed(face, Point(0.0, 0.0, 0.0), REARWARD, RIGHT, UP), thickness)


def _placed(here: Placed, thickness: float) -> Iterator[Placed]:
    yield here
    for fold in here.face.folds:
        c, s = direction(fold.start, fold.end)
        along = here.along * c + here.across * s
        across = here.across * c - here.along * s
        outer = -1.0 if fold.angle > 0.0 else 1.0  # the outer face is away from where it folds to
        mould = here.place(fold.start) + here.out * (outer * thickness / 2)
        new_across = across.turned(along, fold.angle)
        out = here.out.turned(along, fold.angle)
        origin = mould - out * (outer * thickness / 2)
        yield from _placed(Placed(fold.face, origin, along, new_across, out), thickness)
