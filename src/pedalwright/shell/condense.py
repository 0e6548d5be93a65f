"""A bench condensed to its hard points: what any forces there do, without solving it again.

One unit push at a time gives the give of every hard point for every push. As long as the sheets do
not change, a design only picks its points, adds its levers and rods, and solves a small full
system; the energy of each part follows by a matrix of its own, so it is still known who gives.
Contact is one-sided and so no matter of sums: places that are said to press are taken to press
always, the others never. (Static condensation: R. J. Guyan, "Reduction of stiffness and mass
matrices", AIAA Journal 3 (1965) 380.)
"""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.assembly import Block
from pedalwright.shell.mesh import SIX, Flags, Indices
from pedalwright.shell.solve import SetUp
from pedalwright.shell.sparse import summed
from pedalwright.shell.touching import opening, pushes


@dataclass(frozen=True, slots=True)
class Condensed:
    """Give at the hard points, six freedoms each in their order."""

    points: tuple[str, ...]
    parts: tuple[str, ...]
    #: Moves for unit forces and moments, (freedoms, freedoms).
    give: Array
    #: The same by part: it sums to `give`, and half the loads through it are the part's energy.
    by_part: Array

    def pick(self, *points: str) -> "Condensed":
        """Of some points only, in the order asked."""
        own = np.arange(SIX)
        rows = np.concatenate([SIX * self.points.index(point) + own for point in points])
        chosen = np.ix_(rows, rows)
        return Condensed(
            points, self.parts, self.give[chosen], np.stack([one[chosen] for one in self.by_part])
        )

    def energy(self, loads: Array) -> Array:
        """Energy of each part, (parts, ...), for loads on the points' freedoms, (freedoms, ...)."""
        moved = np.einsum("pij,j...->pi...", self.by_part, loads)
        energy: Array = 0.5 * np.einsum("i...,pi...->p...", loads, moved)
        return energy

    def joined(self, stiffness: Array, loads: Array) -> Array:
        """Moves with bars and springs between the points, (freedoms, cases) or with variants last.

        `stiffness` is theirs, (freedoms, freedoms) or with variants last; loads (freedoms, cases).
        What they carry follows as `stiffness` times the moves.
        """
        stiff = _last(stiffness)
        joined = np.flatnonzero(np.any(stiff != 0.0, axis=(1, 2)))
        # Only freedoms that something is joined to need solving for; the rest follow.
        own = np.ascontiguousarray(np.moveaxis(stiff[np.ix_(joined, joined)], -1, 0))
        free = self.give @ loads
        matrix = np.eye(len(joined)) + self.give[np.ix_(joined, joined)] @ own
        carried = own @ np.linalg.solve(matrix, free[joined])
        solved = free - self.give[:, joined] @ carried
        moves: Array = np.asarray(np.moveaxis(solved, 0, -1), dtype=np.float64)
        return moves[..., 0] if stiffness.ndim == 2 else moves


def condense(
    bench: SetUp, points: tuple[str, ...] | None = None, pressing: Flags | None = None
) -> Condensed:
    """Condense to named points, all of them where none are named; `pressing` (contacts,)."""
    assert bench.factor is not None, "something is loose"
    mesh = bench.mesh
    names = points or tuple(mesh.points)
    nodes = np.array([mesh.points[name] for name in names])
    rows = (SIX * nodes[:, None] + np.arange(SIX)).ravel()
    loads = np.zeros((mesh.held.size, len(rows)))
    loads[rows, np.arange(len(rows))] = 1.0
    moves = bench.moves(loads)
    force = np.zeros((len(mesh.contacts.part), len(rows)))
    if pressing is not None and pressing.any():
        force[pressing], moves = _pressed(bench, np.flatnonzero(pressing), moves)
    give = moves[rows]
    by_part = np.zeros((len(mesh.parts), len(rows), len(rows)))
    for block in bench.made_of:
        for part in np.unique(block.part):
            by_part[part] += _share(block, block.part == part, moves)
    for part in np.unique(mesh.contacts.part):
        own = mesh.contacts.part == part
        by_part[part] += force[own].T @ (force[own] / mesh.contacts.stiffness[own, None])
    return Condensed(names, tuple(part.name for part in mesh.parts), 0.5 * (give + give.T), by_part)


def _pressed(bench: SetUp, places: Indices, moves: Array) -> tuple[Array, Array]:
    """Forces in the places that press, and the moves with them, for every column of moves."""
    mesh = bench.mesh
    unit = np.zeros((len(places), len(mesh.contacts.part)))
    unit[np.arange(len(places)), places] = 1.0
    opened = bench.moves(pushes(mesh, unit), refined=False)
    give = opening(mesh, opened)[places] + np.diag(1.0 / mesh.contacts.stiffness[places])
    force: Array = np.asarray(np.linalg.solve(give, -opening(mesh, moves)[places]))
    return force, moves + opened @ force


def _share(block: Block, own: Flags, moves: Array) -> Array:
    """What some elements have in the give of all points."""
    some = Block(block.freedoms[own], block.stiffness[own], block.part[own])
    touched = np.unique(some.freedoms)
    forces = summed(some, len(moves)) @ moves
    share: Array = moves[touched].T @ forces[touched]
    return share


def _last(stiffness: Array) -> Array:
    return stiffness[..., None] if stiffness.ndim == 2 else stiffness
