"""A flat triangle bent out of its plane, thin enough that it does not slide in shear.

The discrete Kirchhoff triangle, DKT: J.-L. Batoz, K.-J. Bathe, L.-W. Ho, "A study of three-node
triangular plate bending elements", International Journal for Numerical Methods in Engineering 15
(1980) 1771-1812. The sheet's normal turns by quadratic functions of the place, which are tied to
the deflection along the sides: there the normal stays square to the sheet. For sheets up to a
twentieth of their span; a thick block gives more than this says.

Freedoms in the order w, turn about x, turn about y of the three corners; curvatures are those of
the sheet's turning normal, so a positive one stretches the side where z is positive.
"""

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.elements.membrane import CYCLE, area


def curvature(corners: Array) -> Array:
    """Curvature in x, y and twist at each corner, (triangles, 3 corners, 3, 9).

    It varies evenly between the corners. `corners` as for the membrane.
    """
    turns_x, turns_y = _quadratic_turns(corners)
    slope = _slopes(corners)
    rows = np.empty((len(corners), 3, 3, 9))
    along_x, along_y = slope[..., 0], slope[..., 1]
    rows[:, :, 0] = along_x @ turns_x
    rows[:, :, 1] = along_y @ turns_y
    rows[:, :, 2] = along_y @ turns_x + along_x @ turns_y
    return rows


def mid_side_turns(corners: Array) -> Array:
    """Lean of the normal in x and y in the middles of the sides, (triangles, 3 sides, 2, 9)."""
    in_x, in_y = _quadratic_turns(corners)
    return np.stack([in_x[:, 3:], in_y[:, 3:]], axis=2)


def _quadratic_turns(corners: Array) -> tuple[Array, Array]:
    """Lean of the normal in x and y at corners and middles of sides, each (triangles, 6, 9).

    Rows 0-2 are the corners; row 3 + i is the middle of the side across from corner i.
    """
    x, y = corners[..., 0], corners[..., 1]
    in_x, in_y = np.zeros((2, len(corners), 6, 9))
    for i in range(3):
        in_x[:, i, 3 * i + 2] = 1.0
        in_y[:, i, 3 * i + 1] = -1.0
    for k, i, j in CYCLE:  # the side from i to j, across from k
        x_ij, y_ij = x[:, i] - x[:, j], y[:, i] - y[:, j]
        length_2 = x_ij**2 + y_ij**2
        a, d = -x_ij / length_2, -y_ij / length_2
        b = 0.75 * x_ij * y_ij / length_2
        c = (0.25 * x_ij**2 - 0.5 * y_ij**2) / length_2
        e = (0.25 * y_ij**2 - 0.5 * x_ij**2) / length_2
        for corner, sense in ((i, 1.0), (j, -1.0)):
            w, turn_x, turn_y = 3 * corner, 3 * corner + 1, 3 * corner + 2
            in_x[:, 3 + k, w] = sense * 1.5 * a
            in_y[:, 3 + k, w] = sense * 1.5 * d
            in_x[:, 3 + k, turn_x] = b
            in_x[:, 3 + k, turn_y] = -c
            in_y[:, 3 + k, turn_x] = e
            in_y[:, 3 + k, turn_y] = -b
    return in_x, in_y


def _slopes(corners: Array) -> Array:
    """Slopes at each corner of the paper's six functions, (triangles, 3 corners, 6, 2).

    Rows 3-5 are 4 zeta_i zeta_j of the middles; rows 0-2 zeta (2 zeta - 1) of the corners.
    """
    opposite = np.roll(corners, -2, axis=1) - np.roll(corners, -1, axis=1)
    zeta = np.stack([-opposite[..., 1], opposite[..., 0]], axis=-1)
    zeta = zeta / (2 * area(corners))[:, None, None]
    slope = np.zeros((len(corners), 3, 6, 2))
    for k, i, j in CYCLE:
        slope[:, k, k] = 3 * zeta[:, k]
        slope[:, i, k] = slope[:, j, k] = -zeta[:, k]
        slope[:, i, 3 + k] = 4 * zeta[:, j]
        slope[:, j, 3 + k] = 4 * zeta[:, i]
    return slope
