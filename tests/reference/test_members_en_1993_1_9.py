"""EN 1993-1-9: a detail of category 36, worked by hand from the code's S-N line."""

import numpy as np
import pytest

from pedalwright.structure.formulas.fatigue import (
    constant_amplitude_limit,
    cut_off_limit,
    cycles,
    damage,
)


def test_limits_of_category_36() -> None:
    assert constant_amplitude_limit(36.0) == pytest.approx(26.53, abs=5e-3)
    assert cut_off_limit(36.0) == pytest.approx(14.57, abs=5e-3)


@pytest.mark.parametrize("category", [36.0, 90.0, 160.0])
def test_the_line_passes_its_three_named_points(category: float) -> None:
    fixed = float(constant_amplitude_limit(category))
    last = float(cut_off_limit(category))
    assert cycles(category, category) == pytest.approx(2e6)
    assert cycles(fixed, category) == pytest.approx(5e6, rel=1e-6)
    assert cycles(fixed * (1 - 1e-9), category) == pytest.approx(5e6, rel=1e-6)
    assert cycles(last * (1 + 1e-9), category) == pytest.approx(1e8, rel=1e-6)
    assert cycles(last * (1 - 1e-9), category) == np.inf


def test_80_mpa_182250_times() -> None:
    assert cycles(80.0, 36.0) == pytest.approx(182250)


def test_three_blocks_add_up() -> None:
    counts, ranges = np.array([20.0, 2e4, 1e5]), np.array([120.0, 55.0, 25.0])
    assert np.sum(damage(counts, cycles(ranges, 36.0))) == pytest.approx(0.0509, abs=5e-5)
