"""Least squares by the steps of Gauss and Newton, over the normal equations."""

import numpy as np

from pedalwright.core.units import Array
from pedalwright.survey.equations import Equations, Truths

#: Steps at most; they end when no coordinate moves farther, mm.
STEPS, SETTLED = 25, 1e-5
#: Added to normal equations that leave something open, 1/mm2: a standard deviation of 30 m.
OPEN = 1e-9
#: A step that makes the fit worse is halved, this often at most.
HALVINGS = 8


def fitted(eq: Equations, at: Array, free: Truths) -> Array:
    """The places that fit the sights best, begun from `at`, (marks, 3); `free` may move."""
    place, before = at, squares(eq, at)
    move = free.reshape(-1)
    for _ in range(STEPS):
        slope = eq.slopes_at(place)[:, move] / eq.sigma[:, None]
        misfit = (eq.predicted(place) - eq.measured) / eq.sigma
        step = np.zeros_like(place)
        step.reshape(-1)[move] = solved(slope.T @ slope, slope.T @ misfit)
        after = squares(eq, place - step)
        for _ in range(HALVINGS):
            if after <= before * (1.0 + 1e-9) + 1e-12:
                break
            step = step / 2.0
            after = squares(eq, place - step)
        place, before = place - step, after
        if np.max(np.abs(step), initial=0.0) < SETTLED:
            break
    return place


def solved(normal: Array, right: Array) -> Array:
    """The solution of normal equations.

    Where they leave something open, such as a mark that its only tape does not reach, it hardly
    moves and comes out with a huge variance.
    """
    try:
        found = np.linalg.solve(normal, right)
    except np.linalg.LinAlgError:
        found = np.linalg.solve(normal + OPEN * np.eye(len(normal)), right)
    return np.asarray(found, dtype=np.float64)


def squares(eq: Equations, at: Array) -> float:
    """Sum of the squared misfits, each over its standard deviation."""
    misfit = (eq.predicted(at) - eq.measured) / eq.sigma
    return float(misfit @ misfit)
