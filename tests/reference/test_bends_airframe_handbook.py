"""FAA-H-8083-31 (public domain), the chapter on metal structures: U channel of 0.040 in sheet."""

import numpy as np
import pytest

from pedalwright.making.bending.formulas import airframe_allowance, bend_allowance, setback

SQUARE = np.pi / 2
T, R = 0.040, 0.160  # in inches, as the handbook has it: no formula minds


def test_setback_and_flats_of_the_channel() -> None:
    back = setback(SQUARE, R, T)
    assert back == pytest.approx(0.200, abs=5e-4)
    assert 1.00 - back == pytest.approx(0.80, abs=5e-4)
    assert 2.00 - 2 * back == pytest.approx(1.60, abs=5e-4)


def test_allowance_by_rule_of_thumb_and_by_the_middle_of_the_sheet() -> None:
    """Developed width: three flats and two allowances."""
    assert airframe_allowance(SQUARE, R, T) == pytest.approx(0.2791, abs=5e-5)
    assert bend_allowance(SQUARE, R, 0.5, T) == pytest.approx(0.2827, abs=5e-5)
    flats = 0.80 + 1.60 + 0.80
    assert flats + 2 * airframe_allowance(SQUARE, R, T) == pytest.approx(3.758, abs=5e-4)
    assert flats + 2 * bend_allowance(SQUARE, R, 0.5, T) == pytest.approx(3.765, abs=5e-4)
