"""For each limit of the throttle a design that breaks only that one."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.core.points import RIGHT, Point
from pedalwright.throttle import BallRod, Cable, Spring, SquareRod, Throttle, check, respond

PAD_RADIUS = 235.0
GOOD = Throttle(
    pad_room=55.0,
    stages=(
        SquareRod(driving_radius=90.0, driven_radius=34.0, rod_length=350.0),
        SquareRod(driving_radius=78.0, driven_radius=38.0, rod_length=450.0),
    ),
    full_opening=np.deg2rad(78.0),
    springs=(Spring(torque_closed=450.0, rate=60.0), Spring(torque_closed=450.0, rate=60.0)),
    friction=100.0,
)
WEAK, SOFT, STRONG = (Spring(torque_closed=torque, rate=60.0) for torque in (145.0, 225.0, 600.0))

#: A pedal lever that starts 25 degrees off the line of its rod.
SLANTING = BallRod(
    driving_pivot=Point(0.0, 0.0, 0.0),
    driving_axis=RIGHT,
    driving_pin=Point(-226.6, 0.0, 105.7),
    driven_pivot=Point(389.0, 0.0, 100.0),
    driven_axis=RIGHT,
    driven_pin=Point(373.0, 0.0, 128.0),
)


def failed(throttle: Throttle, pad_radius: float = PAD_RADIUS) -> list[str]:
    return [f.limit.code for f in check(respond(throttle, pad_radius)) if not f.ok]


def test_the_good_one_passes_all() -> None:
    assert failed(GOOD) == []
    assert len(list(check(respond(GOOD, PAD_RADIUS)))) == 6


def cable(pull: float) -> tuple[Cable]:
    """A cable that opens the spindle by so many degrees."""
    turn = GOOD.pad_room / PAD_RADIUS
    return (Cable(driving_radius=np.deg2rad(pull) * 32.0 / turn, driven_radius=32.0, slack=0.0),)


@pytest.mark.parametrize(
    ("code", "throttle"),
    [
        ("throttle.full_opening", replace(GOOD, stages=cable(76.5))),
        ("throttle.beyond", replace(GOOD, stages=cable(87.0))),
        ("throttle.dead_point", replace(GOOD, stages=(SLANTING,), full_opening=np.deg2rad(55.0))),
        ("throttle.one_spring", replace(GOOD, springs=(WEAK, STRONG))),
        ("throttle.one_spring", replace(GOOD, springs=(STRONG,))),
        ("throttle.return_force", replace(GOOD, friction=140.0, springs=(SOFT, SOFT))),
        (
            "throttle.effort",
            replace(GOOD, springs=(replace(STRONG, torque_closed=1000.0),) * 2),
        ),
    ],
)
def test_a_design_that_breaks_only_this_limit(code: str, throttle: Throttle) -> None:
    assert failed(throttle) == [code]


def test_within_a_degree_of_full_opening_is_enough() -> None:
    assert failed(replace(GOOD, stages=cable(77.01))) == []
    assert failed(replace(GOOD, stages=cable(76.99))) == ["throttle.full_opening"]


def test_a_linkage_that_locks_is_judged_and_fails() -> None:
    """The pedal lever is so long that the bell crank comes into line with its rod."""
    far = SquareRod(driving_radius=300.0, driven_radius=34.0, rod_length=350.0)
    findings = {
        f.limit.code: f
        for f in check(respond(replace(GOOD, stages=(far, *GOOD.stages[1:])), PAD_RADIUS))
    }
    dead_point = findings["throttle.dead_point"]
    assert dead_point.value == 0.0
    assert dead_point.judged
    assert not dead_point.ok
    assert not findings["throttle.full_opening"].ok


@pytest.mark.parametrize(
    "unknown",
    [
        replace(GOOD, pad_room=np.nan),
        replace(GOOD, stages=(replace(GOOD.stages[0], rod_length=np.nan), GOOD.stages[1])),
        replace(GOOD, stages=(GOOD.stages[0], replace(GOOD.stages[1], driven_radius=np.nan))),
    ],
)
def test_what_is_missing_is_not_judged_and_not_ok(unknown: Throttle) -> None:
    findings = {f.limit.code: f for f in check(respond(unknown, PAD_RADIUS))}
    for code in ("throttle.full_opening", "throttle.dead_point", "throttle.effort"):
        assert not findings[code].judged, code
        assert not findings[code].ok, code


def test_springs_are_judged_though_friction_is_not_known() -> None:
    findings = {f.limit.code: f for f in check(respond(replace(GOOD, friction=np.nan), PAD_RADIUS))}
    assert not findings["throttle.one_spring"].judged
    assert findings["throttle.full_opening"].ok
