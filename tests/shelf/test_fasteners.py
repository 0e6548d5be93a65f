"""Tables for the fastener box: sourced, in order, strong as their size."""

from itertools import groupby, pairwise

import pytest

from pedalwright.shelf.bolts import bolts
from pedalwright.shelf.fasteners import bolt_lengths, clevis_pins, nut, nuts, rivet_strengths
from pedalwright.shelf.galvanic import bare, surface, surfaces
from pedalwright.shelf.materials import material
from pedalwright.shelf.rivets import grips


def test_every_row_says_where_it_comes_from_and_how_far_it_is_trusted() -> None:
    for row in (*rivet_strengths(), *nuts(), *bolt_lengths(), *clevis_pins(), *surfaces()):
        assert len(row.source) > 5, row
        assert any(word in row.mark for word in ("seen", "memory", "practice")), row


def test_thicker_rivets_are_stronger_and_fit_their_hole() -> None:
    assert {row.diameter for row in rivet_strengths()} == {g.diameter for g in grips()}
    for _, run in groupby(rivet_strengths(), key=lambda row: row.body):
        for thin, thick in pairwise(run):
            assert thin.shear < thick.shear
            assert thin.pull < thick.pull
    for row in rivet_strengths():
        assert 0.05 <= row.hole - row.diameter <= 0.2
        assert surface(row.surface).potential < 0.0


def test_every_bolt_has_its_nut_and_washer() -> None:
    for row in bolts():
        made = nut(row.size)
        assert made.plain <= made.locking
        assert row.head_face <= made.washer_outside < made.penny_outside
        assert made.locking == pytest.approx(row.diameter, abs=1.0)


def test_lengths_rise() -> None:
    lengths = [row.length for row in bolt_lengths()]
    assert lengths == sorted(set(lengths))


@pytest.mark.parametrize(
    ("name", "form", "shows"),
    [
        ("5251-H22", "sheet", "aluminium"),
        ("S275", "plate", "steel"),
        ("1.4301", "sheet", "304 active"),
    ],
)
def test_what_a_metal_shows_to_the_water(name: str, form: str, shows: str) -> None:
    found = material(name, form, 2.0)
    assert found is not None
    assert bare(found) == shows


def test_a_thicker_clevis_pin_takes_no_thinner_split_pin_and_keeps_most_of_its_metal() -> None:
    for thin, thick in pairwise(clevis_pins()):
        assert thin.diameter < thick.diameter
        assert thin.split_pin <= thick.split_pin
    assert all(row.split_pin <= row.diameter / 3 for row in clevis_pins())
