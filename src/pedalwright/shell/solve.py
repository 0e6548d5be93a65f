"""How far everything on the bench moves under its loads, and what holds it.

Linear, small moves: twice the load gives twice the move. Sheets that bend by more than half their
thickness begin to carry like a net and are stiffer than this says; see `limits.py`.
"""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.assembly import Block, blocks, by_part, energy_by_part
from pedalwright.shell.links import carry, kept
from pedalwright.shell.loose import loose_parts, unheld_parts
from pedalwright.shell.mesh import Flags, Mesh
from pedalwright.shell.sparse import Factor, Whole, factored, whole
from pedalwright.shell.touching import pushes, touch


@dataclass(frozen=True, kw_only=True, slots=True)
class Answer:
    """What the bench shows; cases stand in front. All nan where something is loose."""

    #: (cases, nodes, 6).
    moves: Array
    #: Forces and moments of the supports on the held freedoms, nil elsewhere; as `moves`.
    reactions: Array
    #: Energy of each part, (cases, parts); it sums to the work.
    energy: Array
    #: Half the loads times the moves of their nodes, (cases,).
    work: Array
    #: Forces that are out of balance over the largest load, (cases,).
    unbalanced: Array
    #: Force in each contact, (cases, contacts); pressing is positive.
    pressed: Array
    #: False where contact did not settle, (cases,).
    settled: Flags
    #: Parts that nothing holds, or that can move without resistance.
    loose: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class SetUp:
    """A mesh set up on the bench: taken apart once, ready for any loads."""

    mesh: Mesh
    made_of: tuple[Block, ...]
    whole: Whole
    #: Which of the kept freedoms are free.
    free: Flags
    #: None where something is loose.
    factor: Factor | None
    loose: tuple[str, ...]

    def free_moves(self, loads: Array) -> Array:
        """Moves of the free freedoms; once more for what the first answer leaves over."""
        assert self.factor is not None, "something is loose"
        first = self.factor.solve(loads)
        return first + self.factor.solve(loads - self.whole.free @ first)

    def moves(self, loads: Array, *, refined: bool = True) -> Array:
        """Moves of all freedoms under loads on all freedoms, both (freedoms, cases)."""
        assert self.factor is not None, "something is loose"
        answer = self.free_moves if refined else self.factor.solve
        outside = np.zeros((len(self.free), loads.shape[1]))
        outside[self.free] = answer((self.whole.gather @ loads)[self.free])
        return self.whole.carry @ outside


def set_up(mesh: Mesh) -> SetUp:
    """Sum the elements, make the links, hold the supports and take the stiffness apart."""
    made_of = blocks(mesh)
    free = ~mesh.held.ravel()[kept(mesh)]
    total = whole(made_of, carry(mesh), free)
    if unheld := unheld_parts(mesh):
        return SetUp(mesh, made_of, total, free, None, unheld)
    factor = factored(total.free)
    loose = loose_parts(mesh, total, free, factor)
    return SetUp(mesh, made_of, total, free, None if loose else factor, loose)


def solve(mesh: Mesh, loads: Array, *, moved: Array | None = None) -> Answer:
    """The answer for loads (cases, nodes, 6), the supports `moved` as far (nodes, 6)."""
    return respond(set_up(mesh), loads, moved=moved)


def respond(bench: SetUp, loads: Array, *, moved: Array | None = None) -> Answer:
    """The same for a mesh that is set up already."""
    mesh, free, keeps = bench.mesh, bench.free, kept(bench.mesh)
    if bench.factor is None:
        return _no_answer(bench, loads)
    at_supports = np.zeros(mesh.held.shape) if moved is None else moved * mesh.held
    own = bench.whole.gather @ loads.reshape(len(loads), -1).T
    found = np.repeat(at_supports.ravel()[keeps][:, None], len(loads), axis=1)
    found[free] = bench.free_moves(own[free] - bench.whole.between @ found[~free])
    force, settled = touch(mesh, bench.factor, bench.whole, free, found)
    if force.size:
        pushed = bench.whole.gather @ pushes(mesh, force)
        own, found[free] = own + pushed, found[free] + bench.free_moves(pushed[free])
    over = bench.whole.kept @ found - own
    return _answer(bench, loads, found, over, force, settled, at_supports)


def _answer(
    bench: SetUp,
    loads: Array,
    found: Array,
    over: Array,
    force: Array,
    settled: Flags,
    at_supports: Array,
) -> Answer:
    mesh, cases, keeps = bench.mesh, len(loads), kept(bench.mesh)
    moves = (bench.whole.carry @ found).T.reshape(loads.shape)
    on_freedoms = np.zeros((cases, keeps.size))
    on_freedoms[:, np.flatnonzero(keeps)[~bench.free]] = over[~bench.free].T
    reactions = on_freedoms.reshape(loads.shape)
    energy = energy_by_part(mesh, bench.made_of, moves)
    energy += by_part(mesh, mesh.contacts.part, 0.5 * force**2 / mesh.contacts.stiffness)
    largest = np.maximum(np.abs(loads).max(axis=(1, 2)), np.abs(reactions).max(axis=(1, 2)))
    return Answer(
        moves=moves,
        reactions=reactions,
        energy=energy,
        work=0.5 * (np.sum(loads * moves, axis=(1, 2)) + np.sum(reactions * at_supports, (1, 2))),
        unbalanced=np.abs(over[bench.free]).max(axis=0, initial=0.0)
        / np.where(largest > 0.0, largest, 1.0),
        pressed=force,
        settled=settled,
    )


def _no_answer(bench: SetUp, loads: Array) -> Answer:
    cases, nothing = len(loads), np.full(loads.shape, np.nan)
    return Answer(
        moves=nothing,
        reactions=nothing,
        energy=np.full((cases, len(bench.mesh.parts)), np.nan),
        work=np.full(cases, np.nan),
        unbalanced=np.full(cases, np.nan),
        pressed=np.full((cases, len(bench.mesh.contacts.part)), np.nan),
        settled=np.zeros(cases, dtype=np.bool_),
        loose=bench.loose,
    )
