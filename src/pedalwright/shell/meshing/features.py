"""What a sheet's triangles must respect: its rim, holes, lines, circles and points, undivided.

Here everything that was said of a sheet in many places comes together in its own plane: seams that
run along its rim or across it, layers bonded to it, patches, fasteners and lines of support.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

import numpy as np

from pedalwright.core.points import Point
from pedalwright.core.units import Array
from pedalwright.shell.arrays import xyz
from pedalwright.shell.meshing.plane import cross, distance
from pedalwright.shell.parts import Bench, Patch, Place, Sheet

#: Places closer than this are one and the same.
SAME = 1e-3


@dataclass(frozen=True, slots=True)
class Circle:
    """A round line: the rim of a hole, of a patch or of a fastener's head."""

    centre: Place
    radius: float
    hole: bool = False


@dataclass(frozen=True, slots=True)
class Features:
    """All of one sheet, in its plane."""

    sheet: Sheet
    #: Straight sides of the rim and of openings, (sides, 2 ends, 2).
    rim: Array
    #: Straight lines inside, (lines, 2 ends, 2).
    lines: Array
    circles: tuple[Circle, ...]
    #: Single nodes wanted, (points, 2).
    points: Array

    @property
    def straight(self) -> Array:
        """Sides and lines together."""
        return np.concatenate([self.rim, self.lines])

    @property
    def breaks(self) -> Array:
        """Places where a line must have a node if it passes there, (places, 2)."""
        crossed = _crossings(self.straight)
        return np.concatenate([self.straight.reshape(-1, 2), self.points, crossed])


def features(bench: Bench) -> dict[str, Features]:
    """Of every sheet that has nodes of its own."""
    layers = {bond.layer for bond in bench.bonds}
    return {sheet.name: _of(sheet, bench) for sheet in bench.sheets if sheet.name not in layers}


def lifted(sheet: Sheet, places: Array) -> Array:
    """Places of a sheet's plane as points of the model, (..., 3)."""
    plane = sheet.plane
    along, across = xyz(plane.along), xyz(plane.across)
    return xyz(plane.origin) + places[..., :1] * along + places[..., 1:] * across


def dropped(sheet: Sheet, points: Array) -> Array:
    """The feet of points on a sheet's plane, (..., 2)."""
    plane = sheet.plane
    reach = points - xyz(plane.origin)
    return np.stack([reach @ xyz(plane.along), reach @ xyz(plane.across)], axis=-1)


def corners_of(patch: Patch, sheet: Sheet) -> tuple[Place, ...]:
    """Corners of a square patch in the plane of a sheet."""
    x, y = sheet.plane.place(patch.centre)
    a, b = patch.width / 2, patch.height / 2
    return ((x - a, y - b), (x + a, y - b), (x + a, y + b), (x - a, y + b))


def _of(sheet: Sheet, bench: Bench) -> Features:
    layers = _layers(sheet, bench)
    own = {sheet.name, *(layer.name for layer in layers)}
    patches = [patch for patch in bench.patches if patch.sheet in own]
    fastened = [one for one in bench.fasteners if own.intersection(one.sheets)]
    rim = _sides([sheet.outline, *sheet.openings])
    square = [corners_of(patch, sheet) for patch in patches if patch.height]
    inner = [*square, *(loop for layer in layers for loop in _moved(layer, sheet))]
    lines = np.concatenate([_sides(inner), *_lines(sheet, bench)])
    return Features(
        sheet=sheet,
        rim=rim,
        lines=lines[[not _along(line, rim) for line in lines]],
        circles=(
            *(Circle(hole.centre, hole.diameter / 2, hole=True) for hole in sheet.holes),
            *_holes_of_layers(sheet, layers),
            *(_circle(sheet, p.centre, p.width) for p in patches if not p.height),
            *(_circle(sheet, one.at, one.head) for one in fastened if one.head),
        ),
        points=_places(
            sheet,
            [spot.at for spot in bench.spots if spot.sheet in own],
            [one.at for one in fastened if not one.head],
        ),
    )


def _layers(sheet: Sheet, bench: Bench) -> list[Sheet]:
    bonded = {bond.layer for bond in bench.bonds if bond.base == sheet.name}
    return [layer for layer in bench.sheets if layer.name in bonded]


def _lines(sheet: Sheet, bench: Bench) -> Iterator[Array]:
    """Seams and lines of support on a sheet, (1, 2 ends, 2) each."""
    for seam in bench.seams:
        if sheet.name in seam.sheets:
            yield _places(sheet, [seam.start, seam.end])[None]
    for support in bench.supports:
        if not isinstance(support.at, str):
            ends = np.array([xyz(end) for end in support.at])
            feet = dropped(sheet, ends)
            if np.abs(lifted(sheet, feet) - ends).max() < SAME:
                yield feet[None]


def _moved(layer: Sheet, base: Sheet) -> list[tuple[Place, ...]]:
    """Rim and openings of a layer in the plane of its base."""
    loops = (layer.outline, *layer.openings)
    return [tuple(base.plane.place(layer.plane.point(place)) for place in loop) for loop in loops]


def _holes_of_layers(sheet: Sheet, layers: Iterable[Sheet]) -> Iterator[Circle]:
    """Holes of the layers that their base has not itself."""
    for layer in layers:
        for hole in layer.holes:
            centre = sheet.plane.place(layer.plane.point(hole.centre))
            same = (h for h in sheet.holes if np.hypot(*np.subtract(h.centre, centre)) < SAME)
            if not any(abs(h.diameter - hole.diameter) < SAME for h in same):
                yield Circle(centre, hole.diameter / 2)


def _circle(sheet: Sheet, centre: Point, diameter: float) -> Circle:
    return Circle(sheet.plane.place(centre), diameter / 2)


def _sides(loops: Iterable[tuple[Place, ...]]) -> Array:
    """Sides of closed runs of corners, (sides, 2 ends, 2)."""
    runs = [np.array(loop, dtype=np.float64) for loop in loops]
    sides = [np.stack([run, np.roll(run, -1, axis=0)], axis=1) for run in runs]
    return np.concatenate([np.zeros((0, 2, 2)), *sides])


def _places(sheet: Sheet, *points: list[Point]) -> Array:
    places = [sheet.plane.place(point) for some in points for point in some]
    return np.array(places, dtype=np.float64).reshape(-1, 2)


def _along(line: Array, rim: Array) -> bool:
    """Whether a line runs along the rim: both ends and its middle lie on one side of it."""
    probes = np.concatenate([line, line.mean(axis=0, keepdims=True)])
    return any(np.all(distance(probes, side[:1], side[1:]) < SAME) for side in rim)


def _crossings(straight: Array) -> Array:
    """Where two lines cross between their ends, (places, 2)."""
    first, second = np.triu_indices(len(straight), 1)
    start, end = straight[:, 0], straight[:, 1]
    way, other = (end - start)[first], (end - start)[second]
    turn = cross(way, other)
    apart = start[second] - start[first]
    steep = np.where(turn == 0.0, np.inf, turn)
    along, beside = cross(apart, other) / steep, cross(apart, way) / steep
    meets = (along > 0) & (along < 1) & (beside > 0) & (beside < 1) & (turn != 0.0)
    crossed: Array = start[first][meets] + along[meets, None] * way[meets]
    return crossed
