"""Each element's stiffness, and the energy that each part takes from the load."""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.elements import beam, spring, triangle
from pedalwright.shell.mesh import SIX, Indices, Mesh


@dataclass(frozen=True, slots=True)
class Block:
    """Elements of one kind: which freedoms they join, how stiffly, and whose they are."""

    #: (elements, freedoms of one).
    freedoms: Indices
    #: (elements, freedoms of one, freedoms of one).
    stiffness: Array
    part: Indices


def blocks(mesh: Mesh) -> tuple[Block, ...]:
    """The stiffness of every element, kind by kind."""
    triangles, bars, springs = mesh.triangles, mesh.bars, mesh.springs
    of_springs = spring.stiffness(springs.axes, springs.arms, springs.along)
    return (
        Block(freedoms(triangles.corners), triangle.stiffness(sheet(mesh)), triangles.part),
        Block(freedoms(bars.ends), beam.stiffness(long_bars(mesh)), bars.part),
        Block(freedoms(springs.ends), of_springs, springs.part),
    )


def energy_by_part(mesh: Mesh, made_of: tuple[Block, ...], moves: Array) -> Array:
    """Energy in the elements of each part, (cases, parts); `moves` is (cases, nodes, 6)."""
    energy = np.zeros((len(moves), len(mesh.parts)))
    flat = moves.reshape(len(moves), -1)
    for block in made_of:
        own = flat[:, block.freedoms]
        each = 0.5 * np.einsum("cei,cei->ce", own, np.einsum("eij,cej->cei", block.stiffness, own))
        energy += by_part(mesh, block.part, each)
    return energy


def by_part(mesh: Mesh, part: Indices, each: Array) -> Array:
    """What elements have, added up for each part, (cases, parts); `each` is (cases, elements)."""
    count = len(mesh.parts)
    sums = [np.bincount(part, of_case, count) for of_case in each]
    return np.array(sums, dtype=np.float64).reshape(-1, count)


def freedoms(nodes: Indices) -> Indices:
    """Numbers of the freedoms of some nodes, (elements, 6 a node)."""
    return (SIX * nodes[..., None] + np.arange(SIX)).reshape(len(nodes), SIX * nodes.shape[1])


def sheet(mesh: Mesh) -> triangle.Sheet:
    """The triangles with their places and materials."""
    materials = [part.material for part in mesh.parts]
    elastic = np.array([made.elastic if made else np.nan for made in materials])
    poisson = np.array([made.poisson if made else np.nan for made in materials])
    own = mesh.triangles
    return triangle.Sheet(
        places=mesh.nodes[own.corners],
        thickness=own.thickness,
        elastic=elastic[own.part],
        poisson=poisson[own.part],
        offset=own.offset,
    )


def long_bars(mesh: Mesh) -> beam.Bars:
    """The bars with the places of their ends."""
    own = mesh.bars
    return beam.Bars(
        places=mesh.nodes[own.ends] + own.arms,
        up=own.up,
        arms=own.arms,
        released=own.released,
        section=own.section,
    )
