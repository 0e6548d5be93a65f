"""Lines in space without those that a face hides: depths on a grid, edges held against them."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from pedalwright.core.points import Point
from pedalwright.documents.pictures.views import View
from pedalwright.drawing import XY, Box, Line, Polyline, Tone

Grid = NDArray[np.float64]
#: Cells of the grid along its longer side.
CELLS = 420
#: An edge less deep than this below a face is one of its own, mm.
OWN = 4.0
#: Of a longer line so many cells at least are seen, or none.
LEAST = 3
#: A face whose normal shows less than this is seen edge on, and hides nothing.
EDGE_ON = 0.02


@dataclass(frozen=True, kw_only=True, slots=True)
class Edge:
    """A line in space, through its corners."""

    points: tuple[Point, ...]
    line: Line = Line.THIN
    tone: Tone = Tone.INK
    part: str = ""
    title: str = ""


@dataclass(frozen=True, slots=True)
class Solid:
    """Flat faces, each by its corners, and the edges that are drawn of them."""

    faces: tuple[tuple[Point, ...], ...]
    edges: tuple[Edge, ...]


def seen_of(solids: Sequence[Solid], view: View) -> Iterator[Polyline]:
    """Every edge, or those parts of it that no face stands before."""
    faces = [face for solid in solids for face in solid.faces]
    edges = [edge for solid in solids for edge in solid.edges]
    places = [view(at) for edge in edges for at in edge.points]
    around = Box.around(at for at in places if np.all(np.isfinite(at)))
    if around is None:
        return
    cell = max(around.width, around.height) / CELLS
    window = around.grown(2.0 * cell)
    depths = _depths(faces, view, window, cell)
    for edge in edges:
        for start, end in pairwise(edge.points):
            for piece in _pieces(start, end, view, depths, window, cell):
                yield Polyline(
                    piece, line=edge.line, tone=edge.tone, part=edge.part, title=edge.title
                )


def _depths(faces: Iterable[Sequence[Point]], view: View, window: Box, cell: float) -> Grid:
    """How near to the reader the nearest face comes in every cell."""
    wide, high = int(window.width / cell) + 2, int(window.height / cell) + 2
    depths = np.full((high, wide), -np.inf)
    for face in faces:
        flat = _plane(face, view)
        if flat is None:
            continue
        places, (a, b, c) = flat
        left, bottom = (int(v) for v in (places.min(axis=0) - (window.left, window.bottom)) / cell)
        right, top = (int(v) for v in (places.max(axis=0) - (window.left, window.bottom)) / cell)
        columns = slice(max(left, 0), min(right + 2, wide))
        rows = slice(max(bottom, 0), min(top + 2, high))
        x: Grid = window.left + (np.arange(wide, dtype=np.float64)[columns] + 0.5) * cell
        y: Grid = window.bottom + (np.arange(high, dtype=np.float64)[rows] + 0.5) * cell
        over_x, over_y = x[np.newaxis, :] + 0.0 * y[:, np.newaxis], y[:, np.newaxis] + 0.0 * x
        inside = _inside(places, over_x, over_y)
        here = np.where(inside, a * over_x + b * over_y + c, -np.inf)
        depths[rows, columns] = np.maximum(depths[rows, columns], here)
    return depths


def _inside(corners: Grid, x: Grid, y: Grid) -> NDArray[np.bool_]:
    """Whether places lie in an outline: a line from each to the right crosses it an odd number."""
    inside = np.zeros(x.shape, dtype=bool)
    for (ax, ay), (bx, by) in zip(corners, np.roll(corners, -1, axis=0), strict=True):
        if ay != by:
            crosses = (ay > y) != (by > y)
            inside ^= crosses & (x < ax + (y - ay) / (by - ay) * (bx - ax))
    return inside


def _plane(face: Sequence[Point], view: View) -> tuple[Grid, tuple[float, float, float]] | None:
    """A face on the paper, and its depth as a sum over the paper; None where it hides nothing."""
    corners = np.array([[float(p.x), float(p.y), float(p.z)] for p in face])
    if len(corners) < 3 or not np.all(np.isfinite(corners)):
        return None
    right, up, out = (_array(way) for way in (view.right, view.up, view.towards))
    turned = np.roll(corners, -1, axis=0)
    normal = np.cross(corners, turned).sum(axis=0)
    size = np.linalg.norm(normal)
    if not size > 0.0 or abs(normal @ out) < EDGE_ON * size:
        return None
    normal = normal / (normal @ out)
    # out . p = c - (right . n) u - (up . n) v, where n . p is the same all over the face
    a, b = -float(right @ normal), -float(up @ normal)
    c = float(corners[0] @ normal)
    return np.column_stack((corners @ right, corners @ up)), (a, b, c)


def _pieces(
    start: Point, end: Point, view: View, depths: Grid, window: Box, cell: float
) -> Iterator[tuple[XY, XY]]:
    """What is seen of a straight line."""
    (ux, uy), (vx, vy) = view(start), view(end)
    if not np.all(np.isfinite((ux, uy, vx, vy))):
        return
    steps = max(2, int(np.hypot(vx - ux, vy - uy) / cell) + 1)
    share = (np.arange(steps) + 0.5) / steps
    x, y = ux + share * (vx - ux), uy + share * (vy - uy)
    near, far = float(start.dot(view.towards)), float(end.dot(view.towards))
    column = ((x - window.left) / cell).astype(int).clip(0, depths.shape[1] - 1)
    row = ((y - window.bottom) / cell).astype(int).clip(0, depths.shape[0] - 1)
    seen = near + share * (far - near) >= depths[row, column] - OWN
    turns = np.flatnonzero(np.diff(np.concatenate(([False], seen, [False])).astype(int)))
    for first, last in zip(turns[::2], turns[1::2], strict=True):
        if last - first < LEAST and steps > LEAST:
            continue
        a, b = first / steps, last / steps
        yield (
            (float(ux + a * (vx - ux)), float(uy + a * (vy - uy))),
            (float(ux + b * (vx - ux)), float(uy + b * (vy - uy))),
        )


def _array(way: Point) -> Grid:
    return np.array([float(way.x), float(way.y), float(way.z)])
