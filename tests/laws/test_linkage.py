"""Laws of levers and rods: any axis, any rod that can start, pushing or pulling."""

from dataclasses import dataclass, replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.strategies import DrawFn, SearchStrategy

from pedalwright.core.batch import over, pick, stack
from pedalwright.core.points import RIGHT, Plane, Point
from pedalwright.core.units import Num
from pedalwright.linkage import (
    Lever,
    Rod,
    angle_at_face,
    angle_at_travel,
    forces,
    forces_of,
    position,
    sweep,
)


@dataclass(frozen=True, kw_only=True, slots=True)
class Linkage:
    """A lever, its rod, and an angle the lever can be turned to."""

    lever: Lever
    rod: Rod
    angle: Num


def between(low: float, high: float) -> SearchStrategy[float]:
    return st.floats(low, high, allow_nan=False)


CROSS_CAR = st.sampled_from([RIGHT, -RIGHT])


@st.composite
def slanting(draw: DrawFn) -> Point:
    """An axis of any direction but straight up."""
    return Point(
        draw(between(-0.9, 0.9)), draw(st.sampled_from([1.0, -1.0])), draw(between(-0.9, 0.9))
    ).unit()


ANY_AXIS = CROSS_CAR | slanting()


@st.composite
def linkages(draw: DrawFn, axes: SearchStrategy[Point] = ANY_AXIS) -> Linkage:
    """A lever whose rod starts more or less square to its arm, so that it can turn 0.4 rad.

    Pins on the pad's side and beyond the pivot, rods pushed and pulled, sockets and cylinders
    askew in every direction.
    """
    axis = draw(axes)
    down = axis.cross(Point(1.0, 0.0, 0.2)).cross(axis).unit()
    pivot = Point(draw(between(-300, 300)), draw(between(-600, 600)), draw(between(0, 400)))
    beyond = draw(st.sampled_from([0.0, np.pi]))
    to_pin = down.turned(axis, beyond + draw(between(-0.3, 0.3)))
    path = axis.cross(to_pin)
    along = (path + to_pin * draw(between(-0.2, 0.2)) + axis * draw(between(-0.2, 0.2))).unit()
    askew = to_pin * draw(between(-0.1, 0.1)) + axis * draw(between(-0.1, 0.1))
    rod = (along + askew).unit() * draw(between(90, 250)) * draw(st.sampled_from([1.0, -1.0]))
    pin = pivot + to_pin * draw(between(35, 90)) + axis * draw(between(-30, 30))
    return Linkage(
        lever=Lever(
            pivot=pivot,
            axis=axis,
            pad=pivot + down * draw(between(150, 350)) + axis * draw(between(-60, 60)),
            pin=pin,
        ),
        rod=Rod(socket=pin + rod, direction=along),
        angle=draw(between(0.0, 0.4)),
    )


def radius(lever: Lever, point: Point) -> Num:
    return lever.axis.cross(point - lever.pivot).length()


@given(linkages())
def test_rod_and_arm_keep_their_lengths(made: Linkage) -> None:
    here = position(made.lever, made.rod, made.angle)
    rest = (made.rod.socket - made.lever.pin).length()
    assert (here.socket - here.pin).length() == pytest.approx(rest, rel=1e-12)
    for turned, still in ((here.pin, made.lever.pin), (here.pad, made.lever.pad)):
        assert radius(made.lever, turned) == pytest.approx(radius(made.lever, still), rel=1e-12)
        shift = made.lever.axis.dot(turned - still)
        assert shift == pytest.approx(0.0, abs=1e-9)


@given(linkages())
def test_the_socket_stays_on_its_cylinder(made: Linkage) -> None:
    here = position(made.lever, made.rod, made.angle)
    moved = here.socket - made.rod.socket
    assert moved.cross(made.rod.direction).length() == pytest.approx(0.0, abs=1e-9)
    assert moved.dot(made.rod.direction) == pytest.approx(here.piston_travel, abs=1e-9)


@given(linkages())
def test_the_ratio_is_the_slope_of_the_travel(made: Linkage) -> None:
    step = 1e-5
    here = position(made.lever, made.rod, made.angle)
    before = position(made.lever, made.rod, made.angle - step)
    behind = position(made.lever, made.rod, made.angle + step)
    slope = (behind.pad_travel - before.pad_travel) / (behind.piston_travel - before.piston_travel)
    assert here.ratio == pytest.approx(slope, rel=1e-6)


@given(linkages(), between(1.0, 2000.0))
def test_work_in_is_work_out(made: Linkage, push: float) -> None:
    """The push is held while pad and piston move a little; what friction there is, is nobody's."""
    step = 1e-5
    here = position(made.lever, made.rod, made.angle)
    before = position(made.lever, made.rod, made.angle - step)
    behind = position(made.lever, made.rod, made.angle + step)
    foot = made.lever.axis.cross(here.pad - made.lever.pivot).unit() * push
    work_in = foot.dot(behind.pad - before.pad)
    piston = forces(made.lever, made.rod, here, push).piston
    work_out = piston * (behind.piston_travel - before.piston_travel)
    assert work_in > 0.0
    assert work_out == pytest.approx(work_in, rel=1e-6)


@given(linkages(), between(-1.0, 1.0), between(-1.0, 1.0), between(-1.0, 1.0))
def test_the_lever_is_in_balance_under_any_foot(
    made: Linkage, x: float, y: float, z: float
) -> None:
    here = position(made.lever, made.rod, made.angle)
    foot = Point(x, y, z) * 1000.0
    found = forces_of(made.lever, made.rod, here, foot)
    rod = -(foot + found.pivot)  # what is left for the rod, if the lever is to stay where it is
    assert rod.cross(here.socket - here.pin).length() == pytest.approx(0.0, abs=1e-6)
    moment = (here.pad - made.lever.pivot).cross(foot) + (here.pin - made.lever.pivot).cross(rod)
    assert made.lever.axis.dot(moment) == pytest.approx(0.0, abs=1e-5)
    on_piston = -rod
    assert on_piston.dot(made.rod.direction) == pytest.approx(found.piston, abs=1e-6)
    assert on_piston.cross(made.rod.direction).length() == pytest.approx(
        np.abs(found.side), abs=1e-6
    )
    assert on_piston.length() == pytest.approx(np.abs(found.rod), abs=1e-6)
    assert found.pivot.length() == found.pivot_size


@given(linkages())
def test_travel_and_angle_are_each_others_inverse(made: Linkage) -> None:
    travel = position(made.lever, made.rod, made.angle).piston_travel
    angle = angle_at_travel(made.lever, made.rod, travel)
    assert angle == pytest.approx(made.angle, abs=1e-9)


@given(linkages(), between(0.1, 5.0))
def test_a_piston_pulled_back_turns_the_lever_back(made: Linkage, back: float) -> None:
    angle = angle_at_travel(made.lever, made.rod, -back)
    assert angle < 0.0
    travel = position(made.lever, made.rod, angle).piston_travel
    assert travel == pytest.approx(-back, abs=1e-9)


@given(linkages())
def test_from_the_first_dead_point_on_there_is_no_answer(made: Linkage) -> None:
    stroke = sweep(made.lever, made.rod, 2.5)
    answered = np.isfinite(stroke.ratio)
    assert answered[0]
    assert np.array_equal(answered, np.minimum.accumulate(answered))
    assert np.array_equal(answered, np.isfinite(stroke.piston_travel))
    assert np.array_equal(answered, np.isfinite(stroke.rod_to_arm))
    travel = np.asarray(stroke.piston_travel)[answered]
    assert np.all(np.diff(travel) > 0.0)
    beyond = np.nan_to_num(np.max(travel)) + made.lever.pin.length() + 1000.0
    assert np.isnan(angle_at_travel(made.lever, made.rod, beyond))


@given(linkages(), between(5.0, 100.0))
def test_the_pad_meets_a_wall_where_it_says(made: Linkage, gap: float) -> None:
    lever = made.lever
    ahead = lever.axis.cross(lever.pad - lever.pivot).unit()
    reached = position(lever, made.rod, made.angle).pad
    face = Plane(normal=-ahead, offset=-ahead.dot(reached) - gap)
    assert face.height(reached) == pytest.approx(gap, abs=1e-9)
    assert angle_at_face(lever, face, gap) == pytest.approx(made.angle, abs=1e-7)
    # the same wall ten degrees behind the pad: it is too near already
    behind = Plane(normal=-ahead, offset=-ahead.dot(position(lever, made.rod, -0.17).pad) - gap)
    assert angle_at_face(lever, behind, gap) == pytest.approx(-0.17, abs=1e-7)


@given(linkages(), between(-500, 500), between(-500, 500), between(-500, 500))
def test_moving_the_datum_changes_nothing(made: Linkage, x: float, y: float, z: float) -> None:
    shift = Point(x, y, z)
    lever = replace(
        made.lever,
        pivot=made.lever.pivot + shift,
        pad=made.lever.pad + shift,
        pin=made.lever.pin + shift,
    )
    rod = replace(made.rod, socket=made.rod.socket + shift)
    assert_same_motion(made, Linkage(lever=lever, rod=rod, angle=made.angle))


@given(linkages(), slanting(), between(-3.0, 3.0))
def test_turning_the_whole_car_changes_nothing(made: Linkage, about: Point, angle: float) -> None:
    lever = Lever(
        pivot=made.lever.pivot.turned(about, angle),
        axis=made.lever.axis.turned(about, angle),
        pad=made.lever.pad.turned(about, angle),
        pin=made.lever.pin.turned(about, angle),
    )
    rod = Rod(
        socket=made.rod.socket.turned(about, angle),
        direction=made.rod.direction.turned(about, angle),
    )
    assert_same_motion(made, Linkage(lever=lever, rod=rod, angle=made.angle))


def mirrored(made: Linkage, axis: Point) -> Linkage:
    lever = Lever(
        pivot=made.lever.pivot.mirrored(),
        axis=axis,
        pad=made.lever.pad.mirrored(),
        pin=made.lever.pin.mirrored(),
    )
    rod = Rod(socket=made.rod.socket.mirrored(), direction=made.rod.direction.mirrored())
    return Linkage(lever=lever, rod=rod, angle=made.angle)


@given(linkages(axes=CROSS_CAR))
def test_the_other_hand_has_the_same_axis_and_the_same_stroke(made: Linkage) -> None:
    assert_same_motion(made, mirrored(made, made.lever.axis))


@given(linkages(axes=slanting()))
def test_a_slanting_axis_is_mirrored_and_turned_round(made: Linkage) -> None:
    """An axis is not an arrow: in the mirror the part across the car is the one that stays."""
    assert_same_motion(made, mirrored(made, -made.lever.axis.mirrored()))


def assert_same_motion(one: Linkage, other: Linkage) -> None:
    a = position(one.lever, one.rod, one.angle)
    b = position(other.lever, other.rod, other.angle)
    for name in ("pad_travel", "piston_travel", "ratio", "rod_angle", "rod_to_arm"):
        assert getattr(a, name) == pytest.approx(getattr(b, name), rel=1e-7, abs=1e-7), name
    f, g = forces(one.lever, one.rod, a, 500.0), forces(other.lever, other.rod, b, 500.0)
    for name in ("piston", "rod", "side", "pivot_size"):
        assert getattr(f, name) == pytest.approx(getattr(g, name), rel=1e-7, abs=1e-4), name


def same(one: Num, other: Num) -> Num:
    assert np.shape(one) == np.shape(other)
    np.testing.assert_allclose(one, other, rtol=1e-12, atol=1e-12)
    return one


@given(st.lists(linkages(), min_size=2, max_size=4), between(0.2, 2.5))
def test_a_batch_equals_its_singles(rows: list[Linkage], full_angle: float) -> None:
    """For every field of a position, a stroke and the forces, answered or not."""
    batch = stack(rows)
    full = np.full(len(rows), full_angle)
    here, stroke = (
        position(batch.lever, batch.rod, batch.angle),
        sweep(batch.lever, batch.rod, full),
    )
    pushed = forces(batch.lever, batch.rod, here, 500.0)
    angles = angle_at_travel(batch.lever, batch.rod, np.full(len(rows), 20.0))
    for i, row in enumerate(rows):
        alone = position(row.lever, row.rod, row.angle)
        over(same, alone, pick(here, i))
        over(same, sweep(row.lever, row.rod, full_angle), pick(stroke, i))
        over(same, forces(row.lever, row.rod, alone, 500.0), pick(pushed, i))
        same(angle_at_travel(row.lever, row.rod, 20.0), np.asarray(angles)[i])
