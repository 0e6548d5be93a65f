"""The push test at home: what should move, what moved, and which cause explains the difference.

Everything that gives does so in proportion to the push, so a pad's movement is a sum of causes. A
cause is tried by letting it grow or shrink within what is believed of such a figure beforehand, the
others held as expected: the likelier the readings are then, the likelier is the cause (least
squares with a normal prior; D. Sivia and J. Skilling, Data Analysis, from memory).
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from pedalwright.assess import Assessment, assess
from pedalwright.brakes import DESIGN_PUSH
from pedalwright.core.units import Array, N, Ratio, mm, mm_N
from pedalwright.design import Design
from pedalwright.structure import PushTest

#: Pushes a builder tries.
PUSHES = (100.0, 200.0, 300.0, 400.0, 500.0)
#: What a badly bled system adds at the pad at the design push, 1 SD (ours). Air gives most at the
#: first push and little at the last; a straight line is the mean of that.
AIR = 10.0
#: How far off a rule on the pad, and a dial on metal, may be; and a bathroom scale, as a share.
BY_RULE, BY_DIAL, BY_SCALE = 1.0, 0.05, 0.05


@dataclass(frozen=True, kw_only=True, slots=True)
class Suspect:
    """One cause of the pad's movement, and how well its size was known beforehand."""

    name: str
    #: At the pad, at the flange and at the bracket, for each newton on the pad.
    pad: mm_N
    flange: mm_N = 0.0
    bracket: mm_N = 0.0
    #: 1 SD of its size as a share of it (ours).
    spread: Ratio
    #: Whether it is expected at all; air is not.
    expected: bool = True


@dataclass(frozen=True, kw_only=True, slots=True)
class Expected:
    """What should move at one push."""

    push: N
    pad: mm
    flange: mm
    bracket: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Explained:
    """One cause held responsible for the difference."""

    name: str
    #: At the pad at the design push: as expected, and as the readings have it, with its 1 SD.
    expected: mm
    found: mm
    found_spread: mm
    #: Share of belief in this cause among all of them, one cause at a time.
    belief: Ratio


@dataclass(frozen=True, kw_only=True, slots=True)
class PushTestResult:
    """Expected movements, and what the readings say; no causes without readings."""

    expected: tuple[Expected, ...]
    #: Largest difference of a reading from its expectation, in its own 1 SD.
    off_by: Ratio
    #: Likeliest first.
    causes: tuple[Explained, ...]


def push_test(design: Design) -> PushTestResult:
    """What to expect of each push, and the causes of what was measured."""
    suspects = tuple(_suspects(assess(design)))
    tests = design.brake.push_tests
    expected = tuple(_expected(suspects, push) for push in PUSHES)
    if not tests:
        return PushTestResult(expected=expected, off_by=np.nan, causes=())
    readings = _Readings.of(tests, suspects)
    return PushTestResult(
        expected=expected,
        off_by=float(np.max(np.abs(readings.off / readings.spread))),
        causes=_explained(readings, suspects),
    )


def _suspects(assessment: Assessment) -> Iterator[Suspect]:
    """Every cause that gives something; how well each is known is our judgement."""
    give, budget = assessment.brake.strength.give, assessment.brake.budget
    effort = assessment.brake.strength.effort
    arm = give.arm_bending + give.arm_shear + give.arm_twist
    known = {
        "the arm": (arm, 0.15),
        "the push rod": (give.push_rod, 0.3),
        "the relay lever": (give.relay, 0.3),
        "the linings": (budget.linings, 0.5),
        "the callipers": (budget.callipers, 0.5),
        "the hoses": (budget.hoses, 0.5),
        "the fluid": (budget.fluid, 2.0),
    }
    for name, (size, spread) in known.items():
        if float(size) > 0.0:
            yield Suspect(name=name, pad=size / DESIGN_PUSH, spread=spread)
    yield Suspect(
        name="the cylinder's mount",
        pad=give.cylinder_mount / give.push,
        flange=assessment.brake.strength.flange_give / give.push,
        spread=1.0,
    )
    yield Suspect(
        name="the pivot's mount",
        pad=give.pivot_mount / give.push,
        bracket=give.pivot_mount / effort.pivot_force,
        spread=1.0,
    )
    yield Suspect(name="air in the fluid", pad=AIR / DESIGN_PUSH, spread=1.0, expected=False)


def _expected(suspects: Sequence[Suspect], push: N) -> Expected:
    there = [suspect for suspect in suspects if suspect.expected]
    return Expected(
        push=push,
        pad=push * sum(suspect.pad for suspect in there),
        flange=push * sum(suspect.flange for suspect in there),
        bracket=push * sum(suspect.bracket for suspect in there),
    )


@dataclass(frozen=True, kw_only=True, slots=True)
class _Readings:
    """All readings in one column, what each cause makes of them, and how good they are."""

    #: Measured less expected, (readings,).
    off: Array
    spread: Array
    #: (readings, suspects).
    causes: Array

    @classmethod
    def of(cls, tests: Sequence[PushTest], suspects: Sequence[Suspect]) -> "_Readings":
        rows: list[tuple[float, float, list[float]]] = []
        for test in tests:
            push = float(test.push)
            pad = [push * float(suspect.pad) for suspect in suspects]
            flange = [push * float(suspect.flange) for suspect in suspects]
            bracket = [push * float(suspect.bracket) for suspect in suspects]
            rows.append((float(test.pad), BY_RULE, pad))
            if test.flange is not None:
                rows.append((float(test.flange), BY_DIAL, flange))
            if test.bracket is not None:
                rows.append((float(test.bracket), BY_DIAL, bracket))
        causes = np.array([row for _, _, row in rows])
        expected = causes @ np.array([float(suspect.expected) for suspect in suspects])
        by_hand = np.array([good for _, good, _ in rows])
        return cls(
            off=np.array([read for read, _, _ in rows]) - expected,
            spread=np.hypot(by_hand, BY_SCALE * expected),
            causes=causes,
        )


def _explained(readings: _Readings, suspects: Sequence[Suspect]) -> tuple[Explained, ...]:
    """Each cause alone let free: its best size, and how likely that makes the readings."""
    fits = [
        _alone(readings, column, suspect.spread)
        for column, suspect in zip(readings.causes.T, suspects, strict=True)
    ]
    evidence = np.array([likely for _, _, likely in fits])
    belief = np.exp(evidence - np.max(evidence))
    belief = belief / np.sum(belief)
    found: list[Explained] = []
    for suspect, (more, spread, _), share in zip(suspects, fits, belief, strict=True):
        size = DESIGN_PUSH * float(suspect.pad)
        expected = size if suspect.expected else 0.0
        found.append(
            Explained(
                name=suspect.name,
                expected=expected,
                found=max(0.0, expected + size * more),
                found_spread=size * spread,
                belief=float(share),
            )
        )
    return tuple(sorted(found, key=lambda cause: -cause.belief))


def _alone(readings: _Readings, column: Array, believed: Ratio) -> tuple[float, float, float]:
    """How much more of one cause there is, its 1 SD, and how likely that makes the readings.

    Readings d = x c + noise of their spread, x normal about 0 with the spread believed; the
    likelihood as its logarithm, what all causes share left out.
    """
    weight = 1.0 / readings.spread**2
    curvature = float(np.sum(weight * column**2)) + 1.0 / float(believed) ** 2
    slope = float(np.sum(weight * column * readings.off))
    more = slope / curvature
    misfit = float(np.sum(weight * readings.off**2)) - slope * more
    likely = -0.5 * misfit - 0.5 * np.log(curvature * float(believed) ** 2)
    return more, curvature**-0.5, float(likely)
