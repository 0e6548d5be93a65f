"""What is left around pedals, by hand where a ruler can say it; and one design for each limit."""

from dataclasses import replace

import numpy as np
import pytest
from driver.stands import on

from pedalwright.assess import assess
from pedalwright.core.batch import over, pick, stack
from pedalwright.core.points import REARWARD, RIGHT, UP, Plane, Point
from pedalwright.design import Design
from pedalwright.driver import Driver, Person
from pedalwright.linkage import (
    Clearances,
    Moving,
    Pedal,
    Shoe,
    check_clearances,
    check_shoes,
    clearances,
    lever,
    pad_after,
    shoe_clearances,
)
from pedalwright.project import car_text, read
from pedalwright.survey import Face, Line, Obstacle


def pedal(name: str, y: float, offset: float = 0.0, radius: float = 272.0) -> Moving:
    made = Pedal(
        hinge="hanging",
        pivot=Point(120.0, y, 350.0),
        pad_radius=radius,
        pad_lean=np.radians(15.0),
        pad_offset=offset,
        pad_width=60.0,
        pin_radius=54.5,
    )
    return Moving(
        name=name,
        lever=lever(made),
        pedal=made,
        arm_thickness=8.0,
        arm_depth=32.0,
        full_angle=0.3,
    )


ROW = (pedal("clutch", 262.0), pedal("brake", 385.0, -15.0), pedal("throttle", 475.0))
COLUMN = Line(
    name="column", start=Point(0.0, 352.0, 215.0), end=Point(620.0, 352.0, 445.0), diameter=19.0
)
FLOOR = Face(name="floor", plane=Plane(normal=UP, offset=5.0))
TUNNEL = Face(name="tunnel", plane=Plane(normal=RIGHT, offset=165.0))
RESERVOIR = Obstacle(name="box", low=Point(0.0, 560.0, 0.0), high=Point(90.0, 600.0, 80.0))


def around(*row: Moving, lines: tuple[Line, ...] = (COLUMN,)) -> Clearances:
    return clearances(row, lines, (FLOOR, TUNNEL), (RESERVOIR,))


def found(row: tuple[object, ...], pedal: str, thing: str) -> float:
    return next(float(c.distance) for c in row if (c.pedal, c.thing) == (pedal, thing))


def test_a_column_is_passed_sideways() -> None:
    """Arm from y 381, column to 352 + 9.5; the clutch's pad ends at 292, its arm at 266."""
    left = around(*ROW)
    assert found(left.lines, "brake", "column") == pytest.approx(385 - 4 - 352 - 9.5, abs=0.01)
    assert found(left.lines, "clutch", "column") == pytest.approx(352 - 9.5 - 266, abs=0.01)


def test_a_pads_edge_to_a_wall() -> None:
    assert found(around(*ROW).faces, "clutch", "tunnel") == pytest.approx(262 - 30 - 165)


def test_a_pad_is_lowest_under_its_pivot() -> None:
    """Looked at at 0, 0.15 and 0.3 rad of 15 degrees: at 0.3 the pad is as good as under it."""
    lean = np.radians(15.0) - 0.3
    low = 350 - (272 + 25) * np.cos(lean) - 5 * abs(np.sin(lean))
    assert found(around(*ROW).faces, "brake", "floor") == pytest.approx(low - 5.0)


def test_a_pad_has_a_face_and_a_size_of_its_own() -> None:
    """Hand's breadth high, thumb thick, its far edge turned 20 degrees towards the wall: in the
    sense of the stroke, so the pad lies 20 degrees less steep than its arm."""
    made = replace(
        ROW[1].pedal, pad_height=80.0, pad_thickness=12.0, pad_face=float(np.radians(20.0))
    )
    own = replace(ROW[1], pedal=made, full_angle=0.0)
    pad_z = 350.0 - 272.0 * np.cos(np.radians(15.0))
    steep = np.radians(15.0 - 20.0)
    low = pad_z - 40.0 * np.cos(steep) - 6.0 * abs(np.sin(steep))
    assert found(around(own).faces, "brake", "floor") == pytest.approx(low - 5.0)


def test_neighbours_are_apart_as_seen_from_ahead() -> None:
    left = around(*ROW)
    assert found(left.pedals, "clutch", "brake") == pytest.approx(340 - 292)
    assert found(left.pedals, "brake", "throttle") == pytest.approx(445 - 400)


def test_a_pad_that_passes_below_another_arm_is_seen_in_space() -> None:
    """A short pedal's pad would meet a long neighbour's arm, a long one's passes under a stub."""
    stub = pedal("stub", 300.0, radius=100.0)
    assert found(around(stub, pedal("long", 340.0)).pedals, "stub", "long") < 8.0
    gap = found(around(stub, pedal("long", 355.0, -25.0)).pedals, "stub", "long")
    assert gap > 10.0


def test_an_obstacle_beside_the_throttle() -> None:
    """Its pad ends at 505, the box begins at 560."""
    assert found(around(*ROW).obstacles, "throttle", "box") == pytest.approx(55.0, abs=0.5)


def test_an_arm_passes_through_the_face_its_pivot_is_behind() -> None:
    sunk = replace(ROW[1], pedal=ROW[1].pedal, lever=replace(ROW[1].lever))
    above = Face(name="shelf", plane=Plane(normal=-UP, offset=-340.0))
    left = clearances((sunk,), (), (above,))
    assert np.isposinf(found(left.faces, "brake", "shelf"))


def test_an_unmeasured_column_is_left_unjudged() -> None:
    lost = replace(COLUMN, end=Point(620.0, 352.0, np.nan))
    tube = [f for f in check_clearances(around(*ROW, lines=(lost,))) if "tube" in f.limit.code]
    assert len(tube) == 3
    assert not any(f.judged or f.ok for f in tube)


HEEL, TOE = Point(330.0, 370.0, 0.0), Point(150.0, 370.0, 200.0)


def places(*points: Point) -> Point:
    """Points as one, on an axis in front."""
    return Point(*(np.array([getattr(p, axis) for p in points]) for axis in "xyz"))


SHOE = Shoe(about="D1, brake", heel=places(HEEL), toe=places(TOE), across=places(RIGHT), width=98.0)


def test_a_shoe_beside_a_tube() -> None:
    """A tube along the shoe, its axis 20 beside the shoe's side and 30 above the sole."""
    sole = (TOE - HEEL).unit()
    up = RIGHT.cross(sole)
    aside = RIGHT * (49.0 + 20.0) + up * 30.0
    tube = Line(
        name="tube",
        start=HEEL + aside - sole * 50.0,
        end=TOE + aside + sole * 50.0,
        diameter=19.0,
    )
    (one,) = shoe_clearances((SHOE,), (tube,))
    assert one.distance == pytest.approx(20.0 - 9.5, abs=0.01)
    assert up.x > 0.0  # the instep is on the driver's side


def test_a_shoe_is_told_where_it_comes_nearest_over_its_stroke() -> None:
    """The same shoe where it is, 1 to the right, at the tube, and 40 to the left: the nearest."""
    rail = Line(name="rail", start=Point(0, 430, 150), end=Point(400, 430, 150), diameter=19.0)
    shift = (0.0, 1.0, -40.0)

    def moved(point: Point) -> Point:
        return places(*(point + RIGHT * by for by in shift))

    across = places(*[RIGHT] * 3)
    over = replace(SHOE, heel=moved(HEEL), toe=moved(TOE), across=across)
    (near,) = shoe_clearances((over,), (rail,))
    (still,) = shoe_clearances((SHOE,), (rail,))
    assert near.distance == pytest.approx(still.distance - 1.0, abs=0.01)
    far = replace(SHOE, about="D1, clutch", heel=places(HEEL - RIGHT * 90.0),
                  toe=places(TOE - RIGHT * 90.0))  # fmt: skip
    both = shoe_clearances((over, far), (rail,))
    assert [c.pedal for c in both] == ["D1, brake", "D1, clutch"]
    assert both[0].distance == pytest.approx(near.distance)
    assert both[1].distance == pytest.approx(still.distance + 90.0, abs=0.01)


def broken(row: tuple[Moving, ...], **around_them: object) -> set[str]:
    things = {"lines": (COLUMN,), "faces": (FLOOR, TUNNEL), "obstacles": (RESERVOIR,)}
    made = clearances(row, **{**things, **around_them})
    return {f.limit.code for f in check_clearances(made) if not f.ok}


NEAR = Line(name="rail", start=Point(0, 374, 250), end=Point(620, 374, 250), diameter=10.0)
WALL = Face(name="wall", plane=Plane(normal=RIGHT, offset=228.0))
BOX = Obstacle(name="box", low=Point(0.0, 508.0, 0.0), high=Point(300.0, 600.0, 300.0))


def test_a_row_with_room_breaks_none() -> None:
    assert broken(ROW) == set()


@pytest.mark.parametrize(
    ("code", "row", "things"),
    [
        ("linkage.clear_tube", ROW, {"lines": (COLUMN, NEAR)}),
        ("linkage.clear_face", ROW, {"faces": (FLOOR, WALL)}),
        ("linkage.clear_obstacle", ROW, {"obstacles": (BOX,)}),
        ("linkage.clear_pedal", (*ROW[:2], pedal("throttle", 433.0)), {}),
    ],
)
def test_one_design_breaks_only_this_one(
    code: str, row: tuple[Moving, ...], things: dict[str, object]
) -> None:
    assert broken(row, **things) == {code}


def test_a_shoe_too_near_a_tube_is_a_wish() -> None:
    rail = Line(name="rail", start=Point(0, 430, 150), end=Point(400, 430, 150), diameter=19.0)
    (near,) = check_shoes(shoe_clearances((SHOE,), (COLUMN, rail)))
    (clear,) = check_shoes(shoe_clearances((SHOE,), (COLUMN,)))
    assert (near.limit.code, near.limit.weight) == ("linkage.clear_shoe", "should")
    assert not near.ok
    assert near.value < clear.value


def test_a_batch_equals_its_singles() -> None:
    """One row where pedals are apart, one where they have to be looked at closely."""
    tight = (*ROW[:2], pedal("throttle", 433.0))
    rows = [stack(pair) for pair in zip(ROW, tight, strict=True)]
    together = around(*rows)

    def same(one: float, other: float) -> float:
        assert one == pytest.approx(other, rel=1e-12)
        return one

    for i, row in enumerate((ROW, tight)):
        over(same, around(*row), pick(together, i))


@pytest.fixture(scope="module")
def improved() -> Design:
    return read(car_text("larkfield-improved")).design


def test_larkfields_brake_passes_its_column_by_19_5(improved: Design) -> None:
    """Arm plane 385, 8 thick, column 19 at 352."""
    left = assess(improved).clearances
    assert found(left.lines, "brake", "column") == pytest.approx(19.5, abs=0.01)
    front = Face(name="front_wall", plane=Plane(normal=REARWARD, offset=0.0))
    assert front in improved.survey.faces


def test_brackwaters_narrow_footwell() -> None:
    """Hand estimates: clutch pad 33 from the outer wall, brake shoe 5 from the column.

    The wall runs from y -590 at x 0 to y -560 at x 260; the pads hinge on the floor.
    """
    floor = replace(ROW[0].pedal, hinge="floor", pad_lean=np.radians(18.0))
    clutch = replace(floor, pivot=Point(160.0, -505.0, 40.0), pad_radius=200.0, pad_width=55.0)
    brake = replace(floor, pivot=Point(160.0, -395.0, 40.0), pad_radius=180.0, pad_width=60.0)
    square = Point(-30.0, 260.0, 0.0).unit()
    outer = Face(
        name="outer", plane=Plane(normal=square, offset=square.dot(Point(0.0, -590.0, 0.0)))
    )
    still = replace(ROW[0], pedal=clutch, lever=lever(clutch), full_angle=0.0)
    assert found(clearances((still,), (), (outer,)).faces, "clutch", "outer") == pytest.approx(
        33.0, abs=3.0
    )
    column = Line(
        name="column", start=Point(90, -450, 250), end=Point(700, -400, 520), diameter=19.0
    )
    man = Driver(
        name="D1",
        person=Person(stature=1730.0, inside_leg=785.0, shoe_length=285.0, shoe_width=102.0),
        hip=Point(1060.0, -400.0, 175.0),
        trunk=np.radians(25.0),
    )
    made = lever(brake)
    seat = on(man, made.pad, pad_after(made, 42.0), 32.0)
    foot = seat.stroke
    shoe = Shoe(about="D1, brake", heel=foot.heel, toe=foot.toe, across=foot.across, width=102.0)
    (near,) = check_shoes(shoe_clearances((shoe,), (column,)))
    assert near.value == pytest.approx(5.0, abs=2.0)
    assert not near.ok
