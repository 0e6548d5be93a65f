"""Every sheet of a bench filled with triangles, still one by one."""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.arrays import xyz
from pedalwright.shell.mesh import Indices
from pedalwright.shell.meshing.divide import Divider
from pedalwright.shell.meshing.features import SAME, Features, dropped, features, lifted
from pedalwright.shell.meshing.flat import Filled, Region, filled
from pedalwright.shell.meshing.sizes import Sizes, sizes
from pedalwright.shell.parts import Bench, Sheet

#: Sheets that are kept as they were filled, the oldest given up first.
KEPT = 256
_FILLED: dict[tuple[object, ...], Filled] = {}


@dataclass(frozen=True, slots=True)
class Meshed:
    """One sheet as triangles, with nodes of its own."""

    sheet: Sheet
    #: In its plane, (nodes, 2), and in the model, (nodes, 3).
    flat: Array
    nodes: Array
    corners: Indices
    #: Sharpest angle, rad.
    sharpest: float
    #: Middles of lines that no side follows, (lines, 3).
    missing: Array

    def nearest(self, points: Array) -> Indices:
        """The node at each of some points of the model, which are on the sheet."""
        from scipy.spatial import cKDTree

        return np.asarray(cKDTree(self.flat).query(dropped(self.sheet, points))[1], dtype=np.intp)


def meshed(bench: Bench) -> tuple[dict[str, Meshed], Divider]:
    """All sheets that have nodes of their own, by name, and how their lines were divided."""
    found = features(bench)
    size = sizes(found.values(), bench.size)
    breaks = [lifted(one.sheet, one.breaks) for one in found.values()]
    divider = Divider(size, np.concatenate([np.zeros((0, 3)), *breaks]))
    return {name: _meshed(one, divider) for name, one in found.items()}, divider


def _meshed(one: Features, divider: Divider) -> Meshed:
    sheet = one.sheet
    size = divider.size.near(lifted(sheet, one.rim.reshape(-1, 2)))
    rim = [_divided(one, line, divider) for line in one.rim]
    lines = [_divided(one, line, divider) for line in one.lines]
    rings = {c: divider.round(c, lambda places: lifted(sheet, places)) for c in one.circles}
    closed = {c: np.concatenate([ring, ring[:1]]) for c, ring in rings.items()}
    rim += [ring for circle, ring in closed.items() if circle.hole]
    lines += [ring for circle, ring in closed.items() if not circle.hole]
    region = _region(rim, lines, one.points)
    done = _filled(region, size, sheet)
    return Meshed(
        sheet=sheet,
        flat=done.nodes,
        nodes=lifted(sheet, done.nodes),
        corners=done.corners,
        sharpest=done.sharpest,
        missing=lifted(sheet, done.nodes[done.missing].mean(axis=1)),
    )


def _filled(region: Region, size: Sizes, sheet: Sheet) -> Filled:
    """A region filled, or as it was filled before: of many designs most sheets are alike."""
    plane = [xyz(point) for point in (sheet.plane.origin, sheet.plane.along, sheet.plane.across)]
    numbers = (region.nodes, region.rim, region.lines, size.sources, size.shortest, *plane)
    key = (size.usual, *(one.tobytes() for one in numbers))
    if key not in _FILLED:
        if len(_FILLED) >= KEPT:
            _FILLED.pop(next(iter(_FILLED)))
        _FILLED[key] = filled(region, lambda places: size(lifted(sheet, places)))
    return _FILLED[key]


def _divided(one: Features, line: Array, divider: Divider) -> Array:
    ends = lifted(one.sheet, line)
    return dropped(one.sheet, divider.straight(ends[0], ends[1]))


def _region(rim: list[Array], lines: list[Array], points: Array) -> Region:
    """Runs of nodes as one list in which each place stands once, with the sides between them."""
    from scipy.spatial import cKDTree

    from pedalwright.shell.sparse import connected

    runs = [*rim, *lines]
    every = np.concatenate([*runs, points])
    pairs = cKDTree(every).query_pairs(SAME, output_type="ndarray")
    place = connected(pairs[:, 0], pairs[:, 1], len(every))
    _, first, number = np.unique(place, return_index=True, return_inverse=True)
    starts = np.cumsum([0, *(len(run) for run in runs)])
    sides = [
        np.stack([number[at : at + len(run) - 1], number[at + 1 : at + len(run)]], axis=1)
        for at, run in zip(starts, runs, strict=False)
    ]
    none = np.zeros((0, 2), dtype=np.intp)
    of_rim = np.concatenate([none, *sides[: len(rim)]])
    inner = np.concatenate([none, *sides[len(rim) :]])
    many = len(every)
    there = np.sort(of_rim, axis=1) @ [many, 1]
    inner = np.unique(np.sort(inner, axis=1), axis=0)
    inner = inner[~np.isin(inner @ [many, 1], there) & (inner[:, 0] != inner[:, 1])]
    return Region(nodes=every[first], rim=of_rim, lines=inner)
