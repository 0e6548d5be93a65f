"""Plane geometry of many points against many sides at once."""

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.mesh import Flags, Indices

#: Points worked at once against all sides.
CHUNK = 2_000


def cross(first: Array, second: Array) -> Array:
    """Vector product of directions in the plane."""
    product: Array = first[..., 0] * second[..., 1] - first[..., 1] * second[..., 0]
    return product


def inside(points: Array, start: Array, end: Array) -> Flags:
    """Which points lie within loops of sides, counted by the sides to their right."""
    found = np.empty(len(points), dtype=np.bool_)
    rise = np.where(end[:, 1] == start[:, 1], 1.0, end[:, 1] - start[:, 1])
    for some in _chunks(len(points)):
        x, y = points[some, :1], points[some, 1:]
        spans = (start[:, 1] <= y) != (end[:, 1] <= y)
        meets = start[:, 0] + (y - start[:, 1]) * (end[:, 0] - start[:, 0]) / rise
        found[some] = np.sum(spans & (x < meets), axis=1) % 2 == 1
    return found


def distance(points: Array, start: Array, end: Array) -> Array:
    """Distance of each point from the nearest of some sides; plane or space; inf without sides."""
    least = np.full(len(points), np.inf)
    if not len(start):
        return least
    for some in _chunks(len(points)):
        least[some] = distances(points[some], start, end).min(axis=1)
    return least


def distances(points: Array, start: Array, end: Array) -> Array:
    """Distance of each point from each side, (points, sides); plane or space."""
    side = end - start
    length_2 = np.maximum(np.einsum("si,si->s", side, side), np.finfo(float).tiny)
    reach = points[:, None] - start
    share = np.clip(np.einsum("psi,si->ps", reach, side) / length_2, 0.0, 1.0)
    reach -= share[..., None] * side
    far: Array = np.sqrt(np.einsum("psi,psi->ps", reach, reach))
    return far


def circles(nodes: Array, corners: Indices) -> tuple[Array, Array]:
    """Middle and radius of the circle round each triangle."""
    a, b, c = (nodes[corner] for corner in corners.T)
    first, second = b - a, c - a
    twice = 2 * cross(first, second)
    first_2, second_2 = np.sum(first**2, axis=1), np.sum(second**2, axis=1)
    x = (second[:, 1] * first_2 - first[:, 1] * second_2) / twice
    y = (first[:, 0] * second_2 - second[:, 0] * first_2) / twice
    return a + np.stack([x, y], axis=1), np.hypot(x, y)


def angles(nodes: Array, corners: Indices) -> Array:
    """Angles of each triangle at its corners, (triangles, 3); nodes in the plane or in space."""
    places = nodes[corners]
    sides = np.linalg.norm(np.roll(places, -1, axis=1) - np.roll(places, 1, axis=1), axis=-1)
    near = np.roll(sides, -1, axis=1), np.roll(sides, 1, axis=1)
    cosine = (near[0] ** 2 + near[1] ** 2 - sides**2) / (2 * near[0] * near[1])
    found: Array = np.arccos(np.clip(cosine, -1.0, 1.0))
    return found


def _chunks(count: int) -> list[slice]:
    return [slice(at, at + CHUNK) for at in range(0, count, CHUNK)]
