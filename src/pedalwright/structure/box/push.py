"""From one newton on the pad to what the box gives, and who of it."""

import numpy as np

from pedalwright.core.points import Point
from pedalwright.core.units import Array, N, Num
from pedalwright.core.working import subject
from pedalwright.structure.box.parts import BoxGive, Held, PartGive, Push
from pedalwright.structure.formulas.stiffness import give_of_energy

#: Freedoms of the flange, of the shaft.
FLANGE, SHAFT = slice(0, 6), slice(6, 12)


def box_give(held: Held, unit: Push, push: N) -> BoxGive:
    """At one push, or at many: forces may be batches, the box is one and the same."""
    forces = loads(held, unit) * push
    moves = np.einsum("ij,j...->i...", held.give, forces)
    work = 0.5 * forces * moves
    with subject("box"):
        flange = give_of_energy(np.sum(work[FLANGE], axis=0), push)
        pivot = give_of_energy(np.sum(work[SHAFT], axis=0), push)
    energy = 0.5 * np.einsum("i...,pij,j...->p...", forces, held.by_part, forces)
    each = zip(held.parts, 2 * energy / push, strict=True)
    along = forces[:3] / np.sqrt(np.sum(forces[:3] ** 2, axis=0))
    return BoxGive(
        push=push,
        flange=flange,
        pivot=pivot,
        total=flange + pivot,
        flange_moves=np.sum(moves[:3] * along, axis=0),
        by_part=tuple(PartGive(part, own) for part, own in each),
        joints=held.joints,
    )


def loads(held: Held, unit: Push) -> Array:
    """Forces and moments at the two points that stand for flange and shaft, (12, variants)."""
    on_flange = _at(held.flange, unit.at_flange, unit.flange)
    on_shaft = _at(held.shaft, unit.at_pivot, unit.pivot)
    turns = (unit.turns.x, unit.turns.y, unit.turns.z)
    on_shaft = (*on_shaft[:3], *(a + b for a, b in zip(on_shaft[3:], turns, strict=True)))
    stacked: Array = np.stack(np.broadcast_arrays(*on_flange, *on_shaft))
    return stacked


def _at(stands: Point, at: Point, force: Point) -> tuple[Num, ...]:
    """A force moved to the point that stands for it, with the moment that takes."""
    moment = (at - stands).cross(force)
    return force.x, force.y, force.z, moment.x, moment.y, moment.z
