"""Dimensions after ISO 129-1: extension lines, narrow filled arrowheads, text above the line.

Text is read from the bottom or from the right of the sheet. Offsets, gaps and arrows are in
mm on paper. Where there is no room between the arrows they come from outside, and where
there is none for the text it stands beyond the end.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import atan2, copysign, cos, dist, hypot, isfinite, pi
from typing import Literal, TypeAlias

from pedalwright.core.lengths import Written, millimetres
from pedalwright.drawing.box import XY, polar
from pedalwright.drawing.lines import Fill, Line, Tone
from pedalwright.drawing.shapes import Item, Polyline, Text

Direction: TypeAlias = Literal["horizontal", "vertical", "aligned"]

#: On paper, mm.
ARROW, GAP, OVERSHOOT, ABOVE = 3.0, 1.0, 2.0, 0.8

#: Half the angle of an arrowhead: it is 15 degrees sharp.
SHARP = pi / 24


@dataclass(frozen=True, slots=True)
class Linear:
    """The distance of two points, measured in one direction.

    `offset` is how far the dimension line lies outside `base`, mm on paper: above (+) or below
    (-) for a horizontal one, right (+) or left (-) for a vertical one, left (+) or right (-) of
    the way from `a` to `b` for an aligned one. `base` is a height or a place to the right, by
    default that of the point farther out. In `label`, {} stands for the measured length.
    """

    a: XY
    b: XY
    direction: Direction
    offset: float = 10.0
    base: float | None = None
    label: str = "{}"
    decimals: int = 1
    written: Written = millimetres
    tone: Tone = Tone.INK
    part: str = ""

    def drawn(self, scale: float) -> tuple[Item, ...]:
        """Extension lines, the dimension line with its arrows, the text."""
        if not self.length > 0.0:
            return ()
        along, outward = self._axes
        side = copysign(1.0, self.offset)
        ends = sorted(zip((_dot(self.a, along), _dot(self.b, along)), self.heights, strict=True))
        base = side * max(side * h for h in self.heights) if self.base is None else self.base
        height = base + self.offset / scale

        def place(s: float, h: float) -> XY:
            return s * along[0] + h * outward[0], s * along[1] + h * outward[1]

        left, right = self.reach(scale)
        lines = [(place(left, height), place(right, height))]
        for s, h in ends:
            gap, over = side * GAP / scale, side * OVERSHOOT / scale
            if side * (height - h - gap) > 0.0:
                lines.append((place(s, h + gap), place(s, height + over)))
        return (
            *(Polyline(line, line=Line.THIN, tone=self.tone, part=self.part) for line in lines),
            *self._arrows(place(ends[0][0], height), place(ends[1][0], height), scale),
            self._lettering(place(ends[0][0], height), place(ends[1][0], height), scale),
        )

    @property
    def length(self) -> float:
        """The measured length; nan if a point has no place."""
        along, _ = self._axes
        return abs(_dot(self.b, along) - _dot(self.a, along))

    @property
    def text(self) -> str:
        """What is written above the line."""
        return self.label.replace("{}", self.written(self.length, self.decimals))

    @property
    def heights(self) -> tuple[float, float]:
        """How far out the two points lie, in the direction of a positive offset."""
        _, outward = self._axes
        return _dot(self.a, outward), _dot(self.b, outward)

    def reach(self, scale: float) -> tuple[float, float]:
        """Where the dimension line begins and ends, measured along its own direction."""
        along, _ = self._axes
        near, far = sorted((_dot(self.a, along), _dot(self.b, along)))
        over = tail(self.length * scale)
        width = Text(self.a, self.text).width
        beyond = width + GAP if width > self.length * scale else 0.0
        before, behind = (over, over + beyond) if _forward(along) else (over + beyond, over)
        return near - before / scale, far + behind / scale

    @property
    def _axes(self) -> tuple[XY, XY]:
        """The direction of measuring, and the direction of a positive offset."""
        if self.direction == "horizontal":
            return (1.0, 0.0), (0.0, 1.0)
        if self.direction == "vertical":
            return (0.0, 1.0), (1.0, 0.0)
        x, y = self.b[0] - self.a[0], self.b[1] - self.a[1]
        length = hypot(x, y) or 1.0
        return (x / length, y / length), (-y / length, x / length)

    def _arrows(self, near: XY, far: XY, scale: float) -> Iterator[Polyline]:
        outside = -1.0 if tail(self.length * scale) else 1.0
        x, y = (outside * part for part in self._axes[0])
        yield arrow(near, (-x, -y), scale, self.tone)
        yield arrow(far, (x, y), scale, self.tone)

    def _lettering(self, near: XY, far: XY, scale: float) -> Text:
        angle = _reading(self._axes[0])
        text = Text(near, self.text, angle=angle, tone=self.tone, part=self.part)
        lift = polar((0.0, 0.0), ABOVE / scale, angle + pi / 2)
        if text.width <= self.length * scale:
            return replace(text, at=_sum(_middle(near, far), lift))
        last = far if _forward(self._axes[0]) else near
        on = polar(last, (tail(self.length * scale) + GAP) / scale, angle)
        return replace(text, at=_sum(on, lift), align="start")


@dataclass(frozen=True, slots=True)
class Stack:
    """Dimensions of one direction, side by side where there is room, else one row farther out.

    The shorter lie nearer, so no dimension line is cut by another's extension line. `side` is
    +1 or -1 as the sign of an offset; `base` as in `Linear`.
    """

    rows: tuple[Linear, ...]
    side: float
    base: float | None = None
    first: float = 10.0
    pitch: float = 8.0

    def drawn(self, scale: float) -> tuple[Item, ...]:
        """All dimensions; of extension lines that begin at the same point only the longest."""
        longest: dict[XY, Polyline] = {}
        others: list[Item] = []
        for item in (item for row in self.placed(scale) for item in row.drawn(scale)):
            if isinstance(item, Polyline) and not item.closed:
                rival = longest.get(item.points[0], item)
                longest[item.points[0]] = max(rival, item, key=_span)
            else:
                others.append(item)
        return (*longest.values(), *others)

    def placed(self, scale: float) -> tuple[Linear, ...]:
        """Each dimension in the nearest row that is free."""
        rows = sorted((row for row in self.rows if row.length > 0.0), key=lambda row: row.length)
        heights = [height for row in rows for height in row.heights if isfinite(height)]
        base = self.base
        if base is None and heights:
            base = max(heights, key=lambda height: self.side * height)
        taken: list[list[tuple[float, float]]] = []
        placed: list[Linear] = []
        for row in rows:
            left, right = row.reach(scale)
            # ends that only touch make a chain, so they are no overlap
            free = (
                number
                for number, others in enumerate(taken)
                if all(right < a + GAP / scale or left > b - GAP / scale for a, b in others)
            )
            number = next(free, len(taken))
            if number == len(taken):
                taken.append([])
            taken[number].append((left, right))
            offset = self.side * (self.first + self.pitch * number)
            placed.append(replace(row, offset=offset, base=base))
        return tuple(placed)


def _span(line: Polyline) -> float:
    return dist(line.points[0], line.points[-1])


def arrow(tip: XY, towards: XY, scale: float, tone: Tone = Tone.INK) -> Polyline:
    """A filled arrowhead at `tip` that points in the direction `towards`."""
    back = atan2(towards[1], towards[0]) + pi
    side = ARROW / cos(SHARP) / scale
    wings = (polar(tip, side, back - SHARP), polar(tip, side, back + SHARP))
    return Polyline((tip, *wings), closed=True, fill=Fill.SOLID, line=Line.NONE, tone=tone)


def tail(span: float) -> float:
    """How far the line goes on beyond each end, mm on paper, because arrows come from outside."""
    return 0.0 if span >= 2 * ARROW + 2.0 else 2 * ARROW


def _forward(along: XY) -> bool:
    """Whether text along this direction is read in the direction, not against it."""
    return along[0] > _LEVEL or (along[0] > -_LEVEL and along[1] > 0.0)


def _reading(along: XY) -> float:
    """Angle of the text: read from the bottom, and from the right if it stands upright."""
    sign = 1.0 if _forward(along) else -1.0
    return atan2(sign * along[1], sign * along[0])


#: Below this a direction counts as upright.
_LEVEL = 1e-9


def _dot(a: XY, b: XY) -> float:
    return a[0] * b[0] + a[1] * b[1]


def _sum(a: XY, b: XY) -> XY:
    return a[0] + b[0], a[1] + b[1]


def _middle(a: XY, b: XY) -> XY:
    return (a[0] + b[0]) / 2, (a[1] + b[1]) / 2
