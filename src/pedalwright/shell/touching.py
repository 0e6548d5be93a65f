"""The places where sheets may touch, brought down to those that matter, and their forces.

Most places of a lap stay open or never work. So only places whose sheets have run into one
another are looked at, their give is found by one unit push each, and the rest join when the
answer would send them through.
"""

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.contact import HYSTERESIS, press
from pedalwright.shell.mesh import Flags, Indices, Mesh
from pedalwright.shell.sparse import Factor, Whole

#: Places that join in a round.
AT_ONCE = 16
#: Rounds after which it gives up and says so; five to fifteen are usual.
ROUNDS = 200


def touch(
    mesh: Mesh, factor: Factor, whole: Whole, free: Flags, found: Array
) -> tuple[Array, Flags]:
    """Force in each contact, (cases, contacts), and whether each case settled.

    `found` is where the kept freedoms would go if nothing touched, (freedoms, cases).
    """
    openings = opening(mesh, whole.carry @ found).T
    force = np.zeros(openings.shape)
    settled = np.ones(len(openings), dtype=np.bool_)
    for case, without in enumerate(openings):
        force[case], settled[case] = _touch(mesh, factor, whole, free, without)
    return force, settled


def opening(mesh: Mesh, moves: Array) -> Array:
    """How far each contact opens when all freedoms move, (contacts, cases)."""
    contacts = mesh.contacts
    opens: Array = np.einsum("ci,cin->cn", contacts.share, moves[contacts.freedoms])
    return opens


def pushes(mesh: Mesh, force: Array) -> Array:
    """Loads on all freedoms from the forces in the contacts, (freedoms, cases)."""
    loads = np.zeros((mesh.held.size, len(force)))
    freedoms, share = mesh.contacts.freedoms, mesh.contacts.share
    for column, of_case in zip(loads.T, force, strict=True):
        some = np.flatnonzero(of_case)
        np.add.at(column, freedoms[some], share[some] * of_case[some, None])
    return loads


def _touch(
    mesh: Mesh, factor: Factor, whole: Whole, free: Flags, without: Array
) -> tuple[Array, bool]:
    force = np.zeros(len(without))
    chosen = _deepest(without)
    opens = np.zeros((len(without), 0))
    for _ in range(ROUNDS):
        opens = np.hstack([opens, _opens(mesh, factor, whole, free, chosen[opens.shape[1] :])])
        own = np.diag(1.0 / mesh.contacts.stiffness[chosen])
        pressed = press(opens[chosen] + own, without[chosen])
        if not pressed.settled:
            return np.full(len(without), np.nan), False
        gap = without + opens @ pressed.force
        gap[chosen] = 0.0
        if not np.any(gap < -HYSTERESIS * np.abs(without).max(initial=0.0)):
            force[chosen] = pressed.force
            return force, True
        chosen = np.concatenate([chosen, _deepest(gap)])
    return np.full(len(without), np.nan), False


def _deepest(gap: Array) -> Indices:
    """Some of the places that have run in furthest; pushing them out frees most others."""
    deep = np.argsort(gap)[:AT_ONCE]
    return deep[gap[deep] < 0.0]


def _opens(mesh: Mesh, factor: Factor, whole: Whole, free: Flags, places: Indices) -> Array:
    """How far every contact opens for a unit force in each of some places."""
    loads = np.zeros((len(mesh.contacts.part), len(places)))
    loads[places, np.arange(len(places))] = 1.0
    pushed = (whole.gather @ pushes(mesh, loads.T))[free]
    moves = np.zeros((len(free), len(places)))
    moves[free] = factor.solve(pushed)
    return opening(mesh, whole.carry @ moves)
