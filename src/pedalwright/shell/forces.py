"""Forces in fasteners and bars."""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.assembly import freedoms, long_bars
from pedalwright.shell.build import Built
from pedalwright.shell.elements import beam, spring
from pedalwright.shell.mesh import Mesh


@dataclass(frozen=True, slots=True)
class Joint:
    """What one fastener carries at one face between two sheets, (cases,)."""

    fastener: str
    #: Across it, and along it; pulling is positive.
    shear: Array
    pull: Array


def fastener_forces(built: Built, moves: Array) -> tuple[Joint, ...]:
    """Of every fastener, joint by joint; `moves` is (cases, nodes, 6)."""
    springs = built.mesh.springs
    own = moves.reshape(len(moves), -1)[:, freedoms(springs.ends)]
    force = spring.forces(springs.axes, springs.arms, springs.along, own)
    return tuple(
        Joint(name, np.hypot(force[:, number, 0], force[:, number, 1]), force[:, number, 2])
        for name, numbers in built.springs.items()
        for number in numbers
    )


def bar_forces(mesh: Mesh, moves: Array) -> Array:
    """Pull, shears, twist and moments at both ends of every bar, (cases, bars, 2, 6)."""
    own = moves.reshape(len(moves), -1)[:, freedoms(mesh.bars.ends)]
    return beam.end_forces(long_bars(mesh), own)
