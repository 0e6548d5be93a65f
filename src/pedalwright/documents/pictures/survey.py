"""Plan and side view of a survey: marks with their error ellipses, tapes, tubes and faces.

The plan is seen from above with the front of the car up; the side from the car's left, front to
the left. What contradicts itself is drawn dashed, and its mark is ringed.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import cos, hypot, isfinite, pi, sin
from typing import Literal, TypeAlias

import numpy as np

from pedalwright.core.points import Point
from pedalwright.core.units import Num
from pedalwright.drawing import (
    XY,
    Circle,
    Drawing,
    Fill,
    Group,
    Item,
    Leader,
    Polyline,
    Text,
    Tone,
)
from pedalwright.drawing import Line as Stroke
from pedalwright.drawing.dimension import arrow
from pedalwright.survey import Adjustment, Distance, Placed, Survey, ellipse

View: TypeAlias = Literal["plan", "side"]
VIEWS: tuple[View, ...] = ("plan", "side")
#: How much larger than life ellipses are drawn, and the probability they hold a mark with.
LARGER, PROBABILITY = 20.0, 0.95
#: Sizes on paper, mm: a cross, a ring, the arrows of the axes.
CROSS, RING, ARROW = 1.4, 4.5, 12.0
#: Sides of an ellipse.
SIDES = 48


@dataclass(frozen=True, slots=True)
class Cross:
    """A mark, its size on paper."""

    at: XY
    title: str
    held: bool

    def drawn(self, scale: float) -> tuple[Item, ...]:
        """Two strokes; with a square around them where the mark is held."""
        (x, y), half = self.at, CROSS / scale
        low, high = (x - half, y - half), (x + half, y + half)
        other = ((x - half, y + half), (x + half, y - half))
        square = Polyline((low, other[1], high, other[0]), closed=True, fill=Fill.PAPER)
        strokes = (Polyline((low, high), title=self.title), Polyline(other, title=self.title))
        return (square, *strokes) if self.held else strokes


@dataclass(frozen=True, slots=True)
class Ring:
    """Drawn around what is doubtful, its size on paper."""

    at: XY

    def drawn(self, scale: float) -> tuple[Item, ...]:
        """A bold circle."""
        return (
            Circle(self.at, RING / scale, tone=Tone.ACCENT, part="doubtful", title="doubtful"),
            Circle(self.at, (RING + 0.7) / scale, tone=Tone.ACCENT, line=Stroke.THIN),
        )


@dataclass(frozen=True, slots=True)
class Way:
    """An arrow along an axis of the car, its length on paper."""

    at: XY
    towards: XY
    text: str
    #: How far below `at` it begins, on paper.
    drop: float = 0.0

    def drawn(self, scale: float) -> tuple[Item, ...]:
        """The arrow, its name at the tip."""
        reach = ARROW / scale
        foot = (self.at[0], self.at[1] - self.drop / scale)
        tip = (foot[0] + reach * self.towards[0], foot[1] + reach * self.towards[1])
        to = (2.0 + 2.0 * self.towards[0], 2.0 * self.towards[1])
        note = Leader(tip, self.text, to=to, end="none", tone=Tone.QUIET)
        return (
            Polyline((foot, tip), line=Stroke.THIN),
            arrow(tip, self.towards, scale),
            *(item for item in note.drawn(scale) if isinstance(item, Text)),
        )


def survey_view(survey: Survey, found: Adjustment, view: View) -> Drawing:
    """One of the two views."""
    names = {"plan": "Plan", "side": "Side view"}
    return Drawing(
        name=f"survey-{view}",
        title=f"{names[view]} of the survey; ellipses {LARGER:.0f} times as large as they are",
        description=(
            f"{names[view]} of every mark with its error ellipse, the tapes between marks, faces "
            "and tubes; doubtful marks are ringed."
        ),
        shapes=(
            *_faces(survey, view),
            *_tapes(found, view),
            *_tubes(survey, view),
            *_marks(found, view),
            *_axes(found, view),
        ),
    )


def _on(view: View, at: Point) -> XY:
    """A place on the paper."""
    if view == "plan":
        return float(at.y), -float(at.x)
    return float(at.x), float(at.z)


def _faces(survey: Survey, view: View) -> Iterator[Item]:
    """Each face as the outline of its marks, where it is seen broadside enough to have one."""
    places = {mark.name: mark.at for mark in survey.marks}
    for face in survey.faces:
        corners = _around([_on(view, places[n]) for n in face.marks if n in places])
        if len(corners) < 2:
            continue
        words = face.name.replace("_", " ")
        yield Polyline(
            corners, closed=len(corners) > 2, fill=Fill.TINT if len(corners) > 2 else Fill.NONE,
            line=Stroke.THIN, tone=Tone.QUIET, part=face.name, title=words,
        )  # fmt: skip
        middle = tuple(sum(c[i] for c in corners) / len(corners) for i in (0, 1))
        yield Leader((middle[0], middle[1]), words, to=(6.0, 5.0), tone=Tone.QUIET)


def _around(points: list[XY]) -> tuple[XY, ...]:
    """The convex outline of some places; two of them where they lie in a line."""
    known = sorted({p for p in points if isfinite(sum(p))})
    if len(known) < 3:
        return tuple(known)

    def half(row: list[XY]) -> list[XY]:
        out: list[XY] = []
        for p in row:
            while len(out) > 1 and _turn(out[-2], out[-1], p) <= 0.0:
                out.pop()
            out.append(p)
        return out[:-1]

    return tuple(half(known) + half(known[::-1]))


def _turn(a: XY, b: XY, c: XY) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _tubes(survey: Survey, view: View) -> Iterator[Item]:
    for line in survey.lines:
        start, end = _on(view, line.start), _on(view, line.end)
        length, half = hypot(end[0] - start[0], end[1] - start[1]), float(line.diameter) / 2.0
        words = line.name.replace("_", " ")
        if not isfinite(length):
            continue
        if length < 2.0 * half:
            yield Circle(start, half, part=line.name, title=words)
        else:
            x, y = (end[1] - start[1]) / length * half, (start[0] - end[0]) / length * half
            outline = (
                (start[0] + x, start[1] + y),
                (end[0] + x, end[1] + y),
                (end[0] - x, end[1] - y),
                (start[0] - x, start[1] - y),
            )
            yield Polyline(outline, closed=True, fill=Fill.PAPER, part=line.name, title=words)
        middle = ((start[0] + end[0]) / 2.0, (start[1] + end[1]) / 2.0)
        yield Leader(middle, words, to=(8.0, 8.0))


def _tapes(found: Adjustment, view: View) -> Iterator[Item]:
    """Every tape; those that may be wrong dashed and loud."""
    places = {mark.name: _on(view, mark.at) for mark in found.marks}
    wrong = {name for suspicion in found.suspicions for name in suspicion.likely}
    for one in found.sights:
        sight = one.sight
        if not isinstance(sight, Distance):
            continue
        ends = (places[sight.hook], places[sight.to])
        bad = sight.about in wrong
        yield Polyline(
            ends, line=Stroke.HIDDEN if bad else Stroke.GRID,
            tone=Tone.ACCENT if bad else Tone.QUIET, part="tape", title=sight.about,
        )  # fmt: skip


def _marks(found: Adjustment, view: View) -> Iterator[Item]:
    doubtful = {suspicion.mark for suspicion in found.suspicions}
    doubtful |= {two.name for two in found.two_places}
    for mark in found.marks:
        at = _on(view, mark.at)
        items: list[Item] = [Cross(at, mark.name, mark.held)]
        if not mark.held:
            items.insert(0, _ellipse(mark, at, view))
        if mark.name in doubtful:
            items.append(Ring(at))
        yield Group(tuple(items), part=f"mark-{mark.name}", title=mark.name)
        yield Leader(at, mark.name, to=(2.5, 2.0), end="none")


def _ellipse(mark: Placed, at: XY, view: View) -> Item:
    """The 95 % ellipse on this view, larger than life."""
    to_paper = np.array([[0.0, 1.0, 0.0], [-1.0, 0.0, 0.0]])
    if view == "side":
        to_paper = np.array([[1.0, 0.0, 0.0], [0.0, 0.0, 1.0]])
    long, short, turn = (
        _one(value) for value in ellipse(to_paper @ mark.covariance @ to_paper.T, PROBABILITY)
    )
    angles = [2.0 * pi * i / SIDES for i in range(SIDES)]
    places = tuple(
        _turned(at, LARGER * long * cos(a), LARGER * short * sin(a), turn) for a in angles
    )
    return Polyline(places, closed=True, line=Stroke.THIN, tone=Tone.ACCENT, part="ellipse")


def _turned(at: XY, along: float, across: float, turn: float) -> XY:
    return (
        at[0] + along * cos(turn) - across * sin(turn),
        at[1] + along * sin(turn) + across * cos(turn),
    )


def _axes(found: Adjustment, view: View) -> Iterator[Item]:
    """Which way is which, below everything on the left."""
    places = [_on(view, mark.at) for mark in found.marks]
    if not places:
        return
    corner = (min(x for x, _ in places) - 60.0, min(y for _, y in places) - 60.0)
    if view == "plan":
        yield Way(corner, (1.0, 0.0), "y, right")
        yield Way(corner, (0.0, -1.0), "x, rearward")
    else:
        yield Way(corner, (1.0, 0.0), "x, rearward", drop=ARROW)
        yield Way(corner, (0.0, 1.0), "z, up", drop=ARROW)


def _one(value: Num) -> float:
    return float(value)
