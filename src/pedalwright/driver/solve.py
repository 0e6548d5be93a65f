"""From a driver and a pedal's stroke to the leg at rest and at full travel."""

import numpy as np

from pedalwright.core.batch import over
from pedalwright.core.points import Point
from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import Num, Truth, mm
from pedalwright.core.working import subject
from pedalwright.driver.body import body
from pedalwright.driver.feet import heel_fixed_on_pad
from pedalwright.driver.formulas.foot import heel_behind_ball, sole_angle
from pedalwright.driver.legs import heel_lifted, heel_on_floor
from pedalwright.driver.limits import LEAST_ANKLE
from pedalwright.driver.parts import Body, Driver, Posture, Seated

#: Ankle that a driver holds when the heel is off the floor (ours: the middle of the bands).
HELD_ANKLE = np.deg2rad(90.0)


@no_answer_is_nan
def place(
    driver: Driver,
    rest: Point,
    full: Point,
    heel_height: mm,
    *,
    heel_may_lift: bool = False,
    lengths: Body | None = None,
) -> Seated:
    """The leg on a brake or clutch pedal whose pad centre goes from `rest` to `full`.

    The heel stays on its rest and slides with the pad. Where the pad is higher above the heel
    than the sole is long the heel has to lift, with the ankle held at 90 degrees; a clutch,
    which is worked with the whole leg, may also be reached for in this way when the ankle
    would have to bend too far, or the leg is too short with the heel down. `lengths` saves
    measuring the driver anew for every pedal.
    """
    lengths = lengths or body(driver.person)
    with subject("rest"):
        at_rest = _heel_down_or_lifted(lengths, driver, rest, heel_height, heel_may_lift)
    with subject("full travel"):
        at_full = _heel_down_or_lifted(lengths, driver, full, heel_height, heel_may_lift)
    return _seated(lengths, heel_height, at_rest, at_full, (rest, full), 0.0, heel_may_lift)


@no_answer_is_nan
def place_on_accelerator(
    driver: Driver,
    rest: Point,
    full: Point,
    heel_height: mm,
    *,
    rounding: mm = 0.0,
    lengths: Body | None = None,
) -> Seated:
    """The leg on the accelerator: the heel stays where it is at rest and the sole slides.

    At rest the ball of the foot touches the pad, which is round with radius `rounding` about
    its centre. A pad that is too high for the heel is treated as in `place`.
    """
    lengths = lengths or body(driver.person)
    chord = np.hypot(lengths.heel_to_ball, rounding)
    rise = rest.z - heel_height
    with subject("rest"):
        behind = heel_behind_ball(chord, sole_angle(rise, chord))
        heel = Point(rest.x + behind, rest.y, heel_height)
        resting = heel_fixed_on_pad(lengths, driver.hip, driver.trunk, heel, rest, rounding)
    with subject("full travel"):
        pressed = heel_fixed_on_pad(lengths, driver.hip, driver.trunk, heel, full, rounding)
    at_rest, at_full = resting.posture, pressed.posture
    too_high = rise > chord
    if np.any(too_high):
        at_rest = _either(too_high, _lifted(lengths, driver, rest), at_rest)
        at_full = _either(too_high, _lifted(lengths, driver, full), at_full)
    slide = np.where(too_high, 0.0, pressed.along_sole - resting.along_sole)
    return _seated(lengths, heel_height, at_rest, at_full, (rest, full), slide, False)


def _heel_down_or_lifted(
    lengths: Body, driver: Driver, ball: Point, heel_height: mm, heel_may_lift: bool
) -> Posture:
    down = heel_on_floor(lengths, driver.hip, driver.trunk, ball, heel_height)
    lifts = ball.z - heel_height > lengths.heel_to_ball
    if heel_may_lift:
        held = down.ankle_angle >= LEAST_ANKLE  # not so where the leg is too short, either
        lifts = np.logical_or(lifts, np.logical_not(held))
    if not np.any(lifts):
        return down
    return _either(lifts, _lifted(lengths, driver, ball), down)


def _lifted(lengths: Body, driver: Driver, ball: Point) -> Posture:
    return heel_lifted(lengths, driver.hip, driver.trunk, ball, HELD_ANKLE)


def _either(which: Truth, one: Posture, other: Posture) -> Posture:
    """One posture where `which` is true, the other elsewhere, variant by variant."""

    def choose(first: Num, second: Num) -> Num:
        return np.where(which, first, second)

    chosen: Posture = over(choose, one, other)
    return chosen


def _seated(
    lengths: Body,
    heel_height: mm,
    rest: Posture,
    full: Posture,
    pad: tuple[Point, Point],
    slide: mm,
    heel_may_lift: bool,
) -> Seated:
    return Seated(
        body=lengths,
        heel_height=heel_height,
        rest=rest,
        full=full,
        lift_rest=rest.heel.z - heel_height,
        lift_full=full.heel.z - heel_height,
        pad_above_heel=np.maximum(pad[0].z, pad[1].z) - heel_height,
        slide=slide,
        heel_may_lift=heel_may_lift,
    )
