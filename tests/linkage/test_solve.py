"""The lever as the builder measures it, and where it stops having an answer."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.core.points import REARWARD, RIGHT, Plane, Point
from pedalwright.core.working import working
from pedalwright.linkage import (
    STATIONS,
    Lever,
    Pedal,
    Rod,
    angle_at_face,
    angle_at_travel,
    forces,
    lever,
    mean_ratio,
    position,
    sweep,
)

FORWARD = -REARWARD
HANGING = Pedal(
    hinge="hanging",
    pivot=Point(120.0, 385.0, 350.0),
    pad_radius=272.0,
    pad_lean=np.radians(15.0),
    pad_offset=-15.0,
    pad_width=60.0,
    pin_radius=54.5,
)
FLOOR = replace(HANGING, hinge="floor", pivot=Point(160.0, -395.0, 40.0), pad_radius=180.0)


def rod_of(made: Lever, *, ahead: float = 100.0, direction: Point = FORWARD) -> Rod:
    return Rod(socket=made.pin + direction * ahead, direction=direction)


def test_a_hanging_pad_is_below_and_behind_its_pivot_and_goes_forward() -> None:
    made = lever(HANGING)
    assert made.pad.x == pytest.approx(120.0 + 272.0 * np.sin(np.radians(15.0)))
    assert made.pad.z == pytest.approx(350.0 - 272.0 * np.cos(np.radians(15.0)))
    assert made.pad.y == pytest.approx(370.0)
    assert made.pin.y == pytest.approx(385.0)
    moved = position(made, rod_of(made), 0.1).pad
    assert moved.x < made.pad.x


def test_a_floor_hinged_pad_is_above_and_behind_its_pivot_and_goes_forward() -> None:
    made = lever(FLOOR)
    assert made.pad.x == pytest.approx(160.0 + 180.0 * np.sin(np.radians(15.0)))
    assert made.pad.z == pytest.approx(40.0 + 180.0 * np.cos(np.radians(15.0)))
    moved = position(made, rod_of(made), 0.1).pad
    assert moved.x < made.pad.x


def test_a_pin_on_the_pads_line_lies_between_pivot_and_pad() -> None:
    made = lever(HANGING)
    to_pad, to_pin = made.pad - made.pivot, made.pin - made.pivot
    assert to_pin.x / to_pad.x == pytest.approx(54.5 / 272.0)
    assert to_pin.z / to_pad.z == pytest.approx(54.5 / 272.0)


def test_a_pin_beyond_the_pivot_goes_rearward() -> None:
    made = lever(replace(HANGING, pin_angle=np.pi))
    assert made.pin.z > made.pivot.z
    assert made.pin.x < made.pivot.x
    here = position(made, rod_of(made, direction=REARWARD), 0.1)
    assert here.pin.x > made.pin.x
    assert here.piston_travel > 0.0


def test_the_pins_angle_counts_in_the_sense_of_the_stroke() -> None:
    for pedal in (HANGING, FLOOR):
        ahead = lever(replace(pedal, pin_angle=0.2)).pin
        assert ahead.x < lever(pedal).pin.x


def test_the_mean_ratio_lies_between_the_ends() -> None:
    made = lever(HANGING)
    stroke = sweep(made, rod_of(made), 0.4)
    pad, piston = np.asarray(stroke.pad_travel), np.asarray(stroke.piston_travel)
    ratio = np.asarray(stroke.ratio)
    assert pad.shape == piston.shape == ratio.shape == (STATIONS,)
    assert ratio.min() < mean_ratio(pad[-1], piston[-1]) < ratio.max()


def test_a_sweep_leaves_no_working_and_one_position_does() -> None:
    made = lever(HANGING)
    with working() as sheet:
        sweep(made, rod_of(made), 0.4)
        assert sheet == []
        position(made, rod_of(made), 0.4)
    assert "i" in [step.formula.symbol for step in sheet]


def test_a_pull_rod_and_a_push_rod_of_the_same_line_start_alike() -> None:
    made = lever(HANGING)
    push = position(made, rod_of(made, ahead=100.0), 0.0)
    pull = position(made, rod_of(made, ahead=-100.0), 0.0)
    assert push.ratio == pytest.approx(pull.ratio)
    pushed = forces(made, rod_of(made, ahead=100.0), push, 500.0)
    pulled = forces(made, rod_of(made, ahead=-100.0), pull, 500.0)
    assert pushed.pivot_size == pytest.approx(pulled.pivot_size)


def test_beyond_the_dead_point_the_piston_cannot_be_had() -> None:
    """Arm and rod stretch to one line of 54.5 + 100, whose end is 54.5 below the pivot."""
    made = lever(replace(HANGING, pad_lean=0.0))
    rod = rod_of(made, ahead=100.0)
    dead = np.arccos(54.5 / 154.5)
    furthest = np.sqrt(154.5**2 - 54.5**2) - 100.0
    before, after = (position(made, rod, dead + step) for step in (-1e-3, 1e-3))
    assert before.piston_travel == pytest.approx(furthest, abs=1e-3)
    assert before.ratio > 1000.0
    for answer in (after.piston_travel, after.ratio, after.rod_to_arm):
        assert np.isnan(answer)
    assert angle_at_travel(made, rod, furthest - 1e-3) == pytest.approx(dead, abs=0.01)
    assert np.isnan(angle_at_travel(made, rod, furthest + 1e-3))


def test_a_pull_rod_does_not_turn_into_a_push_rod() -> None:
    """With the piston two rods further on the rod would fit again, the other way round."""
    made = lever(HANGING)
    assert np.isnan(angle_at_travel(made, rod_of(made, ahead=-100.0), 200.0))


def test_a_rod_too_short_for_the_stroke_has_no_answer() -> None:
    made = lever(replace(HANGING, pad_lean=0.0))
    lifted = Rod(socket=made.pin + FORWARD * 30.0, direction=FORWARD)
    assert np.isnan(position(made, lifted, 1.5).piston_travel)


def test_the_first_answer_ahead_is_taken_at_rest_too() -> None:
    made = lever(HANGING)
    assert angle_at_travel(made, rod_of(made), 0.0) == pytest.approx(0.0, abs=1e-12)
    assert angle_at_travel(made, rod_of(made), -2.0) == pytest.approx(-0.038, abs=0.002)


WALL = Plane(normal=REARWARD, offset=0.0)


def test_the_pad_reaches_the_wall_where_the_ruler_says() -> None:
    made = lever(HANGING)
    angle = angle_at_face(made, WALL, 45.0)
    assert position(made, rod_of(made), angle).pad.x == pytest.approx(45.0)
    lean = np.radians(15.0)
    assert angle == pytest.approx(lean + np.arcsin((120.0 - 45.0) / 272.0))


def test_a_pad_already_at_the_wall_has_less_than_no_room() -> None:
    made = lever(HANGING)
    near = Plane(normal=REARWARD, offset=float(made.pad.x) - 30.0)
    angle = angle_at_face(made, near, 45.0)
    assert angle < 0.0
    assert position(made, rod_of(made), angle).pad.x == pytest.approx(float(made.pad.x) + 15.0)
    assert angle_at_face(made, near, 30.0) == pytest.approx(0.0, abs=1e-9)


def test_a_wall_out_of_reach_or_behind_the_pad_is_never_met() -> None:
    made = lever(HANGING)
    assert np.isnan(angle_at_face(made, Plane(normal=REARWARD, offset=-500.0), 45.0))
    seat = Plane(normal=FORWARD, offset=-(float(made.pad.x) + 60.0))
    assert seat.height(made.pad) == pytest.approx(60.0)
    assert np.isnan(angle_at_face(made, seat, 45.0))


def test_a_joggle_does_not_change_the_work() -> None:
    straight, joggled = lever(replace(HANGING, pad_offset=0.0)), lever(HANGING)
    rod = rod_of(straight)
    one = forces(straight, rod, position(straight, rod, 0.2), 500.0)
    two = forces(joggled, rod, position(joggled, rod, 0.2), 500.0)
    assert one.piston == pytest.approx(two.piston, rel=1e-12)


def test_a_sideways_foot_goes_to_the_pivot() -> None:
    made = lever(HANGING)
    rod = rod_of(made)
    found = forces(made, rod, position(made, rod, 0.2), 0.0)
    assert found.piston == found.pivot_size == 0.0
    assert RIGHT.dot(found.pivot) == 0.0
