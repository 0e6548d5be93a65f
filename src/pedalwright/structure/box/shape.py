"""What a box looks like in one case: where its triangles go, and how hard they are worked."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.forces import fastener_forces
from pedalwright.shell.mesh import Flags, Indices
from pedalwright.shell.stress import Stresses, stresses
from pedalwright.structure.box.full import Full
from pedalwright.structure.box.ways import part_of

#: Two triangles whose normals add up to less than this share are at an angle.
FLAT = 0.95
#: Faces of a sheet among those of its stress.
OUTER = slice(1, 3)


@dataclass(frozen=True, slots=True)
class Worst:
    """The hardest worked place of one part of sheet."""

    part: str
    at: Array
    #: How that place moves.
    moves: Array
    stress: float
    yields: float


@dataclass(frozen=True, slots=True)
class Worked:
    """One fastener: where it is, how it moves, and the larger of its joints' forces."""

    name: str
    at: Array
    moves: Array
    force: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Shape:
    """One case of a box, as plain arrays."""

    case: str
    #: Corners of every triangle and their moves, (triangles, 3 corners, 3).
    corners: Array
    moves: Array
    #: Sides, from each corner to the next, that are an edge or a fold, (triangles, 3).
    edges: Flags
    part: Indices
    parts: tuple[str, ...]
    #: How far its middle moves; equivalent stress over yield, nan where nobody said that.
    moved: Array
    used: Array
    #: Ends of the bars and their moves, (bars, 2, 3).
    bars: Array
    bar_moves: Array
    #: The sheets that lie on others: layer and base.
    on: tuple[tuple[str, str], ...]
    worst: tuple[Worst, ...]
    fasteners: tuple[Worked, ...]

    @property
    def most(self) -> float:
        """How far the place moves that moves farthest."""
        return float(np.linalg.norm(self.moves, axis=-1).max())


def shape(full: Full, case: int) -> Shape:
    """One of the cases of a full answer."""
    mesh, moves = full.built.mesh, full.answer.moves[case][:, :3]
    nodes, triangles = mesh.nodes, mesh.triangles
    corners = triangles.corners
    found = stresses(mesh, full.answer.moves[case : case + 1])
    metals = [one.material for one in mesh.parts]
    yields = np.array([metal.yield_strength if metal else np.nan for metal in metals])
    return Shape(
        case=full.cases[case].name,
        corners=nodes[corners],
        moves=moves[corners],
        edges=_edges(corners, triangles.part, nodes),
        part=triangles.part,
        parts=tuple(one.name for one in mesh.parts),
        moved=np.linalg.norm(moves[corners].mean(axis=1), axis=-1),
        used=_used(full, found) / yields[triangles.part],
        bars=nodes[mesh.bars.ends],
        bar_moves=moves[mesh.bars.ends],
        on=tuple((part_of(layer), part_of(base)) for layer, base in _layers(full)),
        worst=tuple(_worst(full, case)),
        fasteners=tuple(_worked(full, case)),
    )


def _edges(corners: Indices, part: Indices, nodes: Array) -> Flags:
    """Sides that no other triangle of the part has, or one that lies at an angle to it."""
    sides = np.stack([corners, np.roll(corners, -1, axis=1)], axis=-1)
    sides.sort(axis=-1)
    key = (part[:, None] * len(nodes) + sides[..., 0]) * len(nodes) + sides[..., 1]
    _, where, count = np.unique(key, return_inverse=True, return_counts=True)
    a, b, c = (nodes[corners[:, corner]] for corner in range(3))
    normal = np.cross(b - a, c - a)
    normal /= np.linalg.norm(normal, axis=1, keepdims=True)
    total = np.zeros((len(count), 3))
    np.add.at(total, where.ravel(), np.repeat(normal, 3, axis=0))
    flat = np.linalg.norm(total, axis=1) > FLAT * count
    edge: Flags = ((count == 1) | ~flat)[where].reshape(corners.shape)
    return edge


def _used(full: Full, found: Stresses) -> Array:
    """Mean over the corners of each triangle of the harder worked face, (triangles,).

    Corners that a rigid patch covers have none.
    """
    mesh = full.built.mesh
    table = np.full((len(mesh.parts), len(mesh.nodes)), np.nan)
    table[found.part, found.node] = found.equivalent[0][:, OUTER].max(axis=-1)
    own = table[mesh.triangles.part[:, None], mesh.triangles.corners]
    known = np.isfinite(own)
    count = known.sum(axis=1)
    mean: Array = np.where(known, own, 0.0).sum(axis=1) / np.maximum(count, 1)
    return mean


def _layers(full: Full) -> Iterator[tuple[str, str]]:
    yield from full.made.touching
    yield from ((one.layer, one.base) for one in full.made.glued)


def _worst(full: Full, case: int) -> Iterator[Worst]:
    """The judged places, the hardest worked for what they bear first."""
    for one in sorted(full.judged, key=lambda own: -float(own.stress[case]) / own.yields):
        at = one.place[case]
        yield Worst(one.part, at, _near(full, case, at), float(one.stress[case]), one.yields)


def _worked(full: Full, case: int) -> Iterator[Worked]:
    places = {
        f"{row.name}, {number}": np.array([float(at.x), float(at.y), float(at.z)])
        for row in full.made.rows
        for number, at in enumerate(row.places, 1)
    }
    forces: dict[str, float] = {}
    for joint in fastener_forces(full.built, full.answer.moves):
        own = float(np.hypot(joint.shear[case], max(0.0, joint.pull[case])))
        forces[joint.fastener] = max(own, forces.get(joint.fastener, 0.0))
    for name, force in forces.items():
        if name in places:
            at = places[name]
            yield Worked(name, at, _near(full, case, at), force)


def _near(full: Full, case: int, at: Array) -> Array:
    """The moves of the node that is nearest to a place."""
    nodes = full.built.mesh.nodes
    node = int(np.argmin(np.linalg.norm(nodes - at, axis=1)))
    found: Array = full.answer.moves[case, node, :3]
    return found
