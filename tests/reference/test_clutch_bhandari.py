"""Cases C24 and C25: Bhandari, Design of Machine Elements, ex. 11.6 and ex. 10.26.

Strength: handbook. The two factors of ex. 11.6 (2.164235 and 2.142000) and the dimensions and
load of the spring washer of ex. 10.26 were read in open files of worked solutions of the book.
The standard's form of the washer's load (DIN 2092) differs by half a per cent, because it
takes another centre of rotation; its figures were computed independently.
"""

import numpy as np
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

PLATE = {"n": 2.0, "mu": 0.35, "F": 9 * 800.0, "D": 250.0, "d": 175.0}
ENGINE = 250e3
STEEL = {"E": 207000.0, "nu": 0.3}
WASHER = {"D_e": 154.818478, "h": 3.97947, "t": 2.65298}
DELTA = 154.818478 / 88.467702


def test_c24_a_plate_pressed_alike_over_its_ring() -> None:
    capacity = plate_capacity_new(**PLATE)
    assert capacity / 1000.0 == pytest.approx(541.06, abs=0.006)
    assert capacity / ENGINE == pytest.approx(2.164235, abs=0.6e-6)


def test_c24_a_worn_in_plate() -> None:
    capacity = plate_capacity_worn(**PLATE)
    assert capacity / 1000.0 == pytest.approx(535.50, abs=0.006)
    assert capacity / ENGINE == pytest.approx(2.142, abs=0.6e-6)


def test_c25_the_flat_washer_carries_the_load_it_was_made_for() -> None:
    M = spring_shape_log(DELTA)
    flat = spring_load_log(**STEEL, M=M, s=WASHER["h"], **WASHER)
    assert flat == pytest.approx(4500.0, abs=0.06)


@pytest.mark.parametrize(("share", "load"), [(1.0, 4476.7), (0.5, 4126.9), (0.75, 4537.9)])
def test_c25_the_standards_form(share: float, load: float) -> None:
    shape = spring_shape_k1(DELTA)
    assert shape == pytest.approx(0.6301, abs=0.00006)
    pressed = spring_load(**STEEL, K1=shape, s=share * WASHER["h"], **WASHER)
    assert pressed == pytest.approx(load, abs=0.06)


def test_c25_peak_and_valley_are_where_the_load_turns() -> None:
    """Own check, by brute force: the largest and the least of forty thousand loads."""
    h, t = WASHER["h"], WASHER["t"]
    s = np.linspace(0.0, 2.0 * h, 40001)
    load = np.asarray(spring_load(**STEEL, K1=spring_shape_k1(DELTA), s=s, **WASHER))
    rising = np.diff(load) > 0.0
    turns = s[1:-1][rising[1:] != rising[:-1]]
    assert turns == pytest.approx([spring_peak(h, t), spring_valley(h, t)], abs=2.0 * h / 40000)
