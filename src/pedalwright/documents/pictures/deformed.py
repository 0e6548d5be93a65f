"""How a box moves under one push: its shape drawn larger than life, shaded by how much.

The triangles are painted from the farthest to the nearest, which hides what lies behind. Long
dashes show where the sheets were; dots are fasteners, each with a bar as long as its force; rings
mark the places that matter most, with their figures.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import isfinite
from typing import Literal

import numpy as np

from pedalwright.assess.full import FullTier
from pedalwright.core.points import Point
from pedalwright.core.units import Array
from pedalwright.design import Design
from pedalwright.documents.outside import Units
from pedalwright.documents.pictures.oblique import box_view
from pedalwright.documents.pictures.views import View, words
from pedalwright.drawing import (
    SHADES,
    XY,
    Box,
    Circle,
    Drawing,
    Fill,
    Item,
    Leader,
    Line,
    Polyline,
    Text,
    Tone,
)
from pedalwright.panels.made import Made
from pedalwright.structure.box.full import Full
from pedalwright.structure.box.shape import Shape, shape

By = Literal["moves", "stress"]
#: How large the largest move is drawn, as a share of the box, and the factors it is rounded to.
SHOWN, FACTORS = 0.07, (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000)
#: The first case of a pedal, its working push, by its moves; the second, a hard one, by its stress.
SHADED: tuple[By, ...] = ("moves", "stress")
#: Shares of what a sheet yields at, at which a shade ends; the last goes on.
STEPS = (0.25, 0.5, 0.75, 1.0)
#: Triangles are drawn a little larger than they are, so that no gap shows between two.
OVERLAP = 1.04
#: A sheet that lies on another is nearer by this when they are painted, mm.
LAYER = 15.0
#: The longest bar of a fastener, and a dot, mm on paper; so many places are ringed.
BAR, DOT, RINGS = 11.0, 0.7, 3
#: Widest and highest, mm of paper.
ROOM = (172.0, 215.0)


@dataclass(frozen=True, slots=True)
class FastenerBar:
    """A dot with an upright bar."""

    at: XY
    #: Of the longest.
    share: float
    title: str

    def drawn(self, scale: float) -> tuple[Item, ...]:
        """The bar upwards from the dot."""
        top = (self.at[0], self.at[1] + BAR * self.share / scale)
        return (
            Polyline((self.at, top), tone=Tone.ACCENT, part="fastener-bar", title=self.title),
            Circle(self.at, DOT / scale, fill=Fill.SOLID, line=Line.NONE, part="fastener"),
        )


@dataclass(frozen=True, slots=True)
class Legend:
    """Five shades with what they stand for, the first at the top."""

    at: XY
    title: str
    names: tuple[str, ...]

    def drawn(self, scale: float) -> tuple[Item, ...]:
        """Boxes of 5 by 3 mm of paper, 4.4 apart."""
        x, y = self.at
        shapes: list[Item] = [Text((x, y), self.title, align="start")]
        for number, (fill, name) in enumerate(zip(SHADES, self.names, strict=True), 1):
            top = y + (1.4 - 4.4 * number) / scale
            box = Box(x, top - 3.0 / scale, x + 5.0 / scale, top).corners
            shapes.append(Polyline(box, closed=True, fill=fill, line=Line.THIN, part="legend"))
            place = (x + 7.0 / scale, top - 1.5 / scale)
            shapes.append(Text(place, name, align="start", stand="across", part="legend"))
        return tuple(shapes)


def deformed_pictures(design: Design, tier: FullTier | None, units: Units) -> list[Drawing]:
    """Of each pedal: how far things move at its working push, how hard they work at a hard one."""
    if tier is None or tier.box is None:
        return []
    found: list[Drawing] = []
    for pedal in dict.fromkeys(case.pedal for case in tier.box.cases):
        numbers = [i for i, case in enumerate(tier.box.cases) if case.pedal == pedal]
        found += [
            deformed(design, tier.box, number, by, units)
            for number, by in zip(numbers, SHADED, strict=False)
        ]
    return found


def deformed(design: Design, full: Full, case: int, by: By, units: Units) -> Drawing:
    """One case of a full answer."""
    own = shape(full, case)
    view = box_view(design)
    factor = _factor(own)
    names = {"moves": "how far it moves", "stress": "how hard it is worked"}
    push = units.said(float(np.max(full.cases[case].push)), "N")
    pedal = full.cases[case].pedal
    drawing = Drawing(
        name=f"box-{pedal}-{by}",
        title=f"{pedal.capitalize()}, {push}: {names[by]}, moves drawn {factor} times as large",
        description=(
            f"The box under {push} on the {pedal} pad, its moves drawn {factor} times as large as "
            "they are; dashes show it without the push."
        ),
        shapes=tuple(_Painted(own, full, view, factor, by, units).shapes()),
    )
    return drawing.fitted(*ROOM)


def _factor(own: Shape) -> int:
    """The largest usual factor at which the shape stays a shape."""
    size = float(np.ptp(own.corners.reshape(-1, 3), axis=0).max())
    wanted = SHOWN * size / own.most if own.most > 0.0 else 1.0
    return max((one for one in FACTORS if one <= wanted), default=1)


@dataclass(frozen=True, slots=True)
class _Painted:
    own: Shape
    full: Full
    view: View
    factor: int
    by: By
    units: Units

    def shapes(self) -> Iterator[Item]:
        """From the back to the front, then what is written."""
        places = self._on_paper(self.own.corners + self.factor * self.own.moves)
        order = self._order()
        steps = self._steps()
        for number in order:
            corners = places[number]
            middle = corners.mean(axis=0)
            grown = middle + OVERLAP * (corners - middle)
            yield Polyline(
                tuple((float(x), float(y)) for x, y in grown), closed=True, line=Line.NONE,
                fill=SHADES[steps[number]], part="triangle",
            )  # fmt: skip
            for side in np.flatnonzero(self.own.edges[number]):
                ends = corners[side], corners[(side + 1) % 3]
                yield Polyline(
                    tuple((float(x), float(y)) for x, y in ends), line=Line.THIN, part="edge"
                )
        yield from self._rims()
        yield from self._bars()
        yield from self._fasteners()
        yield from self._rings()
        around = Box.around((float(x), float(y)) for x, y in places.reshape(-1, 2))
        assert around is not None, "a box without a triangle"
        title, names = self._legend()
        yield Legend((around.left, around.bottom - 45.0), title, names)

    def _said(self, value: float, unit: str) -> str:
        """To three figures: more of them no sheet keeps to."""
        return self.units.said(float(f"{value:.3g}"), unit)

    def _on_paper(self, places: Array) -> Array:
        flat: Array = places @ np.stack([_array(self.view.right), _array(self.view.up)], axis=1)
        return flat

    def _order(self) -> Sequence[int]:
        """Triangles from the farthest to the nearest, sheets that lie on others before them."""
        towards = _array(self.view.towards)
        depth = self.own.corners.mean(axis=1) @ towards
        nearer = dict.fromkeys(self.own.parts, 0.0)
        for _ in self.own.on:  # a layer may lie on a layer
            for layer, base in self.own.on:
                if layer in nearer and base in nearer:
                    side = _side(layer, base, self.full.made, towards)
                    nearer[layer] = nearer[base] + LAYER * side
        bias = np.array([nearer[part] for part in self.own.parts])
        return [int(number) for number in np.argsort(depth + bias[self.own.part])]

    def _steps(self) -> Sequence[int]:
        if self.by == "stress":
            return [int(step) for step in np.searchsorted(STEPS, np.nan_to_num(self.own.used))]
        top = self._top()
        share = np.minimum(4, (self.own.moved / top * 5).astype(int)) if top else self.own.moved * 0
        return [int(step) for step in share]

    def _top(self) -> float:
        return float(self.own.moved.max())

    def _legend(self) -> tuple[str, tuple[str, ...]]:
        if self.by == "stress":
            ends = [f"{share:.0%}" for share in STEPS]
            names = (f"to {ends[0]}", *(f"{a} to {b}" for a, b in pairwise(ends)))
            return "stress by linear sums, of what the sheet yields at", (
                *names,
                "more than it yields at",
            )
        top = self._top()
        said = [self._said(top * step / 5, "mm") for step in range(6)]
        return "moves by", tuple(f"{a} to {b}" for a, b in pairwise(said))

    def _rims(self) -> Iterator[Item]:
        """Sheets and tubes as they are without the push."""
        for panel in self.full.made.panels:
            for flat in panel.flats():
                outline = tuple(self.view(flat.plane.point(place)) for place in flat.outline)
                yield Polyline(
                    outline, closed=True, line=Line.HIDDEN, tone=Tone.QUIET, part="as-made",
                    title=f"{words(panel.name)}, without the push",
                )  # fmt: skip
        for tube in self.full.made.tubes:
            ends = (self.view(tube.start), self.view(tube.end))
            yield Polyline(
                ends, line=Line.HIDDEN, tone=Tone.QUIET, part="as-made", title=words(tube.name)
            )

    def _bars(self) -> Iterator[Item]:
        for ends in self._on_paper(self.own.bars + self.factor * self.own.bar_moves):
            (ax, ay), (bx, by) = ends
            yield Polyline(
                ((float(ax), float(ay)), (float(bx), float(by))), tone=Tone.ACCENT, part="bar"
            )

    def _moved(self, at: Array, moves: Array) -> XY:
        x, y = self._on_paper(at + self.factor * moves)
        return float(x), float(y)

    def _fasteners(self) -> Iterator[Item]:
        ranked = sorted(self.own.fasteners, key=lambda one: -one.force)
        most = ranked[0].force if ranked else 0.0
        for one in ranked:
            share = one.force / most if most > 0.0 else 0.0
            said = self._said(one.force, "N")
            yield FastenerBar(self._moved(one.at, one.moves), share, f"{words(one.name)}: {said}")
        for one in ranked[:1]:
            said = f"{self._said(one.force, 'N')} on one fastener"
            yield Leader(self._moved(one.at, one.moves), said, to=(9.0, 6.0), end="none")

    def _rings(self) -> Iterator[Item]:
        """The worst places of sheet, or those that move farthest, each part once."""
        if self.by == "stress":
            for one in self.own.worst[:RINGS]:
                said = f"{words(one.part)}\n{self._said(one.stress, 'MPa')}"
                if isfinite(one.yields):
                    said += f" of {self._said(one.yields, 'MPa')}"
                yield from _ring(self._moved(one.at, one.moves), said)
            return
        middles, moves = self.own.corners.mean(axis=1), self.own.moves.mean(axis=1)
        parts = {
            part: np.flatnonzero(self.own.part == number)
            for number, part in enumerate(self.own.parts)
        }
        far = {
            part: int(own[np.argmax(self.own.moved[own])])
            for part, own in parts.items()
            if len(own)
        }
        ranked = sorted(far.items(), key=lambda one: -float(self.own.moved[one[1]]))
        for part, number in ranked[:RINGS]:
            said = f"{words(part)}\n{self._said(float(self.own.moved[number]), 'mm')}"
            yield from _ring(self._moved(middles[number], moves[number]), said)


@dataclass(frozen=True, slots=True)
class Ring:
    """A ring of 2 mm on paper."""

    at: XY

    def drawn(self, scale: float) -> tuple[Item, ...]:
        """A circle with a rim of paper round it."""
        return (Circle(self.at, 2.0 / scale, part="ring"),)


def _ring(at: XY, said: str) -> Iterator[Item]:
    yield Ring(at)
    yield Leader(at, said, to=(10.0, 10.0), end="none")


def _side(layer: str, base: str, made: Made, towards: Array) -> float:
    """1 where a layer lies on the side of its base that is seen, else -1."""
    one, other = made.panel(layer), made.panel(base)
    if one is None or other is None:
        return 0.0
    plane = other.lying
    away = float(plane.height(one.lying.origin))
    for flat in one.flats():  # the face that lies on it
        if abs(float(flat.plane.normal.dot(plane.normal))) > 0.99:
            away = float(plane.height(flat.plane.origin))
            break
    return float(np.sign(away * (_array(plane.normal) @ towards)))


def _array(point: Point) -> Array:
    return np.array([float(point.x), float(point.y), float(point.z)])
