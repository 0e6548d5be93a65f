"""Links: which freedoms are left when some nodes are bound to others by rigid arms.

A rigid patch is its rim and its inside bound to one node in its middle; a pin is the end of a bar
bound to that node in all but the turn about its axis. Nothing is stiffened by a large number, so
nothing is lost in the arithmetic.
"""

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.elements.arms import both, carried
from pedalwright.shell.mesh import SIX, Flags, Indices, Links, Mesh
from pedalwright.shell.sparse import Entries


def kept(mesh: Mesh) -> Flags:
    """Which of all freedoms no link binds, (freedoms,).

    The place of a bound node's freedom that is free serves for the move along the link's axis.
    """
    unbound = np.ones((len(mesh.nodes), SIX), dtype=np.bool_)
    unbound[mesh.links.node] = mesh.links.free
    return unbound.ravel()


def carry(mesh: Mesh) -> Entries:
    """All freedoms from the kept ones."""
    links, keeps = mesh.links, kept(mesh)
    assert not np.isin(links.master, links.node).any(), "a link's master may not be bound itself"
    assert len(np.unique(links.node)) == len(links.node), "a node may be bound only once"
    assert not mesh.held[links.node].any(), "a bound node may not be held: hold its master"
    column = np.cumsum(keeps) - 1
    alone = np.repeat(~np.isin(np.arange(len(mesh.nodes)), links.node), SIX)
    axes = both(links.axes)
    tied = axes.transpose(0, 2, 1) @ (~links.free[:, :, None] * (axes @ _arms(mesh)))
    loose = axes.transpose(0, 2, 1) * links.free[:, None, :]
    pieces = [
        (np.ones(int(alone.sum())), np.flatnonzero(alone), np.flatnonzero(alone)),
        _entries(tied, links.node, links.master),
        _entries(loose, links.node, links.node),
    ]
    values, rows, columns = (np.concatenate(of_all) for of_all in zip(*pieces, strict=True))
    there = values != 0.0
    shape = (keeps.size, int(keeps.sum()))
    return Entries(values[there], rows[there], column[columns[there]], shape)


def rigid(nodes: Indices, master: int) -> Links:
    """Nodes bound wholly to one master."""
    count = len(nodes)
    return Links(
        node=nodes,
        master=np.full(count, master),
        axes=np.broadcast_to(np.eye(3), (count, 3, 3)).copy(),
        free=np.zeros((count, SIX), dtype=np.bool_),
    )


def _arms(mesh: Mesh) -> Array:
    return carried(mesh.nodes[mesh.links.node] - mesh.nodes[mesh.links.master])


def _entries(matrices: Array, rows: Indices, columns: Indices) -> tuple[Array, Indices, Indices]:
    """Entries of six by six blocks between nodes."""
    own = np.arange(SIX)
    shape = matrices.shape
    of_row = np.broadcast_to((SIX * rows)[:, None, None] + own[:, None], shape)
    of_column = np.broadcast_to((SIX * columns)[:, None, None] + own, shape)
    return matrices.ravel(), of_row.ravel(), of_column.ravel()
