"""Outlines of straights and arcs, strings round eyes, the design's arms, drill cards."""

from dataclasses import replace
from math import atan, cos, hypot, pi, sin, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pedalwright.core.points import Point
from pedalwright.design import Design
from pedalwright.drawing import Circle, Group, Polyline
from pedalwright.linkage import Relay
from pedalwright.making.bending import Face, Fold, Hole, Neutral, Sheet, unfold
from pedalwright.making.bending.solid import placed
from pedalwright.making.profiles import (
    Bore,
    Corner,
    Disc,
    Joggle,
    Profile,
    area,
    around,
    drill_card,
    hull,
    pedal_arm,
    polygon,
    profile_drawing,
    profile_of,
    relay_arms,
    seen_from,
    strap,
)
from pedalwright.making.profiles.drilling import drills
from pedalwright.panels.plane import inside
from pedalwright.project import car_text, read
from pedalwright.structure import PushRod, RelayArms


def design(name: str) -> Design:
    return read(car_text(name)).design


DISCS = st.lists(
    st.builds(
        Disc,
        centre=st.tuples(st.floats(-100.0, 100.0), st.floats(-100.0, 100.0)),
        radius=st.floats(2.0, 40.0),
    ),
    min_size=1,
    max_size=5,
)


@given(discs=DISCS)
def test_the_string_reaches_as_far_as_the_discs_in_every_direction(discs: list[Disc]) -> None:
    """Two convex outlines that reach equally far every way are the same."""
    points = polygon(hull(discs))
    for i in range(24):
        angle = i * pi / 12
        c, s = cos(angle), sin(angle)
        wanted = max(d.centre[0] * c + d.centre[1] * s + d.radius for d in discs)
        reached = max(x * c + y * s for x, y in points)
        assert reached == pytest.approx(wanted, abs=0.005)


@given(discs=DISCS)
def test_areas_of_arcs_are_exact(discs: list[Disc]) -> None:
    outline = hull(discs)
    fine = tuple(Corner(at=point) for point in polygon(outline, 1e-4))
    assert area(outline) == pytest.approx(area(fine), rel=1e-4)
    assert area(outline) > 0.0


def test_a_stadium_by_hand() -> None:
    outline = hull([Disc((0.0, 0.0), 10.0), Disc((50.0, 0.0), 10.0)])
    assert area(outline) == pytest.approx(50.0 * 20.0 + pi * 100.0)
    assert around(outline) == pytest.approx(100.0 + 2 * pi * 10.0)
    assert sum(1 for corner in outline if corner.bulge) == 2


def test_a_quarter_is_a_bulge_of_tan_of_an_eighth_turn() -> None:
    quarter = (
        Corner(at=(10.0, 0.0), bulge=tan(pi / 8)),
        Corner(at=(0.0, 10.0)),
        Corner(at=(0.0, 0.0)),
    )
    assert area(quarter) == pytest.approx(pi * 100.0 / 4)
    clockwise = (
        Corner(at=(0.0, 0.0)),
        Corner(at=(10.0, 0.0), bulge=-tan(atan(1.0) / 4)),
        Corner(at=(10.0, 10.0)),
        Corner(at=(0.0, 10.0)),
    )
    assert area(clockwise) < 100.0  # an arc that bulges inward takes away


def test_a_disc_within_another_does_not_show() -> None:
    assert hull([Disc((0.0, 0.0), 20.0), Disc((3.0, 0.0), 5.0)]) == hull([Disc((0.0, 0.0), 20.0)])


def test_larkfields_brake_arm() -> None:
    """272 from pivot to pad, pin at 54.5, cut from bar 32 deep: a stadium with two holes."""
    made = design("larkfield-improved")
    arm = pedal_arm("brake arm", made.brake.pedal, made.brake.carrier)
    assert area(arm.outline) == pytest.approx(272.0 * 32.0 + pi * 16.0**2)
    pivot, pin = arm.bores
    assert (pivot.diameter, pin.diameter) == (22.0, 12.0)
    assert hypot(*pin.centre) == pytest.approx(54.5)
    assert arm.marks[0].at == (272.0, 0.0)
    assert seen_from(made.brake.pedal) == "seen from the car's right"


def test_an_arm_beyond_its_pivot_reaches_round_its_pin() -> None:
    made = design("saltmarsh-improved").brake
    arm = pedal_arm("brake arm", made.pedal, made.carrier)
    pin = arm.bores[1]
    assert pin.centre[0] == pytest.approx(-float(made.pedal.pin_radius))
    left = min(x for x, _ in polygon(arm.outline))
    assert pin.centre[0] - pin.diameter / 2 > left


@pytest.mark.parametrize("car", ["larkfield-improved", "brackwater-fix2", "saltmarsh-improved"])
@pytest.mark.parametrize("which", ["brake", "clutch"])
def test_an_arm_is_nowhere_narrower_than_the_one_judged(car: str, which: str) -> None:
    part = getattr(design(car), which)
    arm = part.carrier.arm
    points = polygon(pedal_arm("arm", part.pedal, part.carrier).outline)
    length = float(part.pedal.pad_radius)
    for i in range(21):
        along = i / 20 * length
        depth = float(arm.depth_at_pivot) + i / 20 * float(arm.depth_at_pad - arm.depth_at_pivot)
        for side in (1.0, -1.0):
            assert inside((along, side * (depth / 2 - 0.01)), points)


RELAY = Relay(
    pivot=Point(100.0, 0.0, 300.0),
    driven_pin=Point(100.0, 5.0, 360.0),
    driving_pin=Point(40.0, 30.0, 300.0),
)
ARMS = RelayArms(
    thickness=6.0,
    driven_depth=30.0,
    driving_depth=28.0,
    tube_outside=22.0,
    tube_inside=16.0,
    push_rod=PushRod(outside=8.0, elastic=210000.0, yield_strength=235.0),
    bracket_stiffness=5000.0,
    elastic=210000.0,
    poisson=0.3,
    yield_strength=235.0,
)


def test_a_relay_in_one_plate_keeps_its_angle() -> None:
    (plate,) = relay_arms(RELAY, ARMS, 8.0)
    _, driven, driving = plate.bores
    assert driven.centre == pytest.approx((60.0, 0.0))
    assert hypot(*driving.centre) == pytest.approx(60.0)
    turn = driving.centre[0] * driven.centre[0] + driving.centre[1] * driven.centre[1]
    assert turn == pytest.approx(0.0, abs=1e-9)  # a right angle, whatever the spacing
    assert driving.centre[1] > 0.0  # rearward up to forward is anticlockwise seen from the right


def test_a_relay_on_a_tube_is_two_straps() -> None:
    names = [p.name for p in relay_arms(RELAY, replace(ARMS, spacing=60.0), 8.0)]
    assert names == ["relay driven arm", "relay driving arm"]


def test_a_strap_goes_round_its_bores() -> None:
    bores = (
        Bore(name="A", centre=(0.0, 0.0), diameter=8.0),
        Bore(name="B", centre=(40.0, 0.0), diameter=8.0),
    )
    link = strap("link", bores, 6.0, thickness=4.0)
    assert area(link.outline) == pytest.approx(40.0 * 20.0 + pi * 100.0)


def test_an_arms_card_counts_from_the_pivot() -> None:
    made = design("larkfield-improved").brake
    pivot, pin = drill_card(pedal_arm("brake arm", made.pedal, made.carrier))
    assert (pin.from_left, pin.from_below) == (54.5, 0.0)
    assert pin.edges == "from the middle of P"
    assert pin.drills == (3.2, 6.0, 11.7)
    assert pin.finish == "ream 12"
    assert pin.tolerance == 0.2
    assert pivot.finish.startswith("open to 22")


def test_a_plates_card_counts_from_its_edges() -> None:
    outline = tuple(
        Corner(at=at) for at in ((-20.0, 5.0), (80.0, 5.0), (80.0, 65.0), (-20.0, 65.0))
    )
    bores = (Bore(name="H1", centre=(0.0, 20.0), diameter=4.9, use="rivet"),)
    (row,) = drill_card(Profile(name="plate", outline=outline, bores=bores))
    assert (row.from_left, row.from_below) == (20.0, 15.0)
    assert row.edges == "from left and lower edge"
    assert row.drills == (3.2, 4.9)
    assert row.tolerance == 0.2
    assert row.finish == "deburr both sides"


@pytest.mark.parametrize(
    ("diameter", "reamed", "wanted"),
    [
        (3.3, False, (3.3,)),
        (4.9, False, (3.2, 4.9)),
        (8.4, False, (3.2, 6.0, 8.4)),
        (12.0, True, (3.2, 6.0, 11.7)),
        (25.0, False, (3.2, 6.0, 13.0)),
    ],
)
def test_drills_in_order(diameter: float, reamed: bool, wanted: tuple[float, ...]) -> None:
    bore = Bore(name="H", centre=(0.0, 0.0), diameter=diameter, reamed=reamed)
    assert drills(bore) == wanted


def test_a_hole_beside_a_bend_waits_for_it() -> None:
    lip = Face(name="lip", outline=((0.0, 0.0), (90.0, 0.0), (90.0, 30.0), (0.0, 30.0)))
    fold = Fold(name="B1", start=(90.0, 0.0), end=(0.0, 0.0), angle=pi / 2, radius=2.0, face=lip)
    web = Face(
        name="web",
        outline=((0.0, 0.0), (90.0, 0.0), (90.0, 60.0), (0.0, 60.0)),
        holes=(
            Hole(name="near", centre=(30.0, 7.0), diameter=5.0),
            Hole(name="far", centre=(60.0, 30.0), diameter=5.0),
        ),
        folds=(fold,),
    )
    neutral = Neutral(share=0.4, plus_minus=0.1, way="given", source="invented")
    flat = unfold("tray", web, Sheet(metal="DC01", thickness=1.5), lambda _: neutral)
    made = profile_of(flat)
    assert {bore.name: bore.after_bending for bore in made.bores} == {"near": True, "far": False}
    assert [(bend.name, bend.way) for bend in made.bends] == [("B1", "up")]
    assert area(made.outline) == pytest.approx(
        (60.0 - 3.5 + 30.0 - 3.5) * 90.0 + pi / 2 * (2.0 + 0.4 * 1.5) * 90.0
    )


def test_the_drawing_has_a_group_for_each_tool() -> None:
    made = design("larkfield-improved").brake
    drawing = profile_drawing(pedal_arm("brake arm", made.pedal, made.carrier))
    groups = {shape.part: shape for shape in drawing.shapes if isinstance(shape, Group)}
    assert list(groups) == ["cut", "bend", "drill", "mark"]
    (outline,) = groups["cut"].shapes
    assert isinstance(outline, Polyline)
    assert outline.closed
    assert sum(isinstance(shape, Circle) for shape in groups["drill"].shapes) == 2


def leg(name: str, length: float, *folds: Fold) -> Face:
    outline = ((0.0, 0.0), (32.0, 0.0), (32.0, length), (0.0, length))
    return Face(name=name, outline=outline, folds=folds)


@given(offset=st.floats(8.0, 40.0), angle=st.floats(0.3, 1.2), side=st.sampled_from([1.0, -1.0]))
def test_a_joggled_arm_has_its_pad_where_the_pedal_has_it(
    offset: float, angle: float, side: float
) -> None:
    """The same joggle as two folds in space: as far over, as far down, and as long when flat."""
    made = design("larkfield-improved").brake
    thick, start = float(made.carrier.arm.thickness), 120.0
    neutral = Neutral(share=0.4, plus_minus=0.1, way="given", source="invented")
    pedal = replace(made.pedal, pad_offset=side * offset)
    joggle = Joggle(start=start, angle=angle, radius=10.0, neutral=neutral)
    arm = pedal_arm("brake arm", pedal, made.carrier, joggle=joggle)
    slant = (offset + thick * (1 - cos(angle))) / sin(angle)
    run = slant * cos(angle) - thick * sin(angle)
    end = float(pedal.pad_radius) - start - run
    last = leg("end", end)
    second = Fold(
        name="B2", start=(0.0, slant), end=(32.0, slant), angle=-side * angle, radius=10, face=last
    )
    first = Fold(
        name="B1",
        start=(0.0, start),
        end=(32.0, start),
        angle=side * angle,
        radius=10.0,
        face=leg("slant", slant, second),
    )
    root = leg("root", start, first)
    pad = list(placed(root, thick))[-1].place((16.0, end))
    assert pad.y == pytest.approx(float(pedal.pad_radius))
    assert pad.z == pytest.approx(side * offset)
    flat = unfold("arm", root, Sheet(metal="S275", thickness=thick), lambda _: neutral)
    length = max(y for _, y in flat.outline)
    assert arm.marks[0].at[0] == pytest.approx(length)
    for line, bend in zip(arm.bends, flat.bends, strict=True):
        assert line.start[0] == pytest.approx((bend.near[0][1] + bend.far[0][1]) / 2)
        assert (line.way == "up") is bend.up


def test_a_rod_pin_in_the_joggle_is_refused() -> None:
    made = design("larkfield-improved").brake
    neutral = Neutral(share=0.4, plus_minus=0.1, way="given", source="invented")
    joggle = Joggle(start=56.0, angle=0.5, radius=10.0, neutral=neutral)
    with pytest.raises(AssertionError, match="lies in the joggle"):
        pedal_arm("brake arm", made.pedal, made.carrier, joggle=joggle)
