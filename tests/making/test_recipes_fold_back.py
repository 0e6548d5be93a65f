"""Recipes with random sizes, unfolded and folded up again: every hole lies where the part has it.

Exact: the part's own faces in space say where a hole is, and know nothing of flat pieces.
"""

from dataclasses import replace
from functools import partial

import hypothesis.strategies as st
from hypothesis import assume, given, settings
from panels.boxes import EVERYTHING, RIVETS, SURVEY

from pedalwright.core.faults import InputError
from pedalwright.making.bending import Sheet, neutral_by_din, unfold
from pedalwright.making.bending.fold import folded
from pedalwright.making.box.limits import not_foldable
from pedalwright.panels.box import made
from pedalwright.panels.drilled import drilled
from pedalwright.panels.made import Made, Panel
from pedalwright.panels.parts import Box
from pedalwright.panels.plane import inside

#: How far a hole may be from its place, mm; the figures are exact but for rounding.
TRUE = 1e-6


def sizes(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, high).map(lambda number: round(number, 2))


@st.composite
def boxes(draw: st.DrawFn) -> Box:
    """One of each recipe that folds, in a size of its own."""
    thickness, bend = draw(sizes(0.8, 4.0)), draw(sizes(0.5, 6.0))
    clear = bend + 3 * thickness
    cheeks = replace(
        EVERYTHING.cheeks[0],
        spacing=draw(sizes(50.0, 90.0)),
        below=draw(sizes(60.0, 120.0)),
        above=draw(sizes(60.0, 120.0)),
        rise=draw(sizes(0.0, 30.0)),
        depth_above=draw(sizes(130.0, 200.0)),
        depth_below=draw(sizes(30.0, 90.0)),
        flange=draw(st.sampled_from((0.0, 18.0, 30.0))),
        thickness=thickness,
        bend=bend,
    )
    gusset = replace(
        EVERYTHING.gussets[0],
        leg_one=draw(sizes(80.0, 200.0)),
        leg_other=draw(sizes(80.0, 200.0)),
        flange=draw(sizes(2 * clear, 50.0)),
        turned=draw(st.sampled_from(("left", "right"))),
        thickness=thickness,
        bend=bend,
    )
    stiffener = replace(
        EVERYTHING.stiffeners[0],
        height=draw(sizes(clear + 2.0, 60.0)),
        foot=draw(sizes(2 * clear, 60.0)),
        side=draw(st.sampled_from(("near", "far"))),
        thickness=thickness,
        bend=bend,
    )
    lid = replace(
        EVERYTHING.covers[0],
        width=draw(sizes(80.0, 140.0)),
        height=draw(sizes(80.0, 140.0)),
        depth=draw(sizes(clear, 40.0)),
        side=draw(st.sampled_from(("near", "far"))),
        thickness=thickness,
        bend=bend,
    )
    tub = replace(
        EVERYTHING.foot_tubs[0],
        length=draw(sizes(150.0, 380.0)),
        width=draw(sizes(150.0, 320.0)),
        depth=draw(sizes(2 * clear + 5.0, 110.0)),
        flange=draw(sizes(clear + 12.0, 45.0)),
        thickness=thickness,
        bend=bend,
    )
    plate = replace(
        EVERYTHING.heel_plates[0],
        length=80.0,
        lip=draw(sizes(clear, 40.0)),
        thickness=thickness,
        bend=bend,
        joined=replace(RIVETS, edge=clear + 2.0),
    )
    return replace(
        EVERYTHING,
        cheeks=(cheeks,),
        gussets=(gusset,),
        stiffeners=(stiffener,),
        covers=(lid,),
        foot_tubs=(tub,),
        heel_plates=(plate,),
        ties=(),
    )


@settings(max_examples=200, deadline=None)
@given(box=boxes())
def test_every_hole_of_every_recipe_folds_back_to_its_place(box: Box) -> None:
    """200 boxes of six folded parts each: 1200 parts, all their holes."""
    whole = _made(box)
    for panel in whole.panels:
        if panel.face.folds:
            _folds_back(panel)


def _made(box: Box) -> Made:
    try:
        whole = made(box, SURVEY)
    except InputError:
        assume(condition=False)
        raise
    assume(not list(not_foldable(whole)))
    return drilled(whole)


def _folds_back(own: Panel) -> None:
    sheet = Sheet(metal=own.metal.name, thickness=own.thickness)
    pattern = unfold(own.name, own.face, sheet, partial(neutral_by_din, thickness=own.thickness))
    flats = {flat.face.name: flat for flat in own.flats()}
    assert len(pattern.holes) == sum(len(flat.face.holes) for flat in flats.values())
    trimmed = {face.name: face.outline for face in pattern.faces}
    # a hole that lies in a bend, or in a corner that is cut away, is told by its limit
    flat_holes = [hole for hole in pattern.holes if inside(hole.centre, trimmed[hole.face])]
    assert 2 * len(flat_holes) > len(pattern.holes)
    for hole in flat_holes:
        at = folded(pattern, hole.face, hole.centre)
        found = own.lying.point((float(at.x), float(at.y))) + own.lying.normal * at.z
        flat = flats[hole.face]
        there = next(one for one in flat.face.holes if one.name == hole.name)
        assert float((found - flat.plane.point(there.centre)).length()) < TRUE
