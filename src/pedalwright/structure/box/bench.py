"""A made box laid on the shell bench.

Folds are seams, rows are fasteners, flanges and collars are rigid patches, tubes and shafts are
bars. What stands only for room, lids and trays, is left off.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import pi

from pedalwright.core.points import UP, Point
from pedalwright.panels.made import Clamp, Made, Panel, Row, Shaft, Tube, named
from pedalwright.panels.metals import Metal
from pedalwright.panels.parts import Bolts, Edge, RivetNuts, Rivets, Spaced, Stitches
from pedalwright.shell.mesh import Material
from pedalwright.shell.parts import (
    Bar,
    Bench,
    Bond,
    Contact,
    End,
    Fastener,
    Fit,
    Hole,
    Patch,
    Seam,
    Sheet,
    Support,
)
from pedalwright.shell.sections import Box, Round, Section
from pedalwright.structure.box.parts import Seat
from pedalwright.structure.box.ways import in_use
from pedalwright.structure.formulas.joints import fastener_flexibility

#: Huth's exponent and factor for rivets and for bolts in metal.
RIVETED, BOLTED = (0.4, 2.2), (2 / 3, 3.0)
#: Blind rivets and rivet nuts are hollow and fill their holes badly: half of what Huth says, until
#: a lap of two strips is pulled (common practice).
HOLLOW = 0.5
ALLOY, STEEL = 70_000.0, 210_000.0
#: A spot or stitch of weld, N/mm (ours: stiffer than the sheet round it).
WELDED = 2e5
STEEL_BAR = Material(elastic=STEEL, poisson=0.3)
#: Sides of the triangles, mm: for the fast answer, and for the full one.
COARSE, FINE = 24.0, 12.0
#: A tube this near to upright has its depth rearward.
UPRIGHT = 0.9


@dataclass(frozen=True, slots=True)
class Stood:
    """The bench and the names of the points at which the pedals push."""

    bench: Bench
    #: Of every seat: its flange's patch, and the middle of its shaft.
    flanges: tuple[str, ...]
    shafts: tuple[str, ...]
    #: Of every seat, square to what carries its flange, to the feet's side.
    away: tuple[Point, ...]


def stood(made: Made, seats: tuple[Seat, ...], size: float = COARSE) -> Stood:
    """Everything counted, with every seat's flange and shaft."""
    made = in_use(made, seats)
    panels = made.panels
    flanges = tuple(_flange(made, seat) for seat in seats)
    shafts = {seat.pivot_on: seat for seat in seats}
    shaft_bars = [
        bar
        for shaft in made.shafts
        if shaft.name in shafts
        for bar in _shaft(shaft, shafts[shaft.name])
    ]
    return Stood(
        Bench(
            sheets=tuple(_sheets(panels)),
            seams=tuple(_seams(panels)),
            bonds=tuple(Bond(layer=one.layer, base=one.base) for one in made.glued),
            contacts=tuple(
                Contact(layer=layer, base=base, name=f"{layer} on {base}")
                for layer, base in made.touching
            ),
            fasteners=tuple(_fasteners(made, panels)),
            patches=(
                *flanges,
                *(
                    _patch(clamp)
                    for shaft in made.shafts
                    if shaft.name in shafts
                    for clamp in (shaft.one, shaft.other)
                ),
                *(_patch(clamp) for tube in made.tubes for clamp in _clamps(tube)),
            ),
            bars=(*shaft_bars, *(bar for tube in made.tubes for bar in _bars(tube))),
            supports=(
                *(
                    Support(
                        name=held.name,
                        at=(held.start, held.end),
                        holds="xyz" if held.how == "pinned" else "xyzXYZ",
                    )
                    for held in made.held
                ),
                *(support for tube in made.tubes for support in _ends_held(tube)),
            ),
            size=size,
        ),
        tuple(flange.name for flange in flanges),
        tuple(f"{seat.pivot_on}, shaft one.end" for seat in seats),
        tuple(panel.lying.normal for seat in seats if (panel := made.panel(seat.cylinder_on))),
    )


def _sheets(panels: Iterable[Panel]) -> Iterator[Sheet]:
    for name, panel, flat in named(panels):
        yield Sheet(
            name=name,
            plane=flat.plane,
            outline=flat.outline,
            thickness=panel.thickness,
            material=_material(panel.metal),
            holes=tuple(
                Hole(centre=hole.centre, diameter=hole.diameter)
                for hole in flat.face.holes
                if hole.name.startswith("H")
            ),
            part=panel.name,
        )


def _seams(panels: Iterable[Panel]) -> Iterator[Seam]:
    for name, panel, flat in named(panels):
        if flat.joint is not None:
            yield Seam(
                name=f"{panel.name}, fold {flat.joint.fold}",
                start=flat.joint.start,
                end=flat.joint.end,
                sheets=(panel.sheet(flat.joint.parent), name),
            )


def _fasteners(made: Made, panels: tuple[Panel, ...]) -> Iterator[Fastener]:
    own = {name: panel for name, panel, _ in named(panels)}
    for row in made.rows:
        first, last = (own[name] for name in row.through)
        shear, axial = stiffness(row.joining, first, last)
        for number, place in enumerate(row.places, 1):
            yield Fastener(
                name=f"{row.name}, {number}",
                at=place,
                sheets=row.through,
                shear=shear,
                axial=axial,
                part=_row_part(row),
            )


def _row_part(row: Row) -> str:
    words = {Rivets: "rivets", Bolts: "bolts", RivetNuts: "rivet nuts", Stitches: "welds"}
    return f"{words[type(row.joining)]} of {row.name}"


def stiffness(joining: Spaced, first: Panel, last: Panel) -> tuple[float, float]:
    """Of one fastener between two sheets, across it and along it, N/mm.

    Across by Huth; along as a bar as long as the stack, its dishing being the sheets' own.
    """
    if isinstance(joining, Stitches):
        return WELDED, WELDED
    exponent, factor = RIVETED if isinstance(joining, Rivets) else BOLTED
    hollow = 1.0 if isinstance(joining, Bolts) else HOLLOW
    elastic = ALLOY if isinstance(joining, Rivets) else STEEL
    width = float(joining.diameter)
    slides = fastener_flexibility(
        first.thickness,
        last.thickness,
        width,
        first.metal.elastic,
        last.metal.elastic,
        elastic,
        exponent,
        factor,
    )
    along = elastic * pi / 4 * width**2 / (first.thickness + last.thickness)
    return hollow / float(slides), hollow * along


def _flange(made: Made, seat: Seat) -> Patch:
    """The cylinder's flange on the part that carries it, at the foot of its middle."""
    panel = made.panel(seat.cylinder_on)
    assert panel is not None, f"{seat.cylinder_on} is no panel"
    plane = panel.lying
    return Patch(
        name=f"{seat.pedal} cylinder",
        sheet=panel.sheet(),
        centre=plane.point(plane.place(seat.cylinder)),
        width=float(seat.flange_width),
        height=float(seat.flange_height),
    )


def _patch(clamp: Clamp) -> Patch:
    return Patch(
        name=clamp.name,
        sheet=clamp.sheet,
        centre=clamp.centre,
        width=clamp.width,
        height=clamp.height,
        master=clamp.master,
    )


def _clamps(tube: Tube) -> Iterator[Clamp]:
    for clamp in (tube.start_on, tube.end_on, *tube.carries):
        if clamp is not None:
            yield clamp


def _shaft(shaft: Shaft, seat: Seat) -> Iterator[Bar]:
    """The pedal's tube from eye to eye in two halves; the pedal pulls where they meet."""
    one, other = shaft.one.centre, shaft.other.centre
    middle = (one + other) * 0.5
    section = Round(diameter=float(seat.tube_outside), bore=float(seat.tube_inside))
    part = f"{shaft.name}, shaft"
    yield Bar(
        name=f"{part} one",
        start=End(at=one, to=shaft.one.name),
        end=End(at=middle),
        section=section,
        material=STEEL_BAR,
        up=_aside(other - one),
        part=part,
    )
    yield Bar(
        name=f"{part} other",
        start=End(at=other, to=shaft.other.name, fit="pin", axis=(other - one).unit()),
        end=End(at=middle, to=f"{part} one.end"),
        section=section,
        material=STEEL_BAR,
        up=_aside(other - one),
        part=part,
    )


def _bars(tube: Tube) -> Iterator[Bar]:
    """A tube in pieces from one thing it carries to the next."""
    way = (tube.end - tube.start).unit()
    whole = float((tube.end - tube.start).length())
    hung = sorted((_reach(tube, clamp), clamp) for clamp in tube.carries) if tube.carries else []
    stops: list[tuple[float, Clamp | None]] = [(0.0, tube.start_on), *hung, (whole, tube.end_on)]
    fit: Fit = "ball" if tube.turns else "weld"
    for number, ((begin, first), (end, last)) in enumerate(pairwise(stops)):
        outer = (number == 0, number == len(stops) - 2)
        yield Bar(
            name=f"{tube.name} {number}",
            start=End(
                at=tube.start + way * begin,
                to=None if first is None else first.name,
                fit=fit if outer[0] and first is not None else "weld",
            ),
            end=End(
                at=tube.start + way * end,
                to=None if last is None else last.name,
                fit=fit if outer[1] and last is not None else "weld",
            ),
            section=_section(tube),
            material=_material(tube.metal),
            up=_aside(way),
            part=tube.name,
        )


def _reach(tube: Tube, clamp: Clamp) -> float:
    return float((clamp.centre - tube.start).dot((tube.end - tube.start).unit()))


def _section(tube: Tube) -> Section:
    if tube.depth:
        return Box(width=tube.width, depth=tube.depth, wall=tube.wall)
    return Round(
        diameter=tube.width, bore=max(0.0, tube.width - 2 * tube.wall) if tube.wall else 0.0
    )


def _ends_held(tube: Tube) -> Iterator[Support]:
    last = len(tube.carries)
    ends: tuple[tuple[str, str, Edge], ...] = (
        ("start", f"{tube.name} 0.start", tube.start_held),
        ("end", f"{tube.name} {last}.end", tube.end_held),
    )
    for which, at, how in ends:
        if how != "free":
            holds = "xyzXYZ" if how == "built in" else f"xyz{_spin(tube)}"
            yield Support(name=f"{tube.name}, {which}", at=at, holds=holds)


def _spin(tube: Tube) -> str:
    """The turn about a tube's own axis, nearly."""
    way = tube.end - tube.start
    sizes = [abs(float(number)) for number in (way.x, way.y, way.z)]
    return "XYZ"[sizes.index(max(sizes))]


def _aside(way: Point) -> Point:
    """A direction that is not along a bar, upwards where it can be."""
    unit = way.unit()
    return UP if abs(float(unit.z)) < UPRIGHT else Point(1.0, 0.0, 0.0)


def _material(metal: Metal) -> Material:
    return Material(
        elastic=metal.elastic, poisson=metal.poisson, yield_strength=metal.yield_strength
    )
