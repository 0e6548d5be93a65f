"""ISO 898-1: stress areas and proof loads of metric bolts, as printed there."""

import pytest

from pedalwright.shelf.bolts import bolt, property_class
from pedalwright.structure.formulas.bolts import proof_load, stress_area

PRINTED_AREA = {"M4": 8.78, "M5": 14.2, "M6": 20.1, "M8": 36.6, "M10": 58.0, "M12": 84.3}
#: To four figures, from A = pi/4 (d - 0.9382 P)^2 worked by hand.
AREA = {"M4": 8.779, "M5": 14.183, "M6": 20.123, "M8": 36.608, "M10": 57.989, "M12": 84.266}


@pytest.mark.parametrize("size", PRINTED_AREA)
def test_stress_area_table(size: str) -> None:
    row = bolt(size)
    area = stress_area(row.diameter, row.pitch)
    assert area == pytest.approx(AREA[size], rel=1e-4)
    assert area == pytest.approx(PRINTED_AREA[size], rel=2e-3)


@pytest.mark.parametrize(
    ("grade", "size", "printed"),
    [
        ("8.8", "M5", 8230),
        ("8.8", "M6", 11600),
        ("8.8", "M8", 21200),
        ("8.8", "M10", 33700),
        ("10.9", "M6", 16700),
        ("10.9", "M8", 30400),
        ("10.9", "M10", 48100),
    ],
)
def test_proof_load_table(grade: str, size: str, printed: float) -> None:
    row = bolt(size)
    load = proof_load(property_class(grade).proof_stress, stress_area(row.diameter, row.pitch))
    # printed to three figures, 11 658 as 11 600
    assert load == pytest.approx(printed, rel=7e-3)
