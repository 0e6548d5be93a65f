"""Cut lists as pictures: bars as strips, sheets from above, what is left hatched."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product
from math import pi

from pedalwright.drawing import Drawing, Hatch, Item, Line, Polyline, Text, Tone
from pedalwright.drawing.shapes import SMALL
from pedalwright.making.cutting.parts import BarPlan, CutBar, CutSheet, Placed, SheetPlan

#: A bar is drawn this high and the next one this much lower, as shares of the longest bar.
_HIGH, _PITCH = 0.03, 0.075
#: Lettering where there is little room, mm on paper.
TINY = 1.8


def bars_drawing(plan: BarPlan, name: str = "bars") -> Drawing:
    """Every bar, the squared end on the left."""
    longest = max((cut.bar.length for cut in plan.bars), default=1.0)
    return Drawing(
        name=name,
        title="Cutting the bars",
        description=f"{len(plan.bars)} bars with the pieces cut from each, saw cuts of "
        f"{plan.kerf:g} mm between them.",
        shapes=tuple(
            item
            for row, cut in enumerate(plan.bars)
            for item in _bar(cut, plan, -row * _PITCH * longest, _HIGH * longest)
        ),
    )


def _bar(cut: CutBar, plan: BarPlan, y: float, high: float) -> Iterator[Item]:
    bar = cut.bar
    kind = "buy" if bar.bought else "own"
    yield Text((0.0, y + 1.15 * high), f"{bar.name} {bar.length:g} ({kind})", align="start")
    at = plan.trim
    if plan.trim:
        yield Hatch(_box(0.0, y, plan.trim, high))
    for piece in cut.pieces:
        yield Polyline(_box(at, y, piece.length, high), closed=True, part=piece.name)
        length = f"{round(piece.length, 1):g}"
        words = (f"{piece.name} {length}", length)
        yield Label(at, y, piece.length, high, words)
        at += piece.length + plan.kerf
    if cut.left:
        yield Hatch(_box(bar.length - cut.left, y, cut.left, high))
        yield Text(
            (bar.length, y + 1.15 * high),
            f"left {round(cut.left, 1):g}",
            align="end",
            tone=Tone.QUIET,
        )
    yield Polyline(_box(0.0, y, bar.length, high), closed=True, line=Line.THIN)


def sheet_drawings(plan: SheetPlan, name: str = "sheet") -> tuple[Drawing, ...]:
    """Every sheet, rolled from left to right."""
    return tuple(
        Drawing(
            name=f"{name}-{number}",
            title=f"Sheet {number}: {sheet.stock.name}",
            description=f"{len(sheet.parts)} parts on a sheet of {sheet.stock.length:g} by "
            f"{sheet.stock.width:g} mm.",
            shapes=tuple(_sheet(sheet)),
        )
        for number, sheet in enumerate(plan.sheets, 1)
    )


def _sheet(sheet: CutSheet) -> Iterator[Item]:
    stock = sheet.stock
    yield Polyline(_box(0.0, 0.0, stock.length, stock.width), closed=True)
    kind = "buy" if stock.bought else "own"
    yield Text(
        (0.0, stock.width * 1.02),
        f"{stock.name} {stock.length:g} × {stock.width:g} ({kind}), rolled left to right",
        align="start",
    )
    for placed in sheet.parts:
        yield from _part(placed)


def _part(placed: Placed) -> Iterator[Item]:
    part = placed.part
    yield Polyline(
        _box(placed.x, placed.y, placed.along, placed.across),
        closed=True,
        line=Line.THIN,
        part=part.name,
    )
    size = f"{part.length:g} × {part.width:g}"
    yield Label(
        placed.x,
        placed.y,
        placed.along,
        placed.across,
        (f"{part.name}\n{size}", f"{part.name} {size}", part.name),
    )


@dataclass(frozen=True, slots=True)
class Label:
    """Words within a box: the first of several ways to say it that fits, level or upright."""

    x: float
    y: float
    along: float
    across: float
    words: tuple[str, ...]

    def drawn(self, scale: float) -> tuple[Item, ...]:
        """Lines about the middle; nothing where nothing fits."""
        for height, words, upright in product((SMALL, TINY), self.words, (False, True)):
            lines = self._lines(words.split("\n"), height, scale, upright=upright)
            wide = max(line.width for line in lines) + 1.0
            high = 1.6 * height * len(lines)
            room = (self.across, self.along) if upright else (self.along, self.across)
            if wide <= room[0] * scale and high <= room[1] * scale:
                return tuple(lines)
        return ()

    def _lines(self, words: list[str], height: float, scale: float, *, upright: bool) -> list[Text]:
        middle = self.x + self.along / 2, self.y + self.across / 2
        angle = pi / 2 if upright else 0.0
        lines: list[Text] = []
        for i, text in enumerate(words):
            down = (i - (len(words) - 1) / 2) * 1.6 * height / scale
            place = (middle[0] + down, middle[1]) if upright else (middle[0], middle[1] - down)
            lines.append(Text(place, text, height=height, stand="across", angle=angle))
        return lines


def _box(x: float, y: float, along: float, across: float) -> tuple[tuple[float, float], ...]:
    return ((x, y), (x + along, y), (x + along, y + across), (x, y + across))
