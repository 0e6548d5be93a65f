"""Stress of the sheets at their nodes, on both faces.

Each triangle gives the stress at its corners, apart from those that a rigid patch covers; at a node
those of one part are averaged, each with its angle there, so that a fold or a step in thickness
stays sharp. Next to a point load, a rigid patch or a fastener the true stress has no end and the
figure only tells how fine the mesh is: see `judged.py`.
"""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.assembly import freedoms, sheet
from pedalwright.shell.elements.membrane import plane_stress
from pedalwright.shell.elements.triangle import strains
from pedalwright.shell.mesh import Flags, Indices, Mesh

#: Middle of the sheet, and its faces against and along the normal, in half thicknesses.
MIDDLE, UNDER, OVER = 0, 1, 2
FACES = np.array([0.0, -1.0, 1.0])
#: Triangles looked at for each point, nearest first; how far outside one a point may lie.
NEAREST, OUTSIDE = 12, 0.05


@dataclass(frozen=True, slots=True)
class Stresses:
    """Stress of each part of sheet at each of its nodes."""

    part: Indices
    node: Indices
    #: In the axes of the model, (cases, places, faces, 3, 3); faces are MIDDLE, UNDER, OVER.
    tensor: Array

    @property
    def equivalent(self) -> Array:
        """After von Mises, (cases, places, faces)."""
        return von_mises(self.tensor)

    def at(self, mesh: Mesh, part: int, points: Array) -> Array:
        """Stress of a part at some points of it, (cases, points, faces, 3, 3), between its nodes.

        nan where no triangle of the part is.
        """
        own = np.flatnonzero((mesh.triangles.part == part) & ~rigid_triangles(mesh))
        corners = mesh.triangles.corners[own]
        triangle, shares = _located(mesh.nodes[corners], points)
        places = np.searchsorted(self._keys(mesh), part * len(mesh.nodes) + corners[triangle])
        found: Array = np.einsum("pn,cpnfij->cpfij", shares, self.tensor[:, places])
        return found

    def _keys(self, mesh: Mesh) -> Indices:
        return self.part * len(mesh.nodes) + self.node


def stresses(mesh: Mesh, moves: Array) -> Stresses:
    """Stress at the nodes of every part; `moves` is (cases, nodes, 6)."""
    bends = ~rigid_triangles(mesh)
    key = (mesh.triangles.part[:, None] * len(mesh.nodes) + mesh.triangles.corners)[bends]
    places, where = np.unique(key, return_inverse=True)
    each = corner_stresses(mesh, moves)[:, bends].reshape(len(moves), where.size, -1)
    weight = _angles(mesh)[bends].ravel()
    total = np.zeros((len(moves), len(places), each.shape[-1]))
    for of_case, own in zip(total, each, strict=True):
        np.add.at(of_case, where.ravel(), weight[:, None] * own)
    mean = total / np.bincount(where.ravel(), weight)[:, None]
    return Stresses(
        part=places // len(mesh.nodes),
        node=places % len(mesh.nodes),
        tensor=mean.reshape(len(moves), len(places), len(FACES), 3, 3),
    )


def corner_stresses(mesh: Mesh, moves: Array) -> Array:
    """Stress at the corners of every triangle, (cases, triangles, 3 corners, faces, 3, 3)."""
    own = sheet(mesh)
    flat = moves.reshape(len(moves), -1)[:, freedoms(mesh.triangles.corners)]
    stretch, bend, axes = strains(own, flat)
    height = 0.5 * own.thickness[:, None] * FACES
    strain = stretch[..., None, :] + height[:, None, :, None] * bend[..., None, :]
    elastic = plane_stress(own.elastic, own.poisson)
    in_plane = np.einsum("tij,ctnfj->ctnfi", elastic, strain)
    tensor = np.zeros((*in_plane.shape[:-1], 2, 2))
    tensor[..., 0, 0], tensor[..., 1, 1] = in_plane[..., 0], in_plane[..., 1]
    tensor[..., 0, 1] = tensor[..., 1, 0] = in_plane[..., 2]
    flat_axes = axes[:, :2]
    turned: Array = np.einsum("tki,ctnfkl,tlj->ctnfij", flat_axes, tensor, flat_axes, optimize=True)
    return turned


def rigid_triangles(mesh: Mesh) -> Flags:
    """Triangles of which all corners go with one and the same node: a patch covers them."""
    master = np.arange(len(mesh.nodes))
    master[mesh.links.node] = mesh.links.master
    of_corners = master[mesh.triangles.corners]
    same: Flags = np.ptp(of_corners, axis=1) == 0
    return same


def _located(places: Array, points: Array) -> tuple[Indices, Array]:
    """The triangle nearest to each point and its shares of the corners; nan if not within it."""
    from scipy.spatial import cKDTree

    near = min(NEAREST, len(places))
    _, some = cKDTree(places.mean(axis=1)).query(points, k=range(1, near + 1))
    a, b, c = (places[some, corner] for corner in range(3))
    whole = np.cross(b - a, c - a)
    size = np.sum(whole**2, axis=-1)
    reach = points[:, None]
    shares = np.stack(
        [
            np.sum(np.cross(b - reach, c - reach) * whole, axis=-1) / size,
            np.sum(np.cross(c - reach, a - reach) * whole, axis=-1) / size,
            np.sum(np.cross(a - reach, b - reach) * whole, axis=-1) / size,
        ],
        axis=-1,
    )
    best = np.argmax(shares.min(axis=-1), axis=1)
    rows = np.arange(len(points))
    found = np.clip(shares[rows, best], 0.0, 1.0)
    inside = shares[rows, best].min(axis=-1) > -OUTSIDE
    triangle: Indices = np.asarray(some, dtype=np.intp)[rows, best]
    return triangle, np.where(inside[:, None], found, np.nan)


def _angles(mesh: Mesh) -> Array:
    """Angle of each triangle at its corners, (triangles, 3)."""
    places = mesh.nodes[mesh.triangles.corners]
    to_next = np.roll(places, -1, axis=1) - places
    to_last = np.roll(places, 1, axis=1) - places
    twice_area = np.linalg.norm(np.cross(to_next, to_last), axis=-1)
    angles: Array = np.arctan2(twice_area, np.sum(to_next * to_last, axis=-1))
    return angles


def von_mises(tensor: Array) -> Array:
    """Equivalent stress of a stress in space, (..., 3, 3)."""
    mean = np.trace(tensor, axis1=-2, axis2=-1)[..., None, None] / 3 * np.eye(3)
    equivalent: Array = np.sqrt(1.5 * np.sum((tensor - mean) ** 2, axis=(-2, -1)))
    return equivalent
