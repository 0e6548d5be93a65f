"""Any one fastener forgotten: the hardest worked of each row left out, and the row looked at again.

A row is tried without the one that bears most, which is nearly always the worst to lose.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.forces import fastener_forces
from pedalwright.structure.box.bench import COARSE
from pedalwright.structure.box.full import Case, Full, without


@dataclass(frozen=True, slots=True)
class Missing:
    """A row without one of its fasteners."""

    row: str
    #: Worst use of those left, by case; infinite where something is loose without it.
    use: Array


def one_missing(whole: Full, cases: Sequence[Case]) -> tuple[Missing, ...]:
    """Every row that holds a part together with more than one fastener."""
    return tuple(_each(whole, cases))


def _each(whole: Full, cases: Sequence[Case]) -> Iterator[Missing]:
    hardest = int(np.argmax(np.abs(whole.answer.work)))
    joints = fastener_forces(whole.built, whole.answer.moves)
    for row in whole.rows:
        own = [one for one in joints if one.fastener.rpartition(", ")[0] == row.name]
        if not own or not row.known:
            continue
        worst = max(own, key=lambda one: float(np.hypot(one.shear[hardest], one.pull[hardest])))
        left = without(whole, worst.fastener, cases, COARSE)
        nothing: Array = np.full(len(cases), np.inf)
        yield Missing(row.name, nothing if left is None else left.use)
