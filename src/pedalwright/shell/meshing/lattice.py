"""Even triangles to begin with: a triangular lattice, finer where finer sides are wished."""

from collections.abc import Callable

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.mesh import Indices

#: Steps of size between one lattice and the next finer one, and the finest of all.
STEP, STEPS = np.sqrt(2.0), 24
#: Places along each side of the region at which the size is asked first.
PROBES = 40


def lattice(fixed: Array, size: Callable[[Array], Array], apart: float) -> Array:
    """Nodes over the box round some fixed ones, `apart` of the wished side from one another."""
    low, high = fixed.min(axis=0), fixed.max(axis=0)
    across, up = np.meshgrid(np.linspace(0, 1, PROBES), np.linspace(0, 1, PROBES))
    probes: Array = low + (high - low) * np.stack([across, up], axis=-1).reshape(-1, 2)
    wished = size(np.concatenate([probes, fixed]))
    level, found, sizes = float(wished.max()), list[Array](), list[Array]()
    for _ in range(STEPS):
        points = _even(low, high, level)
        own = size(points)
        here = (own <= level * np.sqrt(STEP)) & (own > level / np.sqrt(STEP))
        found.append(points[here])
        sizes.append(own[here])
        if level < wished.min():
            break
        level /= STEP
    nodes = np.concatenate(found)
    return thinned(nodes, np.concatenate(sizes), np.arange(len(nodes)), apart)


def thinned(points: Array, wished: Array, order: Indices, apart: float) -> Array:
    """Without points too near to one that comes before them in the order."""
    from scipy.spatial import cKDTree

    points, wished = points[order], wished[order]
    if not len(points):
        return points
    pairs = cKDTree(points).query_pairs(apart * float(wished.max()), output_type="ndarray")
    pairs = np.sort(pairs, axis=1)
    between = np.linalg.norm(points[pairs[:, 0]] - points[pairs[:, 1]], axis=1)
    pairs = pairs[between < apart * wished[pairs].min(axis=1)]
    kept = np.ones(len(points), dtype=np.bool_)
    for first, second in pairs[np.lexsort((pairs[:, 1], pairs[:, 0]))].tolist():
        if kept[first]:
            kept[second] = False
    return points[kept]


def _even(low: Array, high: Array, side: float) -> Array:
    """A triangular lattice over a box, begun a little off its corner."""
    across, up = (high - low) / [side, side * np.sqrt(0.75)]
    x, y = np.meshgrid(np.arange(int(across) + 2), np.arange(int(up) + 2))
    points = np.stack([x + 0.5 * (y % 2) - 0.25, (y - 0.2) * np.sqrt(0.75)], axis=-1)
    shifted: Array = low + side * points.reshape(-1, 2)
    return shifted
