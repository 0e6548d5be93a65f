"""V. B. Bhandari, Design of Machine Elements: clutch and spring washer examples.

Published numbers, read in an open solution companion to the book; strength: handbook.
"""

import pytest

from pedalwright.clutch.formulas import (
    plate_capacity_new,
    plate_capacity_worn,
    spring_load,
    spring_load_log,
    spring_peak,
    spring_shape_k1,
    spring_shape_log,
    spring_valley,
)

E, NU, T, H, D_OUT, D_IN = 207000.0, 0.3, 2.65298, 3.97947, 154.818478, 88.467702


def test_example_11_6_capacity_of_a_single_plate() -> None:
    clamp = 9 * 800.0
    assert plate_capacity_new(2, 0.35, clamp, 250, 175) == pytest.approx(541.06e3, rel=1e-3)
    assert plate_capacity_worn(2, 0.35, clamp, 250, 175) == pytest.approx(535.5e3, rel=1e-3)


def test_example_10_26_flat_load_of_a_spring_washer() -> None:
    ratio = D_OUT / D_IN
    log_form = spring_load_log(E, NU, spring_shape_log(ratio), D_OUT, H, T, H)
    assert log_form == pytest.approx(4500.0, rel=1e-3)


@pytest.mark.parametrize(("share", "load"), [(1.0, 4476.7), (0.5, 4126.9), (0.75, 4537.9)])
def test_the_same_washer_in_the_form_of_din_2092(share: float, load: float) -> None:
    k1 = spring_shape_k1(D_OUT / D_IN)
    assert k1 == pytest.approx(0.6301, abs=5e-5)
    assert spring_load(E, NU, k1, D_OUT, H, T, share * H) == pytest.approx(load, rel=1e-3)


def test_peak_and_valley_are_where_the_load_stands_still() -> None:
    k1 = spring_shape_k1(D_OUT / D_IN)
    for place in (spring_peak(H, T), spring_valley(H, T)):
        before, after = (spring_load(E, NU, k1, D_OUT, H, T, place + d) for d in (-1e-4, 1e-4))
        assert before == pytest.approx(after, rel=1e-9)
