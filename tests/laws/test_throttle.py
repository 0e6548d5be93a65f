"""Laws of the throttle: work, full opening, locking, torques, batches."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from hypothesis.strategies import DrawFn

from laws.throttle_cases import (
    CABLES,
    PADS,
    SPRINGS,
    SQUARE_RODS,
    ball_rods,
    between,
    throttles,
)
from pedalwright.core.batch import over, pick, stack
from pedalwright.core.units import Num
from pedalwright.throttle import (
    Spring,
    SquareRod,
    Throttle,
    respond,
    turned,
)


@given(throttles(), PADS)
def test_work_in_is_work_out(throttle: Throttle, pad_radius: float) -> None:
    """A frictionless chain passes on work: the push that holds a torque is torque x slope."""
    frictionless = replace(
        throttle,
        friction=0.0,
        springs=(Spring(torque_closed=1000.0, rate=0.0),),
        full_opening=3.0,
    )
    step = 1e-4
    room = frictionless.pad_room
    result = respond(frictionless, pad_radius)
    assume(0.05 < result.at_stop < 2.9)
    assume(result.rod_to_lever > 0.15)
    stretch = Stretch(frictionless, pad_radius)
    moved = stretch.spindle(room + step) - stretch.spindle(room - step)
    assume(stretch.spindle(room - step) > 0.0)
    work_out = 1000.0 * moved
    assert result.effort * 2.0 * step == pytest.approx(work_out, rel=1e-5)
    assert result.stop_torque * moved == pytest.approx(300.0 * 2.0 * step, rel=1e-5)


class Stretch:
    """The same linkage, set up for its own room, pressed to another pad travel."""

    def __init__(self, throttle: Throttle, pad_radius: float) -> None:
        self.throttle, self.pad_radius = throttle, pad_radius

    def spindle(self, pad_travel: float) -> float:
        angle: Num = pad_travel / self.pad_radius
        middle: Num = self.throttle.pad_room / self.pad_radius / 2.0
        for stage in self.throttle.stages:
            angle, middle = turned(stage, angle, middle).angle, turned(stage, middle, middle).angle
        return float(angle)


@given(throttles(), PADS)
def test_the_pad_travel_that_opens_it_fully_opens_it_fully(
    throttle: Throttle, pad_radius: float
) -> None:
    result = respond(throttle, pad_radius)
    assume(np.isfinite(result.pad_travel_full))
    spindle = Stretch(throttle, pad_radius).spindle(float(result.pad_travel_full))
    assert spindle == pytest.approx(throttle.full_opening, abs=1e-6)
    assume(np.isfinite(result.at_stop))  # it may lock beyond full opening
    assert (result.at_stop > throttle.full_opening) == (result.pad_travel_full < throttle.pad_room)


@given(throttles(), PADS)
def test_once_locked_it_stays_locked(throttle: Throttle, pad_radius: float) -> None:
    result = respond(throttle, pad_radius)
    answered = np.isfinite(result.spindle_angle)
    assert np.array_equal(answered, np.logical_and.accumulate(answered))
    assert np.isfinite(result.at_stop) == answered[-1]
    assert answered[-1] or not result.rod_to_lever > 0.0
    if np.isfinite(result.pad_travel_full) and result.pad_travel_full < throttle.pad_room:
        station = throttle.pad_room / 40.0
        last = np.max(np.asarray(result.pad_travel)[answered])
        assert result.pad_travel_full < last + station


@given(throttles(), PADS)
def test_torques_and_forces(throttle: Throttle, pad_radius: float) -> None:
    result = respond(throttle, pad_radius)
    assume(np.isfinite(result.at_stop))
    assume(result.at_stop > 0.0)
    opened = np.minimum(result.spindle_angle, throttle.full_opening)
    torques = [spring.torque_closed + spring.rate * opened for spring in throttle.springs]
    left = [np.min(sum(torques) - torque) for torque in torques]
    assert result.one_spring_lost == pytest.approx(min(left), rel=1e-9)
    sprung = [
        replace(spring, torque_closed=2.0 * spring.torque_closed, rate=2.0 * spring.rate)
        for spring in throttle.springs
    ]
    double = respond(
        replace(throttle, springs=tuple(sprung), friction=2.0 * throttle.friction), pad_radius
    )
    for name in ("one_spring_lost", "effort", "return_force"):
        assert getattr(double, name) == pytest.approx(2.0 * getattr(result, name), rel=1e-9), name
    assert result.return_force < result.effort or result.gearing.min() < 0.0


def same(one: Num, other: Num) -> Num:
    assert np.shape(one) == np.shape(other)
    np.testing.assert_allclose(one, other, rtol=1e-9, atol=1e-9)
    return one


@st.composite
def alike(draw: DrawFn) -> list[Throttle]:
    """Throttles of the same make-up, so that they make a batch."""
    kinds = draw(
        st.lists(st.sampled_from([ball_rods(), SQUARE_RODS, CABLES]), min_size=1, max_size=2)
    )
    return [
        Throttle(
            pad_room=draw(between(30, 80)),
            stages=tuple(draw(kind) for kind in kinds),
            full_opening=draw(between(1.1, 1.5)),
            springs=(draw(SPRINGS), draw(SPRINGS)),
            friction=draw(between(20, 200)),
        )
        for _ in range(3)
    ]


@given(alike(), st.lists(PADS, min_size=3, max_size=3))
def test_a_batch_equals_its_singles(rows: list[Throttle], pads: list[float]) -> None:
    together = respond(stack(rows), np.array(pads))
    for i, (row, pad_radius) in enumerate(zip(rows, pads, strict=True)):
        over(same, respond(row, pad_radius), pick(together, i))


@given(throttles(), PADS, st.lists(between(30, 90), min_size=2, max_size=3))
def test_a_batch_in_one_number_only(
    throttle: Throttle, pad_radius: float, radii: list[float]
) -> None:
    """One radius, or one spring, as an array; all else plain numbers."""
    last = SquareRod(driving_radius=60.0, driven_radius=np.array(radii), rod_length=200.0)
    together = respond(replace(throttle, stages=(*throttle.stages[:1], last)), pad_radius)
    torques = np.array([10.0 * radius for radius in radii])
    weak = Spring(torque_closed=torques, rate=0.0)
    sprung = respond(replace(throttle, springs=(throttle.springs[0], weak)), pad_radius)
    for i, radius in enumerate(radii):
        stages = (*throttle.stages[:1], replace(last, driven_radius=radius))
        over(same_value, respond(replace(throttle, stages=stages), pad_radius), pick(together, i))
        alone = replace(
            throttle, springs=(throttle.springs[0], replace(weak, torque_closed=10.0 * radius))
        )
        over(same_value, respond(alone, pad_radius), pick(sprung, i))


def same_value(one: Num, other: Num) -> Num:
    np.testing.assert_allclose(one, np.broadcast_to(other, np.shape(one)), rtol=1e-9, atol=1e-9)
    return one
