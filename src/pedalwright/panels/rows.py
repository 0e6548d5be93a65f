"""Rows of fasteners: evenly round a rectangle or an oval, along a line, over a strip."""

from math import ceil, pi

from pedalwright.core.units import mm
from pedalwright.drawing import XY, polar
from pedalwright.panels.parts import Spaced
from pedalwright.panels.plane import apart, between, edges


def number(value: mm) -> float:
    """One number of a part; a part is made once, so it is never a batch here."""
    return float(value)


def along(start: XY, end: XY, joining: Spaced) -> tuple[XY, ...]:
    """From end to end of a leg, the outer ones as far from its ends as the row is from its edge."""
    inset, length = number(joining.edge), apart(start, end)
    inset = min(inset, length / 2)
    free = length - 2 * inset
    gaps = max(1, ceil(free / number(joining.pitch) - 1e-9)) if free > 1e-6 else 0
    steps = [inset + free * i / gaps for i in range(gaps + 1)] if gaps else [length / 2]
    return tuple(between(start, end, step / length) for step in steps)


def around(corners: tuple[XY, ...], joining: Spaced) -> tuple[XY, ...]:
    """Round an outline, begun at its first corner: as many as its length over the pitch, up."""
    sides = edges(corners)
    lengths = [apart(*side) for side in sides]
    whole = sum(lengths)
    count = ceil(whole / number(joining.pitch) - 1e-9)
    return tuple(_on(sides, lengths, whole * i / count) for i in range(count))


def rectangle(middle: XY, width: float, height: float) -> tuple[XY, ...]:
    """Its corners, anticlockwise from the lower left."""
    x, y, a, b = *middle, width / 2, height / 2
    return ((x - a, y - b), (x + a, y - b), (x + a, y + b), (x - a, y + b))


def oval(middle: XY, width: float, height: float, steps: int = 12) -> tuple[XY, ...]:
    """Round ends on the longer way, straight between; anticlockwise."""
    radius = min(width, height) / 2
    reach = max(width, height) / 2 - radius
    turn = 0.0 if width >= height else pi / 2
    ends = polar(middle, reach, turn), polar(middle, reach, turn + pi)
    found: list[XY] = []
    for end, begin in zip(ends, (turn - pi / 2, turn + pi / 2), strict=True):
        found += [polar(end, radius, begin + pi * i / steps) for i in range(steps + 1)]
    kept = [b for a, b in zip([found[-1], *found], found, strict=False) if apart(a, b) > 1e-6]
    return tuple(kept)


def _on(sides: list[tuple[XY, XY]], lengths: list[float], reach: float) -> XY:
    for side, length in zip(sides, lengths, strict=True):
        if reach <= length or side is sides[-1]:
            return between(*side, min(1.0, reach / length))
        reach -= length
    return sides[-1][1]
