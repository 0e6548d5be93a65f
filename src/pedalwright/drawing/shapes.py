"""Shapes of a drawing: lines, arcs, texts, in mm of the real thing, y up.

Coordinates are true lengths. Heights of text, widths of lines and sizes of arrowheads are in
mm on paper, so they do not grow and shrink with the scale. What needs both, such as a
dimension, is a `Mark`: it becomes plain shapes once the scale is known.
"""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field, replace
from itertools import groupby
from math import cos, isfinite, pi, sin
from typing import Literal, Protocol, TypeAlias

from pedalwright.drawing.box import XY, Box, polar
from pedalwright.drawing.lines import Fill, Line, Tone

#: Lettering heights on paper, mm: height of a capital (ISO 3098).
SMALL, NORMAL = 2.5, 3.5

#: DejaVu Sans Mono, measured in its own em: height of a capital, width of every letter.
CAPITAL, LETTER = 0.729, 0.602


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """What all shapes have: kind of line, tone, and what a page or a screen reader calls them."""

    line: Line = Line.VISIBLE
    tone: Tone = Tone.INK
    #: Name a page can hook on, e.g. `brake-pad`.
    part: str = ""
    #: Shown under the pointer and read aloud.
    title: str = ""


@dataclass(frozen=True, slots=True)
class Polyline(Look):
    """Straight from point to point; two points are a line, a closed one an outline."""

    points: tuple[XY, ...]
    closed: bool = field(default=False, kw_only=True)
    fill: Fill = field(default=Fill.NONE, kw_only=True)


@dataclass(frozen=True, slots=True)
class Circle(Look):
    """A full circle."""

    centre: XY
    radius: float
    fill: Fill = field(default=Fill.NONE, kw_only=True)


@dataclass(frozen=True, slots=True)
class Arc(Look):
    """Part of a circle, anticlockwise from `start` to `end`; angles from +x, in rad."""

    centre: XY
    radius: float
    start: float
    end: float


@dataclass(frozen=True, slots=True)
class Text(Look):
    """One line of lettering; `angle` in rad, anticlockwise."""

    at: XY
    text: str
    height: float = field(default=SMALL, kw_only=True)
    align: Literal["start", "middle", "end"] = field(default="middle", kw_only=True)
    #: Whether `at` is below, in the middle of or above the letters.
    stand: Literal["on", "across", "under"] = field(default="on", kw_only=True)
    angle: float = field(default=0.0, kw_only=True)
    line: Line = field(default=Line.NONE, kw_only=True)

    @property
    def width(self) -> float:
        """Length of the lettering on paper, mm."""
        return len(self.text) * LETTER / CAPITAL * self.height

    def foot(self, scale: float) -> XY:
        """Where the first, middle or last letter stands on its line."""
        down = {"on": 0.0, "across": 0.5, "under": 1.0}[self.stand] * self.height / scale
        return self.at[0] + down * sin(self.angle), self.at[1] - down * cos(self.angle)


@dataclass(frozen=True, slots=True)
class Group(Look):
    """Shapes that belong together: a part, a layer."""

    shapes: "tuple[Item, ...]"


class Mark(Protocol):
    """Drawn with sizes on paper: it becomes plain shapes once the scale is known."""

    def drawn(self, scale: float) -> "tuple[Item, ...]":
        """Its shapes at this scale (1 to 5 is 0.2)."""
        ...


Shape: TypeAlias = Polyline | Circle | Arc | Text | Group
Item: TypeAlias = Shape | Mark


def plain(items: Iterable[Item], draw: Callable[[Mark], Iterable[Item]]) -> Iterator[Shape]:
    """Only shapes: marks are drawn, and what has no place (nan) is left out."""
    for item in items:
        match item:
            case Group():
                yield replace(item, shapes=tuple(plain(item.shapes, draw)))
            case Polyline():
                yield from _with_a_place(item)
            case Circle():
                if isfinite(sum((*item.centre, item.radius))):
                    yield item
            case Arc():
                if isfinite(sum((*item.centre, item.radius, item.start, item.end))):
                    yield item
            case Text():
                if isfinite(sum(item.at)):
                    yield item
            case _:
                yield from plain(draw(item), draw)


def _with_a_place(line: Polyline) -> Iterator[Polyline]:
    """The runs of a line between points that are nan; an outline with a hole is no outline."""
    runs = [
        tuple(run)
        for known, run in groupby(line.points, key=lambda point: isfinite(sum(point)))
        if known
    ]
    if runs == [line.points]:
        yield line
    elif not line.closed:
        yield from (replace(line, points=run) for run in runs if len(run) > 1)


def extent(shapes: Iterable[Shape], scale: float) -> Box | None:
    """The box around plain shapes, lettering included."""
    return Box.around(point for shape in shapes for point in _span(shape, scale))


def _span(shape: Shape, scale: float) -> Iterable[XY]:
    """Points that span the box of a shape."""
    match shape:
        case Polyline():
            return shape.points
        case Circle():
            return (polar(shape.centre, shape.radius, i * pi / 2) for i in range(4))
        case Arc():
            quarters = (i * pi / 2 for i in range(-8, 9))
            within = (angle for angle in quarters if shape.start < angle < shape.end)
            angles = (shape.start, *within, shape.end)
            return (polar(shape.centre, shape.radius, angle) for angle in angles)
        case Text():
            return _lettering(shape, scale)
        case Group():
            inner = extent(plain(shape.shapes, lambda mark: mark.drawn(scale)), scale)
            return inner.corners if inner else ()


def _lettering(text: Text, scale: float) -> Iterator[XY]:
    x, y = text.foot(scale)
    back = {"start": 0.0, "middle": 0.5, "end": 1.0}[text.align] * text.width
    c, s = cos(text.angle), sin(text.angle)
    for along in (-back, text.width - back):
        for up in (0.0, text.height):
            yield x + (along * c - up * s) / scale, y + (along * s + up * c) / scale
