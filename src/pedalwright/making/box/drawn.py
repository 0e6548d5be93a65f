"""A piece of the box at full size: cut, bend, drill and mark, each a group of its own."""

from collections.abc import Iterator
from itertools import groupby

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
    Line,
    Polyline,
    Text,
    Tone,
)
from pedalwright.making.bending.drawn import BEND, CUT, DRILL, MARK, bend_marks, bend_shapes
from pedalwright.making.box.parts import Piece
from pedalwright.making.profiles import Bore

#: Holes wider than this have a centre cross that reaches the rim only, mm.
SMALL_LETTERS = 1.8


def piece_drawing(piece: Piece, written: Written = millimetres) -> Drawing:
    """Seen from its shown side, the top of the sheet as the template says."""
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
            Group(tuple(_holes(piece)), part=DRILL, title="drill"),
            Group(tuple(_marks(piece, written)), part=MARK, title="mark"),
        ),
    )


def _said(name: str) -> str:
    return name.replace("_", " ").capitalize()


def _outlines(piece: Piece) -> Iterator[Item]:
    """What is sawn; a wall's own edge is there already, so it is only thin."""
    line = Line.THIN if piece.there else Line.VISIBLE
    yield Polyline(piece.pattern.outline, closed=True, line=line)
    for scribed in piece.profile.scribed:
        if scribed.cut:
            yield Polyline(scribed.outline, closed=True, title=scribed.name)


def _holes(piece: Piece) -> Iterator[Item]:
    for bore in piece.profile.bores:
        yield Circle(bore.centre, bore.diameter / 2, part=bore.name, title=_hole_words(bore))
        yield CentreCross(bore.centre, bore.diameter / 2)


def _hole_words(bore: Bore) -> str:
    return f"{bore.name} Ø{round(bore.diameter, 2):g} {bore.use}".strip()


def _marks(piece: Piece, written: Written) -> Iterator[Item]:
    yield from bend_marks(piece.pattern)
    for scribed in piece.profile.scribed:
        if not scribed.cut:
            yield Polyline(scribed.outline, closed=True, line=Line.HIDDEN, tone=Tone.QUIET)
        yield _name_of(scribed.name, scribed.outline)
    for _, group in groupby(piece.profile.bores, key=lambda bore: bore.name.partition(".")[0]):
        yield from _row_words(piece, list(group), written)
    for mark in piece.profile.marks:
        yield CentreCross(mark.at, 4.0, part=mark.name)
        yield Text((mark.at[0], mark.at[1] - 6.0), mark.name, height=SMALL_LETTERS, stand="under")


def _name_of(name: str, outline: tuple[XY, ...]) -> Text:
    """Within the outline, along its lower edge."""
    box = Box.around(outline)
    assert box is not None, "an outline has places"
    at = (box.left + box.width / 2, box.bottom + 2.0)
    return Text(at, name.replace("_", " "), height=SMALL_LETTERS, tone=Tone.QUIET)


def _row_words(piece: Piece, row: list[Bore], written: Written) -> Iterator[Item]:
    """Each hole has its number; the whole row is told once, beside its first hole."""
    first = row[0]
    for bore in row:
        number = bore.name.partition(".")[2] or bore.name
        beside = bore.centre[0] + bore.diameter / 2 + 0.6, bore.centre[1] + 0.6
        if len(row) > 1:
            yield Text(beside, number, height=SMALL_LETTERS, align="start")
    size = f"Ø{written(first.diameter, 2)}"
    mark = first.name.partition(".")[0]
    words = f"{mark}: {len(row)} × {size} {first.use}" if len(row) > 1 else _one(first, size)
    yield Leader(_rim(first), words, to=_into(piece, first.centre), end="arrow")


def _one(bore: Bore, size: str) -> str:
    return f"{bore.name} {size}" if bore.name.startswith("R") else f"{bore.name} {size} {bore.use}"


def _rim(bore: Bore) -> XY:
    return bore.centre[0], bore.centre[1] + bore.diameter / 2


def _into(piece: Piece, at: XY) -> XY:
    """The note stands towards the middle of the piece, where there is metal to write on."""
    box = Box.around(piece.pattern.outline)
    assert box is not None, "an outline has places"
    right = at[0] < box.left + box.width / 2
    up = at[1] < box.bottom + box.height / 2
    return (9.0 if right else -9.0), (9.0 if up else -9.0)
