"""The footwell as it was measured, seen from the car's left: whatever walls and tubes there are.

Every face, line, mark and obstacle of the survey that can be seen from the side is drawn, and
carries the name the builder gave it.
"""

from collections.abc import Iterator
from math import dist

from pedalwright.documents.pictures.places import seen
from pedalwright.drawing import (
    XY,
    Box,
    Circle,
    Fill,
    Hatch,
    Item,
    Leader,
    Polyline,
    Text,
    Tone,
)
from pedalwright.drawing import Line as LineKind
from pedalwright.survey import Line, Survey

#: Thickness of what was measured as a face, on paper; a tube seen end on is shorter than this.
SKIN, END_ON = 2.5, 5.0
#: Of the hatching on paper: wide, because the picture is drawn many times a second.
PITCH = 4.0
#: Letters of a name that is a scribed mark's and no word.
SHORT = 3
#: Share of a face's slope up to which it is cut across by the side view.
_UPRIGHT = 0.9


def footwell(
    survey: Survey, heel: float, window: Box, scale: float, *, notes: bool
) -> Iterator[Item]:
    """Walls, floor, heel rest, tubes and marks, within a window."""
    yield from _walls(survey, window, scale, notes=notes)
    yield from _heel_rest(survey, heel, scale, notes=notes)
    for thing in survey.obstacles:
        low, high = seen(thing.low), seen(thing.high)
        corners = (low, (high[0], low[1]), high, (low[0], high[1]))
        title = _words(thing.name)
        yield Polyline(corners, closed=True, line=LineKind.HIDDEN, part=thing.name, title=title)
    for line in survey.lines:
        yield from _tube(line, window, notes=notes)
    for mark in survey.marks:
        at = seen(mark.at)
        yield Circle(
            at, 1.6 / scale, line=LineKind.THIN, fill=Fill.PAPER, part=mark.name,
            title=_words(mark.name),
        )  # fmt: skip
        if notes and inside(window, at):
            yield from _called(mark.name, at, scale)


def _called(name: str, at: XY, scale: float) -> Iterator[Item]:
    """A scribed mark's letter beside it; a name of words on a leader."""
    if len(name) <= SHORT:
        yield Text((at[0] + 2.4 / scale, at[1]), name, align="start", tone=Tone.QUIET)
    else:
        yield Leader(at, _words(name), to=(7.0, 9.0), tone=Tone.QUIET)


def inside(window: Box, at: XY) -> bool:
    """True where a place can be seen; one that is nan cannot."""
    return window.left < at[0] < window.right and window.bottom < at[1] < window.top


def _walls(survey: Survey, window: Box, scale: float, *, notes: bool) -> Iterator[Item]:
    """Faces that stand or lie square to the paper: the wall ahead, the floor, a roof."""
    skin = SKIN / scale
    for face in survey.faces:
        normal, offset = face.plane.normal, float(face.plane.offset)
        along, up = float(normal.x), float(normal.z)
        title = _words(face.name)
        if abs(along) > _UPRIGHT:
            x = offset / along
            out = x - skin if along > 0.0 else x + skin
            edge = ((x, window.bottom), (x, window.top))
            yield from _cut(face.name, title, edge, (out, window.bottom), (out, window.top))
            if notes:
                yield Leader(
                    (x, window.bottom + 0.02 * window.height), title, to=(5.0, 1.5), tone=Tone.QUIET
                )
        elif abs(up) > _UPRIGHT:
            z = offset / up
            ends = ((window.left, z), (window.right, z))
            yield Polyline(ends, line=LineKind.HIDDEN, part=face.name, title=title)
            if notes:
                at = (window.left + 0.8 * window.width, z)
                yield Leader(at, title, to=(4.0, 4.0), tone=Tone.QUIET)


def _cut(part: str, title: str, edge: tuple[XY, XY], low: XY, high: XY) -> Iterator[Item]:
    yield Hatch((edge[0], low, high, edge[1]), pitch=PITCH, part=part)
    yield Polyline(edge, part=part, title=title)


def _heel_rest(survey: Survey, heel: float, scale: float, *, notes: bool) -> Iterator[Item]:
    """The mat the heels slide on, cut, from the wall rearward."""
    wall = survey.face("front_wall")
    start = float(wall.offset / wall.normal.x)
    end, skin = start + 620.0, SKIN / scale
    edge = ((start, heel), (end, heel))
    yield from _cut("heel-rest", "heel rest", edge, (start, heel - skin), (end, heel - skin))
    if notes:
        at = (start + 0.55 * (end - start), heel)
        yield Leader(at, "heel rest", to=(-4.0, -9.0), tone=Tone.QUIET)


def _tube(line: Line, window: Box, *, notes: bool) -> Iterator[Item]:
    """A tube end on as its section, another as its axis and its sides."""
    start, end, half = seen(line.start), seen(line.end), float(line.diameter) / 2
    title = _words(line.name)
    if dist(start, end) < END_ON * half:
        box = tuple((start[0] + a * half, start[1] + b * half) for a, b in _CORNERS)
        yield Polyline(box, closed=True, fill=Fill.TINT, part=line.name, title=title)
    else:
        yield Polyline((start, end), line=LineKind.CENTRE, part=line.name, title=title)
        length = dist(start, end)
        nx, ny = (start[1] - end[1]) / length * half, (end[0] - start[0]) / length * half
        for way in (1.0, -1.0):
            side = tuple((x + way * nx, y + way * ny) for x, y in (start, end))
            yield Polyline(side, line=LineKind.THIN, tone=Tone.QUIET, part=line.name)
    at = end if inside(window, end) else start
    if notes and inside(window, at):
        yield Leader(at, title, to=(6.0, -7.0), tone=Tone.QUIET)


_CORNERS = ((-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0))


def _words(name: str) -> str:
    return name.replace("_", " ")
