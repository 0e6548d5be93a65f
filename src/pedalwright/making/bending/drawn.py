"""A flat piece as shapes: what to cut, bend, drill and mark, each a group of its own."""

from collections.abc import Iterator
from math import atan2, degrees, pi

from pedalwright.drawing import (
    XY,
    Box,
    CentreCross,
    Circle,
    Drawing,
    Group,
    Item,
    Line,
    Polyline,
    Text,
    Tone,
    polar,
)
from pedalwright.drawing.dimension import arrow
from pedalwright.making.bending.parts import FlatBend, FlatHole, FlatPattern
from pedalwright.panels.plane import (
    apart,
    direction,
    from_outline,
    from_segment,
    inside,
)

#: Groups that a saw, a folder, a drill and a scriber follow; a DXF file has them as layers.
CUT, BEND, DRILL, MARK = "cut", "bend", "drill", "mark"

#: Half the length of the arrow along the grain, mm.
ARROW = 20.0


def flat_drawing(pattern: FlatPattern) -> Drawing:
    """The flat piece at full size, seen from its shown side."""
    return Drawing(
        name=pattern.name.replace(" ", "-"),
        title=f"{pattern.name}, flat",
        description=(
            f"Flat piece with {len(pattern.bends)} bends and {len(pattern.holes)} holes, "
            f"seen from the shown side."
        ),
        shapes=flat_shapes(pattern),
    )


def flat_shapes(pattern: FlatPattern) -> tuple[Item, ...]:
    """Outline, bends, holes and marks."""
    return (
        Group((Polyline(pattern.outline, closed=True),), part=CUT, title="cut"),
        Group(tuple(bend_shapes(pattern)), part=BEND, title="bend"),
        Group(tuple(_holes(pattern)), part=DRILL, title="drill"),
        Group(tuple(_marks(pattern)), part=MARK, title="mark"),
    )


def bend_words(bend: FlatBend) -> str:
    """What is written along a bend, such as `B1 up 90° R2.5`."""
    way = "up" if bend.up else "down"
    turned = round(degrees(abs(bend.angle)), 1)
    return f"{bend.name} {way} {turned:g}° R{round(bend.radius, 1):g}"


def hole_words(hole: FlatHole) -> str:
    """What is written beside a hole, such as `H1 Ø5`."""
    return f"{hole.name} Ø{round(hole.diameter, 2):g}"


def bend_shapes(pattern: FlatPattern) -> Iterator[Item]:
    """Up is dash and dot, down is dashed; thin lines where the bend begins and ends."""
    for bend in pattern.bends:
        line = Line.CENTRE if bend.up else Line.HIDDEN
        yield Polyline(bend.middle, line=line, part=bend.name, title=bend_words(bend))
        for edge in (bend.near, bend.far):
            yield Polyline(edge, line=Line.THIN, tone=Tone.QUIET, part=bend.name)


def _holes(pattern: FlatPattern) -> Iterator[Item]:
    for hole in pattern.holes:
        yield Circle(hole.centre, hole.diameter / 2, part=hole.name, title=hole_words(hole))
        yield CentreCross(hole.centre, hole.diameter / 2)


def _marks(pattern: FlatPattern) -> Iterator[Item]:
    for hole in pattern.holes:
        beside = hole.centre[0] + hole.diameter / 2 + 1.0, hole.centre[1] + hole.diameter / 2
        yield Text(beside, hole_words(hole), align="start")
    yield from bend_marks(pattern)


def bend_marks(pattern: FlatPattern) -> Iterator[Item]:
    """What is written along the bends, and which way the sheet is rolled, where that matters."""
    for bend in pattern.bends:
        yield _along(bend)
    if pattern.sheet.grain is not None:
        yield from _grain(_free_place(pattern, pattern.sheet.grain), pattern.sheet.grain)


def _along(bend: FlatBend) -> Text:
    """The words stand just above the bend, well along it, clear of its middle."""
    (ax, ay), (bx, by) = bend.middle
    c, s = direction(*bend.middle)
    if c < -1e-9 or (abs(c) < 1e-9 and s < 0.0):
        (ax, ay), (bx, by), c, s = (bx, by), (ax, ay), -c, -s
    share = 0.3 * apart((ax, ay), (bx, by))
    lift = bend.allowance / 2 + 0.8
    at = ax + c * share - s * lift, ay + s * share + c * lift
    return Text(at, bend_words(bend), angle=atan2(s, c))


def _free_place(pattern: FlatPattern, angle: float) -> XY:
    """Of 25 places spread over the first face, the one where an arrow is farthest from all else."""
    face = pattern.faces[0].outline
    box = Box.around(face)
    assert box is not None, "a face has places"
    shares = (0.2, 0.35, 0.5, 0.65, 0.8)
    places = [
        (box.left + i * box.width, box.bottom + j * box.height) for i in shares for j in shares
    ]

    def room(place: XY) -> float:
        ends = polar(place, ARROW, angle + pi), polar(place, ARROW, angle)
        if not all(inside(end, face) for end in ends):
            return -1.0
        clear = [from_segment(hole.centre, *ends) - hole.diameter / 2 for hole in pattern.holes]
        return min([*clear, *(from_outline(end, face) for end in ends)])

    return max(places, key=room)


def _grain(middle: XY, angle: float) -> Iterator[Item]:
    ends = polar(middle, ARROW, angle + pi), polar(middle, ARROW, angle)
    way = ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]
    yield Polyline(ends, line=Line.THIN)
    yield arrow(ends[1], way, 1.0)
    yield arrow(ends[0], (-way[0], -way[1]), 1.0)
    yield Text(polar(middle, 2.0, angle + pi / 2), "rolling direction", angle=angle)
