"""Places on the paper plane and upright boxes around them, mm."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import cos, sin
from typing import TypeAlias

#: A place: to the right, up.
XY: TypeAlias = tuple[float, float]


def polar(centre: XY, radius: float, angle: float) -> XY:
    """The point of a circle at an angle from +x, rad, anticlockwise."""
    return centre[0] + radius * cos(angle), centre[1] + radius * sin(angle)


@dataclass(frozen=True, slots=True)
class Box:
    """An upright rectangle around something."""

    left: float
    bottom: float
    right: float
    top: float

    @classmethod
    def around(cls, points: Iterable[XY]) -> "Box | None":
        """The smallest box that holds all points; None if there are none."""
        places = list(points)
        if not places:
            return None
        xs, ys = [x for x, _ in places], [y for _, y in places]
        return cls(min(xs), min(ys), max(xs), max(ys))

    @property
    def width(self) -> float:
        """From left to right."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """From bottom to top."""
        return self.top - self.bottom

    @property
    def corners(self) -> tuple[XY, XY, XY, XY]:
        """Anticlockwise from the lower left."""
        return (
            (self.left, self.bottom),
            (self.right, self.bottom),
            (self.right, self.top),
            (self.left, self.top),
        )

    def grown(self, by: float) -> "Box":
        """The box with a margin all round."""
        return Box(self.left - by, self.bottom - by, self.right + by, self.top + by)

    def meets(self, other: "Box") -> bool:
        """True where the two overlap."""
        across = self.left < other.right and other.left < self.right
        return across and self.bottom < other.top and other.bottom < self.top
