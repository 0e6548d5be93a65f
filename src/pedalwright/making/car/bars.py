"""Tubes and rods that a design asks for, by section, ready to be cut from bars."""

from collections.abc import Iterator, Mapping

from pedalwright.design import Design
from pedalwright.design.tree import BrakeDesign, ClutchDesign
from pedalwright.hydraulics.parts import Twin
from pedalwright.linkage import lever
from pedalwright.linkage.solve import pedal_rod_length, rod_wanted
from pedalwright.making.car.formulas import bar_along, rod_to_cut, tube_to_cut
from pedalwright.making.car.threads import by_core, thread
from pedalwright.making.cutting import Piece
from pedalwright.structure.trims.parts import Triangle
from pedalwright.throttle.cuts import cut_rods

#: Play along the pivot, both sides together, mm.
END_FLOAT = 0.5
#: From the middle of a pin to the end of the thread in its fork, when it is set, mm.
FORK = 15.0


def bar_pieces(design: Design) -> Mapping[str, tuple[Piece, ...]]:
    """Pieces by section, such as `tube 22 / 16`."""
    found: dict[str, tuple[Piece, ...]] = {}
    wanted = (
        *_pieces("brake", design.brake),
        *_pieces("clutch", design.clutch),
        *_throttle_rods(design),
        *_trims(design),
    )
    for section, piece in wanted:
        found[section] = (*found.get(section, ()), piece)
    return found


def bar_section(shape: str, outside: float, inside: float = 0.0) -> str:
    """A section as cut lists name it: `tube 22 / 16`, `threaded rod M10`, `round 12`."""
    if shape == "tube":
        return f"tube {outside:.4g} / {inside:.4g}"
    return f"{shape} {thread(outside)}" if shape == "threaded rod" else f"{shape} {outside:.4g}"


def _pieces(name: str, part: BrakeDesign | ClutchDesign) -> Iterator[tuple[str, Piece]]:
    pivot = part.carrier.pivot
    length = float(tube_to_cut(pivot.span, END_FLOAT))
    section = bar_section("tube", float(pivot.tube_outside), float(pivot.tube_inside))
    yield section, Piece(name=f"{name} pivot tube", length=length)
    if isinstance(part, BrakeDesign) or part.master is not None:
        yield from _rod(name, part)


def _rod(name: str, part: BrakeDesign | ClutchDesign) -> Iterator[tuple[str, Piece]]:
    """A rod from fork to socket; with a relay lever the one from fork to fork as well.

    A rod that is there already is not cut.
    """
    at_rest, rod = lever(part.pedal), part.rod
    if rod.length is None:
        length = float(rod_to_cut(rod_wanted(at_rest, rod), FORK, 0.0))
        yield _rod_section(part), Piece(name=f"{name} push rod", length=length, count=rods(part))
    if rod.relay is not None:
        length = float(rod_to_cut(pedal_rod_length(at_rest, rod), FORK, FORK))
        yield _rod_section(part), Piece(name=f"{name} pedal rod", length=length)


def rods(part: BrakeDesign | ClutchDesign) -> int:
    """Push rods to the cylinders: one each."""
    return 2 if isinstance(part, BrakeDesign) and isinstance(part.masters, Twin) else 1


def _rod_section(part: BrakeDesign | ClutchDesign) -> str:
    """A threaded rod where the design counts on no more than its core, else round bar."""
    rod = part.carrier.push_rod
    outside, inside = float(rod.outside), float(rod.inside)
    if inside:
        return bar_section("tube", outside, inside)
    row = by_core(outside)
    return bar_section("threaded rod", row.diameter) if row else bar_section("round", outside)


def _throttle_rods(design: Design) -> Iterator[tuple[str, Piece]]:
    for rod in cut_rods(design.throttle.opening):
        name, length = f"throttle rod, {rod.about}", float(rod.cut)
        yield "rod threaded for the throttle's joints", Piece(name=name, length=length)


def _trims(design: Design) -> Iterator[tuple[str, Piece]]:
    for trim in design.trims:
        back = trim.put_back
        if isinstance(back, Triangle):
            section = f"flat {float(back.width):g} × {float(back.thickness):g}"
            length = float(bar_along(trim.length, back.lap, back.distance))
            yield section, Piece(name=f"{trim.name} bar, cut to fit", length=length)
