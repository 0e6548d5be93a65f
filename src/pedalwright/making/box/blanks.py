"""What the box's parts are cut from: rectangles by plate, ties by section."""

from collections.abc import Iterator, Mapping, Sequence

from pedalwright.core.units import Num
from pedalwright.drawing import Box
from pedalwright.making.box.parts import Piece
from pedalwright.making.car.bars import bar_section
from pedalwright.making.car.plates import Plate
from pedalwright.making.cutting import Part
from pedalwright.making.cutting import Piece as Length
from pedalwright.panels.parts import Box as Described


def blanks(pieces: Sequence[Piece]) -> Mapping[Plate, tuple[Part, ...]]:
    """The box around each flat piece, by the plate it is cut from; nothing for what is there."""
    found: dict[Plate, tuple[Part, ...]] = {}
    for piece in pieces:
        if not piece.there:
            plate = plate_of(piece)
            found[plate] = (*found.get(plate, ()), part_of(piece))
    return found


def plate_of(piece: Piece) -> Plate:
    """As thick, of the same kind, and at least as strong as the box counts on."""
    metal = piece.panel.metal
    return Plate(
        metal="steel" if metal.steel else "alloy",
        thickness=piece.panel.thickness,
        yield_strength=round(metal.yield_strength),
    )


def part_of(piece: Piece) -> Part:
    """Its length is the level way of its template; the grain as its bends want it."""
    box = Box.around(piece.pattern.outline)
    assert box is not None, "an outline has places"
    grain = piece.pattern.sheet.grain
    return Part(
        name=piece.name,
        length=round(box.width, 1),
        width=round(box.height, 1),
        count=piece.profile.count,
        grain="any" if grain is None else "along" if grain == 0.0 else "across",
    )


def ties(box: Described) -> Iterator[tuple[str, Length]]:
    """Each tie by its section."""
    for tie in box.ties:
        section = _section(tie.outside, tie.inside)
        length = float((tie.end - tie.start).length())
        yield section, Length(name=tie.name, length=round(length, 1))


def _section(outside: Num, inside: Num) -> str:
    shape = "tube" if float(inside) else "round"
    return bar_section(shape, float(outside), float(inside))
