"""Laws of the brakes: from the pad to the road, fluid, batches."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from laws.brake_cases import ASSISTED, DISCS, LIMITED, PLUMBINGS, Case, between, cases, likes
from pedalwright.brakes import (
    Disc,
    Plumbing,
    Ratios,
    demand,
)
from pedalwright.core.batch import over, pick, stack
from pedalwright.core.units import Num
from pedalwright.hydraulics import (
    strokes,
)


@given(cases(), between(1.01, 3.0))
def test_braking_grows_with_the_push(case: Case, more: float) -> None:
    before, after = case.braking(), replace(case, push=case.push * more).braking()
    assert after.deceleration == pytest.approx(more * before.deceleration, rel=1e-12)
    assert after.deceleration > before.deceleration
    assert after.front_share == pytest.approx(before.front_share, rel=1e-12)


@given(cases())
def test_the_effort_gives_the_deceleration_it_was_asked_for(case: Case) -> None:
    effort = case.result().effort_6_43
    assert replace(case, push=effort).braking().deceleration == pytest.approx(6.43, rel=1e-12)


@given(cases(masters=ASSISTED, plumbing=LIMITED))
def test_the_effort_is_the_inverse_of_the_chain(case: Case) -> None:
    found = case.result()
    assume(np.isfinite(found.effort_6_43) and found.effort_6_43 < 1e6)
    again = replace(case, push=found.effort_6_43).braking()
    assert again.deceleration == pytest.approx(6.43, rel=1e-9)


@given(cases())
def test_the_lost_circuits_share_the_stop_where_the_ratio_is_the_same(case: Case) -> None:
    ratio = case.ratios.hard_stop
    level = replace(case, ratios=Ratios(hard_stop=ratio, front_alone=ratio, rear_alone=ratio))
    found = level.result()
    both = found.front_alone_500 + found.rear_alone_500
    assert both == pytest.approx(found.at_500.deceleration, rel=1e-12)


@given(DISCS, DISCS, PLUMBINGS)
def test_the_fluid_is_all_accounted_for(front: Disc, rear: Disc, plumbing: Plumbing) -> None:
    found = demand(front, rear, plumbing)
    lifted = sum(
        2.0 * disc.pistons_moved * np.pi / 4.0 * disc.piston_bore**2 * disc.lift
        for disc in (front, rear)
    )
    assert found.front + found.rear == pytest.approx(lifted + plumbing.hoses, rel=1e-12)


def same(one: Num, other: Num) -> Num:
    assert np.shape(one) == np.shape(other)
    np.testing.assert_allclose(one, other, rtol=1e-12)
    return one


@given(likes())
def test_a_batch_equals_its_singles(rows: list[Case]) -> None:
    batch = stack(rows)
    braking, result = batch.braking(), batch.result()
    fluid = demand(batch.front, batch.rear, batch.plumbing)
    moved = strokes(batch.masters, fluid, batch.plumbing.dead_stroke)
    for i, row in enumerate(rows):
        over(same, row.braking(), pick(braking, i))
        over(same, row.result(), pick(result, i))
        alone = demand(row.front, row.rear, row.plumbing)
        over(same, alone, pick(fluid, i))
        over(same, strokes(row.masters, alone, row.plumbing.dead_stroke), pick(moved, i))


@given(cases(), st.sampled_from(["mass", "front_share", "wheelbase", "cg_height", "tyre_radius"]))
def test_one_number_may_vary_alone(case: Case, name: str) -> None:
    """Its curve then has the variants behind the decelerations, whichever number it is."""
    values = getattr(case.car, name) * np.array([0.9, 1.0, 1.1])
    found = replace(case, car=replace(case.car, **{name: values})).result()
    middle = case.result()
    curve = np.broadcast_to(found.front_utilisation, (19, 3))
    np.testing.assert_allclose(curve[:, 1], middle.front_utilisation, rtol=1e-12)
    assert np.shape(found.decelerations) == (19, 3)
