"""Neutral line by share of the thickness: a textbook's square bend, a handbook's table."""

import numpy as np
import pytest

from pedalwright.making.bending import TestStrip, neutral_by_table, neutral_of_strip
from pedalwright.making.bending.formulas import (
    bend_allowance,
    bend_deduction,
    flat_length,
    setback,
    strip_deduction,
)
from pedalwright.making.bending.limits import check_strip
from pedalwright.shelf.bends import neutral_lines

SQUARE = np.pi / 2


def test_a_square_bend_of_radius_2_in_sheet_of_1() -> None:
    allowance, back = bend_allowance(SQUARE, 2.0, 0.33, 1.0), setback(SQUARE, 2.0, 1.0)
    assert allowance == pytest.approx(3.660, abs=5e-4)
    assert back == pytest.approx(3.000, abs=5e-4)
    assert bend_deduction(back, allowance) == pytest.approx(2.340, abs=5e-4)


def test_cold_rolled_steel_of_0_060_in() -> None:
    """Machinery's Handbook, 26th ed., as a public page quotes it: K 0.463; legs 2 and 3 in."""
    neutral = neutral_by_table("steel", 0.060 * 25.4, 0.060 * 25.4)
    assert neutral.share == 0.463
    allowance = bend_allowance(SQUARE, 0.060, neutral.share, 0.060)
    assert allowance == pytest.approx(0.1379, abs=5e-5)
    deduction = bend_deduction(setback(SQUARE, 0.060, 0.060), allowance)
    assert flat_length(2.0, 3.0, deduction) == pytest.approx(4.898, abs=5e-4)


def test_the_table_lies_between_a_third_and_a_half() -> None:
    for metal, rows in (("aluminium", 20), ("steel", 15), ("stainless", 10)):
        shares = [row.share for row in neutral_lines(metal)]
        assert len(shares) == rows
        assert 0.38 <= min(shares) <= max(shares) < 0.5


def test_a_strip_gives_back_the_share_it_was_made_with() -> None:
    """Bent by sums with K 0.41: 100 long, legs 40 and what is left."""
    r, s = 2.5, 1.6
    deduction = 2 * (r + s) - SQUARE * (r + 0.41 * s)
    strip = TestStrip(
        length=100.0,
        leg_one=40.0,
        leg_two=60.0 + deduction,
        thickness=s,
        radius=r,
        angle=SQUARE,
        plus_minus=0.3,
    )
    assert strip_deduction(100.0, strip.leg_one, strip.leg_two) == pytest.approx(deduction)
    neutral = neutral_of_strip(strip)
    assert neutral.share == pytest.approx(0.41)
    assert neutral.plus_minus == pytest.approx(0.3 / SQUARE / s)
    assert all(f.ok for f in check_strip(strip, radius=r, thickness=s))


@pytest.mark.parametrize(
    ("leg_two", "code"), [(62.0, "making.strip_high"), (64.5, "making.strip_low")]
)
def test_a_strip_measured_wrong_is_noticed(leg_two: float, code: str) -> None:
    strip = TestStrip(
        length=100.0, leg_one=40.0, leg_two=leg_two, thickness=1.6, radius=2.5, angle=SQUARE
    )
    broken = {f.limit.code for f in check_strip(strip, radius=2.5, thickness=1.6) if not f.ok}
    assert broken == {code}


def test_a_strip_bent_over_another_edge_is_noticed() -> None:
    strip = TestStrip(
        length=100.0, leg_one=40.0, leg_two=63.25, thickness=1.6, radius=2.5, angle=SQUARE
    )
    broken = {f.limit.code for f in check_strip(strip, radius=5.0, thickness=1.6) if not f.ok}
    assert broken == {"making.strip_like_part"}
