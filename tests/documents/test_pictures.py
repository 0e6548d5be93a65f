"""What the drawings of a car show, read back from their shapes."""

import re
from dataclasses import replace
from itertools import pairwise
from math import dist

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from pedalwright.assess import Assessment, assess
from pedalwright.core.points import Point
from pedalwright.design import Design
from pedalwright.documents.outside import INCH, METRIC
from pedalwright.documents.pictures import full_size, pictures, side_elevation
from pedalwright.documents.pictures.lever import lever_layout
from pedalwright.documents.pictures.places import pad_outline, seen, swing
from pedalwright.documents.pictures.shown import shown
from pedalwright.drawing import polar, svg
from pedalwright.linkage import Relay
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
    for picture in (*pictures(unknown, found, METRIC), *full_size(unknown, found, INCH)):
        assert b"nan" not in picture.svg, picture.key


def test_a_relay_lever_is_drawn_with_a_rod_on_either_side(design: Design) -> None:
    pin = Point(28.0, 385.0, 298.0)
    relay = Relay(
        pivot=pin + Point(0.0, 0.0, -90.0),
        driven_pin=pin,
        driving_pin=pin + Point(0.0, 0.0, -30.0),
    )
    rod = replace(design.brake.rod, socket=relay.driving_pin + Point(-110.0, 0.0, 1.0), relay=relay)
    relayed = replace(design, brake=replace(design.brake, rod=rod))
    drawn = shown(relayed, assess(relayed), "brake")
    for chain in (drawn.at_rest, drawn.pressed):
        assert chain.relay is not None
        assert chain.relay[0] == chain.rods[0][1]
        assert chain.relay[2] == chain.rods[1][0]
    lengths = [[dist(*rod) for rod in chain.rods] for chain in (drawn.at_rest, drawn.pressed)]
    assert lengths[1] == pytest.approx(lengths[0], rel=1e-9)
    for draw in (side_elevation, lever_layout):
        picture = draw(relayed, assess(relayed), "brake", METRIC)
        assert svg(picture, physical=True).count(b'data-part="push-rod"') == 4


@pytest.mark.parametrize(("joggle", "says"), [(15.0, "15 right"), (-15.0, "15 left")])
def test_a_joggle_is_told_by_its_hand(design: Design, joggle: float, says: str) -> None:
    pedal = replace(design.brake.pedal, pad_offset=joggle)
    offset = replace(design, brake=replace(design.brake, pedal=pedal))
    picture = svg(lever_layout(offset, assess(offset), "brake", METRIC), physical=True)
    assert f">pad {says}<" in picture.decode()


@pytest.fixture(scope="module")
def saltmarsh() -> Design:
    return read(car_text("saltmarsh-improved")).design


def written(picture: bytes) -> list[str]:
    return re.findall(r">([^<>]+)</text>", picture.decode())


def test_a_lever_typed_in_inches_is_drawn_in_inches(saltmarsh: Design) -> None:
    """As typed: radii of 9 and 1 3/4, a rod of 4, an arm of 3/8 by 1, holes of 1 inch."""
    layout = svg(lever_layout(saltmarsh, assess(saltmarsh), "brake", INCH), physical=True)
    told = ["9″", "1 3/4″", "rod 4″", "arm 3/8″ x 1″", "Ø1″", "tube Ø1″"]
    assert set(told) <= set(written(layout))


def test_units_change_what_is_written_and_nothing_else(saltmarsh: Design) -> None:
    """At 1:1, so that an arm can be laid on either."""
    found = assess(saltmarsh)
    for one, other in zip(
        full_size(saltmarsh, found, METRIC), full_size(saltmarsh, found, INCH), strict=True
    ):
        outlines = [
            re.findall(r'<polygon points="([^"]+)"[^>]*data-part="(?:arm|pad)"', p.svg.decode())
            for p in (one, other)
        ]
        assert outlines[0] == outlines[1]
        assert len(outlines[0]) == 2
        assert "dimensions in inches" in other.caption
        assert "dimensions in mm" in one.caption


def test_no_chart_of_a_car_in_inches_counts_in_metric_units(saltmarsh: Design) -> None:
    charts = pictures(saltmarsh, assess(saltmarsh), INCH)
    words = {word for picture in charts for text in written(picture.svg) for word in text.split()}
    assert {"(in)", "(lbf)", "(g)", "in", "lbf"} <= words
    assert not words & {"mm", "N", "(mm)", "(N)", "(m/s²)"}


def test_each_driver_finds_the_pad_where_his_box_stands(saltmarsh: Design) -> None:
    drawn = shown(saltmarsh, assess(saltmarsh), "brake")
    assert drawn.aft == (("D1", pytest.approx(127.0)),)
    balls = {name: float(seat.rest.ball.x) for name, seat in drawn.seats}
    pad = float(drawn.lever.pad.x)
    assert balls["D1"] - 127.0 == pytest.approx(balls["D2"], abs=0.5)
    assert balls["D2"] == pytest.approx(pad, abs=25.0)
    picture = svg(side_elevation(saltmarsh, assess(saltmarsh), "brake", INCH), physical=True)
    assert "pedals for D1" in written(picture)
