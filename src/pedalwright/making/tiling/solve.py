"""Lay sheets over a drawing: as few as do, none that would be empty, crosses where two meet."""

from collections.abc import Iterable, Iterator
from itertools import pairwise
from math import pi
from string import ascii_uppercase

from pedalwright.drawing import XY, Arc, Box, Circle, Drawing, Group, Polyline, Text, polar
from pedalwright.drawing.shapes import Item, extent
from pedalwright.making.tiling.formulas import sheets_along, stretch
from pedalwright.making.tiling.parts import (
    BAR,
    BELOW,
    LEFT,
    MARGIN,
    OVERLAP,
    Cross,
    Paper,
    Printer,
    Tile,
    Tiling,
)

_TRUE = Printer()


def tiled(drawing: Drawing, paper: Paper, printer: Printer = _TRUE) -> Tiling:
    """The sheets of a drawing at full size, upright or lying, whichever takes fewer."""
    layout = drawing.laid_out()
    upright = _laid(layout.shapes, layout.window, paper, printer, landscape=False)
    lying = _laid(layout.shapes, layout.window, paper, printer, landscape=True)
    return lying if len(lying.tiles) < len(upright.tiles) else upright


def _laid(
    shapes: Iterable[Item], window: Box, paper: Paper, printer: Printer, *, landscape: bool
) -> Tiling:
    short, long = float(stretch(BAR, printer.bar_x)), float(stretch(BAR, printer.bar_y))
    stretch_x, stretch_y = (long, short) if landscape else (short, long)
    paper_x, paper_y = (paper.long, paper.short) if landscape else (paper.short, paper.long)
    wide = (paper_x - 2 * MARGIN - LEFT) / stretch_x
    high = (paper_y - 2 * MARGIN - BELOW) / stretch_y
    columns = int(sheets_along(window.width, wide, OVERLAP))
    rows = int(sheets_along(window.height, high, OVERLAP))
    spare_x = wide + (columns - 1) * (wide - OVERLAP) - window.width
    spare_y = high + (rows - 1) * (high - OVERLAP) - window.height
    left, top = window.left - spare_x / 2, window.top + spare_y / 2
    ink = list(_ink(shapes))
    windows = {
        (row, column): _window(left, top, wide, high, row, column)
        for row in range(rows)
        for column in range(columns)
    }
    shown = {place for place, box in windows.items() if any(_meets(box, line) for line in ink)}
    tiles = tuple(
        Tile(
            name=f"{ascii_uppercase[row]}{column + 1}",
            row=row,
            column=column,
            window=windows[row, column],
            crosses=tuple(_crosses(windows, shown, row, column)),
        )
        for row, column in sorted(shown)
    )
    return Tiling(
        paper=paper,
        landscape=landscape,
        rows=rows,
        columns=columns,
        tiles=tiles,
        stretch_x=stretch_x,
        stretch_y=stretch_y,
    )


def _window(left: float, top: float, wide: float, high: float, row: int, column: int) -> Box:
    x, y = left + column * (wide - OVERLAP), top - row * (high - OVERLAP)
    return Box(x, y - high, x + wide, y)


def _crosses(
    windows: dict[tuple[int, int], Box], shown: set[tuple[int, int]], row: int, column: int
) -> Iterator[Cross]:
    """Two in each overlap with a sheet that is there, a quarter from its ends."""
    here = windows[row, column]
    for other_row, other_column in (
        (row, column - 1),
        (row, column + 1),
        (row - 1, column),
        (row + 1, column),
    ):
        if (other_row, other_column) not in shown:
            continue
        other = windows[other_row, other_column]
        both = Box(
            max(here.left, other.left),
            max(here.bottom, other.bottom),
            min(here.right, other.right),
            min(here.top, other.top),
        )
        first = min((row, column), (other_row, other_column))
        way = "r" if other_row == row else "b"
        for share, which in ((0.25, 1), (0.75, 2)):
            level = other_row != row
            at = (
                both.left + (share if level else 0.5) * both.width,
                both.bottom + (0.5 if level else share) * both.height,
            )
            yield Cross(name=f"{ascii_uppercase[first[0]]}{first[1] + 1}{way}{which}", at=at)


def _ink(shapes: Iterable[Item]) -> Iterator[tuple[XY, XY]]:
    """Everything drawn as straight pieces; letters as their box."""
    for shape in shapes:
        match shape:
            case Group():
                yield from _ink(shape.shapes)
            case Polyline():
                points = (*shape.points, shape.points[0]) if shape.closed else shape.points
                yield from pairwise(points)
            case Circle():
                yield from _round(shape.centre, shape.radius, 0.0, 2 * pi)
            case Arc():
                yield from _round(shape.centre, shape.radius, shape.start, shape.end)
            case Text():
                if (box := extent([shape], 1.0)) is not None:
                    yield from pairwise((*box.corners, box.corners[0]))
            case _:
                pass


def _round(centre: XY, radius: float, start: float, end: float) -> Iterator[tuple[XY, XY]]:
    turn = (end - start) / 24
    yield from pairwise(polar(centre, radius, start + i * turn) for i in range(25))


def _meets(box: Box, line: tuple[XY, XY]) -> bool:
    """Whether a straight piece runs through a box: cut it at each side and see what is left."""
    (ax, ay), (bx, by) = line
    first, last = 0.0, 1.0
    for step, room in (
        (ax - bx, ax - box.left),
        (bx - ax, box.right - ax),
        (ay - by, ay - box.bottom),
        (by - ay, box.top - ay),
    ):
        if step == 0.0:
            if room < 0.0:
                return False
        elif step < 0.0:
            first = max(first, room / step)
        else:
            last = min(last, room / step)
    return first <= last
