"""Stress of the sheets at their nodes, on both faces.

Each triangle gives the stress at its corners; at a node those of one part are averaged, each with
its angle there, so that a fold or a step in thickness stays sharp, and so that a strip bent in its
plane shows its edge stress exactly. Next to a point load, a rigid patch or a fastener the true
stress has no end and the figure only tells how fine the mesh is: see `judged.py`.
"""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.assembly import freedoms, sheet
from pedalwright.shell.elements.membrane import plane_stress
from pedalwright.shell.elements.triangle import strains
from pedalwright.shell.mesh import Indices, Mesh

#: Middle of the sheet, and its faces against and along the normal, in half thicknesses.
MIDDLE, UNDER, OVER = 0, 1, 2
FACES = np.array([0.0, -1.0, 1.0])


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


def stresses(mesh: Mesh, moves: Array) -> Stresses:
    """Stress at the nodes of every part; `moves` is (cases, nodes, 6)."""
    key = mesh.triangles.part[:, None] * len(mesh.nodes) + mesh.triangles.corners
    places, where = np.unique(key, return_inverse=True)
    each = corner_stresses(mesh, moves).reshape(len(moves), where.size, -1)
    weight = _angles(mesh).ravel()
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
