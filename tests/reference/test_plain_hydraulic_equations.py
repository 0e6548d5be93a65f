"""Cases C04, C05, C15, C19, C20: cylinders and fluid, solved independently with plain equations.

Strength: other program, printed to the digits given here.
"""

import pytest

from pedalwright.hydraulics import BalanceBar, Cylinder, Demand, Tandem, Twin, pressures, strokes
from pedalwright.hydraulics.formulas import (
    bore_area,
    calliper_volume,
    fluid_compression,
    front_rod_share,
    head_pressure,
    held_head,
    hose_volume,
    lift_volume,
    pad_volume,
    piston_stroke,
    wear_volume,
)

GRAVITY = 9.81
#: A pound of force on a square inch, from the definitions of pound, gravity and inch.
PSI = 0.45359237 * 9.80665 / 25.4**2
#: Mass of brake fluid, 1060 kg/m3.
FLUID = 1060e-9


def test_c04_balance_bar_with_its_bearing_off_centre() -> None:
    share = front_rod_share(64.0, 3.0)
    assert 2400.0 * share == pytest.approx(1312.5)
    assert 2400.0 * (1.0 - share) == pytest.approx(1087.5)
    assert 100.0 * share == pytest.approx(54.688, abs=0.0006)
    twin = Twin(
        front=Cylinder(bore=19.05, stroke=30.0),
        rear=Cylinder(bore=17.78, stroke=30.0),
        bar=BalanceBar(spacing=64.0, offset=3.0),
    )
    front, rear = pressures(twin, push=480.0, ratio=5.0, efficiency=1.0)
    assert front == pytest.approx(4.6049, abs=0.00006)
    assert rear == pytest.approx(4.3800, abs=0.00006)


def test_c05_tandem_line_pressure() -> None:
    tandem = Tandem(bore=19.05, stroke=34.0)
    front, rear = pressures(tandem, push=400.0, ratio=5.0, efficiency=0.95)
    assert front == rear == pytest.approx(6.6661, abs=0.00006)
    assert front * 10.0 == pytest.approx(66.661, abs=0.0006)  # bar
    assert front / PSI == pytest.approx(966.8, abs=0.06)


def test_c15_fluid_budget_at_70_bar() -> None:
    piston = bore_area(38.1)
    clearance = lift_volume(12.0, piston, 0.12)
    pads = pad_volume(12.0, piston, 0.08)
    callipers = calliper_volume(2.0, 35.0, 7.0) + calliper_volume(2.0, 25.0, 7.0)
    hoses = hose_volume(0.110, 4 * 350.0, 7.0)
    fluid = fluid_compression(55e3, 7.0, 1700.0)
    total = clearance + pads + callipers + hoses + fluid
    found = [volume / 1000.0 for volume in (clearance, pads, callipers, hoses, fluid, total)]
    assert found == pytest.approx([1.642, 1.094, 0.840, 1.078, 0.226, 4.881], abs=0.0006)
    stroke = piston_stroke(total, bore_area(19.05)) + 1.2
    assert stroke == pytest.approx(18.324, abs=0.0006)
    assert 5.0 * stroke == pytest.approx(91.62, abs=0.006)


def test_c15_the_room_adds_up_the_same_stroke() -> None:
    tandem = Tandem(bore=19.05, stroke=34.0)
    found = strokes(tandem, Demand(front=3000.0, rear=1881.0), dead_stroke=1.2)
    assert found.hard_stop == pytest.approx(18.324, abs=0.002)


def test_c19_head_of_a_low_cylinder_against_residual_valves() -> None:
    assert head_pressure(FLUID, GRAVITY, 180.0) * 1000.0 == pytest.approx(1.872, abs=0.0006)
    valves = [2.0 * PSI * 1000.0, 10.0 * PSI * 1000.0]
    assert valves == pytest.approx([13.79, 68.95], abs=0.006)
    assert held_head(2.0 * PSI, FLUID, GRAVITY) == pytest.approx(1326.0, abs=0.6)


def test_c20_reservoir_from_new_pads_to_worn_ones() -> None:
    piston = bore_area(38.1)
    front = wear_volume(8.0, piston, 8.0, 0.5) / 1000.0
    rear = wear_volume(4.0, piston, 8.0, 0.5) / 1000.0
    assert front == pytest.approx(77.53, abs=0.006)
    assert rear == pytest.approx(38.76, abs=0.006)
    assert front + rear == pytest.approx(116.29, abs=0.006)
