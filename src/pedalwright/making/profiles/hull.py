"""The outline round a few eyes: a string laid round discs, as arms, links and straps are drawn."""

from dataclasses import dataclass
from math import acos, atan2, cos, hypot, pi, sin, tan

from pedalwright.drawing import XY, polar
from pedalwright.making.profiles.parts import Corner

#: Directions nearer than this are one, rad; lengths, mm.
SAME = 1e-9


@dataclass(frozen=True, slots=True)
class Disc:
    """An eye or a rounded end."""

    centre: XY
    radius: float


def hull(discs: list[Disc]) -> tuple[Corner, ...]:
    """Anticlockwise round all discs: straights touching two of them, arcs of those outside.

    Discs within others do not show.
    """
    turns = sorted({round(turn % (2 * pi), 12) for turn in _changes(discs)})
    if not turns:
        return _round(max(discs, key=lambda disc: disc.radius))
    arcs: list[tuple[Disc, float, float]] = []
    for first, last in zip(turns, [*turns[1:], turns[0] + 2 * pi], strict=True):
        disc = _outermost(discs, (first + last) / 2)
        if arcs and arcs[-1][0] == disc:
            arcs[-1] = (disc, arcs[-1][1], last)
        else:
            arcs.append((disc, first, last))
    if len(arcs) > 1 and arcs[0][0] == arcs[-1][0]:
        disc, first, last = arcs.pop()
        arcs[0] = (disc, first - 2 * pi, arcs[0][2])
    if len(arcs) == 1:
        return _round(arcs[0][0])
    outline: list[Corner] = []
    for disc, first, last in arcs:
        start, end = polar(disc.centre, disc.radius, first), polar(disc.centre, disc.radius, last)
        if disc.radius > SAME and last - first > SAME:
            outline.append(Corner(at=start, bulge=tan((last - first) / 4)))
        outline.append(Corner(at=end))
    return tuple(outline)


def _changes(discs: list[Disc]) -> list[float]:
    """Directions in which two discs reach equally far: there the string changes over."""
    found: list[float] = []
    for i, one in enumerate(discs):
        for other in discs[i + 1 :]:
            apart = hypot(other.centre[0] - one.centre[0], other.centre[1] - one.centre[1])
            if apart > abs(one.radius - other.radius) + SAME:
                along = atan2(other.centre[1] - one.centre[1], other.centre[0] - one.centre[0])
                turn = acos((one.radius - other.radius) / apart)
                found += [along + turn, along - turn]
    return found


def _outermost(discs: list[Disc], angle: float) -> Disc:
    """The disc that reaches farthest in a direction."""
    return max(
        discs,
        key=lambda disc: disc.centre[0] * cos(angle) + disc.centre[1] * sin(angle) + disc.radius,
    )


def _round(disc: Disc) -> tuple[Corner, ...]:
    """A whole circle as two halves."""
    return tuple(
        Corner(at=polar(disc.centre, disc.radius, angle), bulge=1.0) for angle in (0.0, pi)
    )
