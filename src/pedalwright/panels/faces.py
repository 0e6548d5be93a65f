"""A folded part as a tree of flat faces.

A face is drawn to its mould lines, the lines where the outer faces of neighbouring legs would
meet: what a rule reads on the bent part. Seen from its shown side; anticlockwise. Lengths in mm,
angles in rad; plain numbers, because one makes one part at a time.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from pedalwright.drawing import XY


@dataclass(frozen=True, kw_only=True, slots=True)
class Hole:
    """A round hole in a face."""

    name: str
    centre: XY
    diameter: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Face:
    """One flat side of a folded part, in coordinates of its own."""

    name: str
    #: Anticlockwise, to the mould lines.
    outline: tuple[XY, ...]
    holes: tuple[Hole, ...] = ()
    folds: "tuple[Fold, ...]" = ()

    def all(self) -> "Iterator[Face]":
        """This face and all that hang on it."""
        yield self
        for fold in self.folds:
            yield from fold.face.all()


@dataclass(frozen=True, kw_only=True, slots=True)
class Fold:
    """A bend along a mould line, and what is beyond it.

    Walk from start to end and the face beyond lies on your left, your head on the shown side.
    In the coordinates of the face beyond, `start` is the origin, x runs along the fold and y away
    from it.
    """

    name: str
    start: XY
    end: XY
    #: Turned through; positive folds towards the shown side (up), negative away from it (down).
    angle: float
    #: Inside radius as it comes out.
    radius: float
    face: Face
