"""Least squares by the steps of Gauss and Newton, over the normal equations of a net.

A sight knows two marks, so its share of the normal equations is four blocks of 3 by 3. They are
put together block by block and factored a few columns at a time: products that small are worked
on one core, which is quicker than waking the others, and does not wait for them on a busy machine.
"""

import numpy as np

from pedalwright.core.units import Array
from pedalwright.survey.equations import Equations, Truths

#: Steps at most; they end when no coordinate moves farther, mm.
STEPS, SETTLED = 25, 1e-5
#: Added to normal equations that leave something open, 1/mm2: a standard deviation of 30 m.
OPEN = 1e-9
#: A step that makes the fit worse is halved, this often at most.
HALVINGS = 8
#: Columns that are eliminated together.
PANEL = 12


def fitted(eq: Equations, at: Array, free: Truths, settled: float = SETTLED) -> Array:
    """The places that fit the sights best, begun from `at`, (marks, 3); `free` may move."""
    place, before = at, squares(eq, at)
    move = free.reshape(-1)
    if not move.any():
        return place
    for _ in range(STEPS):
        change = eq.changes_at(place) / eq.sigma[:, None]
        misfit = (eq.predicted(place) - eq.measured) / eq.sigma
        right = gathered(eq, change * misfit[:, None], len(place))[move]
        step = np.zeros_like(place)
        step.reshape(-1)[move] = solved(normal(eq, change, len(place), move), right[:, None])[:, 0]
        after = squares(eq, place - step)
        for _ in range(HALVINGS):
            if after <= before * (1.0 + 1e-9) + 1e-12:
                break
            step = step / 2.0
            after = squares(eq, place - step)
        place, before = place - step, after
        if np.max(np.abs(step), initial=0.0) < settled:
            break
    return place


def squares(eq: Equations, at: Array) -> float:
    """Sum of the squared misfits, each over its standard deviation."""
    misfit = (eq.predicted(at) - eq.measured) / eq.sigma
    return float(misfit @ misfit)


def normal(eq: Equations, change: Array, marks: int, move: Truths) -> Array:
    """Normal equations of what may move; `change` is (sights, 3), over the standard deviation."""
    blocks = np.zeros((marks + 1, marks + 1, 3, 3))  # the datum stands behind the last mark
    products = change[:, :, None] * change[:, None, :]
    np.add.at(blocks, (eq.last, eq.last), products)
    np.add.at(blocks, (eq.first, eq.first), products)
    np.subtract.at(blocks, (eq.last, eq.first), products)
    np.subtract.at(blocks, (eq.first, eq.last), products)
    square = blocks[:-1, :-1].transpose(0, 2, 1, 3).reshape(3 * marks, 3 * marks)
    return square[np.ix_(move, move)]


def gathered(eq: Equations, rows: Array, marks: int) -> Array:
    """For each coordinate the sum over its sights; `rows` are (sights, 3) at their far ends."""
    sums = np.zeros((marks + 1, 3))
    np.add.at(sums, eq.last, rows)
    np.subtract.at(sums, eq.first, rows)
    return sums[:-1].reshape(-1)


def solved(square: Array, right: Array) -> Array:
    """The solution of normal equations for one or more right sides, (unknowns, sides).

    Where they leave something open, such as a mark that its only tape does not reach, it hardly
    moves and comes out with a huge variance.
    """
    try:
        lower = _factor(square)
    except np.linalg.LinAlgError:
        lower = _factor(square + OPEN * np.eye(len(square)))
    count = len(square)
    panels = [slice(start, min(start + PANEL, count)) for start in range(0, count, PANEL)]
    found = np.array(right, dtype=np.float64)
    for panel in panels:
        found[panel] -= lower[panel, : panel.start] @ found[: panel.start]
        found[panel] = np.linalg.solve(lower[panel, panel], found[panel])
    for panel in reversed(panels):
        found[panel] -= lower[panel.stop :, panel].T @ found[panel.stop :]
        found[panel] = np.linalg.solve(lower[panel, panel].T, found[panel])
    return found


def _factor(square: Array) -> Array:
    """The factor of Cholesky; its upper triangle is not cleared."""
    lower, count = square.copy(), len(square)
    for start in range(0, count, PANEL):
        panel, rest = slice(start, start + PANEL), slice(start + PANEL, count)
        lower[panel, panel] = np.linalg.cholesky(lower[panel, panel])
        if start + PANEL < count:
            below = np.linalg.solve(lower[panel, panel], lower[rest, panel].T).T
            lower[rest, panel] = below
            lower[rest, rest] -= below @ below.T
    return lower
