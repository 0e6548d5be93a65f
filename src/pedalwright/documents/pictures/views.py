"""Looking down on the footwell, or along it from the seat: which way the paper lies in the car.

What is seen edge on is cut, what lies across is drawn as it is seen.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import product
from math import dist, hypot
from typing import Literal

from pedalwright.core.points import REARWARD, RIGHT, UP, Plane, Point
from pedalwright.drawing import (
    XY,
    Box,
    CentreCross,
    Circle,
    Hatch,
    Item,
    Leader,
    Polyline,
    Text,
    Tone,
)
from pedalwright.drawing import Line as LineKind
from pedalwright.survey import Line, Obstacle

#: Thickness of what was measured as a face, mm.
SKIN = 14.0
#: Beyond its window a drawing still shows tubes for so many mm.
ROUND = 40.0
#: Names in the margin: beyond its edge, and from one to the next, mm of paper.
BEYOND, APART = 6.0, 5.0
#: Of a face's normal on the paper: one that shows less is not edge on.
EDGE_ON = 0.75
#: A tube that seems shorter than so many of its radii is seen end on.
END_ON = 5.0


@dataclass(frozen=True, slots=True)
class View:
    """Directions of the car that lie to the right and up on the paper."""

    right: Point
    up: Point

    def __call__(self, point: Point) -> XY:
        """A point of the car on the paper."""
        return float(point.dot(self.right)), float(point.dot(self.up))

    @property
    def towards(self) -> Point:
        """From the paper to the reader."""
        return self.right.cross(self.up)

    def turned(self, plane: Plane, depth: float) -> tuple[float, float, float]:
        """A plane on the paper, cut at that depth: a x + b y = c."""
        a, b = self(plane.normal)
        return a, b, float(plane.offset) - float(plane.normal.dot(self.towards)) * depth


#: Front to the left, as in the side elevation; the car's right is up.
FROM_ABOVE = View(REARWARD, RIGHT)
#: Front to the left: the side elevation.
FROM_THE_LEFT = View(REARWARD, UP)
#: As the driver sees it.
FROM_THE_SEAT = View(RIGHT, UP)


@dataclass(frozen=True, slots=True)
class Beside:
    """A word at a place, so many mm of paper away from it."""

    at: XY
    text: str
    away: XY
    align: Literal["start", "middle", "end"] = "middle"

    def drawn(self, scale: float) -> tuple[Item, ...]:
        """Where it stands at this scale."""
        x, y = self.at[0] + self.away[0] / scale, self.at[1] + self.away[1] / scale
        return (Text((x, y), self.text, align=self.align, stand="across"),)


@dataclass(frozen=True, slots=True)
class InTheMargin:
    """Names in a column beside a drawing, each with a line to its place; way +1 right, -1 left."""

    named: tuple[tuple[XY, str], ...]
    edge: float
    way: float

    def drawn(self, scale: float) -> tuple[Item, ...]:
        """As high as their places, or lower where two would stand on each other."""
        shapes: list[Item] = []
        below = float("inf")
        for at, name in sorted(self.named, key=lambda one: -one[0][1]):
            if not at[0] + at[1] < float("inf"):
                continue
            height = min(at[1], below)
            below = height - APART / scale
            stands = self.edge + self.way * BEYOND / scale
            shapes += (
                Polyline((at, (self.edge, height), (stands, height)), line=LineKind.THIN),
                Text(
                    (stands + self.way / scale, height), name, stand="across",
                    align="start" if self.way > 0.0 else "end",
                ),
            )  # fmt: skip
        return tuple(shapes)


def wall(view: View, name: str, plane: Plane, depth: float, window: Box) -> Iterator[Item]:
    """A face that is seen edge on, cut at a depth, with its name; none where it lies across."""
    a, b, c = view.turned(plane, depth)
    if not hypot(a, b) > EDGE_ON:
        return
    if abs(a) > abs(b):
        ends = tuple(((c - b * y) / a, y) for y in (window.bottom, window.top))
    else:
        ends = tuple((x, (c - a * x) / b) for x in (window.left, window.right))
    out = -SKIN / hypot(a, b)
    back = tuple((x + out * a, y + out * b) for x, y in reversed(ends))
    yield Hatch((*ends, *back), part=name)
    yield Polyline(ends, part=name, title=words(name))
    if abs(a) > abs(b):
        yield Beside(_between(ends[1], back[0], 0.5), words(name), (0.0, 3.0))
    else:
        yield Beside(_between(ends[1], back[0], 0.5), words(name), (1.5, -1.5), align="start")


def box(view: View, thing: Obstacle) -> Item:
    """Something in the way."""
    low, high = view(thing.low), view(thing.high)
    corners = (low, (high[0], low[1]), high, (low[0], high[1]))
    return Polyline(
        corners, closed=True, line=LineKind.HIDDEN, part=thing.name, title=words(thing.name)
    )


def tube(
    view: View, line: Line, window: Box | None = None, tone: Tone = Tone.QUIET
) -> Iterator[Item]:
    """A tube end on as its section, another as its axis and its sides, within a window."""
    start, end, half = view(line.start), view(line.end), float(line.diameter) / 2.0
    title, length = words(line.name), dist(start, end)
    if not length > END_ON * half:
        middle = ((start[0] + end[0]) / 2.0, (start[1] + end[1]) / 2.0)
        yield Circle(middle, half, tone=tone, part=line.name, title=title)
        yield CentreCross(middle, half, part=line.name)
        return
    if window is not None:
        shares = _within(start, end, window)
        if shares is None:
            return
        start, end = (_between(start, end, share) for share in shares)
        length = dist(start, end)
    yield Polyline((start, end), line=LineKind.CENTRE, part=line.name, title=title)
    nx, ny = (start[1] - end[1]) / length * half, (end[0] - start[0]) / length * half
    for way in (1.0, -1.0):
        side = tuple((x + way * nx, y + way * ny) for x, y in (start, end))
        yield Polyline(side, line=LineKind.THIN, tone=tone, part=line.name)


def called(shapes: Sequence[Item], name: str) -> Iterator[Item]:
    """The name of a tube, at the end of what is shown of it."""
    for shape in shapes[:1]:
        if isinstance(shape, Polyline):
            yield Leader(max(shape.points), name, to=(5.0, 6.0), tone=Tone.QUIET)


def hull(places: Iterable[XY]) -> tuple[XY, ...]:
    """The smallest outline without a hollow round some places, anticlockwise."""
    ordered = sorted(set(places))

    def half(way: Iterable[XY]) -> list[XY]:
        kept: list[XY] = []
        for x, y in way:
            while len(kept) > 1 and not _left(kept[-2], kept[-1], (x, y)):
                kept.pop()
            kept.append((x, y))
        return kept[:-1]

    return (*half(ordered), *half(reversed(ordered)))


def block(middle: Point, halves: Iterable[Point]) -> list[Point]:
    """The corners of a block round its middle."""
    ways = [(half, -half) for half in halves]
    corners: list[Point] = []
    for steps in product(*ways):
        corner = middle
        for step in steps:
            corner += step
        corners.append(corner)
    return corners


def words(name: str) -> str:
    """A name as it is read."""
    return name.replace("_", " ").replace("-", " ")


def _left(a: XY, b: XY, c: XY) -> bool:
    """Whether the way bends to the left at b."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 0.0


def _between(a: XY, b: XY, share: float) -> XY:
    return a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])


def _within(a: XY, b: XY, window: Box) -> tuple[float, float] | None:
    """The shares of a way between which it runs within a window."""
    first, last = 0.0, 1.0
    sides = ((a[0], b[0], window.left, window.right), (a[1], b[1], window.bottom, window.top))
    for here, there, low, high in sides:
        step = there - here
        if step == 0.0:
            if not low <= here <= high:
                return None
            continue
        enters, leaves = sorted(((low - here) / step, (high - here) / step))
        first, last = max(first, enters), min(last, leaves)
    return (first, last) if first < last else None
