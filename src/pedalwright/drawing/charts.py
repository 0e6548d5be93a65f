"""Line charts: lines are told apart by kind of line and named at their ends, without a legend.

A chart is a drawing at 1:1 whose mm are mm on paper. What is nan is a gap in the line.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import isfinite
from statistics import fmean

from pedalwright.core.units import Array
from pedalwright.drawing.axis import Axis, Ruler
from pedalwright.drawing.box import XY
from pedalwright.drawing.leader import Leader
from pedalwright.drawing.lines import Fill, Line, Tone
from pedalwright.drawing.shapes import Circle, Item, Polyline, Text
from pedalwright.drawing.sheet import Drawing

#: Height of the lettering of charts, and the least distance of two labels, mm.
LETTERS, PITCH = 2.0, 3.6


@dataclass(frozen=True, slots=True)
class Series:
    """One line of a chart; `xs` and `ys` of the same length."""

    name: str
    xs: Sequence[float] | Array
    ys: Sequence[float] | Array
    line: Line = Line.VISIBLE
    tone: Tone = Tone.INK


@dataclass(frozen=True, slots=True)
class Level:
    """A limit: a level line right across, with what it says."""

    name: str
    value: float


@dataclass(frozen=True, slots=True)
class Spot:
    """One value worth pointing at."""

    name: str
    x: float
    y: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LineChart:
    """Lines over a common axis, limits, points of interest."""

    name: str
    title: str
    description: str = ""
    x: Axis
    y: Axis
    series: tuple[Series, ...]
    limits: tuple[Level, ...] = ()
    spots: tuple[Spot, ...] = ()
    width: float = 110.0
    height: float = 60.0

    def drawing(self) -> Drawing:
        """The chart as a drawing."""
        across = self.x.ruled(
            [*(x for line in self.series for x in line.xs), *(spot.x for spot in self.spots)]
        )
        up = self.y.ruled(
            [
                *(y for line in self.series for y in line.ys),
                *(limit.value for limit in self.limits),
                *(spot.y for spot in self.spots),
            ]
        )
        shapes = (
            *self._frame(across, up),
            *self._levels(up),
            *self._lines(across, up),
            *self._names(across, up),
            *self._spots(across, up),
        )
        return Drawing(
            name=self.name, title=self.title, description=self.description, shapes=shapes
        )

    def _place(self, x: float, y: float, across: Ruler, up: Ruler) -> XY:
        return across.share(x) * self.width, up.share(y) * self.height

    def _frame(self, across: Ruler, up: Ruler) -> Iterator[Item]:
        """Pale level lines, the two axes with their numbers, what they count."""
        for value, text in up.marks:
            y = up.share(value) * self.height
            yield Polyline(((0.0, y), (self.width, y)), line=Line.GRID)
            yield Text((-2.0, y), text, height=LETTERS, align="end", stand="across")
        for value, text in across.marks:
            x = across.share(value) * self.width
            yield Polyline(((x, 0.0), (x, -1.2)), line=Line.THIN)
            yield Text((x, -2.4), text, height=LETTERS, stand="under")
        foot = up.share(0.0) * self.height if up.low < 0.0 < up.high else 0.0
        yield Polyline(((0.0, foot), (self.width, foot)), line=Line.THIN)
        if foot:
            yield Polyline(((0.0, 0.0), (self.width, 0.0)), line=Line.THIN)
        yield Text((0.0, self.height + 3.0), self.y.title, height=LETTERS, align="start")
        yield Text((self.width, -6.6), self.x.title, height=LETTERS, align="end", stand="under")

    def _levels(self, up: Ruler) -> Iterator[Item]:
        for limit in self.limits:
            if isfinite(limit.value):
                y = up.share(limit.value) * self.height
                ends = ((0.0, y), (self.width, y))
                yield Polyline(ends, line=Line.CENTRE, tone=Tone.ACCENT, part="limit")

    def _lines(self, across: Ruler, up: Ruler) -> Iterator[Item]:
        for line in self.series:
            places = tuple(
                self._place(float(x), float(y), across, up)
                for x, y in zip(line.xs, line.ys, strict=True)
            )
            yield Polyline(places, line=line.line, tone=line.tone, title=line.name)

    def _names(self, across: Ruler, up: Ruler) -> Iterator[Item]:
        """Names right of the chart, level with the end of their line, pushed apart if need be."""
        ends: list[tuple[XY, str, Tone]] = [
            ((self.width, up.share(limit.value) * self.height), limit.name, Tone.ACCENT)
            for limit in self.limits
            if isfinite(limit.value)
        ]
        for line in self.series:
            known = [
                (float(x), float(y))
                for x, y in zip(line.xs, line.ys, strict=True)
                if isfinite(x) and isfinite(y)
            ]
            if known:
                ends.append((self._place(*known[-1], across, up), line.name, line.tone))
        ends.sort(key=lambda end: end[0][1])
        heights = spread([end[1] for end, _, _ in ends], PITCH)
        for (end, name, tone), height in zip(ends, heights, strict=True):
            elbow = (self.width + 3.0, height)
            yield Polyline((end, elbow), line=Line.GRID)
            at = (self.width + 4.0, height)
            yield Text(at, name, height=LETTERS, align="start", stand="across", tone=tone)

    def _spots(self, across: Ruler, up: Ruler) -> Iterator[Item]:
        for spot in self.spots:
            at = self._place(spot.x, spot.y, across, up)
            yield Circle(at, 0.9, fill=Fill.PAPER, tone=Tone.ACCENT)
            yield Leader(at, spot.name, to=(4.0, 5.0), end="none", height=LETTERS)


def spread(heights: Sequence[float], pitch: float) -> list[float]:
    """Rising heights moved as little as they must to be a pitch apart."""
    blocks: list[list[float]] = []
    for i, height in enumerate(heights):
        blocks.append([height - i * pitch])
        while len(blocks) > 1 and fmean(blocks[-2]) > fmean(blocks[-1]):
            blocks[-2:] = [blocks[-2] + blocks[-1]]
    level = [fmean(block) for block in blocks for _ in block]
    return [height + i * pitch for i, height in enumerate(level)]
