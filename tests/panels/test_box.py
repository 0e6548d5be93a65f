"""Boxes made from their recipes: what is where, how it is fastened, and that it can be made."""

from dataclasses import replace
from math import ceil

import pytest
from panels.boxes import CHEEKS, EVERYTHING, FIRST, RAIL, SECOND, SURVEY, WALL

from pedalwright.core.faults import InputError
from pedalwright.core.points import Point
from pedalwright.making.bending import Sheet, neutral_by_din, unfold
from pedalwright.making.bending.fold import folded
from pedalwright.panels.box import made
from pedalwright.panels.drilled import drilled
from pedalwright.panels.made import Made, Panel
from pedalwright.panels.parts import Box


@pytest.fixture(scope="module")
def everything() -> Made:
    return drilled(made(EVERYTHING, SURVEY))


def panel(box: Made, name: str) -> Panel:
    found = box.panel(name)
    assert found is not None
    return found


def test_a_wall_has_its_near_side_on_the_surveyed_face(everything: Made) -> None:
    wall = panel(everything, "front wall")
    assert wall.lying.origin.x == pytest.approx(-0.8)
    assert wall.lying.normal == Point(1.0, 0.0, 0.0)
    assert {wall.lying.place(corner)[1] for corner in (Point(0, 0, 0), Point(0, 0, 390.0))} == {
        0.0,
        390.0,
    }


def test_rivets_run_round_a_plate_as_many_as_its_line_over_their_pitch() -> None:
    """160 x 160 with the row 10 in from the edge: 560 of line at 35 are 16."""
    (row,) = made(FIRST, SURVEY).rows
    assert len(row.places) == ceil(4 * 140 / 35) == 16
    assert row.stack == pytest.approx(4.6)


def test_a_trays_flange_has_one_rivet_for_each_pitch(everything: Made) -> None:
    """370 x 310 inside, flange 20, row 10 in: 1440 of line at 35 are 42, none in thin air."""
    rows = [row for row in everything.rows if row.name.startswith("foot-tub")]
    assert sum(len(row.places) for row in rows) == 42


@pytest.mark.parametrize("name", [p.name for p in made(EVERYTHING, SURVEY).panels])
def test_every_hole_of_the_flat_piece_folds_to_where_the_part_has_it(
    everything: Made, name: str
) -> None:
    own = panel(everything, name)
    sheet = Sheet(metal=own.metal.name, thickness=own.thickness)
    pattern = unfold(name, own.face, sheet, lambda radius: neutral_by_din(radius, own.thickness))
    assert len(pattern.holes) == sum(len(face.holes) for face in own.face.all())
    for hole in pattern.holes:
        at = folded(pattern, hole.face, hole.centre)
        lying = own.lying
        found = lying.point((at.x, at.y)) + lying.normal * at.z
        flat = own.flat(hole.face)
        there = next(one for one in flat.face.holes if one.name == hole.name)
        assert float((found - flat.plane.point(there.centre)).length()) < 1e-6


def test_both_sheets_of_a_joint_are_drilled_for_all_of_its_fasteners(everything: Made) -> None:
    for number, row in enumerate(everything.rows, 1):
        for sheet in row.through:
            name, _, face = sheet.rpartition(".")
            flat = panel(everything, name).flat(face)
            own = [hole for hole in flat.face.holes if hole.name.startswith(f"F{number}.")]
            assert len(own) == len(row.places)
            for hole, place in zip(own, row.places, strict=True):
                reach = flat.plane.point(hole.centre) - place
                assert float(reach.dot(flat.plane.along)) == pytest.approx(0.0, abs=1e-9)
                assert float(reach.dot(flat.plane.across)) == pytest.approx(0.0, abs=1e-9)


def test_what_names_a_part_that_is_not_there_is_told_all_at_once() -> None:
    lost = replace(CHEEKS, on="scuttle", name="one")
    other = replace(CHEEKS, on="scuttle", name="other")
    with pytest.raises(InputError) as told:
        made(Box(walls=(WALL,), cheeks=(lost, other)), SURVEY)
    assert [fault.where for fault in told.value.faults] == [
        "box.cheeks.one.on",
        "box.cheeks.other.on",
    ]
    assert "front wall" in told.value.faults[0].accepts


def test_a_missing_thickness_is_told_where_it_is() -> None:
    with pytest.raises(InputError) as told:
        made(Box(walls=(replace(WALL, thickness=float("nan")),)), SURVEY)
    assert [fault.where for fault in told.value.faults] == ["box.walls.front wall.thickness"]


def test_a_rail_needs_its_wall() -> None:
    survey = replace(SURVEY, lines=(replace(SURVEY.lines[0], wall=None),))
    with pytest.raises(InputError, match=r"survey\.lines\.cowl_rail\.wall"):
        made(Box(rails=(RAIL,)), survey)


def test_an_unknown_metal_is_taken_as_the_softest() -> None:
    soft = made(Box(walls=(replace(WALL, metal="a door skin"),)), SURVEY).panels[0].metal
    assert not soft.known
    assert soft.yield_strength <= 85.0


def test_a_round_lid_cannot_be_folded() -> None:
    lid = replace(EVERYTHING.covers[0], shape="round")
    with pytest.raises(InputError, match="round lid"):
        made(Box(walls=(WALL,), covers=(lid,)), SURVEY)


def test_the_cylinders_own_bolts_take_the_place_of_those_under_its_flange() -> None:
    (row,) = made(SECOND, SURVEY).rows
    middle = 293.0
    assert row.places
    assert all(abs(float(place.z) - middle) > 20.0 for place in row.places)
