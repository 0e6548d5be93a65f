"""Laws of legs: bones keep their length, the datum does not matter, a batch equals its singles."""

from dataclasses import replace

import numpy as np
import pytest
from driver.stands import on
from hypothesis import assume, given
from hypothesis import strategies as st

from pedalwright.core.batch import over, pick, stack
from pedalwright.core.points import UP, Point
from pedalwright.driver import (
    Body,
    Driver,
    Person,
    Posture,
    Seated,
    body,
    heel_fixed_on_pad,
    heel_lifted,
    heel_on_floor,
    hip_for_ankle,
    joint_moments,
    knee_between,
    sole_at,
    sole_on_pad,
)
from pedalwright.driver.body import HIP_JOINTS_APART
from pedalwright.driver.parts import Heel


def numbers(least: float, most: float) -> st.SearchStrategy[float]:
    return st.floats(least, most, allow_nan=False)


@st.composite
def drivers(draw: st.DrawFn) -> Driver:
    return Driver(
        name="D",
        person=Person(stature=draw(numbers(1450, 2050))),
        hip=Point(draw(numbers(850, 1150)), draw(numbers(-500, 500)), draw(numbers(80, 320))),
        trunk=draw(numbers(0.1, 0.8)),
    )


PADS = st.builds(Point, x=numbers(-50, 350), y=numbers(-600, 600), z=numbers(20, 260))
ANKLES = numbers(1.2, 2.0)
HEELS = numbers(-120, 60)


def length(one: Point, other: Point) -> float:
    return float((one - other).length())


def bones_hold(posture: Posture, lengths: Body) -> None:
    """Joints are as far apart as the bones are long, and the foot is one piece."""
    assert length(posture.hip, posture.knee) == pytest.approx(lengths.thigh, rel=1e-9)
    assert length(posture.knee, posture.ankle) == pytest.approx(lengths.shank, rel=1e-9)
    assert length(posture.heel, posture.ball) == pytest.approx(lengths.heel_to_ball, rel=1e-9)
    ankle = np.hypot(lengths.ankle_forward, lengths.ankle_height)
    assert length(posture.heel, posture.ankle) == pytest.approx(ankle, rel=1e-9)
    foot = np.hypot(lengths.heel_to_ball - lengths.ankle_forward, lengths.ankle_height)
    assert length(posture.ball, posture.ankle) == pytest.approx(foot, rel=1e-9)


def angles_hold(posture: Posture, trunk: float) -> None:
    """The angles are those between the drawn lines, measured with the scalar product.

    The trunk is turned into the leg's own upright plane.
    """
    shin, thigh = posture.knee - posture.ankle, posture.knee - posture.hip
    sole = posture.ball - posture.heel
    way = Point(posture.heel.x - posture.hip.x, posture.heel.y - posture.hip.y, 0.0).unit()
    back = UP * np.cos(trunk) - way * np.sin(trunk)
    assert between(-thigh, -shin) == pytest.approx(np.cos(posture.knee_angle), abs=1e-9)
    assert between(shin, sole) == pytest.approx(np.cos(posture.ankle_angle), abs=1e-9)
    assert between(thigh, back) == pytest.approx(np.cos(posture.hip_angle), abs=1e-9)


def between(one: Point, other: Point) -> float:
    return float(one.unit().dot(other.unit()))


@given(driver=drivers(), ball=PADS, heel=HEELS)
def test_heel_on_floor_keeps_every_length(driver: Driver, ball: Point, heel: float) -> None:
    lengths = body(driver.person)
    posture = heel_on_floor(lengths, driver.hip, driver.trunk, ball, heel)
    assume(np.isfinite(posture.knee_angle))
    bones_hold(posture, lengths)
    angles_hold(posture, driver.trunk)
    assert float(posture.heel.z) == heel
    assert length(posture.ball, ball) == pytest.approx(0.0, abs=1e-9)


@given(driver=drivers(), ball=PADS, ankle=ANKLES)
def test_a_lifted_heel_keeps_every_length_and_the_ankle(
    driver: Driver, ball: Point, ankle: float
) -> None:
    lengths = body(driver.person)
    posture = heel_lifted(lengths, driver.hip, driver.trunk, ball, ankle)
    assume(np.isfinite(posture.knee_angle))
    bones_hold(posture, lengths)
    angles_hold(posture, driver.trunk)
    assert float(np.cos(posture.ankle_angle)) == pytest.approx(np.cos(ankle), abs=1e-9)
    assert length(posture.ball, ball) == pytest.approx(0.0, abs=1e-9)


@given(driver=drivers(), ball=PADS, face=numbers(0.3, 1.5))
def test_a_flush_sole_keeps_every_length(driver: Driver, ball: Point, face: float) -> None:
    lengths = body(driver.person)
    posture = sole_on_pad(lengths, driver.hip, driver.trunk, ball, face)
    assume(np.isfinite(posture.knee_angle))
    bones_hold(posture, lengths)
    angles_hold(posture, driver.trunk)


@given(driver=drivers(), ball=PADS, heel=HEELS)
def test_three_ways_to_one_posture(driver: Driver, ball: Point, heel: float) -> None:
    """Heel on the floor, heel lifted with the ankle it had, and hip put where it was."""
    lengths = body(driver.person)
    ball = replace(ball, y=driver.hip.y)  # hips are put straight behind the heel
    down = heel_on_floor(lengths, driver.hip, driver.trunk, ball, heel)
    assume(np.isfinite(down.knee_angle) and down.knee_angle < 3.0)
    # of two knees the upper is taken: above the line hip-ankle, or above the line hip-ball
    span, thigh = ball - driver.hip, down.knee - driver.hip
    assume(thigh.z > span.z * thigh.x / span.x)
    lifted = heel_lifted(lengths, driver.hip, driver.trunk, ball, down.ankle_angle)
    assert length(lifted.heel, down.heel) == pytest.approx(0.0, abs=1e-6)
    assert length(lifted.knee, down.knee) == pytest.approx(0.0, abs=1e-6)
    assume(down.knee.x < down.hip.x)
    hip = hip_for_ankle(lengths, down.heel, down.sole_angle, down.ankle_angle, driver.hip.z)
    assert length(hip, down.hip) == pytest.approx(0.0, abs=1e-6)


@given(driver=drivers(), pad=PADS, rounding=numbers(0.0, 15.0))
def test_the_sole_touches_a_round_pad_and_does_not_enter_it(
    driver: Driver, pad: Point, rounding: float
) -> None:
    lengths = body(driver.person)
    pad = replace(pad, y=driver.hip.y)
    heel = Point(pad.x + 120.0, pad.y, pad.z - 150.0)
    found = heel_fixed_on_pad(lengths, driver.hip, driver.trunk, heel, pad, rounding)
    assume(np.isfinite(found.posture.knee_angle))
    bones_hold(found.posture, lengths)
    assert length(found.contact, pad) == pytest.approx(rounding, abs=1e-9)
    radius, sole = found.contact - pad, found.posture.ball - found.posture.heel
    assert float(radius.dot(sole)) == pytest.approx(0.0, abs=1e-7)
    assert length(found.contact, heel) == pytest.approx(float(found.along_sole))


@given(
    hip=st.builds(Point, x=numbers(700, 1000), y=numbers(-100, 100), z=numbers(100, 350)),
    ankle=st.builds(Point, x=numbers(0, 200), y=numbers(-250, 250), z=numbers(50, 200)),
    splay=numbers(-0.6, 0.6),
)
def test_a_splayed_knee_keeps_both_bones(hip: Point, ankle: Point, splay: float) -> None:
    assume(abs(ankle.y - hip.y) > 1.0)
    knee = knee_between(hip, ankle, 430.0, 430.0, splay)
    assume(np.isfinite(knee.x))
    assert length(hip, knee) == pytest.approx(430.0, rel=1e-9)
    assert length(ankle, knee) == pytest.approx(430.0, rel=1e-9)
    straight = knee_between(hip, ankle, 430.0, 430.0)
    assert float(knee.z) <= float(straight.z) + 1e-9
    assert np.sign(round(float(knee.y - straight.y), 9)) in (0.0, np.sign(splay))


# -- the datum, and the other hand --------------------------------------------------------


def shifted(driver: Driver, by: Point) -> Driver:
    return replace(driver, hip=driver.hip + by)


@given(
    driver=drivers(),
    rest=PADS,
    full=PADS,
    heel=HEELS,
    by=st.builds(Point, x=numbers(-900, 900), y=numbers(-900, 900), z=numbers(-900, 900)),
)
def test_moving_the_datum_moves_points_and_no_angle(
    driver: Driver, rest: Point, full: Point, heel: float, by: Point
) -> None:
    here = on(driver, rest, full, heel)
    assume(np.isfinite(here.rest.knee_angle) and here.rest.knee_angle < 3.0)
    there = on(shifted(driver, by), rest + by, full + by, heel + by.z)
    assume(bool(here.lifts) == bool(there.lifts))
    for name in ("knee_angle", "ankle_angle", "hip_angle", "sole_angle"):
        one, other = getattr(here.rest, name), getattr(there.rest, name)
        assert float(one) == pytest.approx(float(other), abs=1e-6)
    for name in ("knee", "ankle", "heel", "ball", "toe"):
        moved = getattr(here.rest, name) + by
        assert length(moved, getattr(there.rest, name)) == pytest.approx(0.0, abs=1e-5)


@given(driver=drivers(), rest=PADS, full=PADS, heel=HEELS)
def test_the_other_hand_of_drive_mirrors_the_leg(
    driver: Driver, rest: Point, full: Point, heel: float
) -> None:
    here = on(driver, rest, full, heel)
    mirror = replace(driver, hip=driver.hip.mirrored())
    there = on(mirror, rest.mirrored(), full.mirrored(), heel, side=-1.0)
    same(here.rest, there.rest, mirrored=True)
    same(here.full, there.full, mirrored=True)


def same(one: Posture, other: Posture, *, mirrored: bool = False) -> None:
    seen = one
    if mirrored:
        points = ("hip", "knee", "ankle", "heel", "ball", "toe")
        seen = replace(one, **{name: getattr(one, name).mirrored() for name in points})

    def agree(first: float, second: float) -> float:
        assert float(first) == pytest.approx(float(second), rel=1e-9, abs=1e-9, nan_ok=True)
        return first

    over(agree, seen, other)


# -- batches ------------------------------------------------------------------------------


def variants() -> list[Driver]:
    """One who reaches, a short one, one who was measured, one far off, one whose heel must lift."""
    person = Person(stature=1700.0)
    hip = Point(1020.0, 10.0, 140.0)
    return [
        Driver(name="D", person=person, hip=hip, trunk=0.4),
        Driver(name="D", person=replace(person, stature=1480.0), hip=hip, trunk=0.4),
        Driver(name="D", person=replace(person, thigh=440.0), hip=hip, trunk=0.5),
        Driver(name="D", person=person, hip=replace(hip, x=1900.0), trunk=0.4),
        Driver(name="D", person=replace(person, heel_to_ball=150.0), hip=hip, trunk=0.4),
    ]


REST, FULL = Point(210.0, 20.0, 165.0), Point(130.0, 20.0, 150.0)


@pytest.mark.parametrize("heel", ["slides", "may lift"])
def test_a_batch_of_drivers_equals_its_singles(heel: Heel) -> None:
    rows = variants()
    together = on(stack(rows), REST, FULL, 0.0, heel=heel)
    for i, row in enumerate(rows):
        equal_seated(pick(together, i), on(row, REST, FULL, 0.0, heel=heel))
    assert np.isnan(together.full.knee_angle).tolist() == [False, True, False, True, False]
    assert bool(together.lifts[4])


def test_a_batch_on_the_accelerator_equals_its_singles() -> None:
    rows = variants()
    together = on(stack(rows), REST, FULL, 0.0, heel="stays", rounding=8.0)
    for i, row in enumerate(rows):
        equal_seated(pick(together, i), on(row, REST, FULL, 0.0, heel="stays", rounding=8.0))


def equal_seated(one: Seated, other: Seated) -> None:
    same(one.rest, other.rest)
    same(one.full, other.full)
    for name in ("lift_rest", "lift_full", "pad_above_heel", "slide", "tilt", "heel_if_flush"):
        assert float(getattr(one, name)) == pytest.approx(
            float(getattr(other, name)), nan_ok=True, abs=1e-9
        )


def test_stations_stand_in_front_of_variants() -> None:
    arcs = np.linspace(0.0, 1.0, 7)[:, np.newaxis]
    ball = REST + (FULL - REST) * arcs
    crowd = stack(variants())
    stroke = heel_on_floor(body(crowd.person), crowd.hip, crowd.trunk, ball, 0.0)
    assert np.shape(stroke.knee_angle) == (7, 5)
    aside = HIP_JOINTS_APART / 2
    ends = on(shifted(crowd, Point(0.0, -aside, 0.0)), REST, FULL, 0.0)
    assert stroke.knee_angle[-1, :4] == pytest.approx(ends.full.knee_angle[:4], nan_ok=True)


# -- what must grow -----------------------------------------------------------------------


@given(driver=drivers(), pad=PADS, heel=HEELS, back=numbers(1.0, 60.0))
def test_a_seat_moved_back_opens_the_knee(
    driver: Driver, pad: Point, heel: float, back: float
) -> None:
    near = on(driver, pad, pad, heel).rest
    far = on(shifted(driver, Point(back, 0.0, 0.0)), pad, pad, heel).rest
    assume(np.isfinite(near.knee_angle) and np.isfinite(far.knee_angle))
    assume(near.ankle.x < near.hip.x)
    assert float(far.knee_angle) > float(near.knee_angle)


@given(driver=drivers(), pad=PADS, heel=HEELS)
def test_out_of_reach_says_by_how_much(driver: Driver, pad: Point, heel: float) -> None:
    """Bringing the seat forward along the leg by the shortfall just closes the gap."""
    lengths = body(driver.person)
    away = shifted(driver, Point(700.0, 0.0, 0.0))
    far = heel_on_floor(lengths, away.hip, away.trunk, pad, heel)
    assume(np.isfinite(far.sole_angle))
    assert np.isnan(far.knee_angle) == (float(far.shortfall) > 0.0)
    assume(float(far.shortfall) > 1.0)
    along = (far.ankle - far.hip).unit()
    closer = away.hip + along * (far.shortfall + 1e-6)
    near = sole_at(lengths, closer, away.trunk, far.heel, far.sole_angle)
    assert float(near.knee_angle) == pytest.approx(np.pi, abs=1e-3)


@given(driver=drivers(), pad=PADS, heel=HEELS, push=numbers(50, 900), turn=numbers(-0.3, 0.6))
def test_a_push_at_the_ball_balances_over_the_leg(
    driver: Driver, pad: Point, heel: float, push: float, turn: float
) -> None:
    """From joint to joint the moment changes by force times the bone between them."""
    posture = on(driver, pad, pad, heel).rest
    assume(np.isfinite(posture.knee_angle))
    found = joint_moments(posture, push, turn)
    bone = posture.ankle - posture.knee
    carried = bone.x * push * np.sin(turn) - bone.z * push * np.cos(turn)
    assert float(found.knee - found.ankle) == pytest.approx(float(carried), rel=1e-9, abs=1e-6)
