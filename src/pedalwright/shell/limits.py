"""What is asked of an answer of the bench before anyone relies on it, and of the sheets in it."""

from collections.abc import Iterable, Iterator

import numpy as np

from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.shell.buckling import Buckling
from pedalwright.shell.build import Built
from pedalwright.shell.bulge import Bulge
from pedalwright.shell.halving import Halving
from pedalwright.shell.judged import Judged
from pedalwright.shell.solve import Answer

SHARP = Limit(
    "shell.sharp_triangle",
    "No triangle of the mesh is so sharp that its stress cannot be trusted.",
    "at least",
    "rad",
    Source("pedalwright", "20 degrees; only a corner of the sheet itself may be sharper", "ours"),
    "should",
)
BALANCE = Limit(
    "shell.balance",
    "The forces found balance the loads.",
    "at most",
    "1",
    Source("pedalwright", "a hundred millionth of the largest load", "ours"),
)
ENERGY = Limit(
    "shell.energy",
    "What the loads do in work is found again as energy of the parts.",
    "at most",
    "1",
    Source("pedalwright", "a hundred millionth of the work", "ours"),
)
FINE = Limit(
    "shell.fine_enough",
    "With triangles half the size the answer stays nearly the same.",
    "at most",
    "1",
    Source("pedalwright", "3 per cent", "ours"),
    "should",
)
FLAT = Limit(
    "shell.bulge",
    "No panel bulges so far that it begins to carry like a net.",
    "at most",
    "mm",
    Source(
        "Timoshenko and Woinowsky-Krieger", "half the thickness; beyond it a band holds", "handbook"
    ),
    "should",
)
YIELD = Limit(
    "shell.yield",
    "One thickness away from bolts, feet and welds no sheet is worked beyond its yield.",
    "at most",
    "MPa",
    Source("pedalwright", "equivalent stress after von Mises, by linear sums", "ours"),
)
BUCKLES = Limit(
    "shell.buckling",
    "No thin web is near to jumping aside.",
    "at least",
    "1",
    Source("pedalwright", "twice the load; hand-made sheet is never quite flat", "ours"),
)

#: What may be left over in the arithmetic; the change that a finer mesh may bring.
ROUNDING, CHANGE = 1e-8, 0.03
LEAST_ANGLE = np.deg2rad(20.0)
#: Share of its thickness that a panel may bulge; load that buckles over load.
SHARE, GROWTH = 0.5, 2.0


def check(built: Built, answer: Answer) -> Iterator[Finding]:
    """Whether the sums themselves can be trusted; the worst of all cases."""
    for name, angle in built.sharpest.items():
        yield SHARP.check(angle, LEAST_ANGLE, name)
    # Contact that did not settle, and anything loose, is nan and so fails by itself.
    settled = np.where(answer.settled, 0.0, np.nan)
    yield BALANCE.check(float(np.max(answer.unbalanced + settled)), ROUNDING)
    lost = np.abs(answer.energy.sum(axis=1) / answer.work - 1) + settled
    yield ENERGY.check(float(np.max(lost)), ROUNDING)


def check_sheets(bulges: Iterable[Bulge], judged: Iterable[Judged]) -> Iterator[Finding]:
    """Whether the sheets stay where linear sums hold; the worst of all cases."""
    for one in bulges:
        yield FLAT.check(float(np.max(one.most)), SHARE * one.thickness, one.sheet)
    for worked in judged:
        yield YIELD.check(float(np.max(worked.stress)), worked.yields, worked.part)


def check_buckling(found: Buckling) -> Finding:
    """Whether the load may grow enough."""
    return BUCKLES.check(found.factor, GROWTH, found.part)


def check_halving(found: Halving, about: str) -> Finding:
    """Whether the mesh is fine enough for one figure."""
    return FINE.check(found.change, CHANGE, about)
