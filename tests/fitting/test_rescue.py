"""A hole drilled in the wrong place, near and far."""

import numpy as np
import pytest

from pedalwright.design import Design
from pedalwright.fitting import Hole, RescuePlan, hole_rescue

WANTED = 54.5


def plan(design: Design, radius: float, **more: float) -> RescuePlan:
    return hole_rescue(design, "brake", Hole(radius=radius, diameter=12.0, **more), metal="steel")


def test_one_millimetre_out_is_1_8_per_cent_of_the_ratio(improved: Design) -> None:
    """di/i = -dr/r with r = 54.5."""
    found = plan(improved, WANTED - 1.0)
    keep = next(way for way in found.ways if way.way == "keep")
    assert keep.ratio_change == pytest.approx(1.0 / WANTED, rel=0.1)
    assert keep.effort_change == pytest.approx(-1.0 / WANTED, rel=0.1)
    assert keep.travel_change == pytest.approx(1.0 / WANTED, rel=0.1)
    assert found.best is keep


def test_keeping_a_hole_far_out_is_another_pedal(improved: Design) -> None:
    found = plan(improved, 64.5)
    keep = next(way for way in found.ways if way.way == "keep")
    assert keep.possible
    assert not keep.as_wanted
    assert keep.outcome.ratio == pytest.approx(272.0 / 64.5, rel=0.02)


def test_a_hole_beside_the_line_slants_the_rod_and_is_apart(improved: Design) -> None:
    found = plan(improved, WANTED, angle=0.1)
    assert found.off_by == pytest.approx(2 * WANTED * np.sin(0.05))
    keep = next(way for way in found.ways if way.way == "keep")
    assert keep.design.brake.pedal.pin_angle == 0.1
    assert keep.outcome.rod_angle != pytest.approx(found.wanted.rod_angle, rel=0.01)


def test_with_room_between_a_fresh_hole_is_drilled(improved: Design) -> None:
    """1.2 of 12 between two edges: 26.4 from centre to centre."""
    near, far = plan(improved, WANTED + 26.3), plan(improved, WANTED + 26.5)
    for found, possible in ((near, False), (far, True)):
        afresh = next(way for way in found.ways if way.way == "drill afresh")
        assert afresh.possible == possible
    assert near.land > 0.0
    assert far.best is not None
    assert far.best.way == "drill afresh"
    assert far.best.outcome.ratio == pytest.approx(far.wanted.ratio, rel=1e-12)


def test_a_bush_needs_a_deep_arm(improved: Design) -> None:
    """2 out: a bush of 12 + 2 (2 + 1.5) = 19; 5 out: one of 25, in an arm of 32."""
    for out, size, possible in ((2.0, 19.0, True), (5.0, 25.0, False)):
        bush = next(way for way in plan(improved, WANTED - out).ways if way.way == "bush")
        assert bush.drill == pytest.approx(size)
        assert bush.possible == possible
        assert bush.strength_change < 0.0


def test_side_plates_bend_the_forks_pin_more(improved: Design) -> None:
    plates = next(way for way in plan(improved, WANTED - 5.0).ways if way.way == "side plates")
    pin = plates.design.brake.carrier.clevis_pin
    assert pin.inner_thickness == improved.brake.carrier.clevis_pin.inner_thickness + 6.0
    assert plates.ratio_change == 0.0
    assert plates.strength_change <= 0.0


def test_a_hole_beyond_the_pad_cannot_be_kept(improved: Design) -> None:
    keep = next(way for way in plan(improved, 280.0).ways if way.way == "keep")
    assert not keep.possible
    assert keep.because == "hole too far out"


def test_ways_stand_in_order(improved: Design) -> None:
    for out in (-1.0, 8.0, 30.0):
        ways = plan(improved, WANTED + out).ways
        ranks = [(not way.as_wanted, not way.possible, way.minutes) for way in ways]
        assert ranks == sorted(ranks)
        assert len({way.way for way in ways}) == 5
