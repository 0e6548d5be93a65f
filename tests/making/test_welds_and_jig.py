"""Welds in their order with their lengths, and where none may be; a jig that is square."""

from dataclasses import replace
from math import hypot, pi
from typing import Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pedalwright.design import Design
from pedalwright.making.car import Jig, Weld, car_jigs, car_welds, jig_drawings
from pedalwright.project import car_text, read
from pedalwright.structure.trims import Gussets, trimmed
from tests.making.variations import WELDED, held, trimmed_by

LARKFIELD = read(car_text("larkfield-improved")).design


def with_metal(metal: Literal["steel", "cast", "alloy", "unknown"]) -> Design:
    arms = tuple(replace(arm, metal=metal) for arm in LARKFIELD.stock.arms)
    return replace(LARKFIELD, stock=replace(LARKFIELD.stock, arms=arms))


def joined(design: Design, words: str) -> list[Weld]:
    return [weld for weld in car_welds(design) if words in weld.joins]


def test_the_old_hole_is_filled_before_anything_stands_beside_it() -> None:
    first, tube, pad, *_ = car_welds(LARKFIELD)
    assert "old hole" in first.joins
    assert first.length == pytest.approx(2 * pi * 12.0)
    assert tube.length == pytest.approx(2 * pi * 22.0)
    assert tube.leg == 3.0  # the tube's wall
    assert "trial in metal" in pad.how


def test_a_hole_that_stays_or_is_far_away_is_not_filled() -> None:
    assert not joined(read(car_text("larkfield-first")).design, "old hole")
    far = tuple(replace(arm, pin_radius=100.0) for arm in LARKFIELD.stock.arms)
    assert not joined(replace(LARKFIELD, stock=replace(LARKFIELD.stock, arms=far)), "old hole")


@pytest.mark.parametrize(
    ("metal", "said"),
    [("cast", "FORBIDDEN"), ("alloy", "FORBIDDEN"), ("unknown", "NOT YET"), ("steel", "")],
)
def test_what_must_not_be_welded_says_so(
    metal: Literal["steel", "cast", "alloy", "unknown"], said: str
) -> None:
    on_arms = [weld.forbidden for weld in car_welds(with_metal(metal)) if "arm" in weld.part]
    assert len(on_arms) == 6
    assert all(one.startswith(said) and bool(one) == bool(said) for one in on_arms)


def test_an_alloy_arm_without_a_donor_is_not_welded_either() -> None:
    made = read(car_text("brackwater-fix2")).design
    carrier = made.brake.carrier
    soft = replace(carrier, arm=replace(carrier.arm, elastic=70000.0))
    made = replace(made, brake=replace(made.brake, carrier=soft))
    said = {weld.part: weld.forbidden for weld in car_welds(made)}
    assert said["brake arm"].startswith("FORBIDDEN")
    assert said["clutch arm"] == ""


def test_a_welded_flange_has_the_runs_of_its_strength_model() -> None:
    (weld,) = [w for w in car_welds(held(WELDED)) if w.part == "brake cylinder's flange"]
    run = WELDED.runs[0]
    assert weld.length == pytest.approx(float((run.end - run.start).length()))
    assert weld.leg == pytest.approx(WELDED.throat * 2**0.5)


def test_what_goes_back_after_a_trim_is_welded_as_long_as_it_was_judged() -> None:
    made = trimmed_by(Gussets(thickness=2.0, height=40.0, lap=30.0))
    (weld,) = [w for w in car_welds(made) if w.part == "toes"]
    rail = made.survey.lines[-1]
    assert weld.length == pytest.approx(float(trimmed(rail, made.trims[0]).weld))
    assert weld.leg == 2.0


@given(offset=st.floats(-60.0, 60.0), span=st.floats(30.0, 120.0), wide=st.floats(20.0, 120.0))
def test_a_jig_holds_the_pad_where_the_design_has_it(
    offset: float, span: float, wide: float
) -> None:
    """Tube and arm share their middle, the pad stands off by its offset, nothing under the plate.

    Seen from the car's right, up on the plate is the car's right.
    """
    part = LARKFIELD.brake
    pedal = replace(part.pedal, pad_offset=offset, pad_width=wide)
    carrier = replace(part.carrier, pivot=replace(part.carrier.pivot, span=span))
    jig = car_jigs(replace(LARKFIELD, brake=replace(part, pedal=pedal, carrier=carrier)))[0]
    arm = jig.under_arm + jig.arm.thickness / 2
    assert jig.seen == "seen from the car's right"
    assert jig.under_tube + jig.tube_length / 2 == pytest.approx(arm)
    assert jig.under_pad + jig.pad_width / 2 - arm == pytest.approx(offset)
    assert min(jig.under_tube, jig.under_pad) == pytest.approx(0.0, abs=1e-9) or jig.under_tube == 0
    assert min(jig.under_tube, jig.under_pad) >= -1e-9


def test_a_floor_hinged_pedal_is_turned_over_so_its_pad_stands_off_the_other_way() -> None:
    made = read(car_text("brackwater-fix2")).design
    pedal = replace(made.brake.pedal, pad_offset=10.0)
    jig = car_jigs(replace(made, brake=replace(made.brake, pedal=pedal)))[0]
    assert jig.seen == "seen from the car's left"
    arm = jig.under_arm + jig.arm.thickness / 2
    assert jig.under_pad + jig.pad_width / 2 - arm == pytest.approx(-10.0)


@pytest.mark.parametrize("car", ["larkfield-improved", "brackwater-fix2", "saltmarsh-improved"])
def test_a_jigs_pin_is_where_the_design_has_it(car: str) -> None:
    made = read(car_text(car)).design
    jig: Jig
    for jig, part in zip(car_jigs(made), (made.brake, made.clutch), strict=True):
        assert hypot(*jig.arm.bores[1].centre) == pytest.approx(float(part.pedal.pin_radius))
        plan, side = jig_drawings(jig)
        assert plan.laid_out().window.width > float(part.pedal.pad_radius)
        assert side.laid_out().window.height > jig.tube_length
