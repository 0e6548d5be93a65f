"""Known optima of cutting stock: a published instance, and one small enough to be filled by hand.

The published one is the example of thirteen lengths from rolls of 5600 that textbooks and
encyclopedias of optimisation carry; 73 is its optimum, 72.7 its bound by length.
"""

import pytest

from pedalwright.making.cutting import Bar, Piece, cut_bars
from pedalwright.making.cutting.formulas import least_bars

ROLLS = {
    1380: 22,
    1520: 25,
    1560: 12,
    1710: 14,
    1820: 18,
    1880: 18,
    1930: 20,
    2000: 10,
    2050: 12,
    2100: 14,
    2140: 16,
    2150: 18,
    2200: 20,
}
#: First-fit with the longest piece first takes five bars for these.
TUBES = {1004: 2, 905: 2, 761: 6, 354: 4, 304: 6}


def pieces(wanted: dict[int, int]) -> list[Piece]:
    return [Piece(name=f"{length}", length=length, count=n) for length, n in wanted.items()]


def test_thirteen_lengths_from_rolls_of_5600() -> None:
    plan = cut_bars(pieces(ROLLS), [Bar(name="roll", length=5600.0)], kerf=0.0)
    total = float(sum(length * n for length, n in ROLLS.items()))
    assert total == 407160
    assert total / 5600 == pytest.approx(72.7, abs=0.05)
    assert least_bars(total, float(sum(ROLLS.values())), 0.0, 0.0, 5600.0) == 73
    assert len(plan.bars) == 73
    assert plan.bought.best
    assert plan.bought.bound == 73 * 5600
    assert plan.missing == ()


def test_five_lengths_from_bars_of_3000_with_saw_cuts() -> None:
    """All maximal ways to fill a bar, tried by hand: four bars do, three cannot."""
    plan = cut_bars(pieces(TUBES), [Bar(name="tube", length=3000.0)], kerf=3.0, trim=20.0)
    assert len(plan.bars) == 4
    assert plan.bought.best
    assert plan.bought.cost == 12000.0
    total = float(sum(length * n for length, n in TUBES.items()))
    assert least_bars(total, 20.0, 3.0, 20.0, 3000.0) == 4
