"""What is loose: parts that nothing holds, and parts that something holds but not enough.

A sheet hung from a single pin, or a cover that nobody riveted, makes the stiffness singular. The
sums may still come out, as rubbish, so this is asked before anything is answered.
"""

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.mesh import SIX, Flags, Indices, Mesh
from pedalwright.shell.sparse import Factor, Whole, connected, factored

#: Stiffness of the softest move against that of single freedoms, below which it is loose. Held
#: structures come to 1e-10 or so, loose ones to the last digits of a float.
SINGULAR = 1e-13
#: What is put on the diagonal, as a share, to find out which way something moves.
SHIM = 1e-9
#: A part is named if it moves at least this share of what moves most.
NAMED = 0.3


def unheld_parts(mesh: Mesh) -> tuple[str, ...]:
    """Parts of which no piece that hangs together reaches a support."""
    first, second = _pairs(mesh)
    piece = connected(first, second, len(mesh.nodes))
    held = np.unique(piece[mesh.held.any(axis=1)])
    return tuple(
        part.name
        for nodes, part in zip(nodes_by_part(mesh), mesh.parts, strict=True)
        if len(nodes) and not np.isin(piece[nodes], held).all()
    )


def loose_parts(mesh: Mesh, whole: Whole, free: Flags, factor: Factor | None) -> tuple[str, ...]:
    """Parts that move almost without force; none where all is well held."""
    diagonal = np.where(whole.diagonal > 0.0, whole.diagonal, 1.0)
    shimmed = factor or factored(whole.free, SHIM * diagonal)
    assert shimmed is not None, "even shimmed it is singular"
    softness, move = _softest(shimmed, diagonal)
    if factor is not None and softness * SINGULAR < 1.0:
        return ()
    outside = np.zeros(len(free))
    outside[free] = move
    moves = np.abs((whole.carry @ outside).reshape(-1, SIX))
    size = float(np.ptp(mesh.nodes, axis=0).max())
    far = np.maximum(moves[:, :3].max(axis=1), size * moves[:, 3:].max(axis=1))
    by_part = [float(far[nodes].max(initial=0.0)) for nodes in nodes_by_part(mesh)]
    return tuple(
        part.name
        for moved, part in zip(by_part, mesh.parts, strict=True)
        if moved >= NAMED * max(by_part)
    )


def nodes_by_part(mesh: Mesh) -> list[Indices]:
    """Nodes that the elements of each part join."""
    kinds = (
        (mesh.triangles.corners, mesh.triangles.part),
        (mesh.bars.ends, mesh.bars.part),
        (mesh.springs.ends, mesh.springs.part),
    )
    return [
        np.unique(np.concatenate([nodes[part == number].ravel() for nodes, part in kinds]))
        for number in range(len(mesh.parts))
    ]


def _softest(factor: Factor, diagonal: Array) -> tuple[float, Array]:
    """How soft the softest move is, freedoms being scaled to alike, and the move (three steps)."""
    scale = np.sqrt(diagonal)
    move = np.random.default_rng(1).normal(size=len(diagonal))
    softness = 0.0
    for _ in range(3):
        move = move / np.linalg.norm(move)
        move = scale * factor.solve(scale * move)
        softness = float(np.linalg.norm(move))
    return softness, move / scale


def _pairs(mesh: Mesh) -> tuple[Indices, Indices]:
    corners = mesh.triangles.corners
    first = (corners[:, 0], corners[:, 1], mesh.bars.ends[:, 0], mesh.springs.ends[:, 0])
    second = (corners[:, 1], corners[:, 2], mesh.bars.ends[:, 1], mesh.springs.ends[:, 1])
    return (
        np.concatenate([*first, mesh.links.node]),
        np.concatenate([*second, mesh.links.master]),
    )
