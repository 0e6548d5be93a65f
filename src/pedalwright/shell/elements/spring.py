"""A spring of six stiffnesses between two nodes, with a rigid arm from each to the joint.

It stands for whatever is short beside the sheets: a rivet, a bolt, a bush, a glue line. The
stiffnesses are along three axes of its own and about them, at the joint, so a force there loads
both sheets with the moment of their arms, as it should.
"""

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.elements.arms import both, carried


def stretch(axes: Array, arms: Array) -> Array:
    """What the second end moves and turns beyond the first, in the spring's axes.

    From the freedoms of both nodes, (springs, 6, 12); axes (springs, 3, 3) as rows, arms
    (springs, 2, 3).
    """
    turned = both(axes)[:, None] @ carried(arms)
    return np.concatenate([-turned[:, 0], turned[:, 1]], axis=-1)


def stiffness(axes: Array, arms: Array, along: Array) -> Array:
    """Stiffness between the nodes, (springs, 12, 12); `along` is (springs, 6)."""
    moved = stretch(axes, arms)
    between: Array = moved.transpose(0, 2, 1) @ (along[..., None] * moved)
    return between


def forces(axes: Array, arms: Array, along: Array, moves: Array) -> Array:
    """Forces and moments of the spring on its first end, in its axes; (cases, springs, 6).

    `moves` are the freedoms of both nodes, (cases, springs, 12).
    """
    pulled: Array = along * np.einsum("sij,csj->csi", stretch(axes, arms), moves)
    return pulled
