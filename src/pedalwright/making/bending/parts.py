"""The metal of a folded part, and the flat piece it is cut from.

Lengths in mm, angles in rad, strengths in MPa; plain numbers, because one makes one part at a
time.
"""

from dataclasses import dataclass
from typing import Literal

from pedalwright.drawing import XY
from pedalwright.panels.plane import between

Way = Literal["test strip", "DIN 6935", "table", "given"]


@dataclass(frozen=True, kw_only=True, slots=True)
class Sheet:
    """The metal of a folded part."""

    #: As in the table of metals, e.g. `5251-H22`.
    metal: str
    thickness: float
    #: nan leaves the springback unsaid.
    yield_strength: float = float("nan")
    elastic: float = float("nan")
    #: Rolling direction on the flat piece, from +x; None where nobody looked.
    grain: float | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class TestStrip:
    """An off-cut of the same sheet, bent once on the builder's own tool."""

    #: Not a test of the house's own (pytest looks for such names).
    __test__ = False

    #: Length before bending.
    length: float
    #: Both legs after bending, measured outside with a square.
    leg_one: float
    leg_two: float
    thickness: float
    #: Inside radius as it came out: try drill shanks in the corner.
    radius: float
    angle: float
    #: How well the three lengths are known together.
    plus_minus: float = 0.3


@dataclass(frozen=True, kw_only=True, slots=True)
class Neutral:
    """Where a sheet is neither stretched nor squeezed in a bend."""

    #: From the inside, share of the thickness.
    share: float
    #: How well that is known.
    plus_minus: float
    way: Way
    source: str


@dataclass(frozen=True, kw_only=True, slots=True)
class FlatBend:
    """A bend as it is marked on the flat piece."""

    name: str
    #: Where the bend begins, on the side of the face it grows from.
    near: tuple[XY, XY]
    #: Where it ends.
    far: tuple[XY, XY]
    angle: float
    radius: float
    allowance: float
    #: What the two legs lose together.
    deduction: float
    neutral: Neutral
    #: Faces on both sides.
    from_face: str
    to_face: str

    @property
    def up(self) -> bool:
        """Whether it folds towards the shown side."""
        return bool(self.angle > 0.0)

    @property
    def middle(self) -> tuple[XY, XY]:
        """Where a press brake's blade comes down."""
        return between(self.near[0], self.far[0], 0.5), between(self.near[1], self.far[1], 0.5)

    @property
    def sight(self) -> tuple[XY, XY]:
        """Set flush with the nose of the clamp that holds the near side: a radius into the bend."""
        share = self.radius / self.allowance
        return (
            between(self.near[0], self.far[0], share),
            between(self.near[1], self.far[1], share),
        )


@dataclass(frozen=True, kw_only=True, slots=True)
class FlatHole:
    """A hole as it is marked on the flat piece."""

    name: str
    face: str
    centre: XY
    diameter: float


@dataclass(frozen=True, kw_only=True, slots=True)
class FlatFace:
    """A face on the flat piece: trimmed to where its bends begin."""

    name: str
    outline: tuple[XY, ...]
    #: Bends between the first face and this one, nearest to the first face first.
    bends: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class FlatPattern:
    """The flat piece: outline, bends and holes, seen from the shown side."""

    name: str
    sheet: Sheet
    #: Anticlockwise.
    outline: tuple[XY, ...]
    faces: tuple[FlatFace, ...]
    bends: tuple[FlatBend, ...]
    holes: tuple[FlatHole, ...]
