"""Pins for a ratio, an effort, a travel: what is asked for is what the assessment says."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.design import Design
from pedalwright.fitting import outcome, pin_radius_for, ratio_sweep
from pedalwright.fitting.ratios import Goal


def with_pin(design: Design, radius: float) -> Design:
    """The brake's pin there, and its cylinder moved with it along the arm."""
    pedal, rod = design.brake.pedal, design.brake.rod
    further = radius - pedal.pin_radius
    along = (np.sin(pedal.pad_lean) * further, -np.cos(pedal.pad_lean) * further)
    socket = replace(rod.socket, x=rod.socket.x + along[0], z=rod.socket.z + along[1])
    brake = replace(
        design.brake, pedal=replace(pedal, pin_radius=radius), rod=replace(rod, socket=socket)
    )
    return replace(design, brake=brake)


@pytest.mark.parametrize(("goal", "wanted"), [("ratio", 5.5), ("effort", 300.0), ("travel", 70.0)])
def test_the_pin_found_gives_what_was_wanted(improved: Design, goal: Goal, wanted: float) -> None:
    radius = pin_radius_for(improved, "brake", goal, wanted)
    found = outcome(with_pin(improved, float(radius)), "brake")
    assert getattr(found, goal) == pytest.approx(wanted, rel=1e-4)


def test_more_ratio_is_less_effort_and_more_travel(improved: Design) -> None:
    for name in ("brake", "clutch"):
        sweep = ratio_sweep(improved, name)
        answered = np.isfinite(np.asarray(sweep.ratio))
        for row, falls in ((sweep.ratio, True), (sweep.effort, False), (sweep.travel, True)):
            steps = np.diff(np.asarray(row)[answered])
            assert np.all(steps < 0.0 if falls else steps > 0.0)
        assert np.count_nonzero(answered) > 30


def test_a_row_of_pins_equals_its_singles(improved: Design) -> None:
    radii = np.array([45.0, 54.5, 70.0])
    sweep = ratio_sweep(improved, "brake", radii)
    for i, radius in enumerate(radii):
        alone = outcome(with_pin(improved, float(radius)), "brake")
        for name in ("arm_ratio", "ratio", "effort", "travel", "rod_angle", "strength_margin"):
            row = np.asarray(getattr(sweep, name))
            assert row[i] == pytest.approx(float(getattr(alone, name)), rel=1e-9), name


def test_a_cylinder_that_stays_slants_the_rod(improved: Design) -> None:
    radii = np.array([44.5, 54.5, 64.5])
    stays = ratio_sweep(improved, "brake", radii, cylinder_follows=False)
    follows = ratio_sweep(improved, "brake", radii)
    slant, level = np.asarray(stays.rod_angle), np.asarray(follows.rod_angle)
    assert slant[1] == pytest.approx(level[1], rel=1e-12)
    assert slant[0] > 1.5 * level[0]
    assert slant[2] > 1.5 * level[2]


def test_what_no_pin_gives_has_no_answer(improved: Design) -> None:
    assert np.isnan(pin_radius_for(improved, "brake", "ratio", 50.0))
    assert np.isnan(pin_radius_for(improved, "clutch", "effort", 5.0))
