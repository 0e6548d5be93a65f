"""For each limit one design that breaks that one alone, starting from one that passes all."""

from dataclasses import dataclass, replace

import numpy as np
import pytest

from pedalwright.core.points import Plane, Point
from pedalwright.driver import (
    Driver,
    Pad,
    Person,
    Row,
    check,
    check_body,
    check_row,
    check_shoes,
    place,
)
from pedalwright.survey.parts import Line


@dataclass(frozen=True, kw_only=True)
class Car:
    """A driver, one pedal, and what is around them."""

    driver: Driver
    rest: Point
    full: Point
    heel: float
    rim: Point
    column: Line
    wall: Plane
    row: Row
    heel_may_lift: bool = False

    def failed(self) -> list[str]:
        seated = place(
            self.driver, self.rest, self.full, self.heel, heel_may_lift=self.heel_may_lift
        )
        findings = [
            *check(seated, "D, brake", rim=self.rim, column=self.column, wall=self.wall),
            *check_body(self.driver.person, seated.body, "D"),
            *check_row(self.row),
            *check_shoes(self.row, seated.body, "D"),
        ]
        return sorted({f.limit.code.removeprefix("driver.") for f in findings if not f.ok})


def at(x: float, z: float) -> Point:
    return Point(x, 0.0, z)


SOUND = Car(
    driver=Driver(
        name="D",
        person=Person(stature=1750, thigh=430, shank=425, shoe_length=280, shoe_width=96),
        hip=at(1060, 150),
        trunk=np.deg2rad(32),
    ),
    rest=at(210, 150),
    full=at(130, 140),
    heel=0.0,
    rim=at(480, 520),
    column=Line(name="column", start=at(0, 420), end=at(600, 640), diameter=20),
    wall=Plane(normal=Point(1.0, 0.0, 0.0), offset=0.0),
    row=Row(
        left_wall=100,
        clutch=Pad(middle=180, width=55),
        brake=Pad(middle=290, width=60),
        accelerator=Pad(middle=395, width=45),
        right_wall=460,
    ),
)


def with_person(**changes: float) -> Car:
    return replace(
        SOUND, driver=replace(SOUND.driver, person=replace(SOUND.driver.person, **changes))
    )


def with_row(**changes: float | Pad) -> Car:
    return replace(SOUND, row=replace(SOUND.row, **changes))


def with_hip(x: float, z: float) -> Car:
    return replace(SOUND, driver=replace(SOUND.driver, hip=at(x, z)))


def test_the_sound_car_passes_everything() -> None:
    assert SOUND.failed() == []


@pytest.mark.parametrize(
    ("car", "fails"),
    [
        (replace(SOUND, rest=at(230, 185)), "ankle_min"),
        (replace(SOUND, rest=at(175, 90)), "ankle_max"),
        (with_hip(1010, 110), "knee_rest"),
        (replace(SOUND, full=at(60, 185)), "knee_full"),
        (replace(SOUND, driver=replace(SOUND.driver, trunk=np.deg2rad(20))), "hip"),
        (replace(SOUND, full=at(130, 210)), "heel_lift"),
        (replace(SOUND, full=at(130, 210), heel_may_lift=True), "heel_lift_clutch"),
        (replace(SOUND, rim=at(670, 480)), "knee_rim"),
        (replace(SOUND, rim=at(590, 330)), "knee_rim"),
        (replace(SOUND, column=replace(SOUND.column, start=at(0, 60), end=at(225, 150))),
         "shin_column"),
        (replace(SOUND, column=replace(SOUND.column, start=at(0, 230), end=at(600, 430))),
         "shin_column"),
        (replace(SOUND, wall=Plane(normal=Point(1.0, 0.0, 0.0), offset=50.0)), "toe_wall"),
        (with_person(inside_leg=900), "leg_estimate"),
        (with_row(accelerator=Pad(middle=390, width=45), brake=Pad(middle=292, width=60)),
         "gap_accelerator_brake"),
        (with_row(accelerator=Pad(middle=447, width=45), right_wall=520), "far_accelerator_brake"),
        (with_row(clutch=Pad(middle=182, width=63)), "gap_brake_clutch"),
        (with_row(left_wall=110, clutch=Pad(middle=182, width=45)), "gap_clutch_wall"),
        (with_person(shoe_width=101), "shoes_apart"),
        (with_row(right_wall=450), "shoe_wall"),
    ],
)  # fmt: skip
def test_one_limit_at_a_time(car: Car, fails: str) -> None:
    assert car.failed() == [fails]


def test_a_leg_that_is_too_short_fails_reach_and_leaves_the_rest_unjudged() -> None:
    far = with_hip(1300, 150)
    seated = place(far.driver, far.rest, far.full, far.heel)
    findings = list(check(seated, "D, brake", rim=far.rim, column=far.column, wall=far.wall))
    reach = next(f for f in findings if f.limit.code == "driver.reach")
    assert reach.judged
    assert not reach.ok
    assert float(reach.value - reach.bound) == pytest.approx(float(seated.full.shortfall))
    knee = next(f for f in findings if f.limit.code == "driver.knee_full")
    assert not knee.judged
    assert not knee.ok


def test_a_missing_column_leaves_only_the_column_unjudged() -> None:
    nowhere = Point(np.nan, np.nan, np.nan)
    unmeasured = replace(
        SOUND, column=Line(name="column", start=nowhere, end=nowhere, diameter=np.nan)
    )
    assert unmeasured.failed() == ["shin_column"]


def test_a_thigh_that_dips_towards_the_knee_opens_the_hip_further() -> None:
    """Nearly straight legs from a high seat: 90 + 32 + the dip of the thigh, measured apart."""
    full = place(SOUND.driver, SOUND.rest, at(60, 185), SOUND.heel).full
    thigh = full.knee - full.hip
    assert float(thigh.z) < 0.0
    dip = np.rad2deg(np.arcsin(-thigh.z / thigh.length()))
    assert np.rad2deg(full.hip_angle) == pytest.approx(90 + 32 + dip)


def test_findings_name_driver_pedal_and_place() -> None:
    seated = place(SOUND.driver, SOUND.rest, SOUND.full, SOUND.heel)
    abouts = {f.about for f in check(seated, "D1, brake", rim=SOUND.rim, column=SOUND.column,
                                     wall=SOUND.wall)}  # fmt: skip
    assert abouts == {"D1, brake, rest", "D1, brake, full", "D1, brake"}
