"""What a number is worth: how much of the doubt in open verdicts hangs on its ±.

Every number is moved by its ± up and down, one at a time, in one batch of designs through the one
assessment. A verdict is open where the ± of all numbers together, as squares add, reach the bound.
A number is worth as much as its shares of the doubt in the open verdicts, a wish counting half.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import cast

import numpy as np

from pedalwright.assess import assess
from pedalwright.core.answers import Change
from pedalwright.core.checks import Finding
from pedalwright.core.doubts import Doubt
from pedalwright.core.units import Array, Ratio
from pedalwright.design import Design
from pedalwright.search.changes import changed, number, one

#: A wish counts so much of a demand (ours).
WISH = 0.5
#: Verdicts nearest to their bounds that are looked at where none is open.
NEAREST = 3


@dataclass(frozen=True, kw_only=True, slots=True)
class Worth:
    """A number, and what measuring it better would settle."""

    doubt: Doubt
    #: Of all the doubt in the open verdicts.
    share: Ratio
    #: The verdict it decides most, its share of the doubt there, and what its ± does to it.
    decides: Finding
    decides_share: Ratio
    #: Change of that finding's value for the ±, in its unit.
    moves: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Worths:
    """Numbers by what they are worth, the best first."""

    numbers: tuple[Worth, ...]
    #: Verdicts that may turn within the ±; without any, those nearest to their bounds.
    open: tuple[Finding, ...]
    turns: bool


def worth_measuring(design: Design, doubts: Sequence[Doubt]) -> Worths:
    """Rank the numbers; nothing where none has a ±."""
    nominal = assess(design).findings
    if not doubts:
        return Worths(numbers=(), open=(), turns=False)
    found = assess(_moved(design, doubts)).findings
    margins = _table(found, [f.margin for f in found])
    values = _table(found, [f.value for f in found])
    count = len(doubts)
    up, down = slice(1, count + 1), slice(count + 1, None)
    effects = np.fmax(_off(margins, up), _off(margins, down))  # (findings, numbers)
    reach = np.sqrt(np.sum(effects**2, axis=1))
    distance = np.abs(margins[:, 0])
    turning = (distance <= reach) & (reach > 0.0)
    chosen = np.flatnonzero(turning)
    if not chosen.size:
        nearness = np.where(reach > 0.0, distance / np.where(reach > 0.0, reach, 1.0), np.inf)
        chosen = np.argsort(np.where(np.isfinite(nearness), nearness, np.inf))[:NEAREST]
    chosen = chosen[reach[chosen] > 0.0]
    weights = np.array([_weight(nominal[int(i)]) for i in chosen])
    shares = effects[chosen] ** 2 / reach[chosen, None] ** 2
    worth = np.sum(shares * weights[:, None], axis=0) / max(float(np.sum(weights)), _NONE)
    moves = np.fmax(_off(values, up), _off(values, down))
    best = np.argmax(shares * weights[:, None], axis=0) if chosen.size else np.zeros(count, int)
    numbers = [
        Worth(
            doubt=doubt,
            share=float(worth[i]),
            decides=nominal[int(chosen[best[i]])],
            decides_share=float(shares[best[i], i]),
            moves=float(moves[chosen[best[i]], i]),
        )
        for i, doubt in enumerate(doubts)
        if chosen.size and worth[i] > 0.0
    ]
    numbers.sort(key=lambda each: -float(each.share))
    return Worths(
        numbers=tuple(numbers),
        open=tuple(nominal[int(i)] for i in chosen),
        turns=bool(turning.any()),
    )


def _weight(finding: Finding) -> float:
    return 1.0 if finding.limit.weight == "must" else WISH


#: Instead of nought below a fraction bar.
_NONE = 1e-12


def _moved(design: Design, doubts: Sequence[Doubt]) -> Design:
    """The car as it is, then each number up by its ±, then each down; on the last axis."""
    count = len(doubts)
    shifts: dict[str, Array] = {}
    for i, doubt in enumerate(doubts):
        for move in doubt.moves:
            row = shifts.setdefault(move.path, np.zeros(2 * count + 1))
            row[1 + i] += one(move.by)
            row[1 + count + i] -= one(move.by)
    changes = [
        Change(path, cast("float", number(design, path) + row), "") for path, row in shifts.items()
    ]
    return changed(design, changes)


def _table(found: Sequence[Finding], rows: Sequence[object]) -> Array:
    """(findings, variants)."""
    size = max((np.size(cast("Array", row)) for row in rows), default=1)
    table: Array = np.array([np.broadcast_to(cast("Array", row), size) for row in rows])
    return table.reshape(len(found), size)


def _off(table: Array, some: slice) -> Array:
    """How far variants are from the car as it is; one that cannot be judged says nothing."""
    off: Array = np.nan_to_num(np.abs(table[:, some] - table[:, :1]), nan=0.0, posinf=0.0)
    return off
