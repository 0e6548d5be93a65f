"""Where the pad's travel goes: the causes sum to the total, and the curve runs through it."""

from dataclasses import fields, replace

import numpy as np
import pytest

from pedalwright.brakes import (
    Disc,
    Elasticity,
    Fluid,
    Plumbing,
    TakeUp,
    budget,
    demand,
    force_travel,
    not_counted,
    pressed,
    pressure_share,
    take_up,
    takes_pressure,
    worn,
)
from pedalwright.core.units import Num
from pedalwright.hydraulics import (
    BalanceBar,
    Boost,
    Cylinder,
    Masters,
    Servo,
    Tandem,
    Twin,
    strokes,
)

FRONT = Disc(
    piston_bore=54.0,
    pistons_one_side=1.0,
    pistons_moved=2.0,
    effective_radius=112.0,
    friction_low=0.30,
    friction=0.36,
    friction_high=0.42,
    lift=0.28,
)
REAR = Disc(
    piston_bore=34.0,
    pistons_one_side=1.0,
    pistons_moved=1.0,
    effective_radius=108.0,
    friction_low=0.30,
    friction=0.36,
    friction_high=0.42,
    lift=0.55,
)
PLUMBING = Plumbing(hoses=900.0, dead_stroke=1.5, efficiency=0.92)
TANDEM = Tandem(bore=20.64, stroke=36.0)
TWIN = Twin(
    front=Cylinder(bore=17.78, stroke=32.0),
    rear=Cylinder(bore=19.05, stroke=30.0),
    bar=BalanceBar(spacing=64.0, offset=4.0),
)


def pad(stroke: Num) -> Num:
    """A pedal whose ratio rises from 5 with the stroke."""
    return 5.0 * stroke + 0.02 * stroke**2


def summed(taken: TakeUp) -> Num:
    return taken.dead_stroke + taken.front_lift + taken.rear_lift + taken.hoses


@pytest.mark.parametrize("masters", [TANDEM, TWIN])
def test_the_rods_travel_is_all_accounted_for(masters: Masters) -> None:
    taken = take_up(masters, FRONT, REAR, PLUMBING)
    whole = strokes(masters, demand(FRONT, REAR, PLUMBING), PLUMBING.dead_stroke).hard_stop
    assert summed(taken) == pytest.approx(whole, rel=1e-12)


def test_the_pads_travel_is_all_accounted_for_though_the_ratio_changes() -> None:
    taken = take_up(TANDEM, FRONT, REAR, PLUMBING)
    found = budget(taken, 3.5, pad)
    causes = [getattr(found, field.name) for field in fields(found) if field.name != "total"]
    assert sum(causes) == pytest.approx(found.total, rel=1e-12)
    assert found.total == pytest.approx(pad(summed(taken)) + 3.5, rel=1e-12)
    given = [found.dead_stroke, found.front_lift, found.rear_lift, found.hoses, found.structure]
    assert min(given) > 0.0
    assert sum(given) == found.total
    # later causes meet a longer ratio
    assert found.hoses / taken.hoses > found.front_lift / taken.front_lift > 5.0


def test_everything_given_is_counted_and_still_sums() -> None:
    soft = Elasticity(calliper=35.0, squeeze=0.08 / 7.0)
    front, rear = replace(FRONT, elasticity=soft), replace(REAR, elasticity=soft)
    plumbing = replace(
        PLUMBING, rod_gap=0.4, fluid=Fluid(grade="DOT 4", volume=55e3, bulk_modulus=1700.0)
    )
    extra = pressed(front, rear, plumbing, (7.0, 5.0))
    taken = take_up(TANDEM, front, rear, plumbing, extra)
    found = budget(taken, 3.5, pad)
    causes = [getattr(found, field.name) for field in fields(found) if field.name != "total"]
    assert sum(causes) == pytest.approx(found.total, rel=1e-12)
    assert min(causes) > 0.0
    whole = demand(front, rear, plumbing, extra)
    rod = strokes(TANDEM, whole, plumbing.dead_stroke).hard_stop
    assert found.total == pytest.approx(pad(rod) + 3.5, rel=1e-12)
    assert found.free_play == pytest.approx(pad(0.4))
    assert not_counted(front, rear, plumbing) == ()


def test_what_is_not_counted_is_named() -> None:
    assert not_counted(FRONT, REAR, PLUMBING) == (
        "linings and callipers, front",
        "linings and callipers, rear",
        "compression of the fluid",
    )
    assert not takes_pressure(FRONT, REAR, PLUMBING)
    grade_only = replace(PLUMBING, fluid=Fluid(grade="DOT 4"))
    assert "compression of the fluid" in not_counted(FRONT, REAR, grade_only)
    assert not takes_pressure(FRONT, REAR, grade_only)


def test_with_a_servo_the_curve_follows_the_pressure() -> None:
    servo = Servo(points=(Boost(push=1500.0, force=6000.0),))
    assisted = replace(TANDEM, servo=servo)
    taken = take_up(assisted, FRONT, REAR, PLUMBING)
    curve = force_travel(taken, 0.0, pad, pressure_share(assisted, 5.0))
    push, travel = np.asarray(curve.push), np.asarray(curve.travel)
    lift = summed(taken) - taken.hoses
    # run out at 300 N: at 250 N the cylinder feels 5000 of the 7000 N at 500 N
    at_250 = float(np.interp(250.0, push, travel))
    assert at_250 == pytest.approx(pad(lift + taken.hoses * 5000.0 / 7000.0), rel=1e-12)


def test_worn_linings_need_more_fluid() -> None:
    drum_like = replace(REAR, lift_worn=1.5)
    assert worn(drum_like).lift == 1.5
    assert worn(REAR) is REAR


def test_the_curve_begins_at_the_linings_and_runs_through_the_budget() -> None:
    taken = take_up(TANDEM, FRONT, REAR, PLUMBING)
    curve = force_travel(taken, 0.007, pad)
    push, travel = np.asarray(curve.push), np.asarray(curve.travel)
    assert push[0] == 0.0
    assert travel[0] == pytest.approx(pad(summed(taken) - taken.hoses))
    at_design = float(np.interp(500.0, push, travel))
    assert at_design == pytest.approx(budget(taken, 3.5, pad).total, rel=1e-9)
    assert np.all(np.diff(travel) > 0.0)


def test_a_curve_of_variants_has_them_behind_the_pushes() -> None:
    taken = take_up(TANDEM, FRONT, REAR, PLUMBING)
    give = np.array([0.004, 0.007, 0.02])
    curve = force_travel(taken, give, pad)
    assert np.shape(curve.push) == np.shape(curve.travel) == (31, 3)
    alone = force_travel(taken, 0.007, pad)
    np.testing.assert_allclose(np.asarray(curve.travel)[:, 1], alone.travel, rtol=1e-12)


def test_without_the_structures_give_the_pushes_are_still_known() -> None:
    curve = force_travel(take_up(TANDEM, FRONT, REAR, PLUMBING), np.nan, pad)
    assert np.all(np.isfinite(curve.push))
    assert np.all(np.isnan(curve.travel))
