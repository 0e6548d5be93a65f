"""The shelf: every row has its source, ranges join up, look-ups find the printed rows."""

from dataclasses import dataclass
from itertools import groupby, pairwise
from math import isnan

import pytest

from pedalwright.shelf.bolts import bolt, bolts, property_classes
from pedalwright.shelf.bores import bores
from pedalwright.shelf.materials import material, materials, softening, softenings
from pedalwright.shelf.plates import PlateRow, coefficients
from pedalwright.shelf.rivets import grips, rivet_for
from pedalwright.shelf.tables import table

ALL = (
    *materials(),
    *softenings(),
    *bolts(),
    *property_classes(),
    *bores(),
    *grips(),
    *table(PlateRow, "plates"),
)


def test_every_row_says_where_it_comes_from_and_how_far_it_is_trusted() -> None:
    assert len(ALL) > 100
    for row in ALL:
        assert len(row.source) > 5, row
        assert any(word in row.mark for word in ("seen", "memory", "practice", "computed")), row


@dataclass(frozen=True, kw_only=True, slots=True)
class Wrong:
    """A row that does not fit its table."""

    name: str
    bore: float


def test_a_table_that_does_not_fit_its_row_is_noticed() -> None:
    with pytest.raises(AssertionError, match=r"bores\.csv: columns are"):
        table(Wrong, "bores")


@pytest.mark.parametrize("rows", [materials(), softenings()], ids=["materials", "softening"])
def test_thicknesses_of_one_metal_join_without_gap_or_overlap(rows: tuple) -> None:
    for _, run in groupby(rows, key=lambda row: (row.name, row.form)):
        for thin, thick in pairwise(run):
            assert thin.up_to == thick.over
            assert thick.over < thick.up_to


def test_metals_are_physical() -> None:
    for row in materials():
        assert 60e3 < row.elastic < 215e3
        assert 0.25 < row.poisson < 0.35
        assert 2.6e-6 < row.density < 8.0e-6
        assert 0 < row.yield_strength < row.tensile_strength
        assert isnan(row.elongation) or 2 < row.elongation < 60


@pytest.mark.parametrize(
    ("name", "form", "thickness", "strength"),
    [
        ("S235", "plate", 16.0, 235.0),
        ("S235", "plate", 16.1, 225.0),
        ("S275", "plate", 3.0, 275.0),
        ("5083-O/H111", "sheet", 3.0, 125.0),
        ("6082-T6", "sheet", 8.0, 255.0),
    ],
)
def test_en_10025_2_and_en_485_2_rows(
    name: str, form: str, thickness: float, strength: float
) -> None:
    row = material(name, form, thickness)
    assert row is not None
    assert row.yield_strength == strength


def test_what_is_not_on_the_shelf_is_none() -> None:
    assert material("S235", "plate", 60.0) is None
    assert material("unobtainium", "sheet", 2.0) is None
    assert softening("S235", "plate", 3.0) is None
    assert rivet_for(4.8, 30.0) is None


@pytest.mark.parametrize(
    ("size", "holes"),
    [
        ("M5", (5.3, 5.5, 5.8)),
        ("M6", (6.4, 6.6, 7.0)),
        ("M8", (8.4, 9.0, 10.0)),
        ("M10", (10.5, 11.0, 12.0)),
    ],
)
def test_iso_273_clearance_holes(size: str, holes: tuple[float, ...]) -> None:
    row = bolt(size)
    assert (row.hole_fine, row.hole_medium, row.hole_coarse) == holes


def test_a_bolt_is_drawn_to_one_scale() -> None:
    for small, large in pairwise(bolts()):
        assert small.diameter < large.diameter
    for row in bolts():
        assert row.tap_drill == pytest.approx(row.diameter - row.pitch, abs=0.06)
        assert row.diameter < row.hole_fine < row.hole_medium < row.hole_coarse < row.across_flats
        assert row.head_face < row.across_flats < row.across_corners


@pytest.mark.parametrize(
    ("diameter", "total", "length"),
    [(4.8, 5.0, 10.0), (4.8, 7.0, 12.0), (4.8, 11.0, 16.0), (3.2, 4.0, 8.0), (3.2, 6.0, 10.0)],
)
def test_iso_15981_grip_ranges(diameter: float, total: float, length: float) -> None:
    rivet = rivet_for(diameter, total)
    assert rivet is not None
    assert rivet.length == length


def test_where_two_lengths_hold_the_shorter_is_taken() -> None:
    rivet = rivet_for(4.8, 6.0)
    assert rivet is not None
    assert rivet.length == 10.0


def test_bores_rise_and_are_inch_sizes() -> None:
    sizes = [row.diameter for row in bores()]
    assert sizes == sorted(sizes)
    for row in bores():
        whole, _, part = row.name.removesuffix(" in").partition("/")
        inches = float(whole) / float(part or 1)
        assert row.diameter == pytest.approx(inches * 25.4, rel=1e-12)


def test_plate_curves_rise_along_the_panel() -> None:
    for edge in ("supported", "clamped"):
        for load in ("uniform", "point"):
            curve = coefficients(edge, load)
            assert curve.sides[0] == 1.0
            assert all(a < b for a, b in pairwise(curve.sides))
            assert all(a < b for a, b in pairwise(curve.give))
