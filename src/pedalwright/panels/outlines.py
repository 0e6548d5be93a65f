"""Outlines round a few eyes, as a string is laid round discs."""

from math import ceil, pi

from pedalwright.drawing import XY, polar
from pedalwright.panels.plane import apart

#: An eye and the metal round its middle; a corner has none.
Eye = tuple[XY, float]
#: A round end is drawn with sides that span no more than this, rad.
STEP = pi / 12


def round_eyes(eyes: list[Eye]) -> tuple[XY, ...]:
    """The smallest outline without a hollow round all eyes, anticlockwise from the lowest left."""
    places = sorted({place for eye in eyes for place in _rim(*eye)})
    return (*_half(places), *_half(places[::-1]))


def _rim(centre: XY, radius: float) -> list[XY]:
    if not radius:
        return [centre]
    steps = ceil(2 * pi / STEP)
    return [polar(centre, radius, 2 * pi * i / steps) for i in range(steps)]


def _half(places: list[XY]) -> list[XY]:
    kept: list[XY] = []
    for place in places:
        while len(kept) > 1 and not _left(kept[-2], kept[-1], place):
            kept.pop()
        if not kept or apart(kept[-1], place) > 1e-6:
            kept.append(place)
    return kept[:-1]


def _left(a: XY, b: XY, c: XY) -> bool:
    """Whether the way bends to the left at b, by more than rounding."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 1e-9
