"""A servo's curve, forward and backward, and what stays without it."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from pedalwright.hydraulics import (
    BalanceBar,
    Boost,
    Cylinder,
    Limiter,
    Servo,
    Tandem,
    Twin,
    gain,
    helped,
    pressures,
    unhelped,
)

#: Nothing below 50 N, then 4 for 1, run out at 800 N.
SERVO = Servo(
    points=(
        Boost(push=50.0, force=50.0),
        Boost(push=550.0, force=2050.0),
        Boost(push=800.0, force=2550.0),
    )
)
TANDEM = Tandem(bore=20.64, stroke=36.0, servo=SERVO)
AREA = np.pi / 4.0 * 20.64**2


@pytest.mark.parametrize(
    ("push", "force"),
    [(0.0, 0.0), (30.0, 30.0), (50.0, 50.0), (300.0, 1050.0), (675.0, 2300.0), (1000.0, 2750.0)],
)
def test_the_curve_is_followed_and_run_out_adds_one_for_one(push: float, force: float) -> None:
    assert helped(SERVO, push) == pytest.approx(force, rel=1e-12)
    assert unhelped(SERVO, force) == pytest.approx(push, rel=1e-12)


@given(st.floats(0.0, 5000.0))
def test_back_and_forth(push: float) -> None:
    assert unhelped(SERVO, helped(SERVO, push)) == pytest.approx(push, abs=1e-9)


def test_a_batch_has_its_variants_last() -> None:
    pushes = np.array([30.0, 300.0, 1000.0])
    assert helped(SERVO, pushes) == pytest.approx([30.0, 1050.0, 2750.0])
    wide = replace(SERVO, points=(Boost(push=np.array([100.0, 200.0]), force=900.0),))
    assert helped(wide, 50.0) == pytest.approx([450.0, 225.0])


def test_pressure_is_that_of_the_helped_rod() -> None:
    front, rear = pressures(TANDEM, push=60.0, ratio=5.0, efficiency=0.9)
    assert front == rear == pytest.approx(1050.0 * 0.9 / AREA)


def test_no_servo_no_help() -> None:
    assert gain(replace(TANDEM, servo=None), 300.0) == 1.0
    assert helped(None, 300.0) == unhelped(None, 300.0) == 300.0
    single = Cylinder(bore=17.78, stroke=32.0)
    twin = Twin(front=single, rear=single, bar=BalanceBar(spacing=64.0, offset=0.0))
    assert gain(twin, 300.0) == 1.0


def test_a_limiter_bends_the_rear_pressure_only() -> None:
    plain = replace(TANDEM, servo=None)
    limiter = Limiter(knee=3.0, slope=0.3)
    low = pressures(plain, 150.0, 5.0, 1.0, limiter)
    assert low[0] == low[1] == pytest.approx(750.0 / AREA)
    front, rear = pressures(plain, 500.0, 5.0, 1.0, limiter)
    assert front == pytest.approx(2500.0 / AREA)
    assert rear == pytest.approx(3.0 + 0.3 * (2500.0 / AREA - 3.0))
