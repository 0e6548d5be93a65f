"""SAE J429 grade 5, fine thread: a public table of clamp loads and dry torques."""

import pytest

from pedalwright.structure.formulas.bolts import dry_torque, proof_load, unified_stress_area

INCH, LBF, KSI = 25.4, 4.4482216, 6.8947573


@pytest.mark.parametrize(
    ("diameter", "threads", "area", "clamp", "torque"),
    [(0.25, 28, 0.0364, 2321, 9.6), (0.375, 24, 0.0878, 5597, 35.0)],
)
def test_clamp_load_and_torque_table(
    diameter: float, threads: float, area: float, clamp: float, torque: float
) -> None:
    d = diameter * INCH
    square = unified_stress_area(d, INCH / threads)
    assert square / INCH**2 == pytest.approx(area, abs=5e-5)
    load = 0.75 * proof_load(85 * KSI, square)
    assert load / LBF == pytest.approx(clamp, rel=2e-3)
    assert dry_torque(load, d) / (LBF * INCH * 12) == pytest.approx(torque, rel=7e-3)
