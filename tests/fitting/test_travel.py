"""Where the travel goes sums up, and every change is one the assessment confirms."""

from dataclasses import replace

import pytest

from assess.unboxed import unboxed
from pedalwright.assess import assess
from pedalwright.design import Design
from pedalwright.fitting import PedalName, travel_answer


@pytest.mark.parametrize("name", ["brake", "clutch"])
def test_the_causes_sum_to_the_travel(first: Design, name: PedalName) -> None:
    found = travel_answer(first, name)
    assert sum(part.travel for part in found.causes) == pytest.approx(found.total, rel=1e-9)
    saved = [saving.saves for saving in found.savings]
    assert saved == sorted(saved, reverse=True)


def test_a_soft_wall_eats_most_of_the_first_attempts_brake(first: Design) -> None:
    found = travel_answer(unboxed(first, cylinder=200.0, pivot=450.0), "brake")
    assert max(found.causes, key=lambda part: float(part.travel)).cause == "structure"
    assert found.savings[0].change == "mounts twice as stiff"
    assert found.savings[0].costs == pytest.approx(0.0, abs=1e-9)
    assert "next larger bore" not in {saving.change for saving in found.savings}  # 1 in is largest


def test_a_bore_up_saves_travel_and_costs_push(improved: Design) -> None:
    """13/16 to 7/8: the area, and with it the push, grows by 16 per cent."""
    bore = next(s for s in travel_answer(improved, "brake").savings if "bore" in s.change)
    effort = assess(improved).brake.result.effort_6_43
    assert bore.costs / effort == pytest.approx((22.225 / 20.6375) ** 2 - 1.0, abs=0.01)
    assert bore.saves > 5.0


def test_each_saving_is_the_difference_of_two_assessments(improved: Design) -> None:
    before = assess(improved).clutch.result.budget.total
    for saving in travel_answer(improved, "clutch").savings:
        after = assess(saving.design).clutch.result.budget.total
        assert saving.saves == pytest.approx(before - after, rel=1e-12)


def test_a_larger_bore_for_both_of_a_pair(improved: Design) -> None:
    from pedalwright.hydraulics import BalanceBar, Cylinder, Twin

    pair = Twin(
        front=Cylinder(bore=17.78, stroke=32.0),
        rear=Cylinder(bore=19.05, stroke=32.0),
        bar=BalanceBar(spacing=64.0, offset=0.0),
    )
    twin = replace(improved, brake=replace(improved.brake, masters=pair))
    bore = next(s for s in travel_answer(twin, "brake").savings if "bore" in s.change)
    masters = bore.design.brake.masters
    assert isinstance(masters, Twin)
    assert (masters.front.bore, masters.rear.bore) == (19.05, 20.6375)
