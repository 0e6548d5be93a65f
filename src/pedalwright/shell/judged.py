"""The stress that a part is judged by: never a peak that only tells how fine the mesh is.

Next to a rigid patch, a fastener or a point load the stress of a thin sheet has no end, and in the
metal it is spread over about its thickness. So places nearer than one thickness do not count, and
round each patch the stress is read just there.
"""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.build import Built, Rough
from pedalwright.shell.mesh import Flags, Indices, Mesh
from pedalwright.shell.meshing.plane import distance
from pedalwright.shell.stress import Stresses, von_mises

#: Faces of a sheet among those of its stress: its middle is never worked harder than both.
OUTER = slice(1, 3)


@dataclass(frozen=True, slots=True)
class Judged:
    """Worst equivalent stress of one part of sheet; nan where it has no place to judge."""

    part: str
    #: (cases,).
    stress: Array
    #: Where, (cases, 3).
    place: Array
    #: Where it yields; nan where nobody said.
    yields: float


def judged(built: Built, found: Stresses) -> Iterator[Judged]:
    """Every part of sheet in turn."""
    mesh = built.mesh
    for part, named in enumerate(mesh.parts):
        if not np.any(mesh.triangles.part == part):
            continue
        own = found.part == part
        rough = [one for one in built.rough if one.part == part]
        thick = float(mesh.triangles.thickness[mesh.triangles.part == part].min())
        counts = own & _far_off(mesh, found, rough, thick)
        places = [mesh.nodes[found.node[counts]]]
        worst = [found.equivalent[:, counts, OUTER].max(axis=-1)]
        for one in rough:
            around = _around(one, thick)
            if len(around):
                places.append(around)
                read = von_mises(found.at(mesh, part, around))[..., OUTER].max(axis=-1)
                worst.append(read)
        stress, where = np.concatenate(worst, axis=1), np.concatenate(places)
        stress = np.where(np.isnan(stress), -1.0, stress)
        if stress.shape[1]:
            at = stress.argmax(axis=1)
            yield Judged(
                named.name,
                stress[np.arange(len(at)), at],
                where[at],
                named.material.yield_strength if named.material else np.nan,
            )


def _far_off(mesh: Mesh, found: Stresses, rough: list[Rough], thick: float) -> Flags:
    """Which places are at least one thickness from everything rough, and on no patch.

    A single node says nothing of how far its peak reaches, so the next nodes do not count either.
    """
    places = mesh.nodes[found.node]
    counts = ~np.isin(found.node, mesh.links.node)
    for one in rough:
        off = distance(places, one.rim, np.roll(one.rim, -1, axis=0))
        counts &= off >= thick * (1 - ROUNDING)
        if len(one.rim) == 1:
            counts &= ~np.isin(found.node, _neighbours(mesh, one.rim[0]))
    return counts


def _neighbours(mesh: Mesh, place: Array) -> Indices:
    """The node at a place and those that share a triangle with it."""
    node = np.argmin(np.linalg.norm(mesh.nodes - place, axis=1))
    touching = (mesh.triangles.corners == node).any(axis=1)
    return np.unique(mesh.triangles.corners[touching])


#: A node just one thickness off counts.
ROUNDING = 1e-6


def _around(one: Rough, thick: float) -> Array:
    """Places one thickness outside a patch's rim: beside its corners and its sides."""
    rim = one.rim
    if len(rim) < 3:
        return np.zeros((0, 3))
    sides = np.roll(rim, -1, axis=0) - rim
    normal = np.sum(np.cross(rim - rim.mean(axis=0), sides), axis=0)
    outward = np.cross(sides, normal / np.linalg.norm(normal))
    outward /= np.linalg.norm(outward, axis=1, keepdims=True)
    corner = outward + np.roll(outward, 1, axis=0)
    corner /= np.linalg.norm(corner, axis=1, keepdims=True)
    beside = np.concatenate([rim + thick * corner, rim + 0.5 * sides + thick * outward])
    return np.asarray(beside, dtype=np.float64)
