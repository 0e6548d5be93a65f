"""Tubes and rods that a design asks for, by section, ready to be cut from bars."""

from collections.abc import Iterator, Mapping

from pedalwright.design import Design
from pedalwright.design.tree import BrakeDesign, ClutchDesign
from pedalwright.linkage import lever
from pedalwright.linkage.solve import pedal_rod_length, rod_wanted
from pedalwright.making.car.formulas import rod_to_cut, tube_to_cut
from pedalwright.making.cutting import Piece

#: Play along the pivot, both sides together, mm.
END_FLOAT = 0.5
#: From the middle of a pin to the end of the thread in its fork, when it is set, mm.
FORK = 15.0


def bar_pieces(design: Design) -> Mapping[str, tuple[Piece, ...]]:
    """Pieces by section, such as `tube 22 / 16`."""
    found: dict[str, tuple[Piece, ...]] = {}
    for name, part in (("brake", design.brake), ("clutch", design.clutch)):
        for section, piece in _pieces(name, part):
            found[section] = (*found.get(section, ()), piece)
    return found


def _pieces(name: str, part: BrakeDesign | ClutchDesign) -> Iterator[tuple[str, Piece]]:
    pivot = part.carrier.pivot
    length = float(tube_to_cut(pivot.span, END_FLOAT))
    section = f"tube {float(pivot.tube_outside):g} / {float(pivot.tube_inside):g}"
    yield section, Piece(name=f"{name} pivot tube", length=length)
    if isinstance(part, BrakeDesign) or part.master is not None:
        yield from _rod(name, part)


def _rod(name: str, part: BrakeDesign | ClutchDesign) -> Iterator[tuple[str, Piece]]:
    """A rod from fork to socket; with a relay lever the one from fork to fork as well.

    A rod that is there already is not cut.
    """
    at_rest, rod = lever(part.pedal), part.rod
    if rod.length is None:
        size = float(part.carrier.push_rod.outside)
        length = float(rod_to_cut(rod_wanted(at_rest, rod), FORK, 0.0))
        yield f"rod for {size:g} core", Piece(name=f"{name} push rod", length=length)
    if rod.relay is not None:
        size = float(part.carrier.push_rod.outside)
        length = float(rod_to_cut(pedal_rod_length(at_rest, rod), FORK, FORK))
        yield f"rod for {size:g} core", Piece(name=f"{name} pedal rod", length=length)
