"""Many cars built within their ±: what is drawn, what it turns, what it rests on."""

from dataclasses import replace
from typing import TypeVar

import numpy as np
import pytest

from pedalwright.assess import assess
from pedalwright.core.batch import over
from pedalwright.design import Design
from pedalwright.project import car_text, plus_minus_tree, read
from pedalwright.search import Held, Robustness, robustness

T = TypeVar("T")


@pytest.fixture(scope="module")
def larkfield() -> Design:
    return read(car_text("larkfield-improved")).design


def certain(design: T) -> T:
    """A ± of nothing for every number."""
    nothing: T = over(lambda _: 0.0, design)
    return nothing


def only(design: Design, *, pin: float = 0.0, bore: float = 0.0) -> Design:
    """All is certain but the brake's pin and its wheel's pistons."""
    sure = certain(design)
    pedal = replace(sure.brake.pedal, pin_radius=pin)
    front = replace(sure.brake.front, piston_bore=bore)
    return replace(sure, brake=replace(sure.brake, pedal=pedal, front=front))


def held(found: Robustness, code: str, about: str = "") -> Held:
    return next(
        each
        for each in found.held
        if (each.nominal.limit.code, each.nominal.about) == (code, about)
    )


def test_a_car_without_doubt_comes_out_as_it_is(larkfield: Design) -> None:
    found = robustness(larkfield, certain(larkfield), 200)
    for each in found.held:
        assert each.met == float(bool(each.nominal.ok))
        assert each.low == pytest.approx(each.nominal.value, rel=1e-12)
        assert each.rests_on == ()
    assert found.matters == ()
    assert found.all_musts == 1.0


def test_one_doubtful_number_explains_all_there_is(larkfield: Design) -> None:
    found = robustness(larkfield, only(larkfield, pin=2.0), 1000)
    effort = held(found, "brakes.effort")
    (rest,) = effort.rests_on
    assert rest.path == "brake.pedal.pin_radius"
    assert rest.share == pytest.approx(1.0, abs=0.002)
    assert held(found, "clutch.release").rests_on == ()


def test_nine_cars_of_ten_lie_where_an_even_spread_puts_them(larkfield: Design) -> None:
    """The effort goes as the pin's radius, nearly: 90 % of a ± of 2 is 1.8 either way."""
    found = held(robustness(larkfield, only(larkfield, pin=2.0), 20_000), "brakes.effort")
    pin, effort = float(larkfield.brake.pedal.pin_radius), float(found.nominal.value)
    assert float(found.low) == pytest.approx(effort * (1 - 1.8 / pin), rel=0.004)
    assert float(found.high) == pytest.approx(effort * (1 + 1.8 / pin), rel=0.004)


def test_two_numbers_share_what_they_explain_as_their_spreads_do(larkfield: Design) -> None:
    """Effort over the front piston goes nearly as (front) D squared: 2 x 1/54 against 2/54.5."""
    found = robustness(larkfield, only(larkfield, pin=1.0, bore=1.0), 20_000)
    shares = {rest.path: float(rest.share) for rest in held(found, "brakes.effort").rests_on}
    front = 0.72 * 2.0 / 54.0
    pin = 1.0 / 54.5
    expected = front**2 / (front**2 + pin**2)
    assert shares["brake.front.piston_bore"] == pytest.approx(expected, abs=0.04)
    assert sum(shares.values()) == pytest.approx(1.0, abs=0.02)


def test_the_share_that_meets_a_demand_by_hand(larkfield: Design) -> None:
    """A stop at 145 against 140.9 needed: with a lift of 8 ±1 mm some cars need more than that."""
    sure = certain(larkfield)
    release = replace(sure.clutch.release, bearing_lift=1.0)
    doubt = replace(sure, clutch=replace(sure.clutch, release=release))
    found = held(robustness(larkfield, doubt, 20_000), "linkage.stop_after_work", "clutch")
    needed, at = float(found.nominal.bound), float(found.nominal.value)
    budget = assess(larkfield).clutch.result.budget
    pad_for_a_millimetre = float(budget.lift + budget.line_growth) / 8.0
    share = 0.5 + (at - needed) / pad_for_a_millimetre / 2.0
    assert float(found.met) == pytest.approx(share, abs=0.02)


@pytest.mark.parametrize("name", ["larkfield-first", "brackwater-fix2", "saltmarsh-improved"])
def test_the_same_cars_are_built_every_time_and_every_path_is_in_the_file(name: str) -> None:
    project = read(car_text(name))
    doubt = plus_minus_tree(project)
    one, two = (robustness(project.design, doubt, 300) for _ in range(2))
    assert [each.met for each in one.held] == [each.met for each in two.held]
    named = {rest.path for each in one.held for rest in each.rests_on}
    assert named
    known = {path.replace(".through", "") for path in project.provenance}
    faces = {path for path in named if path.endswith(".plane.offset")}
    assert named - faces <= known
    assert sum(float(rest.share) for rest in one.matters) == pytest.approx(1.0)


def test_a_value_that_some_cars_do_not_have_counts_as_missed(larkfield: Design) -> None:
    """With the wall out of reach for some, nothing is said of what the margin rests on."""
    sure = certain(larkfield)
    doubt = replace(sure, toes_to_wall=140.0)
    found = held(robustness(larkfield, doubt, 400), "clutch.release")
    assert 0.0 < float(found.met) < 1.0
    assert np.isfinite(float(found.low))
