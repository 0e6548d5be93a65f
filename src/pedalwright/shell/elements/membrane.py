"""A flat triangle stretched and sheared in its plane, whose corners also turn about the normal.

The optimal triangle with drilling freedoms: C. A. Felippa, "A study of optimal membrane triangles
with drilling freedoms", Computer Methods in Applied Mechanics and Engineering 192 (2003)
2125-2168, his template with the factors OPT for an even (isotropic) material. The turn of a
corner is a true rotation of the sheet there, so a fold carries twist across it, and two triangles
that make a rectangle bend in their plane exactly, however long and thin it is.

Freedoms in the order u, v, turn of the three corners; strains are x, y and shear (engineering).
Corners are (triangles, 3, 2), in the triangle's plane, anticlockwise.
"""

import numpy as np

from pedalwright.core.units import Array

#: Felippa's factors of OPT: alpha_b, and beta_1 ... beta_9.
ALPHA = 1.5
BETA = (1.0, 2.0, 1.0, 0.0, 1.0, -1.0, -1.0, -1.0, -2.0)
#: Least share of that stiffness; keeps it alive at a Poisson's ratio of 0.5.
LEAST_BETA_0 = 0.01


def even_strain(corners: Array) -> Array:
    """Mean strain of a triangle from its freedoms, (triangles, 3, 9); exact for even strain."""
    x, y = corners[..., 0], corners[..., 1]
    rows = np.zeros((len(corners), 3, 9))
    for i, j, k in CYCLE:
        y_jk, x_kj = y[:, j] - y[:, k], x[:, k] - x[:, j]
        y_ik, y_ji = y[:, i] - y[:, k], y[:, j] - y[:, i]
        x_ki, x_ij = x[:, k] - x[:, i], x[:, i] - x[:, j]
        u, v, turn = 3 * i, 3 * i + 1, 3 * i + 2
        rows[:, 0, u] = rows[:, 2, v] = y_jk
        rows[:, 1, v] = rows[:, 2, u] = x_kj
        rows[:, 0, turn] = ALPHA / 6 * y_jk * (y_ik - y_ji)
        rows[:, 1, turn] = ALPHA / 6 * x_kj * (x_ki - x_ij)
        rows[:, 2, turn] = ALPHA / 3 * (x_ki * y_ik - x_ij * y_ji)
    return rows / (2 * area(corners)[:, None, None])


def bending_strain(corners: Array) -> Array:
    """Strain that bending in the plane adds at each corner, (triangles, 3 corners, 3, 9).

    It varies evenly between the corners, and is nil where the strain is even.
    """
    along_edges = _edge_strains(corners) @ _turns_beyond_even(corners)[:, None]
    added: Array = 1.5 * (_from_edges(corners)[:, None] @ along_edges)
    return added


def bending_share(poisson: Array) -> Array:
    """Share of that strain's energy which makes bending in the plane exact; his beta_0."""
    return np.maximum(0.5 * (1 - 4 * poisson**2), LEAST_BETA_0)


def area(corners: Array) -> Array:
    """Area of each triangle, positive where its corners run anticlockwise."""
    a, b = corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
    return 0.5 * (a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0])


def plane_stress(elastic: Array, poisson: Array) -> Array:
    """Stress from strain in a thin sheet, (triangles, 3, 3)."""
    rows = np.zeros((len(elastic), 3, 3))
    rows[:, 0, 0] = rows[:, 1, 1] = 1.0
    rows[:, 0, 1] = rows[:, 1, 0] = poisson
    rows[:, 2, 2] = 0.5 * (1 - poisson)
    return rows * (elastic / (1 - poisson**2))[:, None, None]


#: Each corner with the two that follow it.
CYCLE = ((0, 1, 2), (1, 2, 0), (2, 0, 1))


def _turns_beyond_even(corners: Array) -> Array:
    """Corner turns beyond the rigid turn of the sides, (triangles, 3, 9); the paper's T_theta-u."""
    x, y = corners[..., 0], corners[..., 1]
    rows = np.zeros((len(corners), 3, 9))
    for i, j, k in CYCLE:
        rows[:, :, 3 * i] = (x[:, k] - x[:, j])[:, None]
        rows[:, :, 3 * i + 1] = (y[:, k] - y[:, j])[:, None]
        rows[:, i, 3 * i + 2] = 4 * area(corners)
    return rows / (4 * area(corners)[:, None, None])


def _from_edges(corners: Array) -> Array:
    """Strains in x and y, and shear, from those along the sides 12, 23, 31; (triangles, 3, 3)."""
    x, y = corners[..., 0], corners[..., 1]
    rows = np.empty((len(corners), 3, 3))
    for side, (i, j, k) in enumerate(CYCLE):  # side from i to j; the others meet in k
        length_2 = (x[:, j] - x[:, i]) ** 2 + (y[:, j] - y[:, i]) ** 2
        x_jk, x_ik = x[:, j] - x[:, k], x[:, i] - x[:, k]
        y_jk, y_ik = y[:, j] - y[:, k], y[:, i] - y[:, k]
        rows[:, 0, side] = y_jk * y_ik * length_2
        rows[:, 1, side] = x_jk * x_ik * length_2
        rows[:, 2, side] = -(y_jk * x_ik + x_jk * y_ik) * length_2
    return rows / (4 * area(corners) ** 2)[:, None, None]


def _edge_strains(corners: Array) -> Array:
    """Strain along the sides at each corner from the turns, (triangles, 3 corners, 3, 3): Q1-Q3."""
    b1, b2, b3, b4, b5, b6, b7, b8, b9 = BETA
    pattern = np.array(
        [
            [[b1, b2, b3], [b4, b5, b6], [b7, b8, b9]],
            [[b9, b7, b8], [b3, b1, b2], [b6, b4, b5]],
            [[b5, b6, b4], [b8, b9, b7], [b2, b3, b1]],
        ]
    )
    sides: Array = np.roll(corners, -1, axis=1) - corners
    length_2 = np.sum(sides**2, axis=-1)
    scale: Array = 2 / 3 * area(corners)[:, None] / length_2
    return pattern * scale[:, None, :, None]
