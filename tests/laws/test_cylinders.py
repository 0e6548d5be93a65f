"""Laws of cylinders: bore and pressure, the bar, work, two circuits."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, given

from laws.brake_cases import DEMANDS, PUSHES, RATIOS, TANDEMS, TWINS, between
from pedalwright.hydraulics import (
    BalanceBar,
    Cylinder,
    Demand,
    Masters,
    Tandem,
    Twin,
    circuits,
    pressures,
    shortest_reserve,
    strokes,
)


@given(TWINS | TANDEMS, PUSHES, RATIOS)
def test_twice_the_bore_area_gives_half_the_pressure(
    masters: Masters, push: float, ratio: float
) -> None:
    wider = (
        replace(masters, bore=masters.bore * np.sqrt(2.0))
        if isinstance(masters, Tandem)
        else replace(
            masters,
            front=replace(masters.front, bore=masters.front.bore * np.sqrt(2.0)),
            rear=replace(masters.rear, bore=masters.rear.bore * np.sqrt(2.0)),
        )
    )
    before, after = (pressures(m, push, ratio, 0.9) for m in (masters, wider))
    assert after == pytest.approx([p / 2.0 for p in before], rel=1e-12)


@given(TWINS, PUSHES, RATIOS)
def test_a_bar_shares_the_whole_push(twin: Twin, push: float, ratio: float) -> None:
    front, rear = circuits(twin)
    p_front, p_rear = pressures(twin, push, ratio, 1.0)
    assert front.share + rear.share == pytest.approx(1.0, rel=1e-12)
    assert p_front * front.area + p_rear * rear.area == pytest.approx(push * ratio, rel=1e-12)


@given(TWINS, between(0.1, 5.0))
def test_the_rod_nearer_the_bearing_gets_more(twin: Twin, further: float) -> None:
    bar = replace(twin.bar, offset=twin.bar.offset + further)
    assert circuits(replace(twin, bar=bar))[0].share > circuits(twin)[0].share


@given(TWINS | TANDEMS, DEMANDS, PUSHES)
def test_the_work_of_the_rod_is_the_work_of_the_fluid(
    masters: Masters, fluid: Demand, push: float
) -> None:
    """With no dead stroke and no friction, at a pressure that is held."""
    p_front, p_rear = pressures(masters, push, 1.0, 1.0)
    travel = strokes(masters, fluid, dead_stroke=0.0).hard_stop
    assert push * travel == pytest.approx(p_front * fluid.front + p_rear * fluid.rear, rel=1e-12)


@given(TANDEMS, DEMANDS, between(0, 3), PUSHES)
def test_a_tandem_is_a_pair_of_cylinders_of_half_its_area(
    tandem: Tandem, fluid: Demand, dead_stroke: float, push: float
) -> None:
    """With the bar centred: the same pressure and the same travel of the rod."""
    half = Cylinder(bore=tandem.bore / np.sqrt(2.0), stroke=tandem.stroke)
    twin = Twin(front=half, rear=half, bar=BalanceBar(spacing=60.0, offset=0.0))
    assert pressures(twin, push, 5.0, 0.9) == pytest.approx(pressures(tandem, push, 5.0, 0.9))
    one, two = strokes(tandem, fluid, dead_stroke), strokes(twin, fluid, dead_stroke)
    assert one.hard_stop == pytest.approx(two.hard_stop, rel=1e-12)
    used_one, used_two = shortest_reserve(tandem, one), shortest_reserve(twin, two)
    assert used_one == pytest.approx(used_two, rel=1e-12)


@given(TWINS | TANDEMS, DEMANDS, between(0, 3))
def test_a_lost_circuit_takes_more_travel_while_there_is_stroke_in_reserve(
    masters: Masters, fluid: Demand, dead_stroke: float
) -> None:
    found = strokes(masters, fluid, dead_stroke)
    assume(shortest_reserve(masters, found) < 1.0)
    assert found.front_alone > found.hard_stop
    assert found.rear_alone > found.hard_stop
