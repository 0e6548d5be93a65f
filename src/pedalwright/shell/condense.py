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


@dataclass(frozen=True, slots=True)
class Laps:
    """Places of contact that may be taken to press, and what a unit force in each of them does."""

    places: Indices
    #: Moves of all freedoms, (freedoms, places).
    opened: Array


def laps(bench: SetUp, places: Indices) -> Laps:
    """Push every place apart once."""
    mesh = bench.mesh
    unit = np.zeros((len(places), len(mesh.contacts.part)))
    unit[np.arange(len(places)), places] = 1.0
    return Laps(places, bench.moves(pushes(mesh, unit), refined=False))


def condense(
    bench: SetUp,
    points: tuple[str, ...] | None = None,
    pressing: Flags | None = None,
    known: Laps | None = None,
) -> Condensed:
    """Condense to named points, all of them where none are named.

    `pressing` (contacts,) says which places press; `known` spares pushing them apart again.
    """
    assert bench.factor is not None, "something is loose"
    mesh = bench.mesh
    names = points or tuple(mesh.points)
    nodes = np.array([mesh.points[name] for name in names])
    rows = (SIX * nodes[:, None] + np.arange(SIX)).ravel()
    loads = np.zeros((mesh.held.size, len(rows)))
    loads[rows, np.arange(len(rows))] = 1.0
    moves = bench.moves(loads)
    by_part = np.zeros((len(mesh.parts), len(rows), len(rows)))
    if pressing is not None and pressing.any():
        lap = known or laps(bench, np.flatnonzero(pressing))
        moves = _pressed(bench, lap, pressing, moves, by_part)
    give = moves[rows]
    for block in bench.made_of:
        _add_shares(block, moves, by_part)
    return Condensed(names, tuple(part.name for part in mesh.parts), 0.5 * (give + give.T), by_part)


def _pressed(bench: SetUp, lap: Laps, pressing: Flags, moves: Array, by_part: Array) -> Array:
    """The moves with the places that press; what their own give takes is added to `by_part`."""
    mesh = bench.mesh
    own = pressing[lap.places]
    places, opened = lap.places[own], lap.opened[:, own]
    stiffness = mesh.contacts.stiffness[places]
    give = opening(mesh, opened)[places] + np.diag(1.0 / stiffness)
    solved = np.linalg.solve(give, -opening(mesh, moves)[places])
    force = np.asarray(solved, dtype=np.float64)
    for part in np.unique(mesh.contacts.part[places]):
        of_part = mesh.contacts.part[places] == part
        by_part[part] += force[of_part].T @ (force[of_part] / stiffness[of_part, None])
    return moves + opened @ force


def _add_shares(block: Block, moves: Array, by_part: Array) -> None:
    """What each part's elements have in the give of all points."""
    own = moves[block.freedoms]
    forces = block.stiffness @ own
    for part in np.unique(block.part):
        some = block.part == part
        columns = own.shape[-1]
        by_part[part] += own[some].reshape(-1, columns).T @ forces[some].reshape(-1, columns)


def _last(stiffness: Array) -> Array:
    return stiffness[..., None] if stiffness.ndim == 2 else stiffness
