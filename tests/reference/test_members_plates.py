"""Flat plates: Roark table 11.4, and Navier's series solved independently."""

import pytest

from pedalwright.structure.formulas.plates import (
    clamped_point_give,
    clamped_uniform_give,
    clamped_uniform_stress,
    plate_give,
    plate_patch_stress,
    plate_point_give,
    plate_stress,
    supported_point_give,
    supported_uniform_give,
    supported_uniform_stress,
)
from pedalwright.structure.plates import supported_patch


@pytest.mark.parametrize(
    ("sides", "alpha", "beta"),
    [(1.0, 0.04436, 0.2873), (1.2, 0.0617, 0.3761), (2.0, 0.11061, 0.6101)],
)
def test_roark_1a_against_navier(sides: float, alpha: float, beta: float) -> None:
    assert supported_uniform_give(sides) == pytest.approx(alpha, rel=4e-3)
    assert supported_uniform_stress(sides) == pytest.approx(beta, rel=5e-4)


@pytest.mark.parametrize(
    ("sides", "alpha", "beta"),
    [(1.0, 0.01382, 0.3080), (1.2, 0.01884, 0.3834), (2.0, 0.02766, 0.4973)],
)
def test_roark_8a_against_ritz(sides: float, alpha: float, beta: float) -> None:
    assert clamped_uniform_give(sides) == pytest.approx(alpha, rel=3e-3)
    assert clamped_uniform_stress(sides) == pytest.approx(beta, rel=1e-3)


@pytest.mark.parametrize(("sides", "alpha"), [(1.0, 0.1267), (1.4, 0.1621), (2.0, 0.1805)])
def test_roark_1b_point_load_against_our_series(sides: float, alpha: float) -> None:
    assert supported_point_give(sides) == pytest.approx(alpha, abs=5e-5)
    almost_a_point = supported_patch(100.0 * sides, 100.0, 0.5, 0.5)
    assert almost_a_point.give == pytest.approx(alpha, rel=4e-3)


def test_clamped_square_with_a_point_load() -> None:
    """Timoshenko and Woinowsky-Krieger: 0.00560 W b²/D, so 0.0611 W b²/(E t³) for nu 0.3."""
    assert clamped_point_give(1.0) == pytest.approx(0.00560 * 12 * (1 - 0.3**2), rel=2e-3)


@pytest.mark.parametrize(
    ("u", "v", "printed", "series"), [(20.0, 20.0, 1.28, 1.274), (40.0, 20.0, 1.07, 1.072)]
)
def test_roark_1c_patch_on_a_square(u: float, v: float, printed: float, series: float) -> None:
    patch = supported_patch(100.0, 100.0, u, v)
    worst = max(float(patch.stress_short), float(patch.stress_long))
    assert worst == pytest.approx(printed, rel=1e-2)
    assert worst == pytest.approx(series, rel=2e-3)


def test_bare_panel_300_by_200_by_3_alloy_1_kn_on_60_by_60() -> None:
    """Navier: 3.199 mm, 134.7 and 110.6 MPa; more than half the thickness, so too soft."""
    patch = supported_patch(300.0, 200.0, 60.0, 60.0)
    assert plate_point_give(patch.give, 1000.0, 200.0, 70000.0, 3.0) == pytest.approx(
        3.199, rel=5e-3
    )
    assert plate_patch_stress(patch.stress_short, 1000.0, 3.0) == pytest.approx(134.7, rel=1e-2)
    assert plate_patch_stress(patch.stress_long, 1000.0, 3.0) == pytest.approx(110.6, rel=1e-2)


def test_square_under_even_load_is_a_patch_as_large_as_itself() -> None:
    patch = supported_patch(100.0, 100.0, 100.0, 100.0)
    q, side, t = 0.01, 100.0, 2.0
    whole = q * side**2
    assert plate_point_give(patch.give, whole, side, 70000.0, t) == pytest.approx(
        plate_give(supported_uniform_give(1.0), q, side, 70000.0, t), rel=2e-3
    )
    assert plate_patch_stress(patch.stress_long, whole, t) == pytest.approx(
        plate_stress(supported_uniform_stress(1.0), q, side, t), rel=2e-3
    )
