"""What a cure costs: minutes of work, parts to buy, and what gets worse."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from pedalwright.brakes import earliest_rear_lock
from pedalwright.brakes.formulas import GRAVITY, braking_rate
from pedalwright.core.answers import Price, Sentence, sentence
from pedalwright.core.checks import Finding
from pedalwright.core.units import Num
from pedalwright.search.changes import one
from pedalwright.search.judged import Judged
from pedalwright.search.reasons import reason

#: Share of a figure, or of a bound, below which a change is not noticed (ours).
NOTICED = 0.005
#: The same for a demand that is missed already.
WORSENED = 0.02


@dataclass(frozen=True, slots=True)
class Job:
    """A piece of work at home, with its trial; minutes are ours, for careful first-timers."""

    minutes: float
    buy: str


BRAKE_CYLINDER = Job(120.0, "master cylinder, brake fluid")
BRAKE_CYLINDERS = Job(180.0, "two master cylinders, brake fluid")
WHEEL_CYLINDERS = Job(150.0, "two wheel cylinders, brake fluid")
CLUTCH_CYLINDER = Job(90.0, "master cylinder, brake fluid")
PIN_HOLE = Job(60.0, "")
ROD_GAP = Job(15.0, "")
MOVE_CYLINDER = Job(90.0, "")
MOVE_REST = Job(30.0, "")
NEW_ROD = Job(40.0, "rod")
SERVO = Job(480.0, "servo with its master cylinder, vacuum hose and valve")
LINING_LIFT = Job(60.0, "")
HOSES = Job(90.0, "set of hoses, brake fluid")
LININGS = Job(120.0, "set of linings for the front axle")
ALL_LININGS = Job(180.0, "linings for both axles")
STIFFER_MOUNT = Job(300.0, "3 mm plate, fasteners")
DEEPER_ARM = Job(180.0, "flat bar for a new arm")
THICKER_ROD = Job(30.0, "rod, clevis and lock-nut")
TAKE_VALVE_OUT = Job(60.0, "plain union, brake fluid")
CRACK_NIPPLE = Job(30.0, "brake fluid")
BAR_OFFSET = Job(20.0, "")
FREE_PLAY = Job(15.0, "")
PEDAL_STOP = Job(45.0, "M8 bolt, two nuts, scrap of plate")
TOE_POCKET = Job(180.0, "sheet for a pocket, rivets")
THROTTLE_LEVER = Job(60.0, "flat bar for a lever")
STRONGER_SPRING = Job(20.0, "return spring")


def price(job: Job, before: Judged, after: Judged) -> Price:
    """The price of a job that leads from one assessment to the other."""
    return Price(minutes=job.minutes, buy=job.buy, worse=tuple(worse(before, after)))


def worse(before: Judged, after: Judged) -> Iterator[Sentence]:
    """What a driver feels getting worse, by more than half a per cent; then what is missed."""
    for words, unit, was, now, grows in _felt(before, after):
        if (now - was if grows else was - now) > NOTICED * abs(was):
            yield sentence(words, (now, unit), (was, unit))
    yield from newly_missed(before, after)


def newly_missed(before: Judged, after: Judged) -> Iterator[Sentence]:
    """Wishes that were met and no longer are."""
    met = {(f.limit.code, f.about) for f in before.findings if f.ok}
    for f in after.findings:
        if f.limit.weight == "should" and not f.ok and (f.limit.code, f.about) in met:
            yield reason(f)


def missed_more(before: Judged, after: Judged) -> tuple[Sentence, ...]:
    """Demands that must be met and that are missed newly, or by more than before."""
    margins = {(f.limit.code, f.about): one(f.margin) for f in before.findings}

    def worsened(finding: Finding) -> bool:
        was = margins.get((finding.limit.code, finding.about), np.inf)
        return was >= 0.0 or was - one(finding.margin) > WORSENED * max(1.0, -was)

    musts = [f for f in after.findings if f.limit.weight == "must" and not f.ok]
    return tuple(reason(f) for f in musts if worsened(f))


def weaker_circuit(assessment: Judged) -> float:
    """Deceleration at 500 N with the better circuit lost."""
    result = assessment.brake.result
    return min(one(result.front_alone_500), one(result.rear_alone_500))


def longer_lost(assessment: Judged) -> float:
    """Pad travel to the hard stop with the circuit lost that leaves the longer way."""
    result = assessment.brake.result
    return max(one(result.pad_travel_front_alone), one(result.pad_travel_rear_alone))


def front_first(assessment: Judged) -> float:
    """Up to here the front wheels lock first at every friction, as a share of gravity."""
    return one(braking_rate.rule(earliest_rear_lock(assessment.brake.result), GRAVITY))


def _felt(before: Judged, after: Judged) -> Iterator[tuple[str, str, float, float, bool]]:
    """Words, unit, before, after, and whether more is worse."""

    def pair(was: Num, now: Num) -> tuple[float, float]:
        return one(was), one(now)

    b, a = before.brake, after.brake
    yield (
        "a full stop takes {}, not {}",
        "N",
        *pair(b.result.effort_6_43, a.result.effort_6_43),
        True,
    )
    yield (
        "the brake pad goes {}, not {}, at 500 N",
        "mm",
        *pair(b.budget.total, a.budget.total),
        True,
    )
    yield (
        "the weaker circuit alone gives {}, not {}",
        "m/s2",
        weaker_circuit(before),
        weaker_circuit(after),
        False,
    )
    yield (
        "the rear wheels lock first from {}, not {}",
        "m/s2",
        *pair(earliest_rear_lock(b.result), earliest_rear_lock(a.result)),
        False,
    )
    c, d = before.clutch.result, after.clutch.result
    yield "the clutch takes {}, not {}", "N", *pair(c.effort, d.effort), True
    yield "the clutch pad goes {}, not {}", "mm", *pair(c.budget.total, d.budget.total), True
    t, u = before.throttle.result, after.throttle.result
    yield "the accelerator takes {}, not {}", "N", *pair(t.effort, u.effort), True
    yield (
        "a rod comes within {} of its lever, not {}",
        "rad",
        *pair(t.rod_to_lever, u.rod_to_lever),
        False,
    )
