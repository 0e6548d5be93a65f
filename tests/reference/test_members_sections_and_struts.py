"""Sections, struts and notches, worked by hand or from the handbooks named."""

import pytest

from pedalwright.structure.formulas.bolts import core_diameter
from pedalwright.structure.formulas.fatigue import hole_pull_factor, hole_pull_factor_cubic
from pedalwright.structure.formulas.rods import buckling_load, column_limit, slenderness
from pedalwright.structure.formulas.sections import (
    channel_area,
    channel_centroid,
    channel_strong_inertia,
    channel_weak_inertia,
    flat_modulus,
    net_modulus,
    open_torsion_constant,
    plastic_modulus,
    round_area,
    round_inertia,
    round_modulus,
)

E = 207000.0


@pytest.mark.parametrize(
    ("q", "heywood", "cubic"),
    [(0.1, 2.729, 2.722), (0.2, 2.512, 2.508), (0.3, 2.343, 2.349), (0.5, 2.125, 2.159)],
)
def test_heywood_and_roark_17_1_hole_in_a_pulled_bar(
    q: float, heywood: float, cubic: float
) -> None:
    assert hole_pull_factor(q) == pytest.approx(heywood, abs=5e-4)
    assert hole_pull_factor_cubic(q) == pytest.approx(cubic, abs=5e-4)


def test_textbook_column_80_by_30_by_380() -> None:
    """One end held, K 0.8, yield 290: a problem of the textbooks, solved independently."""
    area, inertia = 80.0 * 30.0, 80.0 * 30.0**3 / 12
    slim = slenderness(0.8, 380.0, inertia, area)
    assert slim == pytest.approx(35.10, abs=5e-3)
    assert column_limit(E, 290.0) == pytest.approx(118.7, abs=5e-2)
    assert buckling_load(area, E, 290.0, slim) == pytest.approx(665.6e3, rel=1e-4)


def test_rod_of_m8_thread_180_long_bows_as_euler_says() -> None:
    d = core_diameter(8.0, 1.25)
    assert d == pytest.approx(6.466, abs=5e-4)
    slim = slenderness(1.0, 180.0, round_inertia(d, 0.0), round_area(d, 0.0))
    assert slim == pytest.approx(111.3, abs=6e-2)
    assert buckling_load(round_area(d, 0.0), 210000.0, 640.0, slim) == pytest.approx(5490, rel=1e-3)


def test_tube_12_by_1_5_320_long_crushes_and_bows_as_johnson_says() -> None:
    area, inertia = round_area(12.0, 9.0), round_inertia(12.0, 9.0)
    slim = slenderness(1.0, 320.0, inertia, area)
    assert slim == pytest.approx(85.33, abs=5e-3)
    assert buckling_load(area, 210000.0, 235.0, slim) == pytest.approx(9228, rel=3e-4)


def test_euler_and_johnson_meet() -> None:
    limit = float(column_limit(210000.0, 235.0))
    below = buckling_load(100.0, 210000.0, 235.0, limit * (1 - 1e-9))
    above = buckling_load(100.0, 210000.0, 235.0, limit * (1 + 1e-9))
    assert below == pytest.approx(100.0 * 235.0 / 2, rel=1e-6)
    assert above == pytest.approx(below, rel=1e-6)


def test_tube_25_by_1_5() -> None:
    assert round_area(25.0, 22.0) == pytest.approx(110.74, rel=1e-4)
    assert round_inertia(25.0, 22.0) == pytest.approx(7675.7, rel=1e-4)
    assert round_modulus(25.0, 22.0) == pytest.approx(7675.7 / 12.5, rel=1e-4)


def test_channel_60_by_25_by_3() -> None:
    """Area and both second moments exact; torsion by a section program 932.5 mm4."""
    assert channel_area(60.0, 25.0, 3.0) == 312.0
    assert channel_strong_inertia(60.0, 25.0, 3.0) == pytest.approx(161316, rel=1e-5)
    assert channel_weak_inertia(60.0, 25.0, 3.0) == pytest.approx(17358, rel=1e-4)
    assert channel_centroid(60.0, 25.0, 3.0) == pytest.approx(6.788, abs=5e-4)
    middle_line = (60.0 - 3.0) + 2 * (25.0 - 1.5)
    assert open_torsion_constant(middle_line, 3.0) == pytest.approx(932.5, rel=2e-2)


def test_drilled_bar_8_by_32_with_a_12_mm_hole() -> None:
    """Two rectangles of 10 either side of the hole, by the parallel-axis theorem."""
    inertia = 2 * (8.0 * 10.0**3 / 12 + 80.0 * 11.0**2)
    assert net_modulus(8.0, 32.0, 12.0) == pytest.approx(inertia / 16.0, rel=1e-12)
    assert plastic_modulus(8.0, 32.0, 12.0) == pytest.approx(2 * 80.0 * 11.0, rel=1e-12)
    assert flat_modulus(8.0, 20.0) == pytest.approx(2 * (10.0 * 8.0**3 / 12) / 4.0, rel=1e-12)
