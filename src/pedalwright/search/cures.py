"""Cures: changes that are tried one by one, assessed together, and ranked by what they buy."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from pedalwright.core.answers import Sentence, Step
from pedalwright.design import Design
from pedalwright.search.changes import Changes
from pedalwright.search.prices import Job, missed_more, price
from pedalwright.search.tried import Candidate, alone, tried


@dataclass(frozen=True, kw_only=True, slots=True)
class Cure:
    """A change worth trying."""

    what: Sentence
    changes: Changes
    job: Job
    assumed: bool = False
    #: The car with it built in, where that is more than some numbers changed.
    made: Design | None = None


#: A cure that gains less than this share is none (ours).
NOTICED = 0.002
#: What a cure is bought for, as one number: less of it is better.
Measure = Callable[[Candidate], float]
#: What it brings, said from the car before and after.
Brings = Callable[[Candidate, Candidate], Sentence]


#: Whether a cure is enough by itself.
Enough = Callable[[Candidate], bool]


def ranked(
    design: Design,
    cures: Sequence[Cure],
    measure: Measure,
    brings: Brings,
    enough: Enough = lambda _: True,
) -> tuple[Step, ...]:
    """Cures that lower the measure, most of it for an hour's work first.

    Those that are enough by themselves come before the others. Cures that miss a demand more
    than before come last, however much they gain.
    """
    if not cures:
        return ()
    numbers = [cure for cure in cures if cure.made is None]
    before, *changed = tried(design, [(), *(cure.changes for cure in numbers)]).all()
    was = measure(before)
    pairs = [
        *zip(numbers, changed, strict=True),
        *((cure, alone(cure.made, told=cure.changes)) for cure in cures if cure.made is not None),
    ]
    found: list[tuple[bool, bool, float, Step]] = []
    for cure, candidate in pairs:
        now = measure(candidate)
        if not (np.isnan(was) and np.isfinite(now)) and not was - now > NOTICED * abs(was):
            continue
        breaks = missed_more(before.assessment, candidate.assessment)
        step = Step(
            what=cure.what,
            brings=brings(before, candidate),
            price=price(cure.job, before.assessment, candidate.assessment),
            changes=cure.changes,
            assumed=cure.assumed,
            breaks=breaks,
        )
        worth = (was - now) / cure.job.minutes
        found.append((bool(breaks), not enough(candidate), -worth, step))
    return tuple(step for *_, step in sorted(found, key=lambda entry: entry[:3]))


def step_to(
    before: Candidate, after: Candidate, what: Sentence, brings: Sentence, job: Job
) -> Step:
    """From one candidate to another as a step, its price read from both assessments."""
    return Step(
        what=what,
        brings=brings,
        price=price(job, before.assessment, after.assessment),
        changes=after.changes,
        breaks=missed_more(before.assessment, after.assessment),
    )
