"""Fillet welds to EN 1993-1-8 worked by hand, and EN 1999-1-1 table 3.2 from a public copy."""

import pytest

from pedalwright.shelf.materials import material, softening
from pedalwright.structure.formulas.welds import (
    softened_strength,
    softened_width_mig,
    weld_bending,
    weld_effective_length,
    weld_equivalent,
    weld_resultant,
    weld_shear,
    weld_shear_strength,
)


@pytest.mark.parametrize(
    ("tensile", "correlation", "strength"),
    [(360.0, 0.80, 207.8), (410.0, 0.85, 222.8), (470.0, 0.90, 241.2)],
    ids=["S235", "S275", "S355"],
)
def test_4_5_3_3_strength(tensile: float, correlation: float, strength: float) -> None:
    assert weld_shear_strength(tensile, correlation, 1.25) == pytest.approx(strength, rel=5e-4)


def test_4_5_3_two_fillets_of_60_by_3_under_6_kn_at_45_mm() -> None:
    along = weld_shear(6000.0, 60.0, 3.0)
    across = weld_bending(6000.0 * 45.0, 60.0, 3.0)
    assert along == pytest.approx(16.67, rel=1e-3)
    assert across == pytest.approx(75.0)
    assert weld_resultant(across, along) == pytest.approx(76.83, rel=1e-3)
    assert weld_equivalent(across, along) == pytest.approx(109.92, rel=1e-3)
    assert weld_effective_length(60.0, 3.0) == 54.0


def test_en_1999_table_3_2_beside_a_mig_weld() -> None:
    for name, proof, tensile in (("6082-T6", 124.8, 186.0), ("5083-O/H111", 125.0, 275.0)):
        sheet, left = material(name, "sheet", 3.0), softening(name, "sheet", 3.0)
        assert sheet is not None
        assert left is not None
        assert softened_strength(left.proof_left, sheet.yield_strength) == pytest.approx(proof)
        assert softened_strength(left.tensile_left, sheet.tensile_strength) == pytest.approx(
            tensile
        )


@pytest.mark.parametrize(("thickness", "width"), [(3, 20), (6, 20), (12, 30), (25, 35), (26, 40)])
def test_en_1999_width_of_the_softened_zone(thickness: float, width: float) -> None:
    assert softened_width_mig(float(thickness)) == width
