"""Give at the pad by cause, solved independently with plain equations."""

import pytest

from pedalwright.structure.formulas.stiffness import (
    flange_give,
    pivot_share_between,
    pivot_share_beyond,
    spring_give,
)


def test_hanging_pedal_500_n_ratio_5_on_soft_mounts() -> None:
    flange = spring_give(500.0, 5.0, 2000.0)
    pivot = spring_give(500.0, pivot_share_between(5.0), 8000.0)
    assert flange_give(500.0, 5.0, 2000.0) == pytest.approx(1.25)
    assert flange == pytest.approx(6.25)
    assert pivot == pytest.approx(1.0)
    assert flange + pivot == pytest.approx(7.25)
    assert 500.0 / (flange + pivot) == pytest.approx(68.97, rel=1e-4)
    work = 500.0 * (flange + pivot) / 2
    assert work == pytest.approx(2500.0**2 / (2 * 2000.0) + 2000.0**2 / (2 * 8000.0))


def test_stiffness_chain_of_arm_rod_cylinder_and_pivot() -> None:
    causes = (
        0.17,
        spring_give(500.0, 5.0, 4200.0),
        spring_give(500.0, 5.0, 9000.0),
        spring_give(500.0, pivot_share_between(5.0), 6500.0),
    )
    assert causes == pytest.approx((0.17, 2.976, 1.389, 1.231), abs=5e-4)
    assert sum(causes) == pytest.approx(5.766, abs=1e-3)
    assert 500.0 / sum(causes) == pytest.approx(86.7, abs=5e-2)


def test_a_pin_beyond_the_pivot_loads_it_more() -> None:
    assert pivot_share_beyond(5.2) == pytest.approx(6.2)
