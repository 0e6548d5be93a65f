"""The two donor arms of Larkfield: 310 with its hole at 62, and 318 with its hole at 53."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.design import Design
from pedalwright.fitting import CutPlan, Donor, cut_plan, outcome

BRAKE = Donor(pad_radius=310.0, pin_radius=62.0, pin_hole=12.0, metal="steel")
CLUTCH = Donor(pad_radius=318.0, pin_radius=53.0, pin_hole=12.0)


@pytest.fixture(scope="module")
def brake_plan(first: Design) -> CutPlan:
    return cut_plan(first, "brake", BRAKE, pad_radius=248.0)


def test_the_hole_left_in_a_shortened_brake_arm_takes_5_to_4(brake_plan: CutPlan) -> None:
    """310 / 62 and 248 / 62; the push for the same stop rises as 5 to 4."""
    assert brake_plan.as_it_came.arm_ratio == pytest.approx(5.0, rel=1e-12)
    assert brake_plan.hole_left.arm_ratio == pytest.approx(4.0, rel=1e-12)
    assert brake_plan.ratio_lost == pytest.approx(0.2, rel=1e-12)
    assert brake_plan.as_it_came.ratio == pytest.approx(5.0, rel=0.005)
    assert brake_plan.hole_left.ratio == pytest.approx(4.0, rel=0.005)
    assert brake_plan.effort_gained == pytest.approx(0.25, abs=0.005)
    assert brake_plan.cut_off == 62.0


def test_the_hole_left_in_a_shortened_clutch_arm_takes_6_to_4_75(first: Design) -> None:
    plan = cut_plan(first, "clutch", CLUTCH, pad_radius=252.0)
    assert plan.as_it_came.arm_ratio == pytest.approx(6.0, rel=1e-12)
    assert plan.hole_left.arm_ratio == pytest.approx(252 / 53, rel=1e-12)
    assert plan.hole_left.ratio == pytest.approx(4.83, abs=0.01)
    assert plan.cut_off == 66.0


def test_the_first_attempt_is_the_hole_left(first: Design, brake_plan: CutPlan) -> None:
    """The plan's own design, assessed, says what the car as it stands says."""
    assert brake_plan.hole_left.effort == pytest.approx(outcome(first, "brake").effort, rel=1e-9)
    assert brake_plan.hole_left.fails == outcome(first, "brake").fails


def test_the_donors_ratio_is_kept_where_nothing_is_asked(brake_plan: CutPlan) -> None:
    assert brake_plan.pin_radius == pytest.approx(62.0 * 248.0 / 310.0)
    assert brake_plan.pin_from_pad == pytest.approx(248.0 - brake_plan.pin_radius)
    assert brake_plan.redrilled.arm_ratio == pytest.approx(5.0)


def test_a_ratio_asked_for_is_the_ratio_assessed(first: Design) -> None:
    plan = cut_plan(first, "brake", BRAKE, pad_radius=272.0, ratio=5.0)
    assert plan.redrilled.ratio == pytest.approx(5.0, abs=1e-4)
    assert plan.pin_radius == pytest.approx(54.45, abs=0.02)
    fixed = cut_plan(first, "brake", BRAKE, pad_radius=272.0, pin_radius=54.5)
    assert fixed.pin_radius == 54.5


def test_the_old_hole_runs_into_the_new_one(first: Design) -> None:
    """62 - 54.5 = 7.5 between centres; two holes of 12 leave less than nothing between them."""
    plan = cut_plan(first, "brake", BRAKE, pad_radius=272.0, pin_radius=54.5)
    drilling = plan.drilling
    assert drilling.off_by == pytest.approx(7.5)
    assert drilling.land == pytest.approx(-4.5)
    assert drilling.land_needed == pytest.approx(1.2 * 12.0)
    afresh = next(way for way in drilling.ways if way.way == "drill afresh")
    assert not afresh.possible
    assert afresh.because == "holes run together"
    assert drilling.best is not None
    assert drilling.best.way == "fill and drill"


def test_a_weld_counts_on_steel_only(first: Design) -> None:
    for metal in ("steel", "cast", "alloy", "unknown"):
        donor = replace(BRAKE, metal=metal)
        plan = cut_plan(first, "brake", donor, pad_radius=272.0, pin_radius=54.5)
        weld, bolt = plan.joints
        assert (weld.how, weld.counted) == ("weld the pad on", metal == "steel")
        assert (bolt.how, bolt.counted) == ("bolt the pad on", True)
        filled = next(way for way in plan.drilling.ways if way.way == "fill and drill")
        assert filled.possible == (metal == "steel")


def test_the_old_hole_is_stressed_less_than_the_pins(first: Design, brake_plan: CutPlan) -> None:
    """Bending over the bar's net section by hand: t (h³ - d³) / 6h with h 32, d 12, t 8."""
    modulus = 8.0 * (32.0**3 - 12.0**3) / (6.0 * 32.0)
    pin, old = brake_plan.at_pin, brake_plan.at_old_hole
    assert pin.stress == pytest.approx(2000.0 * (248.0 - 49.6) / modulus)
    assert old.stress == pytest.approx(2000.0 * (248.0 - 62.0) / modulus)
    inside = cut_plan(first, "clutch", CLUTCH, pad_radius=276.0, pin_radius=60.0)
    assert inside.at_old_hole.stress < inside.at_pin.stress
    modulus = 6.0 * (30.0**3 - 12.0**3) / (6.0 * 30.0)
    moment = 1500.0 * (276.0 - 60.0) * 53.0 / 60.0
    assert inside.at_old_hole.stress == pytest.approx(moment / modulus)


def test_a_tapered_arm_is_deeper_at_its_new_end(first: Design) -> None:
    arm = replace(first.brake.carrier.arm, depth_at_pad=20.0)
    carrier = replace(first.brake.carrier, arm=arm)
    tapered = replace(first, brake=replace(first.brake, carrier=carrier))
    plan = cut_plan(tapered, "brake", BRAKE, pad_radius=248.0)
    cut = plan.redrilled.design.brake.carrier.arm
    assert cut.depth_at_pad == pytest.approx(20.0 + 12.0 * 62.0 / 310.0)
    assert cut.depth_at_pivot == 32.0


def test_a_ratio_no_hole_gives_has_no_plan(first: Design) -> None:
    plan = cut_plan(first, "brake", BRAKE, pad_radius=248.0, ratio=40.0)
    assert np.isnan(plan.pin_radius)
    assert np.isnan(plan.redrilled.ratio)
    assert plan.drilling.best is None
