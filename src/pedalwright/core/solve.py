"""The two equations every linkage of the house comes down to, in closed form.

No answer is nan: wrap a room's solver in `no_answer_is_nan` so that an unreachable linkage
fails its finding by itself, without a warning and without an exception.
"""

from collections.abc import Callable
from contextvars import ContextVar
from functools import wraps
from typing import ParamSpec, TypeVar

import numpy as np

from pedalwright.core.units import Num

P = ParamSpec("P")
T = TypeVar("T")


#: True inside a solver that is quiet already: there are a hundred of them in one assessment.
_quiet: ContextVar[bool] = ContextVar("quiet", default=False)


def no_answer_is_nan(solver: Callable[P, T]) -> Callable[P, T]:
    """Let square roots of negative numbers, and the like, come out as nan without a warning."""

    @wraps(solver)
    def quiet(*args: P.args, **kwargs: P.kwargs) -> T:
        if _quiet.get():
            return solver(*args, **kwargs)
        token = _quiet.set(True)
        try:
            with np.errstate(invalid="ignore", divide="ignore"):
                return solver(*args, **kwargs)
        finally:
            _quiet.reset(token)

    return quiet


def swing_roots(a: Num, b: Num, c: Num) -> tuple[Num, Num]:
    """Both angles that solve a cos(angle) + b sin(angle) = c, in rad.

    This is "a pin on a circle meets a length or a plane": the rod of a lever, the four-bar of
    a throttle, the pad reaching a wall. The first root lies before the direction (a, b), the
    second after it, each in (-2 pi, 2 pi). nan where the circle does not reach.
    """
    middle = np.arctan2(b, a)
    half = np.arccos(c / np.hypot(a, b))
    return middle - half, middle + half


def wrapped(angle: Num) -> Num:
    """The same angle between -pi and pi."""
    return np.arctan2(np.sin(angle), np.cos(angle))
