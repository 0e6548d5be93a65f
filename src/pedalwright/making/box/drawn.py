"""A piece of the box at full size: cut, bend, drill and mark, each a group of its own."""

from collections.abc import Iterator
from itertools import groupby
from math import pi

from pedalwright.core.lengths import Written, millimetres
from pedalwright.drawing import (
    XY,
    Box,
    CentreCross,
    Circle,
    Drawing,
    Group,
    Item,
    Leader,
    Polyline,
    Text,
    Tone,
)
from pedalwright.drawing import Line as LineKind
from pedalwright.making.bending.drawn import BEND, CUT, DRILL, MARK, bend_marks, bend_shapes
from pedalwright.making.box.parts import Piece
from pedalwright.making.profiles import Bore
from pedalwright.panels.plane import between

#: Letters beside holes, mm on paper; from note to note.
LETTERS, LINE = 1.8, 6.0


def piece_drawing(piece: Piece, written: Written = millimetres, *, brief: bool = False) -> Drawing:
    """Seen from its shown side, the top of the sheet as the template says.

    A `brief` one is for a card, where it is small: bends by their number on the bend card, rows
    by their first hole.
    """
    pattern, profile = piece.pattern, piece.profile
    what = "drill template" if piece.there else "flat piece" if pattern.bends else "piece"
    return Drawing(
        name=piece.name.replace(" ", "-").replace(",", ""),
        title=f"{_said(piece.name)}: {what}",
        description=(
            f"Outline with {len(profile.bores)} holes and {len(pattern.bends)} bends, {piece.seen}."
        ),
        shapes=(
            Group(tuple(_outlines(piece)), part=CUT, title="cut"),
            Group(tuple(bend_shapes(pattern)), part=BEND, title="bend"),
            Group(tuple(_holes(piece, brief=brief)), part=DRILL, title="drill"),
            Group(tuple(_marks(piece, written, brief=brief)), part=MARK, title="mark"),
        ),
    )


def _said(name: str) -> str:
    return name.replace("_", " ").capitalize()


def _outlines(piece: Piece) -> Iterator[Item]:
    """What is sawn; a wall's own edge is there already, so it is only thin."""
    line = LineKind.THIN if piece.there else LineKind.VISIBLE
    yield Polyline(piece.pattern.outline, closed=True, line=line)
    for scribed in piece.profile.scribed:
        if scribed.cut:
            yield Polyline(scribed.outline, closed=True, title=scribed.name)


def _holes(piece: Piece, *, brief: bool) -> Iterator[Item]:
    for bore in piece.profile.bores:
        title = f"{bore.name} Ø{round(bore.diameter, 2):g} {bore.use}".strip()
        yield Circle(bore.centre, bore.diameter / 2, part=bore.name, title=title)
        if not brief:
            yield CentreCross(bore.centre, bore.diameter / 2)


def _marks(piece: Piece, written: Written, *, brief: bool) -> Iterator[Item]:
    if brief:
        yield from _numbers(piece)
    else:
        yield from bend_marks(piece.pattern)
    named: set[str] = set()
    for scribed in piece.profile.scribed:
        if not scribed.cut:
            yield Polyline(scribed.outline, closed=True, line=LineKind.HIDDEN, tone=Tone.QUIET)
        if scribed.name not in named:
            yield _name_of(scribed.name, scribed.outline)
        named.add(scribed.name)
    yield from _rows(piece, written, brief=brief)
    for mark in piece.profile.marks:
        yield CentreCross(mark.at, 4.0, part=mark.name)
        yield Text(mark.at, _lower(mark.name), height=LETTERS, stand="under")


def _numbers(piece: Piece) -> Iterator[Item]:
    """The bends in the order in which they are bent."""
    for step in piece.steps:
        at = between(*step.bend.middle, 0.75)
        way = "up" if step.bend.up else "down"
        (ax, ay), (bx, by) = step.bend.middle
        upright = abs(by - ay) > abs(bx - ax)
        angle = pi / 2 if upright else 0.0
        yield Text(at, f"{step.number} {way}", height=LETTERS, angle=angle)


def _name_of(name: str, outline: tuple[XY, ...]) -> Text:
    """Within the outline, along its lower edge."""
    box = Box.around(outline)
    assert box is not None, "an outline has places"
    at = (box.left + box.width / 2, box.bottom + 2.0)
    return Text(at, _lower(name), height=LETTERS, tone=Tone.QUIET)


def _lower(name: str) -> str:
    return name.replace("_", " ")


def _rows(piece: Piece, written: Written, *, brief: bool) -> Iterator[Item]:
    """Each hole has its number; the whole row is told once, beside its first hole.

    Notes go out to the side that is nearer, the lower ones first, none on another's height.
    """
    box = Box.around(piece.pattern.outline)
    assert box is not None, "an outline has places"
    rows = [
        list(row)
        for _, row in groupby(piece.profile.bores, key=lambda bore: bore.name.partition(".")[0])
    ]
    if not brief:
        yield from (text for row in rows if len(row) > 1 for text in _numbered(row))
    for left in (True, False):
        own = [row for row in rows if (row[0].centre[0] < box.left + box.width / 2) is left]
        for level, row in enumerate(sorted(own, key=lambda row: -row[0].centre[1])):
            out = -12.0 if left is brief else 12.0
            words = _row_words(row, written, brief=brief)
            yield Leader(_rim(row[0]), words, to=(out, 9.0 - LINE * level))


def _numbered(row: list[Bore]) -> Iterator[Text]:
    for bore in row:
        beside = bore.centre[0] + bore.diameter / 2 + 0.6, bore.centre[1] + 0.6
        yield Text(beside, bore.name.partition(".")[2], height=LETTERS, align="start")


def _row_words(row: list[Bore], written: Written, *, brief: bool) -> str:
    first = row[0]
    mark, many = first.name.partition(".")[0], f"{len(row)} × " if len(row) > 1 else ""
    use = "" if brief else first.use.partition(",")[0]
    return f"{mark}: {many}Ø{written(first.diameter, 2)} {use}".strip()


def _rim(bore: Bore) -> XY:
    return bore.centre[0], bore.centre[1] + bore.diameter / 2
