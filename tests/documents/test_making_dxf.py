"""DXF files read back: what a shop sees is the part, in millimetres, or it is told."""

import re
from io import StringIO
from math import pi

import ezdxf
import pytest

from pedalwright.documents.making_dxf import dxf, read_back, unlike
from pedalwright.making.profiles import (
    BendLine,
    Bore,
    Corner,
    Disc,
    Mark,
    Profile,
    area,
    hull,
    pedal_arm,
)
from pedalwright.project import car_text, read

PLATE = Profile(
    name="Bügel Ø plate",
    outline=tuple(Corner(at=at) for at in ((0.0, 0.0), (380.0, 0.0), (380.0, 260.0), (0.0, 260.0))),
    bores=tuple(
        Bore(name=f"H{i}", centre=(10.0 + 40.0 * (i % 9), 10.0 + 60.0 * (i // 9)), diameter=4.9)
        for i in range(36)
    ),
    bends=(
        BendLine(
            name="B1", start=(0.0, 40.0), end=(380.0, 40.0), way="up", angle=pi / 2, radius=2.5
        ),
        BendLine(
            name="B2", start=(0.0, 220.0), end=(380.0, 220.0), way="down", angle=0.5, radius=2.5
        ),
    ),
    marks=(Mark(name="spring", at=(200.0, 130.0)),),
    metal="5251-H22",
    thickness=1.6,
)


def test_outline_area_and_holes_are_within_a_thousandth() -> None:
    found = read_back(dxf(PLATE))
    assert found.units == 4
    assert found.closed
    assert area(found.outlines[0]) == pytest.approx(380.0 * 260.0, abs=1e-3)
    for (centre, size), bore in zip(found.holes, PLATE.bores, strict=True):
        assert centre == pytest.approx(bore.centre, abs=1e-3)
        assert size == pytest.approx(bore.diameter, abs=1e-3)
    assert len(found.bends) == 2
    assert {"CUT", "DRILL", "BEND_UP", "BEND_DOWN", "MARK"} <= found.layers
    assert found.faults == 0


def test_arcs_stay_arcs() -> None:
    made = read(car_text("larkfield-improved")).design.brake
    arm = pedal_arm("brake arm", made.pedal, made.carrier)
    found = read_back(dxf(arm))
    assert area(found.outlines[0]) == pytest.approx(272.0 * 32.0 + pi * 16.0**2, abs=1e-3)
    assert sum(1 for corner in found.outlines[0] if corner.bulge) == 2


def test_each_thing_is_on_its_layer_and_a_shop_may_drop_the_rest() -> None:
    big = Profile(
        name="ring",
        outline=hull([Disc((0.0, 0.0), 30.0)]),
        bores=(
            Bore(name="big", centre=(0.0, 0.0), diameter=20.0),
            Bore(name="small", centre=(20.0, 0.0), diameter=5.0),
        ),
    )
    space = ezdxf.read(StringIO(dxf(big).decode("cp1252"))).modelspace()
    layers = [(e.dxftype(), e.dxf.layer) for e in space]
    assert ("LWPOLYLINE", "CUT") in layers
    assert ("CIRCLE", "CUT") in layers
    assert ("CIRCLE", "DRILL") in layers
    assert {layer for kind, layer in layers if kind == "TEXT"} == {"MARK"}


def test_units_are_said_in_words_too() -> None:
    text = dxf(PLATE).decode("cp1252")
    assert "all sizes in mm" in text
    assert "5251-H22 1.6 mm, 1 off" in text
    assert "B1 up 90° R2.5" in text


def test_the_same_part_gives_the_same_bytes() -> None:
    assert dxf(PLATE) == dxf(PLATE)


@pytest.mark.parametrize(
    ("spoil", "fault"),
    [
        (lambda t: re.sub(r"(\$INSUNITS\n 70\n)4", r"\g<1>1", t), "its units are not millimetres"),
        (lambda t: t.replace("\n380.0\n", "\n380.1\n"), "its area is another"),
        (lambda t: t.replace("\n 40\n2.45\n", "\n 40\n2.5\n", 1), "its holes are others"),
        (lambda t: t.replace("\n 20\n40.0\n", "\n 20\n41.0\n", 1), "its bends are others"),
        (lambda t: re.sub(r"(AcDbPolyline\n 90\n4\n 70\n)1", r"\g<1>0", t), "not one closed line"),
    ],
)
def test_a_file_that_is_not_the_part_is_told(spoil: object, fault: str) -> None:
    assert callable(spoil)
    text = dxf(PLATE).decode("cp1252")
    spoiled = spoil(text)
    assert spoiled != text, "the fault was not made"
    assert any(fault in said for said in unlike(PLATE, read_back(spoiled.encode("cp1252"))))
