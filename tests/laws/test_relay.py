"""Laws of pedals that push through a relay lever, and of pedals on a slanting tube."""

from dataclasses import dataclass, replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.strategies import DrawFn, SearchStrategy

from pedalwright.core.batch import over, pick, stack
from pedalwright.core.points import RIGHT, Point
from pedalwright.core.units import Num
from pedalwright.linkage import (
    Lever,
    Pedal,
    Relay,
    Rod,
    angle_at_travel,
    forces,
    lever,
    locks_at,
    position,
    sweep,
)


@dataclass(frozen=True, kw_only=True, slots=True)
class Linkage:
    lever: Lever
    rod: Rod
    angle: Num


def between(low: float, high: float) -> SearchStrategy[float]:
    return st.floats(low, high, allow_nan=False)


@st.composite
def nearly_across(draw: DrawFn) -> Point:
    return Point(
        draw(between(-0.3, 0.3)), draw(st.sampled_from([1.0, -1.0])), draw(between(-0.3, 0.3))
    )


@st.composite
def pedals(draw: DrawFn) -> Pedal:
    return Pedal(
        hinge=draw(st.sampled_from(["hanging", "floor"])),
        pivot=Point(draw(between(0, 200)), draw(between(-500, 500)), draw(between(0, 400))),
        pad_radius=draw(between(150, 350)),
        pad_lean=draw(between(-0.1, 0.4)),
        pad_offset=draw(between(-40, 40)),
        pad_width=55.0,
        pin_radius=draw(between(35, 80)),
        pin_angle=draw(st.sampled_from([0.0, np.pi])) + draw(between(-0.2, 0.2)),
        axis=draw(st.none() | nearly_across()),
    )


@st.composite
def linkages(draw: DrawFn) -> Linkage:
    """Every rod starts more or less square to both its arms; rods push or pull, either sense."""
    made = lever(draw(pedals()))
    arm = (made.pin - made.pivot).unit()
    path = made.axis.cross(arm)
    askew = made.axis * draw(between(-0.1, 0.1)) + arm * draw(between(-0.15, 0.15))
    first = (path + askew).unit() * draw(between(90, 200)) * draw(st.sampled_from([1.0, -1.0]))
    driven = made.pin + first
    relay_axis = (made.axis + Point(draw(between(-0.1, 0.1)), 0.0, draw(between(-0.1, 0.1)))).unit()
    side = draw(st.sampled_from([1.0, -1.0]))
    relay_arm = first.cross(relay_axis).unit() * side * draw(between(50, 110))
    tube = driven - relay_arm
    out = relay_arm.turned(relay_axis, draw(between(-1.6, 1.6))).unit() * draw(between(30, 80))
    driving = tube + out
    #: the way the driving pin goes when the driven one follows the pedal's pin
    goes = relay_axis.cross(out).unit() * np.sign(relay_axis.cross(relay_arm).dot(path))
    along = (goes + out.unit() * draw(between(-0.15, 0.15))).unit()
    second = along * draw(between(90, 200)) * draw(st.sampled_from([1.0, -1.0]))
    relay = Relay(pivot=tube, driven_pin=driven, driving_pin=driving, axis=relay_axis)
    return Linkage(
        lever=made,
        rod=Rod(socket=driving + second, direction=along, relay=relay),
        angle=draw(between(0.0, 0.3)),
    )


@given(linkages())
def test_all_rods_and_arms_keep_their_lengths(made: Linkage) -> None:
    here = position(made.lever, made.rod, made.angle)
    relay = made.rod.relay
    assert relay is not None
    assert here.relay is not None
    for now, rest in (
        (here.relay.driven_pin - here.pin, relay.driven_pin - made.lever.pin),
        (here.socket - here.relay.driving_pin, made.rod.socket - relay.driving_pin),
        (here.relay.driven_pin - relay.pivot, relay.driven_pin - relay.pivot),
        (here.relay.driving_pin - here.relay.driven_pin, relay.driving_pin - relay.driven_pin),
    ):
        assert now.length() == pytest.approx(rest.length(), rel=1e-9)


@given(linkages())
def test_the_ratio_is_the_slope_and_the_piston_moves_on(made: Linkage) -> None:
    step = 1e-5
    here = position(made.lever, made.rod, made.angle)
    ends = [position(made.lever, made.rod, made.angle + turn) for turn in (-step, step)]
    slope = (ends[1].pad_travel - ends[0].pad_travel) / (
        ends[1].piston_travel - ends[0].piston_travel
    )
    assert here.ratio == pytest.approx(slope, rel=1e-5)
    assert here.ratio > 0.0


@given(linkages(), between(1.0, 2000.0))
def test_work_in_is_work_out(made: Linkage, push: float) -> None:
    step = 1e-5
    here = position(made.lever, made.rod, made.angle)
    before, behind = (position(made.lever, made.rod, made.angle + turn) for turn in (-step, step))
    foot = made.lever.axis.cross(here.pad - made.lever.pivot).unit() * push
    work_out = forces(made.lever, made.rod, here, push).piston * (
        behind.piston_travel - before.piston_travel
    )
    assert work_out == pytest.approx(foot.dot(behind.pad - before.pad), rel=1e-5)


@given(linkages())
def test_pedal_and_relay_are_in_balance(made: Linkage) -> None:
    """About each tube the moments of what acts on its lever cancel."""
    here = position(made.lever, made.rod, made.angle)
    found = forces(made.lever, made.rod, here, 500.0)
    relay = made.rod.relay
    assert relay is not None
    assert relay.axis is not None
    assert here.relay is not None
    assert found.relay_pivot is not None
    foot = made.lever.axis.cross(here.pad - made.lever.pivot).unit() * 500.0
    by_pedal = foot + found.pivot
    about = made.lever.axis.dot(
        (here.pad - made.lever.pivot).cross(foot) - (here.pin - made.lever.pivot).cross(by_pedal)
    )
    assert about == pytest.approx(0.0, abs=1e-5)
    by_cylinder = -(by_pedal + found.relay_pivot)
    about = relay.axis.dot(
        (here.relay.driven_pin - relay.pivot).cross(by_pedal)
        + (here.relay.driving_pin - relay.pivot).cross(by_cylinder)
    )
    assert about == pytest.approx(0.0, abs=1e-5)
    assert -by_cylinder.dot(made.rod.direction) == pytest.approx(found.piston, rel=1e-9)


@given(linkages())
def test_travel_and_angle_are_each_others_inverse(made: Linkage) -> None:
    travel = position(made.lever, made.rod, made.angle).piston_travel
    assert angle_at_travel(made.lever, made.rod, travel) == pytest.approx(made.angle, abs=1e-7)


@given(linkages())
def test_where_it_locks_there_is_no_answer_and_before_it_there_is(made: Linkage) -> None:
    locks = locks_at(made.lever, made.rod)
    arm = made.lever.axis.cross(made.lever.pad - made.lever.pivot).length()
    answered = np.isfinite(sweep(made.lever, made.rod, 1.2).ratio)
    if np.isnan(locks):
        assert np.all(answered)
    else:
        assert np.isfinite(position(made.lever, made.rod, locks / arm).ratio)
        assert np.isnan(position(made.lever, made.rod, (locks + 0.01) / arm).ratio)
        stations = np.linspace(0.0, 1.2 * arm, len(answered))
        assert np.all(answered[stations < locks])


def same(one: Num, other: Num) -> Num:
    assert np.shape(one) == np.shape(other)
    np.testing.assert_allclose(one, other, rtol=1e-9, atol=1e-9)
    return one


@given(st.lists(linkages(), min_size=2, max_size=3))
def test_a_batch_equals_its_singles(rows: list[Linkage]) -> None:
    batch = stack(rows)
    here = position(batch.lever, batch.rod, batch.angle)
    pushed = forces(batch.lever, batch.rod, here, 500.0)
    angles = np.asarray(angle_at_travel(batch.lever, batch.rod, np.full(len(rows), 8.0)))
    locks = np.asarray(locks_at(batch.lever, batch.rod))
    stroke = sweep(batch.lever, batch.rod, np.full(len(rows), 0.3))
    for i, row in enumerate(rows):
        alone = position(row.lever, row.rod, row.angle)
        over(same, alone, pick(here, i))
        over(same, forces(row.lever, row.rod, alone, 500.0), pick(pushed, i))
        over(same, sweep(row.lever, row.rod, 0.3), pick(stroke, i))
        same(angle_at_travel(row.lever, row.rod, 8.0), angles[i])
        same(locks_at(row.lever, row.rod), locks[i])


@given(pedals())
def test_a_tube_lies_either_way(pedal: Pedal) -> None:
    axis = RIGHT if pedal.axis is None else pedal.axis
    one = lever(replace(pedal, axis=axis))
    other = lever(replace(pedal, axis=axis * -3.0))
    over(same, one, other)
    if pedal.axis is None:
        over(same, lever(pedal), one)


@given(pedals())
def test_radii_and_offset_are_what_the_builder_measured(pedal: Pedal) -> None:
    made = lever(pedal)
    to_pad, to_pin = made.pad - made.pivot, made.pin - made.pivot
    assert made.axis.cross(to_pad).length() == pytest.approx(pedal.pad_radius)
    assert made.axis.cross(to_pin).length() == pytest.approx(pedal.pin_radius)
    assert np.abs(made.axis.dot(to_pad)) == pytest.approx(abs(pedal.pad_offset), abs=1e-9)
    assert made.axis.dot(to_pin) == pytest.approx(0.0, abs=1e-9)
    before, behind = (position_of_pad(made, turn) for turn in (0.0, 0.01))
    assert behind.x < before.x or pedal.pad_lean < 0.1


def position_of_pad(made: Lever, angle: float) -> Point:
    return made.pivot + (made.pad - made.pivot).turned(made.axis, angle)


@given(linkages())
def test_a_slanting_pedal_is_mirrored_with_its_tube(made: Linkage) -> None:
    """The other hand of the whole car has the same ratio and the same travel."""
    relay = made.rod.relay
    assert relay is not None
    assert relay.axis is not None
    hand = Rod(
        socket=made.rod.socket.mirrored(),
        direction=made.rod.direction.mirrored(),
        relay=Relay(
            pivot=relay.pivot.mirrored(),
            driven_pin=relay.driven_pin.mirrored(),
            driving_pin=relay.driving_pin.mirrored(),
            axis=relay.axis.mirrored(),
        ),
    )
    turned = Lever(
        pivot=made.lever.pivot.mirrored(),
        axis=-made.lever.axis.mirrored(),
        pad=made.lever.pad.mirrored(),
        pin=made.lever.pin.mirrored(),
    )
    one = position(made.lever, made.rod, made.angle)
    other = position(turned, hand, made.angle)
    for name in ("piston_travel", "ratio", "rod_angle", "rod_to_arm"):
        assert getattr(one, name) == pytest.approx(getattr(other, name), rel=1e-7, abs=1e-7)
