"""Hatching: thin parallel lines over a cut face."""

from dataclasses import dataclass
from itertools import pairwise
from math import ceil, cos, floor, pi, sin

from pedalwright.drawing.box import XY
from pedalwright.drawing.lines import Line
from pedalwright.drawing.shapes import Item, Polyline


@dataclass(frozen=True, slots=True)
class Hatch:
    """Parallel lines within an outline; `pitch` in mm on paper, `angle` in rad."""

    outline: tuple[XY, ...]
    angle: float = pi / 4
    pitch: float = 2.0
    part: str = ""

    def drawn(self, scale: float) -> tuple[Item, ...]:
        """The lines, each cut where it enters and leaves the outline."""
        c, s = cos(self.angle), sin(self.angle)
        turned = [(c * x + s * y, c * y - s * x) for x, y in self.outline]
        heights = [y for _, y in turned]
        pitch = self.pitch / scale
        rows = range(ceil(min(heights) / pitch), floor(max(heights) / pitch) + 1)
        return tuple(
            Polyline(
                ((c * a - s * h, s * a + c * h), (c * b - s * h, s * b + c * h)),
                line=Line.THIN,
                part=self.part,
            )
            for h in (row * pitch for row in rows)
            for a, b in _inside(turned, h)
        )


def _inside(outline: list[XY], height: float) -> list[XY]:
    """Where a level line at a height is inside an outline: pairs of (from, to)."""
    crossings = sorted(
        ax + (height - ay) * (bx - ax) / (by - ay)
        for (ax, ay), (bx, by) in pairwise([*outline, outline[0]])
        if (ay <= height) != (by <= height)
    )
    return list(zip(crossings[::2], crossings[1::2], strict=True))
