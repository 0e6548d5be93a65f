"""DIN 6935, and the worked example of a trade table book (60 degree opening, legs 16 and 21)."""

import numpy as np
import pytest

from pedalwright.making.bending.formulas import (
    din_correction,
    din_neutral,
    din_share,
    flat_length,
)


def correction(opening: float, r: float, s: float) -> float:
    """By the opening angle in degrees, as the standard counts it."""
    return float(din_correction(np.radians(180.0 - opening), r, s, din_share(r, s)))


def test_the_table_books_example() -> None:
    """The book reads k = 0.7 off its chart and prints about 32."""
    assert din_share(6.0, 5.0) == pytest.approx(0.6896, abs=5e-5)
    turned = np.radians(120.0)
    assert din_correction(turned, 6.0, 5.0, 0.7) == pytest.approx(5.768, abs=5e-4)
    assert flat_length(16.0, 21.0, 5.768) == pytest.approx(31.23, abs=0.005)
    assert correction(60.0, 6.0, 5.0) == pytest.approx(5.823, abs=5e-4)
    assert flat_length(16.0, 21.0, correction(60.0, 6.0, 5.0)) == pytest.approx(31.18, abs=0.005)


@pytest.mark.parametrize(
    ("opening", "r", "s", "v"),
    [
        (90.0, 3.0, 3.0, 5.756),
        (90.0, 3.0, 2.0, 4.128),
        (90.0, 2.0, 1.5, 3.019),
        (135.0, 4.0, 2.0, 1.200),
        (120.0, 3.0, 3.0, 2.766),
    ],
)
def test_corrections_worked_by_hand(opening: float, r: float, s: float, v: float) -> None:
    """From the standard's formula with a pocket calculator."""
    assert correction(opening, r, s) == pytest.approx(v, abs=6e-4)


def test_hardly_bent_legs_keep_their_length() -> None:
    assert correction(166.0, 3.0, 2.0) == 0.0
    assert correction(164.0, 3.0, 2.0) > 0.0


def test_beyond_five_thicknesses_the_neutral_line_is_the_middle() -> None:
    assert din_neutral(din_share(10.0, 2.0)) == pytest.approx(0.5, abs=5e-4)
    assert din_neutral(din_share(40.0, 2.0)) == 0.5


def test_the_correction_has_no_step_at_a_right_angle() -> None:
    assert correction(90.0 - 1e-7, 3.0, 2.0) == pytest.approx(correction(90.0, 3.0, 2.0), abs=1e-6)
