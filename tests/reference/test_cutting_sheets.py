"""Known optima of packing rectangles.

Squares 1 to n in the box of least area: OEIS A038666. The strip: eight parts on 300 mm, solved
exactly on a grid of 5 mm; 380 is the least length and 375 was shown to be too short.
"""

import pytest

from pedalwright.making.cutting import Part, SheetPlan, Stock, cut_sheets

STRIP = [
    Part(name="A", length=180, width=140, count=2),
    Part(name="B", length=120, width=95, count=2),
    Part(name="C", length=150, width=60),
    Part(name="D", length=90, width=90),
    Part(name="E", length=60, width=45, count=2),
]


def one_sheet(parts: list[Part], length: float, width: float, gap: float = 0.0) -> SheetPlan:
    sheet = Stock(name="sheet", length=length, width=width, count=1, bought=False)
    return cut_sheets(parts, [sheet], gap=gap, margin=gap)


def squares(n: int) -> list[Part]:
    return [Part(name=f"{side}", length=side, width=side) for side in range(1, n + 1)]


@pytest.mark.parametrize(("n", "box"), [(5, (12, 5)), (6, (11, 9)), (7, (22, 7))])
def test_squares_fit_their_least_box(n: int, box: tuple[int, int]) -> None:
    assert one_sheet(squares(n), *box).missing == ()


@pytest.mark.parametrize(("n", "area"), [(5, 60), (6, 99), (7, 154), (8, 210)])
def test_no_smaller_box_is_ever_claimed(n: int, area: int) -> None:
    for short in range(n, int(area**0.5) + 1):
        long = (area - 1) // short
        if long >= short:
            assert one_sheet(squares(n), long, short).missing != ()


def test_a_strip_of_300() -> None:
    """No shorter than the least length, and within 20 mm of it."""
    assert one_sheet(STRIP, 400.0, 300.0, gap=5.0).missing == ()
    assert one_sheet(STRIP, 375.0, 300.0, gap=5.0).missing != ()
