"""Triangles in a flat region: rim, holes, lines and points stay, the rest is filled in.

The rim and the lines come already divided, because the sheet on the other side of a fold must have
the same nodes. They are sides of triangles as long as no other node lies in the circle that has
such a side for its diameter (K. R. Gabriel), so nodes keep out of those circles, and the
triangulation itself is Delaunay's, from scipy. Nodes come from a triangular lattice as fine as the
size asks, then from the middles of circles round triangles that are too large or too sharp
(L. P. Chew, "Guaranteed-quality mesh generation for curved surfaces", 1993), and are smoothed.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.mesh import Flags, Indices
from pedalwright.shell.meshing.lattice import lattice, thinned
from pedalwright.shell.meshing.plane import angles, circles, cross, distance, inside

#: How long a side should be at some places, from (places, 2) to (places,).
Size = Callable[[Array], Array]

#: A sharper angle gets another node, if there is room for one.
SHARP = np.radians(28.0)
#: So does a triangle whose circle is wider than this share of the wished side; 0.577 is even.
LARGE = 0.8
#: Nodes keep this far from one another and from rim and lines, as a share of the wished side.
APART, ASIDE = 0.75, 0.6
#: A node that is put in later may come nearer, but no nearer than this.
NEAR = 0.5
#: Nodes keep out of a circle about the middle of each fixed side, by this much.
CLEAR = 1.08
#: Rounds of putting in nodes, and of smoothing; the former end by themselves long before.
ROUNDS, SMOOTHINGS = 40, 1


@dataclass(frozen=True, kw_only=True, slots=True)
class Region:
    """A flat region, divided as it shall be; sides and loops by the numbers of its nodes."""

    nodes: Array
    #: Sides of the rim and of holes, (sides, 2).
    rim: Indices
    #: Sides inside, (sides, 2); their nodes off the rim.
    lines: Indices


@dataclass(frozen=True, slots=True)
class Filled:
    """Triangles of a region; the region's own nodes come first."""

    nodes: Array
    #: Anticlockwise, (triangles, 3).
    corners: Indices
    #: Sides that were asked for and are not there, (sides, 2).
    missing: Indices

    @property
    def sharpest(self) -> float:
        """Sharpest angle of all."""
        return float(angles(self.nodes, self.corners).min())


def filled(region: Region, size: Size) -> Filled:
    """Fill a region with triangles."""
    free = _kept_off(region, size, _inside(region, lattice(region.nodes, size, APART)))
    free = _refined(region, size, free)
    for _ in range(SMOOTHINGS):
        free = _refined(region, size, _smoothed(region, size, free))
    nodes = np.concatenate([region.nodes, free])
    corners = _triangles(region, nodes)
    return Filled(nodes, corners, _missing(region, corners))


def _kept_off(region: Region, size: Size, free: Array) -> Array:
    """The nodes of the lattice that are not too near to what is fixed."""
    from scipy.spatial import cKDTree

    if not len(free):
        return free
    wished = size(free)
    start, end = _sides(region)
    aside = distance(free, start, end) > ASIDE * wished
    apart = cKDTree(region.nodes).query(free)[0] > APART * wished
    return free[aside & apart & _clear(region, free)]


def _refined(region: Region, size: Size, free: Array) -> Array:
    """With a node in the middle of the circle round every triangle that is not good enough."""
    from scipy.spatial import cKDTree

    for _ in range(ROUNDS):
        nodes = np.concatenate([region.nodes, free])
        corners = _triangles(region, nodes)
        middle, radius = circles(nodes, corners)
        wished = size(nodes[corners].mean(axis=1))
        poor = (radius > LARGE * wished) | (angles(nodes, corners).min(axis=1) < SHARP)
        middle, worst = middle[poor], (radius / wished)[poor]
        room = inside(middle, *_rim(region)) & _clear(region, middle)
        middle, worst = middle[room], worst[room]
        wished = size(middle)
        apart = cKDTree(nodes).query(middle)[0] > NEAR * wished if len(middle) else room[:0]
        middle, worst, wished = middle[apart], worst[apart], wished[apart]
        if not len(middle):
            break
        free = np.concatenate([free, thinned(middle, wished, np.argsort(-worst), 0.9)])
    return free


def _smoothed(region: Region, size: Size, free: Array) -> Array:
    """Each free node between the middles of the circles round its triangles (L. Chen, M. Holst)."""
    if not len(free):
        return free
    fixed = len(region.nodes)
    nodes = np.concatenate([region.nodes, free])
    corners = _triangles(region, nodes)
    middle, radius = circles(nodes, corners)
    centre: Array = nodes[corners].mean(axis=1)
    wished = size(centre)
    # A circle round a flat triangle lies far outside: there its centre is the better guide.
    near = (radius < 3 * wished)[:, None]
    aim: Array = np.where(near, 0.5 * (middle + centre), centre)
    first, second = (nodes[corners[:, i]] - nodes[corners[:, 0]] for i in (1, 2))
    weight = cross(first, second) / wished**2
    total, weights = np.zeros_like(nodes), np.zeros(len(nodes))
    for corner in corners.T:
        np.add.at(total, corner, weight[:, None] * aim)
        np.add.at(weights, corner, weight)
    moved = total[fixed:] / np.where(weights[fixed:] > 0, weights[fixed:], 1.0)[:, None]
    good = (weights[fixed:] > 0) & _clear(region, moved) & inside(moved, *_rim(region))
    return np.where(good[:, None], moved, free)


def _triangles(region: Region, nodes: Array) -> Indices:
    """Delaunay's triangles that lie in the region, anticlockwise."""
    from scipy.spatial import Delaunay

    corners = Delaunay(nodes).simplices.astype(np.intp)
    first, second = (nodes[corners[:, i]] - nodes[corners[:, 0]] for i in (1, 2))
    twice = cross(first, second)
    corners[twice < 0] = corners[twice < 0][:, [0, 2, 1]]
    # Along a straight rim, rounding leaves triangles of no height.
    solid = np.abs(twice) > 1e-7 * np.maximum(np.sum(first**2, 1), np.sum(second**2, 1))
    corners = np.asarray(corners[solid], dtype=np.intp)
    # A triangle with a node off the rim is inside; the others may span a notch or a hole.
    on_rim = np.isin(corners, region.rim)
    doubtful: Flags = on_rim[:, 0] & on_rim[:, 1] & on_rim[:, 2]
    keeps: Flags = np.logical_not(doubtful)
    keeps[doubtful] = inside(nodes[corners[doubtful]].mean(axis=1), *_rim(region))
    found: Indices = corners[keeps]
    return found


def _clear(region: Region, points: Array) -> Flags:
    """Which points lie outside the circles about the fixed sides."""
    from scipy.spatial import cKDTree

    start, end = _sides(region)
    half = 0.5 * np.linalg.norm(end - start, axis=1)
    near = min(6, len(half))
    far, which = cKDTree(0.5 * (start + end)).query(points.reshape(-1, 2), k=range(1, near + 1))
    clear: Flags = np.all(far >= CLEAR * half[which], axis=1)
    return clear


def _inside(region: Region, points: Array) -> Array:
    return points[inside(points, *_rim(region))]


def _rim(region: Region) -> tuple[Array, Array]:
    return region.nodes[region.rim[:, 0]], region.nodes[region.rim[:, 1]]


def _sides(region: Region) -> tuple[Array, Array]:
    sides = np.concatenate([region.rim, region.lines])
    return region.nodes[sides[:, 0]], region.nodes[sides[:, 1]]


def _missing(region: Region, corners: Indices) -> Indices:
    """Fixed sides that no triangle has."""
    wanted = np.sort(np.concatenate([region.rim, region.lines]), axis=1)
    there = np.sort(np.concatenate([corners[:, [0, 1]], corners[:, [1, 2]], corners[:, [2, 0]]]), 1)
    many = len(region.nodes) + int(corners.max(initial=0)) + 1
    return wanted[~np.isin(wanted @ [many, 1], there @ [many, 1])]
