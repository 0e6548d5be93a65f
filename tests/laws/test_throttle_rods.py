"""Laws of one rod or cable: lengths, gearing, there and back, mirrors, dead points."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from laws.throttle_cases import (
    RODS,
    SQUARE_RODS,
    STAGES,
    ball_rods,
    between,
    directions,
)
from pedalwright.core.points import RIGHT, Point
from pedalwright.throttle import (
    BallRod,
    SquareRod,
    Stage,
    placed,
    turned,
    turned_back,
)


@given(ball_rods(), between(-0.3, 0.3))
def test_the_rod_keeps_its_length(rod: BallRod, angle: float) -> None:
    turn = turned(rod, angle, 0.0)
    assume(np.isfinite(turn.angle))
    near = (rod.driving_pin - rod.driving_pivot).turned(rod.driving_axis.unit(), angle)
    far = (rod.driven_pin - rod.driven_pivot).turned(rod.driven_axis.unit(), turn.angle)
    now = (rod.driven_pivot + far) - (rod.driving_pivot + near)
    length = (rod.driven_pin - rod.driving_pin).length()
    assert now.length() == pytest.approx(length, rel=1e-9)


@given(RODS)
def test_nothing_moves_at_rest(rod: BallRod | SquareRod) -> None:
    turn = turned(rod, 0.0, 0.1)
    assume(np.isfinite(turn.angle))
    assert turn.angle == pytest.approx(0.0, abs=1e-9)


@given(STAGES, between(0.05, 0.3), between(0.0, 0.15))
def test_gearing_is_the_slope_of_the_turn(stage: Stage, angle: float, middle: float) -> None:
    step = 1e-5
    turn = turned(stage, angle, middle)
    assume(turn.angle > 0.0)
    assume(turn.rod_to_lever > 0.1)
    after, before = turned(stage, angle + step, middle), turned(stage, angle - step, middle)
    slope = (after.angle - before.angle) / (2.0 * step)
    assert turn.gearing == pytest.approx(slope, rel=1e-6)


@given(STAGES, between(0.02, 0.3), between(0.0, 0.15))
def test_there_and_back_again(stage: Stage, angle: float, middle: float) -> None:
    turn = turned(stage, angle, middle).angle
    assume(turn != 0.0)
    assume(np.isfinite(turn))
    assert turned_back(stage, turn, middle) == pytest.approx(angle, abs=1e-7)


@given(SQUARE_RODS, between(0.05, 0.2))
def test_a_square_rod_is_square_at_mid_travel_and_gears_by_its_radii(
    rod: SquareRod, middle: float
) -> None:
    turn = turned(rod, middle, middle)
    assume(np.isfinite(turn.angle))
    assert turn.gearing == pytest.approx(rod.driving_radius / rod.driven_radius, rel=1e-9)
    assert turn.rod_to_lever == pytest.approx(np.pi / 2, abs=1e-6)


@given(SQUARE_RODS, between(0.05, 0.2))
def test_a_long_square_rod_swings_alike_on_both_sides(rod: SquareRod, middle: float) -> None:
    """Hand rule for a long rod: both pins move alike across, so the sines go by the radii."""
    long = replace(rod, rod_length=1e7)
    assume(rod.driving_radius * np.sin(middle) < 0.9 * rod.driven_radius)
    half = np.arcsin(rod.driving_radius * np.sin(middle) / rod.driven_radius)
    assert turned(long, 2.0 * middle, middle).angle == pytest.approx(2.0 * half, abs=1e-4)


@given(ball_rods(axes=st.sampled_from([RIGHT, -RIGHT])), between(-0.25, 0.25))
def test_a_ball_rod_in_a_plane_is_the_four_bar_of_the_textbook(rod: BallRod, angle: float) -> None:
    """Closed by the law of cosines in the triangle spindle, near pin, far pin."""
    turn = turned(rod, angle, 0.0).angle
    assume(np.isfinite(turn))
    near = rod.driving_pivot + (rod.driving_pin - rod.driving_pivot).turned(rod.driving_axis, angle)
    arm = (rod.driven_pin - rod.driven_pivot).length()
    length = (rod.driven_pin - rod.driving_pin).length()

    def inner(pin: Point, far: Point) -> tuple[float, float]:
        """Direction of the near pin from the spindle, and angle there between it and the lever."""
        gap = pin - rod.driven_pivot
        base = gap.length()
        corner = np.arccos((base**2 + arm**2 - length**2) / (2.0 * base * arm))
        lever = far - rod.driven_pivot
        side = np.sign(gap.cross(lever).dot(rod.driven_axis))
        towards = np.arctan2(gap.dot(Point(0.0, 0.0, 1.0)), gap.dot(Point(1.0, 0.0, 0.0)))
        return float(towards), float(side * corner)

    turns_to_z = -float(rod.driven_axis.y)  # +y carries z towards x
    start, corner = inner(rod.driving_pin, rod.driven_pin)
    now, corner_now = inner(
        near, rod.driven_pivot + ((rod.driven_pin - rod.driven_pivot).turned(rod.driven_axis, turn))
    )
    expected = (now - start) * turns_to_z + corner_now - corner
    assert np.sin((turn - expected) / 2.0) == pytest.approx(0.0, abs=1e-7)


@given(SQUARE_RODS, between(-0.2, 0.2))
def test_a_square_rod_is_a_ball_rod(rod: SquareRod, angle: float) -> None:
    one, other = turned(rod, angle, 0.0), turned(placed(rod), angle, 0.0)
    np.testing.assert_allclose(one.angle, other.angle, atol=1e-12)
    np.testing.assert_allclose(one.gearing, other.gearing, rtol=1e-12)


def moved(rod: BallRod, shift: Point, about: Point, angle: float) -> BallRod:
    def there(point: Point) -> Point:
        return point.turned(about, angle) + shift

    return BallRod(
        driving_pivot=there(rod.driving_pivot),
        driving_axis=rod.driving_axis.turned(about, angle),
        driving_pin=there(rod.driving_pin),
        driven_pivot=there(rod.driven_pivot),
        driven_axis=rod.driven_axis.turned(about, angle) * 7.5,
        driven_pin=there(rod.driven_pin),
    )


@given(ball_rods(), between(-0.25, 0.25), directions(), between(-3, 3))
def test_moving_and_turning_the_car_changes_nothing(
    rod: BallRod, angle: float, about: Point, turn: float
) -> None:
    """Nor does the length of an axis."""
    other = moved(rod, Point(120.0, -300.0, 45.0), about.unit(), turn)
    assert_same(rod, other, angle)


@given(ball_rods(), between(-0.25, 0.25))
def test_the_other_hand_works_alike(rod: BallRod, angle: float) -> None:
    """An axis is not an arrow: in the mirror the part across the car is the one that stays."""
    other = BallRod(
        driving_pivot=rod.driving_pivot.mirrored(),
        driving_axis=-rod.driving_axis.mirrored(),
        driving_pin=rod.driving_pin.mirrored(),
        driven_pivot=rod.driven_pivot.mirrored(),
        driven_axis=-rod.driven_axis.mirrored(),
        driven_pin=rod.driven_pin.mirrored(),
    )
    assert_same(rod, other, angle)


def assert_same(one: BallRod, other: BallRod, angle: float) -> None:
    a, b = turned(one, angle, 0.0), turned(other, angle, 0.0)
    assume(not a.rod_to_lever < 0.02)  # at a dead point one of the two may be a hair past it
    np.testing.assert_allclose(a.angle, b.angle, atol=1e-7)
    np.testing.assert_allclose(a.gearing, b.gearing, rtol=1e-5)
    np.testing.assert_allclose(a.rod_to_lever, b.rod_to_lever, atol=1e-6)


@given(RODS)
def test_from_the_first_dead_point_on_there_is_no_answer(rod: BallRod | SquareRod) -> None:
    """And the angle of rod and lever has fallen to nothing there: it is judged, and fails."""
    turn = turned(rod, np.linspace(0.0, 2.5, 251), 0.0)
    answered = np.isfinite(turn.angle)
    assert answered[0]
    off_line = np.asarray(turn.rod_to_lever)
    assert np.all(np.isfinite(off_line))
    assert np.array_equal(answered, off_line > 0.0)
    first_gap = np.argmin(answered) if not answered.all() else answered.size
    steps = np.diff(np.asarray(turn.angle)[:first_gap])
    assert np.all(np.abs(steps) > 0.0)
    assert abs(np.sum(np.sign(steps))) == steps.size
