"""A rigid arm from a node to the place where an element really takes hold."""

import numpy as np

from pedalwright.core.units import Array


def carried(arms: Array) -> Array:
    """Freedoms at the end of an arm from those of its node, (..., 6, 6); arms are (..., 3).

    The end moves with the node and by the node's turn crossed with the arm; it turns alike.
    """
    matrix = np.broadcast_to(np.eye(6), (*arms.shape[:-1], 6, 6)).copy()
    x, y, z = arms[..., 0], arms[..., 1], arms[..., 2]
    matrix[..., 0, 4], matrix[..., 0, 5] = z, -y
    matrix[..., 1, 3], matrix[..., 1, 5] = -z, x
    matrix[..., 2, 3], matrix[..., 2, 4] = y, -x
    return matrix


def both(axes: Array) -> Array:
    """Axes (..., 3, 3) for moves and turns together, (..., 6, 6)."""
    matrix = np.zeros((*axes.shape[:-2], 6, 6))
    matrix[..., :3, :3] = matrix[..., 3:, 3:] = axes
    return matrix
