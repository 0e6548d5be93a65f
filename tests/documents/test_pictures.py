"""What the drawings of a car show, read back from their shapes."""

from dataclasses import replace
from itertools import pairwise
from math import dist

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from pedalwright.assess import Assessment, assess
from pedalwright.design import Design
from pedalwright.documents.pictures import full_size, pictures
from pedalwright.documents.pictures.places import pad_outline, seen, swing
from pedalwright.documents.pictures.shown import shown
from pedalwright.drawing import polar
from pedalwright.project import car_text, read


@pytest.fixture(scope="module")
def design() -> Design:
    return read(car_text("larkfield-improved")).design


@pytest.fixture(scope="module")
def assessment(design: Design) -> Assessment:
    return assess(design)


@given(st.floats(-10.0, 10.0), st.floats(-3.0, 3.0))
def test_a_swing_is_the_turn_itself_wherever_it_begins(start: float, turn: float) -> None:
    centre = (120.0, 350.0)
    first, last = swing(centre, *(polar(centre, 270.0, at) for at in (start, start + turn)))
    assert last - first == pytest.approx(abs(turn), abs=1e-9)
    begins = start if turn >= 0.0 else start + turn
    assert polar((0.0, 0.0), 1.0, first) == pytest.approx(polar((0.0, 0.0), 1.0, begins), abs=1e-9)


@pytest.mark.parametrize("face", [0.0, 0.2])
def test_a_pad_is_as_high_and_as_thick_as_it_was_measured(
    design: Design, assessment: Assessment, face: float
) -> None:
    drawn = shown(design, assessment, "brake")
    pedal = replace(drawn.part.pedal, pad_height=62.0, pad_thickness=9.0, pad_face=face)
    corners = pad_outline(pedal, drawn.lever, drawn.full.pad)
    sides = [dist(a, b) for a, b in pairwise((*corners, corners[0]))]
    assert sides == pytest.approx([62.0, 9.0, 62.0, 9.0])
    middle = tuple(sum(along) / 4.0 for along in zip(*corners, strict=True))
    assert middle == pytest.approx(seen(drawn.full.pad))
    (px, pz), (x, z) = seen(drawn.lever.pivot), seen(drawn.full.pad)
    up_the_face = (corners[0][0] - corners[1][0], corners[0][1] - corners[1][1])
    first, last = swing((0.0, 0.0), (x - px, z - pz), up_the_face)
    assert last - first == pytest.approx(face, abs=1e-9)


def test_a_stroke_nobody_can_work_out_is_left_out(design: Design) -> None:
    """Hoses of unknown swelling: no hard stop, so no pedal there and no arc to it."""
    plumbing = replace(design.brake.plumbing, dead_stroke=np.nan)
    unknown = replace(design, brake=replace(design.brake, plumbing=plumbing))
    found = assess(unknown)
    assert np.isnan(found.brake.hard_stop.pad.x)
    for picture in (*pictures(unknown, found), *full_size(unknown, found)):
        assert b"nan" not in picture.svg, picture.key
