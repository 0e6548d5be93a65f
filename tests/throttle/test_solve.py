"""What the throttle room says at the edges: slack, overshoot, locked levers, missing numbers."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.core.points import RIGHT, Point
from pedalwright.throttle import BallRod, Cable, Spring, SquareRod, Throttle, respond, turned

PAD_RADIUS = 200.0
ROD = BallRod(
    driving_pivot=Point(0.0, 0.0, 0.0),
    driving_axis=RIGHT,
    driving_pin=Point(-20.0, 0.0, 90.0),
    driven_pivot=Point(300.0, 0.0, 40.0),
    driven_axis=RIGHT,
    driven_pin=Point(285.0, 0.0, 75.0),
)
EVEN = Spring(torque_closed=400.0, rate=0.0)
THROTTLE = Throttle(
    pad_room=110.0,
    stages=(ROD,),
    full_opening=np.deg2rad(60.0),
    springs=(EVEN, EVEN),
    friction=100.0,
)


def test_a_cable_takes_up_its_slack_before_it_turns_anything() -> None:
    cable = Cable(driving_radius=60.0, driven_radius=30.0, slack=3.0)
    turn = turned(cable, np.array([0.0, 0.04, 0.05, 0.06]), 0.0)
    np.testing.assert_allclose(turn.angle, [0.0, 0.0, 0.0, 0.02], atol=1e-12)


def test_forces_are_those_at_full_opening_however_far_the_pedal_could_go() -> None:
    far = respond(THROTTLE, PAD_RADIUS)
    assert far.pad_travel_full < THROTTLE.pad_room
    just = respond(replace(THROTTLE, pad_room=float(far.pad_travel_full)), PAD_RADIUS)
    assert far.at_stop > THROTTLE.full_opening
    assert just.at_stop == pytest.approx(THROTTLE.full_opening)
    assert far.effort == pytest.approx(just.effort, rel=1e-9)
    assert far.stop_torque == pytest.approx(just.stop_torque, rel=1e-9)
    at_stop = np.asarray(far.gearing)[-1] * (800.0 + 100.0) / PAD_RADIUS
    assert far.effort != pytest.approx(at_stop, rel=0.01)


def test_where_full_opening_is_not_reached_forces_are_those_at_the_stop() -> None:
    short = respond(replace(THROTTLE, pad_room=40.0), PAD_RADIUS)
    assert short.pad_travel_full > 40.0
    at_stop = np.asarray(short.gearing)[-1] * (800.0 + 100.0) / PAD_RADIUS
    assert short.effort == pytest.approx(at_stop, rel=1e-12)


def test_springs_stretch_no_further_than_full_opening() -> None:
    """Springs that weaken as they open are weakest there, not where the pedal could go."""
    weakening = replace(EVEN, rate=-100.0)
    result = respond(replace(THROTTLE, springs=(weakening, weakening)), PAD_RADIUS)
    assert result.one_spring_lost == pytest.approx(400.0 - 100.0 * THROTTLE.full_opening)


def test_a_single_spring_leaves_nothing_and_no_spring_leaves_nothing() -> None:
    assert respond(replace(THROTTLE, springs=(EVEN,)), PAD_RADIUS).one_spring_lost == 0.0
    assert respond(replace(THROTTLE, springs=()), PAD_RADIUS).one_spring_lost == 0.0


def test_a_lever_turned_right_round_stays_locked() -> None:
    """Two cables gear up so far that the rod behind them would come round on its other side."""
    up = Cable(driving_radius=97.0, driven_radius=20.0, slack=0.0)
    rod = BallRod(
        driving_pivot=Point(0.0, 0.0, 0.0),
        driving_axis=RIGHT,
        driving_pin=Point(0.0, 0.0, 40.0),
        driven_pivot=Point(120.0, 0.0, 0.0),
        driven_axis=RIGHT,
        driven_pin=Point(120.0, 0.0, 40.0),
    )
    round_again = 200.0 * 4.75 / (97.0 / 20.0) ** 2
    throttle = replace(THROTTLE, stages=(up, up, rod), pad_room=round_again)
    assert turned(rod, 4.75, 0.0).angle == pytest.approx(4.75 - 2.0 * np.pi)
    result = respond(throttle, PAD_RADIUS)
    assert np.isnan(result.at_stop)
    answered = np.isfinite(result.spindle_angle)
    assert answered[0]
    assert not answered[-1]
    assert np.array_equal(answered, np.logical_and.accumulate(answered))
    assert result.rod_to_lever <= 0.0


def test_a_rod_that_turns_the_spindle_the_wrong_way_never_opens_it() -> None:
    crossed = replace(ROD, driven_pivot=Point(300.0, 0.0, 110.0))
    result = respond(replace(THROTTLE, stages=(crossed,)), PAD_RADIUS)
    assert result.at_stop < 0.0
    assert np.isnan(result.pad_travel_full)
    assert np.asarray(result.gearing)[-1] < 0.0


@pytest.mark.parametrize(
    "stage", [ROD, SquareRod(driving_radius=80.0, driven_radius=40.0, rod_length=200.0)]
)
def test_what_is_not_known_has_no_answer(stage: BallRod | SquareRod) -> None:
    turn = turned(stage, np.nan, 0.1)
    assert np.isnan(turn.angle)
    assert np.isnan(turn.gearing)
    assert np.isnan(turn.rod_to_lever)
