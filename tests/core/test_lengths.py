"""Lengths as a drawing writes them."""

from fractions import Fraction
from math import nan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pedalwright.core.lengths import inches, millimetres
from pedalwright.core.quantity import parse


@pytest.mark.parametrize(
    ("length", "decimals", "text"),
    [
        (25.4, 1, "1″"),
        (44.45, 1, "1 3/4″"),
        (11.1125, 2, "7/16″"),
        (-12.7, 1, "-1/2″"),
        (0.0, 1, "0″"),
        (8.297 * 25.4, 1, "8.297″"),
        (100.0, 0, "3.94″"),
        (100.0, 2, "3.937″"),
        (nan, 1, "?"),
    ],
)
def test_in_inches(length: float, decimals: int, text: str) -> None:
    assert inches(length, decimals) == text


@pytest.mark.parametrize(
    ("length", "decimals", "text"),
    [(54.5, 1, "54.5"), (272.0, 1, "272"), (20.6375, 2, "20.64"), (nan, 1, "?")],
)
def test_in_millimetres(length: float, decimals: int, text: str) -> None:
    assert millimetres(length, decimals) == text


@given(st.integers(-64 * 40, 64 * 40))
def test_any_mark_of_a_rule_is_a_fraction_that_reads_back(parts: int) -> None:
    length = float(Fraction(parts, 64) * Fraction("25.4"))
    written = inches(length, 1)
    assert "." not in written
    assert parse(written.replace("″", " in"), "mm").value == pytest.approx(length, abs=1e-9)


@given(st.floats(-2000.0, 2000.0))
def test_decimals_are_good_to_half_a_thousandth(length: float) -> None:
    read = parse(inches(length, 1).replace("″", " in"), "mm").value
    assert abs(read - length) <= 0.0005 * 25.4 + 1e-4
