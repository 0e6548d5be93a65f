"""Pins and eyes worked by hand from the usual formulas of machine design."""

from math import pi

import pytest

from pedalwright.structure.formulas.arm import bending_stress
from pedalwright.structure.formulas.pins import (
    bearing_pressure,
    double_shear,
    end_load,
    lug_net_stress,
    lug_tear_out,
    lug_tear_out_40,
    mid_span_moment,
    pin_moment,
    single_shear,
)
from pedalwright.structure.formulas.sections import round_modulus


def test_eye_5_thick_22_wide_pin_8_under_8_kn() -> None:
    assert bearing_pressure(8000.0, 8.0, 5.0) == pytest.approx(200.0)
    assert lug_net_stress(8000.0, 22.0, 8.0, 5.0) == pytest.approx(114.29, rel=1e-4)
    assert lug_tear_out(8000.0, 5.0, 12.0, 8.0) == pytest.approx(100.0)
    assert lug_tear_out_40(8000.0, 5.0, 12.0, 8.0) == pytest.approx(89.53, rel=1e-4)
    assert double_shear(8000.0, 8.0) == pytest.approx(79.58, rel=1e-4)
    assert single_shear(8000.0, 8.0) == pytest.approx(2 * 79.58, rel=1e-4)


def test_clevis_pin_8_under_8_kn() -> None:
    moment = pin_moment(8000.0, 4.0, 0.5, 6.0)
    assert moment == pytest.approx(16000.0)
    assert bending_stress(moment, round_modulus(8.0, 0.0)) == pytest.approx(318.3, rel=1e-4)


def test_pivot_tube_22_16_over_60_mm_under_8_kn() -> None:
    moment = mid_span_moment(8000.0, 60.0)
    assert moment == 120e3
    modulus = pi * (22.0**4 - 16.0**4) / (32 * 22.0)
    assert bending_stress(moment, round_modulus(22.0, 16.0)) == pytest.approx(moment / modulus)
    assert end_load(8000.0, -30e3, 60.0) == 4500.0
