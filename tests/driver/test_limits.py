"""For each limit one design that breaks that one alone, starting from one that passes all."""

from dataclasses import dataclass, replace

import numpy as np
import pytest
from driver.stands import tread

from pedalwright.core.checks import Finding
from pedalwright.core.points import REARWARD, RIGHT, UP, Plane, Point
from pedalwright.driver import (
    HARDEST,
    Driver,
    Footwell,
    Pad,
    Person,
    Row,
    Seated,
    Tread,
    beside,
    check,
    check_body,
    check_push,
    check_row,
    check_shoes,
    check_steps,
    place,
    steps,
)
from pedalwright.driver.body import HIP_JOINTS_APART
from pedalwright.driver.parts import Heel
from pedalwright.survey.parts import Line, Obstacle

HIP_Y = 320.0
CLUTCH_Y, BRAKE_Y, GAS_Y = HIP_Y - HIP_JOINTS_APART / 2, 355.0, 460.0


def at(x: float, z: float, y: float = BRAKE_Y) -> Point:
    return Point(x, y, z)


@dataclass(frozen=True, kw_only=True)
class Car:
    """A driver, his three pedals, and what is around them; pads go from rest to full."""

    driver: Driver
    rest: Point
    full: Point
    hard: Point
    gas: tuple[Point, Point, Point]
    heel: float
    room: Footwell
    row: Row
    clutch: tuple[Point, Point]
    full_stop: float = 400.0
    #: Pad's face against the sole's angle at rest.
    rake: float = 0.0
    clutch_heel: Heel = "slides"

    def seats(self) -> tuple[Seated, ...]:
        return place(self.driver, self.treads(), self.heel, self.room)

    def treads(self) -> tuple[Tread, Tread, Tread]:
        flat = np.full(3, 0.75) + self.rake
        return (
            tread(*self.clutch, heel=self.clutch_heel, side=-1.0, faces=flat[:2]),
            tread(self.rest, self.full, self.hard, places=("rest", "full", HARDEST), faces=flat),
            tread(self.gas[0], self.gas[2], heel="stays"),
        )

    def findings(self) -> list[Finding]:
        clutch, brake, gas = self.seats()
        _, on_brake, on_gas = self.treads()
        return [
            *check(clutch, "D, clutch"),
            *check(brake, "D, brake"),
            *check(gas, "D, throttle"),
            *check_push(brake, self.full_stop, "D, brake"),
            *check_body(self.driver.person, brake.body, "D"),
            *check_row(self.row),
            *check_steps(steps(on_brake, on_gas, self.gas[1])),
            *check_shoes(beside(self.row, clutch, brake, gas, 1.0), "D"),
        ]

    def failed(self) -> list[str]:
        failed = {f.limit.code for f in self.findings() if not f.ok}
        return sorted(code.removeprefix("driver.") for code in failed)


SOUND = Car(
    driver=Driver(
        name="D",
        person=Person(
            stature=1750, thigh=430, shank=425, shoe_length=280, shoe_width=88, inside_leg=810
        ),
        hip=Point(1060.0, HIP_Y, 150.0),
        trunk=np.deg2rad(32),
        seat_back=10.0,
    ),
    rest=at(210, 150),
    full=at(150, 140),
    hard=at(180, 143),
    gas=(at(185, 145, GAS_Y), at(180, 138, GAS_Y), at(165, 110, GAS_Y)),
    heel=0.0,
    room=Footwell(
        rim=at(480, 520),
        column=Line(name="column", start=at(0, 420), end=at(600, 640), diameter=20),
        wall=Plane(normal=REARWARD, offset=0.0),
        sides=(Plane(normal=RIGHT, offset=110.0), Plane(normal=-RIGHT, offset=-520.0)),
        covers=(Plane(normal=-UP, offset=-450.0),),
        pivots=(Line(name="pivot", start=at(120, 380, 0), end=at(120, 380, 600), diameter=22),),
        boxes=(Obstacle(name="box", low=at(0, 330, 200), high=at(90, 420, 600)),),
    ),
    row=Row(
        left_wall=110,
        clutch=Pad(middle=CLUTCH_Y, width=50),
        brake=Pad(middle=BRAKE_Y, width=60),
        accelerator=Pad(middle=GAS_Y, width=45),
        right_wall=520,
    ),
    clutch=(at(210, 150, CLUTCH_Y), at(130, 140, CLUTCH_Y)),
)


def with_person(**changes: float) -> Car:
    person = replace(SOUND.driver.person, **changes)
    return replace(SOUND, driver=replace(SOUND.driver, person=person))


def with_driver(**changes: object) -> Car:
    return replace(SOUND, driver=replace(SOUND.driver, **changes))


def with_row(**changes: float | Pad) -> Car:
    return replace(SOUND, row=replace(SOUND.row, **changes))


def with_room(**changes: object) -> Car:
    return replace(SOUND, room=replace(SOUND.room, **changes))


def test_the_sound_car_passes_everything() -> None:
    assert {(f.limit.code, f.about): (f.value, f.bound) for f in SOUND.findings() if not f.ok} == {}


def gas(x: float, z: float, y: float = GAS_Y) -> Car:
    """The accelerator somewhere else at rest, as far from there pressed."""
    moved = at(x, z, y) - SOUND.gas[0]
    rest, cruising, full = (pad + moved for pad in SOUND.gas)
    return replace(SOUND, gas=(rest, cruising, full))


@pytest.mark.parametrize(
    ("car", "fails"),
    [
        (replace(SOUND, clutch=(at(232, 185, CLUTCH_Y), at(130, 140, CLUTCH_Y))), "ankle_min"),
        (replace(SOUND, clutch=(at(175, 90, CLUTCH_Y), at(130, 140, CLUTCH_Y))), "ankle_max"),
        (replace(with_driver(hip=Point(1010.0, HIP_Y, 110.0)), full_stop=200.0), "knee_rest"),
        (replace(with_driver(seat_back=None),
                 clutch=(at(210, 150, CLUTCH_Y), at(60, 185, CLUTCH_Y))), "knee_full"),
        (with_driver(trunk=np.deg2rad(20)), "hip"),
        (replace(SOUND, full=at(150, 210)), "heel_lift"),
        (replace(SOUND, clutch=(at(210, 150, CLUTCH_Y), at(130, 210, CLUTCH_Y)),
                 clutch_heel="may lift"), "heel_lift_clutch"),
        (replace(SOUND, rake=np.deg2rad(-48)), "pad_rake"),
        (with_room(rim=at(670, 480)), "knee_rim"),
        (with_room(column=Line(name="column", start=at(0, 230), end=at(600, 430), diameter=20)),
         "shin_column"),
        (with_room(wall=Plane(normal=REARWARD, offset=60.0)), "toe_wall"),
        (with_room(covers=(Plane(normal=-UP, offset=-240.0),)), "toe_height"),
        (with_room(pivots=(Line(name="p", start=at(230, 215, 0), end=at(230, 215, 600),
                                diameter=22),)), "instep"),
        (with_room(boxes=(Obstacle(name="b", low=at(200, 190, 200), high=at(300, 600, 420)),)),
         "instep"),
        (with_driver(seat_back=250.0), "reach_back"),
        (replace(SOUND, full_stop=900.0), "braced_push"),
        (with_person(inside_leg=900, thigh=np.nan, shank=np.nan), "leg_estimate"),
        (with_person(knee_height=480.0), "body_reading"),
        (with_row(clutch=Pad(middle=251, width=102), brake=Pad(middle=BRAKE_Y, width=4)),
         "shoe_next_pad"),
        (with_row(accelerator=Pad(middle=GAS_Y, width=55), brake=Pad(middle=BRAKE_Y, width=56)),
         "gap_accelerator_brake"),
        (with_row(accelerator=Pad(middle=520.0, width=45)), "far_accelerator_brake"),
        (with_row(brake=Pad(middle=BRAKE_Y - 10, width=75)), "gap_brake_clutch"),
        (with_row(left_wall=165.0), "foot_rest gap_clutch_wall"),
        (with_row(left_wall=125.0), "foot_rest"),
        (with_row(clutch=Pad(middle=CLUTCH_Y, width=20), left_wall=155.0,
                  brake=Pad(middle=BRAKE_Y - 12, width=60)), "brake_left_wall foot_rest"),
        (with_row(right_wall=514.0), "brake_right_wall"),
        (gas(194, 145), "step_rest"),
        (replace(SOUND, gas=(SOUND.gas[0], at(158, 132, GAS_Y), SOUND.gas[2])), "step_cruising"),
        (replace(SOUND, hard=at(165, 143)), "heel_and_toe"),
        (replace(with_person(shoe_width=110.0), row=replace(SOUND.row, left_wall=105.0),
                 room=replace(SOUND.room, sides=SOUND.room.sides[:1])), "shoes_apart"),
        (with_room(sides=(Plane(normal=-RIGHT, offset=-512.0),)), "shoe_wall"),
    ],
)  # fmt: skip
def test_one_limit_at_a_time(car: Car, fails: str) -> None:
    """A clutch with no room for half a shoe beside it has none for a whole one either."""
    assert " ".join(car.failed()) == fails


def test_a_leg_that_is_too_short_fails_reach_and_leaves_the_rest_unjudged() -> None:
    far = with_driver(hip=Point(1300.0, HIP_Y, 150.0))
    _, brake, _ = far.seats()
    findings = [f for f in far.findings() if f.about == "D, brake, full"]
    reach = next(f for f in findings if f.limit.code == "driver.reach")
    assert reach.judged
    assert not reach.ok
    assert float(reach.value - reach.bound) == pytest.approx(float(brake.full.shortfall))
    knee = next(f for f in findings if f.limit.code == "driver.knee_full")
    assert not knee.judged
    assert not knee.ok


def test_a_missing_column_leaves_only_the_column_unjudged() -> None:
    nowhere = Point(np.nan, np.nan, np.nan)
    lost = with_room(column=Line(name="column", start=nowhere, end=nowhere, diameter=np.nan))
    assert lost.failed() == ["shin_column"]
    assert not any(f.judged for f in lost.findings() if f.limit.code == "driver.shin_column")


def test_nothing_is_asked_about_what_is_not_there() -> None:
    bare = replace(with_room(covers=(), pivots=(), boxes=()), driver=SOUND.driver)
    codes = {f.limit.code for f in bare.findings()}
    assert codes.isdisjoint({"driver.toe_height", "driver.instep"})
    fixed = with_driver(seat_back=None)
    assert "driver.reach_back" not in {f.limit.code for f in fixed.findings()}


def test_walls_nobody_measured_leave_the_shoes_room_unjudged() -> None:
    found = [f for f in with_room(sides=()).findings() if f.limit.code == "driver.shoe_wall"]
    assert len(found) == 2
    assert not any(f.judged or f.ok for f in found)


def test_a_thigh_that_dips_towards_the_knee_opens_the_hip_further() -> None:
    """Nearly straight legs from a high seat: 90 + 32 + the dip of the thigh, measured apart."""
    _, brake, _ = replace(SOUND, full=at(60, 185)).seats()
    thigh = brake.full.knee - brake.full.hip
    assert float(thigh.z) < 0.0
    dip = np.rad2deg(np.arcsin(-thigh.z / thigh.length()))
    assert np.rad2deg(brake.full.hip_angle) == pytest.approx(90 + 32 + dip)


def test_findings_name_driver_pedal_and_place() -> None:
    abouts = {f.about for f in check(SOUND.seats()[1], "D1, brake")}
    assert abouts == {"D1, brake, rest", "D1, brake, full", "D1, brake, 500 N", "D1, brake"}


def test_a_mirrored_car_is_judged_alike() -> None:
    """Clutch on the car's right: counted from its side the row is the same."""
    clutch, brake, gas = SOUND.seats()
    there = beside(SOUND.row, clutch, brake, gas, 1.0)
    mirrored = [
        replace(seat, near=replace(seat.near, shoe_left=-seat.near.shoe_right,
                                   shoe_right=-seat.near.shoe_left))
        for seat in (clutch, brake, gas)
    ]  # fmt: skip
    assert beside(SOUND.row, *mirrored, -1.0) == there
