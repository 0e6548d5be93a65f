"""Bolts, pins, forks and bushes that a design asks for, counted where the design has them."""

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import nan

from pedalwright.design import Design
from pedalwright.design.tree import BrakeDesign, ClutchDesign
from pedalwright.hydraulics.parts import Twin
from pedalwright.making.car.bars import rods
from pedalwright.making.car.formulas import pin_grip
from pedalwright.making.car.threads import by_core, grade_for, thread
from pedalwright.making.fastening import BoltRow, Item, Layer, RivetRow
from pedalwright.shelf.fasteners import clevis_pins, rivet_strengths
from pedalwright.structure.fixings.parts import Bolted, Fixing, Riveted, Welded

#: What stands on the sheet a flange is fixed to has a thickness nobody was asked for.
UNKNOWN = nan


@dataclass(frozen=True, kw_only=True, slots=True)
class Fasteners:
    """Everything that holds a design together, as far as the design says."""

    bolts: tuple[BoltRow, ...]
    rivets: tuple[RivetRow, ...]
    others: Mapping[Item, int]
    #: What the design does not say yet, in words.
    open: tuple[str, ...]


def car_fasteners(design: Design) -> Fasteners:
    """From both pedals; panels bring rows of their own."""
    bolts: list[BoltRow] = []
    rivets: list[RivetRow] = []
    others: Counter[Item] = Counter()
    unsaid: list[str] = []
    for name, part in (("brake", design.brake), ("clutch", design.clutch)):
        for what, fixing in _fixings(name, part):
            if isinstance(fixing, Bolted):
                bolts.append(_bolted(what, fixing))
            elif isinstance(fixing, Riveted):
                rivets.append(_riveted(what, fixing))
            elif not isinstance(fixing, Welded):
                unsaid.append(what)
        for item, count in _joints(part):
            others[item] += count
    return Fasteners(
        bolts=tuple(bolts), rivets=tuple(rivets), others=dict(others), open=tuple(unsaid)
    )


def _fixings(name: str, part: BrakeDesign | ClutchDesign) -> Iterator[tuple[str, Fixing | None]]:
    """What is bolted, riveted or welded to the body; a cable has no flange."""
    if isinstance(part, BrakeDesign) or part.master is not None:
        yield f"{name} cylinder's flange", part.carrier.mount.flange
    yield f"{name} pivot's bracket", part.carrier.mount.bracket


def _bolted(name: str, fixing: Bolted) -> BoltRow:
    return BoltRow(
        name=name,
        count=len(fixing.holes),
        layers=(
            Layer(name="flange", thickness=UNKNOWN, surface="steel"),
            Layer(
                name="sheet",
                thickness=float(fixing.sheet.thickness),
                surface="steel",
                strength=float(fixing.sheet.tensile_strength),
            ),
        ),
        size=thread(float(fixing.diameter)),
        grade=grade_for(float(fixing.tensile_strength)),
    )


def _riveted(name: str, fixing: Riveted) -> RivetRow:
    """The body that is as strong as the maker's figure in the design, and no stronger."""
    size = float(fixing.diameter)
    rows = [row for row in rivet_strengths() if row.diameter == size]
    body = min(rows, key=lambda row: abs(row.shear - float(fixing.shear))).body if rows else "alloy"
    return RivetRow(
        name=name,
        count=len(fixing.holes),
        layers=(
            Layer(name="flange", thickness=UNKNOWN, surface="steel"),
            Layer(name="sheet", thickness=float(fixing.sheet.thickness), surface="steel"),
        ),
        diameter=size,
        body=body,  # type: ignore[arg-type]  # the table has these words and no others
    )


def _joints(part: BrakeDesign | ClutchDesign) -> Iterator[tuple[Item, int]]:
    yield from _pivot(part)
    yield from _rod_joints(part)
    if part.rod_ends is not None and part.rod_ends.cylinder is not None:
        size = thread(float(part.rod_ends.cylinder.thread))
        yield Item(kind="nut", size=size, make="thin, as lock-nut"), 1
    if part.rest_stop is not None:
        screw = part.rest_stop.screw
        size = thread(float(screw.thread))
        length = float(screw.engaged) + float(screw.bare)
        yield Item(kind="bolt", size=size, make=f"8.8, thread {length:g} or more"), 1
        yield Item(kind="nut", size=size, make="thin, as lock-nut"), 1


def _pivot(part: BrakeDesign | ClutchDesign) -> Iterator[tuple[Item, int]]:
    pivot = part.carrier.pivot
    shaft, inside = float(pivot.shaft_diameter), float(pivot.tube_inside)
    bush = f"{inside:.4g} / {shaft:.4g} × {float(pivot.bush_length):.4g}"
    yield Item(kind="bush", size=bush), 2
    grip = f"shank {float(pivot.span):.4g} + both cheeks"
    yield Item(kind="bolt", size=thread(shaft), make=f"for the pivot, {grip}"), 1
    yield Item(kind="nut", size=thread(shaft), make="castle nut"), 1
    yield Item(kind="washer", size=thread(shaft), make="plain"), 2
    yield Item(kind="split pin", size=f"for a castle nut {thread(shaft)}"), 1


def _rod_joints(part: BrakeDesign | ClutchDesign) -> Iterator[tuple[Item, int]]:
    """Forks and their pins; a balance bar is the pin of both its forks, a cable brings its own."""
    pin = part.carrier.clevis_pin
    diameter = float(pin.diameter)
    if isinstance(part, BrakeDesign) and isinstance(part.masters, Twin):
        yield from _forks(part, diameter, rods(part), "block on the balance bar")
        return
    # a relay lever is driven by one rod and drives another
    pins = 3 if part.rod.relay is not None else 1
    grip = float(pin_grip(pin.inner_thickness, pin.fork_thickness, pin.gap))
    yield Item(kind="clevis pin", size=f"{diameter:.4g}, grip {grip:.4g}"), pins
    split = next((p.split_pin for p in clevis_pins() if p.diameter == diameter), None)
    size = f"{split:g}" if split else f"for a pin {diameter:.4g}"
    yield Item(kind="split pin", size=size, make="for the clevis pins"), pins
    yield Item(kind="washer", size=f"{diameter:.4g}", make="for clevis pins"), pins
    if isinstance(part, BrakeDesign) or part.master is not None:
        yield from _forks(part, diameter, pins, "")


def _forks(
    part: BrakeDesign | ClutchDesign, pin: float, count: int, make: str
) -> Iterator[tuple[Item, int]]:
    """Each with the nut that locks it; without a thread in the design it goes by its pin."""
    end = part.rod_ends.pedal if part.rod_ends is not None else None
    row = by_core(float(part.carrier.push_rod.outside))
    rod = thread(float(end.thread)) if end else row.size if row else ""
    yield Item(kind="fork", size=f"{rod} for a pin {pin:.4g}".strip(), make=make), count
    if rod:
        yield Item(kind="nut", size=rod, make="thin, as lock-nut"), count
