"""Laws of the throttle: work, lengths, there and back again, mirrors, batches."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from hypothesis.strategies import DrawFn, SearchStrategy

from pedalwright.core.batch import over, pick, stack
from pedalwright.core.points import RIGHT, Point
from pedalwright.core.units import Num
from pedalwright.throttle import (
    BallRod,
    Cable,
    Spring,
    SquareRod,
    Stage,
    Throttle,
    placed,
    respond,
    turned,
    turned_back,
)
from pedalwright.throttle.formulas import (
    open_share,
    open_share_with_shaft,
    plate_width,
    shaft_in_bore,
    shaft_on_plate,
)


def between(low: float, high: float) -> SearchStrategy[float]:
    return st.floats(low, high, allow_nan=False)


@st.composite
def directions(draw: DrawFn) -> Point:
    """An axis of any direction but straight up."""
    return Point(draw(between(-0.9, 0.9)), draw(st.sampled_from([1.0, -1.0])), draw(between(-1, 1)))


@st.composite
def ball_rods(draw: DrawFn, axes: SearchStrategy[Point] | None = None) -> BallRod:
    """A rod, pushed or pulled, that starts more or less along the paths of both its pins."""
    flat = axes is not None
    axis = draw(directions() if axes is None else axes)
    far_axis = draw(directions() if axes is None else axes)
    across = Point(draw(between(-1, 1)), 0.0, draw(st.sampled_from([1.0, -1.0])))
    arm = axis.unit().cross(across).cross(axis.unit()).unit() * draw(between(40, 90))
    push = draw(st.sampled_from([1.0, -1.0]))
    path = axis.unit().cross(arm).unit()
    tilt = arm.unit() * draw(between(-0.3, 0.3))
    out_of_plane = 0.0 if flat else draw(between(-0.2, 0.2))
    rod = (path + tilt + axis.unit() * out_of_plane).unit() * (push * draw(between(120, 400)))
    way = rod.unit() * push
    assume(abs(far_axis.unit().dot(way)) < 0.6)
    far_arm = way.cross(far_axis.unit()).unit() * draw(between(40, 90))
    far_arm = far_arm + way * draw(between(-15, 15))
    if not flat:
        far_arm = far_arm + far_axis.unit() * draw(between(-20, 20))
    pivot = Point(draw(between(-300, 300)), draw(between(-500, 500)), draw(between(0, 400)))
    pin = pivot + arm
    return BallRod(
        driving_pivot=pivot,
        driving_axis=axis,
        driving_pin=pin,
        driven_pivot=pin + rod - far_arm,
        driven_axis=far_axis,
        driven_pin=pin + rod,
    )


SQUARE_RODS = st.builds(
    SquareRod,
    driving_radius=between(40, 90),
    driven_radius=between(40, 90),
    rod_length=between(120, 600),
)
CABLES = st.builds(
    Cable, driving_radius=between(30, 150), driven_radius=between(20, 50), slack=between(0, 3)
)
STAGES = ball_rods() | SQUARE_RODS | CABLES
RODS = ball_rods() | SQUARE_RODS
SPRINGS = st.builds(Spring, torque_closed=between(50, 900), rate=between(0, 300))


@st.composite
def throttles(draw: DrawFn, stages: SearchStrategy[Stage] = STAGES, most: int = 3) -> Throttle:
    return Throttle(
        pad_room=draw(between(30, 80)),
        stages=tuple(draw(st.lists(stages, min_size=1, max_size=most))),
        full_opening=draw(between(1.1, 1.5)),
        springs=tuple(draw(st.lists(SPRINGS, min_size=2, max_size=3))),
        friction=draw(between(20, 200)),
    )


PADS = between(150, 260)


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


@given(STAGES, between(0.02, 0.3), between(0.0, 0.15))
def test_there_and_back_again(stage: Stage, angle: float, middle: float) -> None:
    turn = turned(stage, angle, middle).angle
    assume(turn != 0.0)
    assume(np.isfinite(turn))
    assert turned_back(stage, turn, middle) == pytest.approx(angle, abs=1e-7)


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


@given(between(0.05, 0.35), between(0.05, 0.2), between(0.3, 1.5))
def test_a_shaft_only_takes_away(a: float, psi_0: float, psi: float) -> None:
    plate = plate_width(psi, psi_0)
    thin = open_share(plate)
    alpha, beta = shaft_in_bore(a), shaft_on_plate(a, plate)
    both = open_share_with_shaft(alpha, beta)
    assert both <= thin + 1e-12
    assert both <= open_share_with_shaft(alpha, np.pi / 2) + 1e-12
    hair = open_share_with_shaft(shaft_in_bore(1e-6), shaft_on_plate(1e-6, plate))
    assert hair == pytest.approx(thin, abs=1e-5)


@given(between(0.05, 0.35), between(0.05, 0.2), between(0.3, 1.5))
def test_the_open_area_is_what_strips_of_the_bore_add_up_to(
    a: float, psi_0: float, psi: float
) -> None:
    """Strips along the way from spindle to rim; each is bored, less plate or shaft before it."""
    plate = plate_width(psi, psi_0)
    x = (np.arange(20000) + 0.5) / 20000  # along the shaft, bore's radius 1
    half = np.sqrt(1.0 - x**2)
    hidden = np.minimum(np.maximum(plate * half, a), half)
    strips = np.sum(half - hidden) / np.sum(half)
    both = open_share_with_shaft(shaft_in_bore(a), shaft_on_plate(a, plate))
    assert both == pytest.approx(strips, abs=2e-5)


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
