"""The three invented cars, against figures estimated by hand before the code was written.

Strength: weak, a hand estimate good to 5 %. The pads are placed with plain trigonometry here,
so that only the driver room is on trial. The estimates are of legs
seen from the side; reaching 85 mm sideways opens a knee by a degree.
"""

from dataclasses import dataclass

import numpy as np
import pytest
from driver.stands import on

from pedalwright.core.points import Point
from pedalwright.driver import Driver, Person, Seated, heel_height

BY_HAND = 0.05
INCH = 25.4


@dataclass(frozen=True)
class Arm:
    """A pedal arm: the pad hangs below its pivot, or stands above it."""

    pivot: tuple[float, float]
    radius: float
    lean_deg: float
    hangs: bool = True

    def pad(self, arc: float) -> Point:
        angle = np.deg2rad(self.lean_deg) - arc / self.radius
        up = -1.0 if self.hangs else 1.0
        x, z = self.pivot
        return Point(x + self.radius * np.sin(angle), 0.0, z + up * self.radius * np.cos(angle))


def driver(name: str, stature: float, hip: tuple[float, float]) -> Driver:
    return Driver(
        name=name,
        person=Person(stature=stature),
        hip=Point(hip[0], 0.0, hip[1]),
        trunk=np.deg2rad(25),
    )


def degrees(angle: object) -> float:
    return float(np.rad2deg(angle))


# -- Larkfield: hanging pedals, foot-tub 75 deep in a floor 5 above the datum --------------

TUB = heel_height(5.0, 75.0, 0.0)
SHORT, TALL = driver("D1", 1680, (1000, 120)), driver("D2", 1830, (1070, 120))
BRAKE, CLUTCH = Arm((120, 350), 272, 15), Arm((120, 350), 276, 16)
BRAKE_ARC, CLUTCH_ARC = 74.0, 135.0


def test_the_tub_puts_the_heels_70_below_the_datum() -> None:
    assert TUB == -70.0


def test_larkfield_first_bends_the_foot_too_far() -> None:
    pad = Arm((120, 350), 248, 15).pad(0.0)
    assert (float(pad.x), float(pad.z)) == pytest.approx((184.2, 110.4), abs=0.1)
    rest = on(SHORT, pad, pad, TUB).rest
    assert degrees(rest.sole_angle) == pytest.approx(67, rel=BY_HAND)
    assert degrees(rest.ankle_angle) == pytest.approx(69, rel=BY_HAND)
    assert degrees(rest.ankle_angle) < 75


@pytest.mark.parametrize(
    ("who", "knees", "ankles"),
    [
        pytest.param(SHORT, (105, 125, 145), (80, 92, 99), id="D1"),
        pytest.param(TALL, (103, 120, 136), (86, 97, 102), id="D2"),
    ],
)
def test_larkfield_improved(
    who: Driver, knees: tuple[float, float, float], ankles: tuple[float, float, float]
) -> None:
    brake = on(who, BRAKE.pad(0.0), BRAKE.pad(BRAKE_ARC), TUB)
    clutch = on(who, CLUTCH.pad(0.0), CLUTCH.pad(CLUTCH_ARC), TUB, heel="may lift")
    postures = (brake.rest, brake.full, clutch.full)
    assert [degrees(p.knee_angle) for p in postures] == pytest.approx(list(knees), rel=BY_HAND)
    assert [degrees(p.ankle_angle) for p in postures] == pytest.approx(list(ankles), rel=BY_HAND)
    assert float(brake.pad_above_heel) == pytest.approx(157, rel=BY_HAND)
    assert float(clutch.pad_above_heel) == pytest.approx(155, rel=BY_HAND)
    assert not brake.lifts
    assert not clutch.lifts


# -- Brackwater: floor-hinged pedals ------------------------------------------------------

FLOOR_HINGED = Arm((160, 40), 180, 18, hangs=False)
BRACKWATER = driver("D1", 1730, (1060, 175))


def seated_in_brackwater(heel: float) -> Seated:
    return on(BRACKWATER, FLOOR_HINGED.pad(0.0), FLOOR_HINGED.pad(0.0), heel)


def test_brackwater_first_lifts_the_heel() -> None:
    seated = seated_in_brackwater(5.0)
    assert float(seated.pad_above_heel) == pytest.approx(206, rel=0.005)
    assert float(seated.body.heel_to_ball) == pytest.approx(201, rel=0.005)
    assert seated.lifts
    assert degrees(seated.rest.ankle_angle) == pytest.approx(90)


def test_brackwater_with_a_heel_plate_keeps_it_down() -> None:
    seated = seated_in_brackwater(32.0)
    assert not seated.lifts
    assert float(seated.lift_rest) == 0.0
    assert degrees(seated.rest.ankle_angle) > 75


# -- Saltmarsh: a fixed seat, pedals that slide -------------------------------------------


@pytest.mark.parametrize(
    ("stature", "slide", "rest", "full"),
    [
        pytest.param(62 * INCH, 5.0 * INCH, 110, 148, id="short"),
        pytest.param(75 * INCH, 0.0, 100, 124, id="tall"),
    ],
)
def test_saltmarsh_improved(stature: float, slide: float, rest: float, full: float) -> None:
    arm = Arm((4.72 * INCH + slide, 14.75 * INCH), 9 * INCH, 14)
    who = driver("D", stature, (42.5 * INCH, 6.5 * INCH))
    seated = on(who, arm.pad(0.0), arm.pad(4.6 * INCH), 0.0, heel="may lift")
    assert degrees(seated.rest.knee_angle) == pytest.approx(rest, rel=BY_HAND)
    assert degrees(seated.full.knee_angle) == pytest.approx(full, rel=BY_HAND)


def test_saltmarsh_first_puts_the_clutch_out_of_reach_of_the_short_driver() -> None:
    arm = Arm((4.72 * INCH + 3.0 * INCH, 14.75 * INCH), 9 * INCH, 14)
    who = driver("D1", 62 * INCH, (42.5 * INCH, 6.5 * INCH))
    seated = on(who, arm.pad(0.0), arm.pad(5.0 * INCH), 0.0, heel="may lift")
    assert np.isnan(seated.full.knee_angle) or degrees(seated.full.knee_angle) > 160
