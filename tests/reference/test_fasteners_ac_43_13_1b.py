"""AC 43.13-1B (public domain), ch. 4: rivets to an inch of splice, and three worked splices."""

from math import ceil

import pytest

from pedalwright.structure.formulas.joints import rivet_pitch, rivets_in_row

INCH = 25.4
HOLE = {"1/8": 0.1285, "5/32": 0.159, "3/16": 0.191, "1/4": 0.257}


@pytest.mark.parametrize(
    ("sheet", "rivet", "to_an_inch"),
    [
        (0.040, "1/8", 7.7),
        (0.064, "5/32", 8.1),
        (0.064, "3/16", 5.6),
        (0.128, "1/4", 6.2),
        (0.020, "1/8", 4.9),
    ],
)
def test_table_4_9(sheet: float, rivet: str, to_an_inch: float) -> None:
    pitch = rivet_pitch(0.40, HOLE[rivet] * INCH, sheet * INCH)
    assert INCH / pitch == pytest.approx(to_an_inch, abs=0.1)


def test_in_thin_sheet_bearing_governs() -> None:
    assert rivet_pitch(0.40, HOLE["1/8"] * INCH, 0.020 * INCH) == 1.6 * HOLE["1/8"] * INCH


def test_paragraph_4_58_g_ten_inches_of_skin() -> None:
    count = rivets_in_row(10 * INCH, INCH / 4.9, 0.75)
    assert count == 37
    assert ceil(count / 2) == 19


@pytest.mark.parametrize(("width", "full", "wanted"), [(0.6, 4, 3), (2.0, 13, 8)])
def test_figure_4_20_flange_and_web(width: float, full: int, wanted: int) -> None:
    count = rivets_in_row(width * INCH, INCH / 6.2, 1.0)
    assert count == full
    assert ceil(0.6 * count) == wanted
