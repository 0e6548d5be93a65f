"""EN 1993-1-8: joints worked by hand from the code's formulas, tables 3.4 and 6.2.4."""

import pytest

from pedalwright.shelf.bolts import bolt
from pedalwright.structure.formulas.bolts import bolt_pull, bolt_shear, bolt_use, stress_area
from pedalwright.structure.formulas.joints import (
    bearing,
    bearing_end_factor,
    bearing_side_factor,
    blind_rivet_bearing,
    blind_rivet_factor,
    fastener_flexibility,
    flange_folds,
    flange_plastic_moment,
    flange_pries,
    punching,
)

ALONE = 1e6


def test_table_3_4_m8_in_3_mm_s275() -> None:
    row = bolt("M8")
    area = stress_area(row.diameter, row.pitch)
    end = bearing_end_factor(18.0, ALONE, 9.0, 800.0, 410.0)
    side = bearing_side_factor(15.0, ALONE, 9.0)
    shear = bolt_shear(0.6, 800.0, area, 1.25)
    pull = bolt_pull(800.0, area, 1.25)
    assert end == pytest.approx(0.6667, abs=1e-4)
    assert side == 2.5
    assert bearing(side, end, 410.0, 8.0, 3.0, 1.25) == pytest.approx(13120, rel=1e-3)
    assert shear == pytest.approx(14054, rel=1e-3)
    assert pull == pytest.approx(21082, rel=1e-3)
    assert bolt_use(5000.0, shear, 9000.0, pull) == pytest.approx(0.661, abs=5e-4)
    mean_head = (row.across_flats + row.across_corners) / 2
    assert mean_head == pytest.approx(13.69, abs=1e-9)
    assert punching(mean_head, 3.0, 410.0, 1.25) == pytest.approx(25392, rel=1e-3)


@pytest.mark.parametrize(
    ("end", "pitch", "side", "row", "along", "across"),
    [(40.0, 20.0, 40.0, 20.0, 0.4907, 1.411), (12.0, 60.0, 10.8, 60.0, 0.4444, 1.660)],
)
def test_table_3_4_close_pitch_and_close_edge(
    end: float, pitch: float, side: float, row: float, along: float, across: float
) -> None:
    assert bearing_end_factor(end, pitch, 9.0, 800.0, 410.0) == pytest.approx(along, abs=1e-4)
    assert bearing_side_factor(side, row, 9.0) == pytest.approx(across, abs=1e-3)


def test_table_3_4_a_soft_bolt_limits_the_bearing() -> None:
    assert bearing_end_factor(60.0, 60.0, 9.0, 400.0, 490.0) == pytest.approx(400 / 490)


def test_6_2_4_t_stub_with_two_bolts() -> None:
    folds = flange_plastic_moment(50.0, 4.0, 275.0)
    bolts = 2 * 21081.6
    assert folds == pytest.approx(55000)
    assert flange_folds(folds, 18.0) == pytest.approx(12222, rel=1e-3)
    assert flange_pries(folds, 18.0, 15.0, bolts) == pytest.approx(22498, rel=1e-3)
    assert flange_folds(folds, 18.0) < flange_pries(folds, 18.0, 15.0, bolts) < bolts


def test_6_2_4_a_far_edge_helps_no_more() -> None:
    at_limit = flange_pries(55000.0, 18.0, 22.5, 42163.0)
    assert flange_pries(55000.0, 18.0, 40.0, 42163.0) == at_limit
    assert flange_pries(55000.0, 18.0, 20.0, 42163.0) < at_limit


def test_en_1993_1_3_blind_rivet_in_bearing() -> None:
    factor = blind_rivet_factor(1.5, 4.8)
    assert factor == pytest.approx(2.0125, rel=1e-3)
    assert blind_rivet_bearing(factor, 190.0, 4.8, 1.5, 1.25) == pytest.approx(2202, rel=2e-3)
    assert blind_rivet_factor(3.0, 4.8) == 2.1


@pytest.mark.parametrize(
    ("t_1", "t_2", "d", "sheet", "fastener", "a", "b", "stiffness"),
    [
        (2.0, 3.0, 4.8, 70000.0, 70000.0, 0.4, 2.2, 33e3),
        (1.5, 1.5, 3.2, 70000.0, 70000.0, 0.4, 2.2, 22e3),
        (2.0, 3.0, 4.8, 70000.0, 205000.0, 0.4, 2.2, 42e3),
        (3.0, 3.0, 8.0, 70000.0, 205000.0, 2 / 3, 3.0, 57e3),
        (3.0, 3.0, 8.0, 205000.0, 205000.0, 2 / 3, 3.0, 131e3),
    ],
)
def test_huth_stiffness_of_one_fastener_solved_independently(
    t_1: float,
    t_2: float,
    d: float,
    sheet: float,
    fastener: float,
    a: float,
    b: float,
    stiffness: float,
) -> None:
    slides = fastener_flexibility(t_1, t_2, d, sheet, sheet, fastener, a, b)
    assert 1 / slides == pytest.approx(stiffness, abs=600)
