"""Cylinders: who gets which share of push and stroke, whole and with one circuit lost."""

import numpy as np
import pytest

from pedalwright.core.working import working
from pedalwright.hydraulics import (
    BalanceBar,
    Cylinder,
    Demand,
    Tandem,
    Twin,
    circuits,
    pressures,
    rod_travel,
    shortest_reserve,
    strokes,
)
from pedalwright.hydraulics.formulas import bar_tilt

TANDEM = Tandem(bore=20.64, stroke=36.0)
TWIN = Twin(
    front=Cylinder(bore=17.78, stroke=32.0),
    rear=Cylinder(bore=19.05, stroke=30.0),
    bar=BalanceBar(spacing=64.0, offset=4.0),
)
FLUID = Demand(front=2000.0, rear=1500.0)
AREA = np.pi / 4.0 * 20.64**2


def test_a_tandem_gives_each_circuit_the_whole_push_and_half_of_the_stroke() -> None:
    front, rear = circuits(TANDEM)
    assert front == rear
    assert (front.share, front.stroke) == (1.0, 18.0)
    assert front.area == pytest.approx(AREA)


def test_a_twin_gives_each_circuit_its_share_and_its_own_stroke() -> None:
    front, rear = circuits(TWIN)
    assert (front.share, rear.share) == (36.0 / 64.0, 28.0 / 64.0)
    assert (front.stroke, rear.stroke) == (32.0, 30.0)


def test_a_tandems_pistons_travel_one_after_the_other() -> None:
    found = strokes(TANDEM, FLUID, dead_stroke=1.5)
    assert found.hard_stop == pytest.approx(3500.0 / AREA + 1.5)
    assert found.front_piston + found.rear_piston == pytest.approx(found.hard_stop)
    # a lost circuit's piston runs to the end of its own half first, its dead stroke included
    assert found.front_alone == pytest.approx(2000.0 / AREA + 0.75 + 18.0)
    assert found.rear_alone == pytest.approx(1500.0 / AREA + 0.75 + 18.0)


def test_a_bars_bearing_travels_the_weighed_mean() -> None:
    found = strokes(TWIN, FLUID, dead_stroke=1.5)
    front = 2000.0 / (np.pi / 4.0 * 17.78**2) + 1.5
    rear = 1500.0 / (np.pi / 4.0 * 19.05**2) + 1.5
    assert (found.front_piston, found.rear_piston) == pytest.approx((front, rear))
    assert found.hard_stop == pytest.approx((36.0 * front + 28.0 * rear) / 64.0)
    assert found.front_alone == pytest.approx((36.0 * front + 28.0 * 30.0) / 64.0)
    assert found.rear_alone == pytest.approx((36.0 * 32.0 + 28.0 * rear) / 64.0)


@pytest.mark.parametrize("masters", [TANDEM, TWIN])
def test_volumes_and_dead_stroke_make_up_the_hard_stop(masters: Tandem | Twin) -> None:
    travel = rod_travel(masters, FLUID.front, FLUID.rear)
    assert strokes(masters, FLUID, dead_stroke=1.5).hard_stop == pytest.approx(travel + 1.5)


def test_a_bar_tilts_towards_the_rod_that_lags() -> None:
    assert np.degrees(bar_tilt(8.5, 7.1, 64.0)) == pytest.approx(1.253, abs=0.001)
    assert np.degrees(bar_tilt(8.5, 32.0, 64.0)) == pytest.approx(-20.16, abs=0.01)
    assert bar_tilt(8.0, 8.0, 64.0) == 0.0


def test_the_fuller_circuit_counts() -> None:
    found = strokes(TWIN, FLUID, dead_stroke=1.5)
    used = (found.front_piston / 32.0, found.rear_piston / 30.0)
    assert used[0] > used[1]
    assert shortest_reserve(TWIN, found) == used[0]


def test_the_working_names_the_circuits() -> None:
    with working() as sheet:
        pressures(TWIN, 500.0, 5.0, 0.9)
    spoken = [(step.formula.symbol, step.subject) for step in sheet]
    assert ("p", "front circuit") in spoken
    assert ("p", "rear circuit") in spoken
    assert spoken.count(("A", "front cylinder")) == 1
