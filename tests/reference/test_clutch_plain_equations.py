"""Cases C26 and C27: a clutch worked by fluid, from the bearing to the pad and back.

Strength: solved independently with plain equations (volume in = volume out, work in = work out)
and printed to the digits given here.
"""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.clutch import (
    ClutchResult,
    Fluid,
    Release,
    SlaveCylinder,
    budget,
    need,
    respond,
)
from pedalwright.hydraulics import Cylinder

#: Overall efficiency 0.8, counted at the line; the slave's pressure is asked without loss.
RELEASE = Release(
    actuator=SlaveCylinder(bore=22.225, fork_ratio=1.6, fork_efficiency=1.0),
    bearing_lift=8.0,
    free_play=2.0,
    release_load=1500.0,
    line_growth=0.0,
    dead_stroke=1.0,
    line_efficiency=0.8,
)
MASTER = Cylinder(bore=19.05, stroke=36.0)
RATIO = 6.0


def with_room(pad_room: float, release: Release = RELEASE) -> ClutchResult:
    """The clutch on a pedal whose ratio is 6 all the way, with so much room for the pad."""
    return respond(
        release,
        MASTER,
        travel=budget(need(release, MASTER), lambda stroke: RATIO * stroke),
        available=pad_room,
        mean_ratio=RATIO,
        stroke_at_wall=pad_room / RATIO,
    )


def fluid(result: ClutchResult) -> Fluid:
    assert result.fluid is not None
    return result.fluid


def test_c26_travel_from_bearing_to_pad() -> None:
    result = with_room(150.0)
    assert result.master_stroke == pytest.approx(22.778, abs=0.0006)
    assert result.travel_needed == pytest.approx(136.67, abs=0.006)
    assert result.travel_at_six == pytest.approx(136.67, abs=0.006)


def test_c26_effort_and_pressure() -> None:
    result = with_room(150.0)
    assert result.effort == pytest.approx(143.49, abs=0.006)
    assert fluid(result).slave_pressure == pytest.approx(2.4166, abs=0.00006)
    without_loss = with_room(150.0, replace(RELEASE, line_efficiency=1.0))
    assert 1500.0 / without_loss.effort == pytest.approx(13.0667, abs=0.00006)


def test_c27_where_the_stop_goes() -> None:
    to_limit = with_room(150.0, replace(RELEASE, bearing_lift=10.0))
    assert to_limit.travel_needed == pytest.approx(162.8, abs=0.06)


@pytest.mark.parametrize(
    ("pad_room", "at_wall", "reached"), [(150, 9.02, 8.0), (120, 6.724, 6.724)]
)
def test_c27_what_the_room_gives(pad_room: float, at_wall: float, reached: float) -> None:
    result = with_room(float(pad_room))
    assert result.lift_at_wall == pytest.approx(at_wall, abs=0.006)
    assert result.lift_reached == pytest.approx(reached, abs=0.0006)


def test_c27_bearing_travel_in_total_with_150_mm() -> None:
    no_free_play = with_room(150.0, replace(RELEASE, free_play=0.0, bearing_lift=10.0))
    assert no_free_play.lift_at_wall == pytest.approx(11.02, abs=0.006)


def test_c27_the_bore_that_releases_within_120_mm() -> None:
    bore = fluid(with_room(120.0)).least_bore
    assert bore == pytest.approx(20.395, abs=0.0006)
    just = budget(need(RELEASE, Cylinder(bore=bore, stroke=36.0)), lambda s: RATIO * s)
    assert np.isclose(float(just.total), 120.0, rtol=0.0, atol=1e-9)
