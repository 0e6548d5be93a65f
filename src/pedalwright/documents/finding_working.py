"""The working behind one finding: from its figure back to the numbers it came from.

Formulas hand numbers on unchanged, so a step led to another when its answer is the very number
that went into it. Plain numbers that turn up everywhere (0, 1, 2) lead nowhere.
"""

from collections.abc import Sequence

import numpy as np

from pedalwright.core.checks import Finding
from pedalwright.core.units import Num
from pedalwright.core.working import Step

#: A working longer than this is not read; the whole is in the dossier.
MOST_STEPS = 24


def leading_to(finding: Finding, steps: Sequence[Step]) -> list[Step]:
    """The steps behind a finding, in the order they ran; empty where its figure is no step's."""
    found: dict[int, Step] = {}
    wanted = [(_number(finding.value), len(steps), finding.about)]
    while wanted and len(found) < MOST_STEPS:
        number, before, about = wanted.pop(0)
        at = _ran(number, steps, before, about)
        if at is None or at in found:
            continue
        step = found[at] = steps[at]
        wanted += [(_number(value), at, step.subject) for value in step.arguments.values()]
    return [found[at] for at in sorted(found)]


def _ran(number: float | None, steps: Sequence[Step], before: int, about: str) -> int | None:
    """The step before that with this answer, of the same part of the car if there are several."""
    if number is None:
        return None
    same = [at for at in range(before) if _number(steps[at].value) == number]
    words = set(about.replace(",", " ").split())
    return max(same, key=lambda at: (_shared(words, steps[at]), at), default=None)


def _shared(words: set[str], step: Step) -> int:
    return len(words & set(step.subject.replace(",", " ").split()))


def _number(value: Num) -> float | None:
    """A single number that can be told from others."""
    if np.ndim(value):
        return None
    number = float(value)
    plain = not np.isfinite(number) or (number.is_integer() and abs(number) <= 2.0)
    return None if plain else number
