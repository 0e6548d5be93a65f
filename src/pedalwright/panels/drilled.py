"""Every fastener's hole in every face it goes through, so that both halves of a joint agree."""

from dataclasses import replace

from pedalwright.core.points import Point
from pedalwright.panels.faces import Face, Hole
from pedalwright.panels.made import Made, Panel, Row
from pedalwright.panels.parts import Bolts, RivetNuts, Rivets, Spaced

#: A hole is wider than the rivet in it by so many mm, than the bolt by this share (medium fit of
#: ISO 273, nearly). A riveted nut's body is wider than its thread by this share (ours, to verify).
RIVET_HOLE, BOLT_HOLE, NUT_BODY = 0.1, 0.1, 0.5


def drilled(made: Made) -> Made:
    """The same box with the holes of its fasteners."""
    return replace(made, panels=tuple(_drilled(panel, made.rows) for panel in made.panels))


def holes(joining: Spaced) -> tuple[float, float]:
    """The hole a fastener wants in the first sheet of its stack and in the last; 0 for none."""
    width = float(joining.diameter)
    match joining:
        case Rivets():
            return width + RIVET_HOLE, width + RIVET_HOLE
        case Bolts():
            return width * (1 + BOLT_HOLE), width * (1 + BOLT_HOLE)
        case RivetNuts():
            return width * (1 + NUT_BODY), width * (1 + BOLT_HOLE)
        case _:
            return 0.0, 0.0


def _drilled(panel: Panel, rows: tuple[Row, ...]) -> Panel:
    through: dict[str, list[tuple[str, float, Point]]] = {}
    for number, row in enumerate(rows, 1):
        first, last = holes(row.joining)
        for sheet in row.through:
            width = first if sheet == row.through[0] else last
            if width:
                found = through.setdefault(sheet, [])
                found += [(f"F{number}.{i}", width, place) for i, place in enumerate(row.places, 1)]
    planes = {flat.face.name: flat.plane for flat in panel.flats()}

    def with_holes(face: Face) -> Face:
        plane = planes[face.name]
        new = tuple(
            Hole(name=name, centre=plane.place(place), diameter=width)
            for name, width, place in through.get(panel.sheet(face.name), ())
        )
        folds = tuple(replace(fold, face=with_holes(fold.face)) for fold in face.folds)
        return replace(face, holes=(*face.holes, *new), folds=folds)

    return replace(panel, face=with_holes(panel.face))
