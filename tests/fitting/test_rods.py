"""Straight rods, and rods of a length that is there already."""

from dataclasses import replace

import numpy as np
import pytest
from scipy.optimize import minimize_scalar

from pedalwright.assess import assess
from pedalwright.design import Design
from pedalwright.fitting import PedalName, fit_rod, level_rod, outcome
from pedalwright.linkage import lever, position


def lifted(design: Design, up: float) -> Design:
    rod = design.brake.rod
    socket = replace(rod.socket, z=rod.socket.z + up)
    return replace(design, brake=replace(design.brake, rod=replace(rod, socket=socket)))


def test_no_other_height_gives_a_straighter_rod(improved: Design) -> None:
    """A search over heights, one assessment each, finds nothing better."""
    found = level_rod(improved, "brake")

    def steepest(up: float) -> float:
        return float(outcome(lifted(improved, up), "brake").rod_angle)

    best = minimize_scalar(steepest, bounds=(-15.0, 15.0), method="bounded")
    assert found.after.rod_angle == pytest.approx(best.fun, rel=0.02)
    assert found.by.z == pytest.approx(best.x, abs=0.1)
    assert found.by.x == found.by.y == pytest.approx(0.0, abs=1e-9)
    assert found.distance == pytest.approx(abs(found.by.z))
    assert found.after.rod_angle < found.before.rod_angle / 3


@pytest.mark.parametrize("name", ["brake", "clutch"])
def test_a_level_rod_is_as_far_off_one_way_as_the_other(improved: Design, name: PedalName) -> None:
    design = level_rod(improved, name).after.design
    assessment = assess(design)
    made, rod = (
        (assessment.brake.lever, design.brake.rod)
        if name == "brake"
        else (assessment.clutch.lever, design.clutch.rod)
    )
    full = (assessment.brake.hard_stop if name == "brake" else assessment.clutch.full).angle
    heights = [
        float(position(made, rod, turn).pin.z - rod.socket.z) for turn in np.linspace(0, full, 99)
    ]
    assert max(heights) == pytest.approx(-min(heights), abs=0.01)


def test_a_shorter_rod_takes_one_of_two_changes(improved: Design) -> None:
    """Each change, made, lets the rod in."""
    made, rod = lever(improved.brake.pedal), improved.brake.rod
    for length in (101.0, 104.0, 110.0):
        fit = fit_rod(improved, "brake", length)
        moved = rod.socket + rod.direction * fit.move_cylinder
        assert (moved - made.pin).length() == pytest.approx(length, rel=1e-12)
        arm = (made.pin - made.pivot).turned(made.axis, fit.move_pad / 272.0)
        assert (rod.socket - made.pivot - arm).length() == pytest.approx(length, rel=1e-9)
        assert fit.distance - fit.too_short == pytest.approx(length)
        assert fit.least <= abs(fit.too_short) + 1e-12
        assert np.sign(fit.move_pad) == np.sign(fit.too_short)


def test_a_rod_that_no_pedal_position_takes(improved: Design) -> None:
    """The pin's circle comes no nearer to the socket than this, whatever the pedal does."""
    made, socket = lever(improved.brake.pedal), improved.brake.rod.socket
    nearest = (socket - made.pivot).length() - 54.5
    for length, fits in ((nearest + 0.1, True), (nearest - 0.1, False)):
        assert bool(np.isfinite(fit_rod(improved, "brake", float(length)).move_pad)) == fits
    assert np.isnan(fit_rod(improved, "brake", 3.0).move_cylinder)
