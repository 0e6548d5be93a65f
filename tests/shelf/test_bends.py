"""Tables for bends and tolerances: sourced, joined up, within what metal does."""

from itertools import groupby, pairwise

import pytest

from pedalwright.shelf.bends import NeutralLine, bend_radii, bend_radius
from pedalwright.shelf.materials import materials
from pedalwright.shelf.tables import table
from pedalwright.shelf.tolerances import general_tolerances

LINES = table(NeutralLine, "neutral_lines")


def test_every_row_says_where_it_comes_from_and_how_far_it_is_trusted() -> None:
    for row in (*bend_radii(), *LINES, *general_tolerances()):
        assert len(row.source) > 5, row
        assert any(word in row.mark for word in ("seen", "memory", "practice")), row


def test_ranges_join_without_gap_or_overlap() -> None:
    for _, run in groupby(bend_radii(), key=lambda row: row.name):
        for thin, thick in pairwise(run):
            assert thin.up_to == thick.over
            assert thin.thicknesses < thick.thicknesses
    for short, long in pairwise(general_tolerances()):
        assert short.up_to == long.over
        assert short.medium <= long.medium
        assert short.fine < short.medium < short.coarse


def test_radii_are_told_for_metals_one_can_buy_as_sheet() -> None:
    sheets = {row.name for row in materials() if row.form in ("sheet", "plate")}
    assert {row.name for row in bend_radii()} <= sheets


@pytest.mark.parametrize(
    ("metal", "thickness", "thicknesses"),
    [("5251-H22", 1.6, 1.0), ("6082-T6", 3.0, 2.5), ("5083-O/H111", 3.0, 1.0)],
)
def test_a_look_up(metal: str, thickness: float, thicknesses: float) -> None:
    row = bend_radius(metal, thickness)
    assert row is not None
    assert row.thicknesses == thicknesses
    assert bend_radius(metal, 60.0) is None
