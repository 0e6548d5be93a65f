"""The closed solves: both roots, no answer, no warning."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from pedalwright.core.solve import no_answer_is_nan, swing_roots, wrapped

AMOUNT = st.floats(-100.0, 100.0).filter(lambda x: abs(x) > 1e-3)


@given(AMOUNT, AMOUNT, st.floats(-0.999, 0.999))
def test_both_roots_solve_the_equation_on_either_side_of_the_direction(
    a: float, b: float, share: float
) -> None:
    size = np.hypot(a, b)
    first, second = swing_roots(a, b, share * size)
    for angle in (first, second):
        assert a * np.cos(angle) + b * np.sin(angle) == pytest.approx(share * size, abs=1e-10)
    assert first < np.arctan2(b, a) < second


@given(AMOUNT, AMOUNT, st.floats(-0.99, 0.99))
def test_the_sum_rises_through_the_first_root_and_falls_through_the_second(
    a: float, b: float, share: float
) -> None:
    first, second = swing_roots(a, b, share * np.hypot(a, b))
    slopes = [-a * np.sin(angle) + b * np.cos(angle) for angle in (first, second)]
    assert slopes[0] > 0.0 > slopes[1]


def test_out_of_reach_is_nan_without_a_warning() -> None:
    first, second = no_answer_is_nan(swing_roots)(3.0, 4.0, 5.01)
    assert np.isnan(first)
    assert np.isnan(second)


def test_each_variant_has_its_own_answer() -> None:
    first, _ = no_answer_is_nan(swing_roots)(3.0, 4.0, np.array([5.01, 0.0]))
    assert np.array_equal(np.isnan(first), [True, False])


@given(st.floats(-20.0, 20.0))
def test_a_wrapped_angle_points_the_same_way(angle: float) -> None:
    short = wrapped(angle)
    assert -np.pi <= short <= np.pi
    assert np.cos(short) == pytest.approx(np.cos(angle), abs=1e-12)
    assert np.sin(short) == pytest.approx(np.sin(angle), abs=1e-12)
