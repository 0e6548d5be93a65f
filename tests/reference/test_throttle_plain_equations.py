"""Cases C28 to C32: butterfly, rod, springs, cable and stop of a throttle.

Strength: solved independently with plain equations and printed to the digits given here. The
open area was checked there by integrating strips of the bore; its form is that of Heywood,
eq. 7.18 (from memory, to verify). The rod is a planar four-bar by intersection of circles.
"""

from math import degrees, pi, radians

import pytest

from pedalwright.core.points import RIGHT, Point
from pedalwright.throttle import (
    BallRod,
    Cable,
    Opening,
    Spring,
    SquareRod,
    Throttle,
    Turn,
    respond,
    turned,
    turned_back,
)
from pedalwright.throttle.formulas import (
    hidden_from,
    largest_quadrant,
    lever_torque,
    open_share,
    open_share_with_shaft,
    pad_force,
    plate_width,
    rod_force,
    shaft_in_bore,
    shaft_on_plate,
    spring_torque,
    stop_torque,
)

CLOSED = radians(6.0)
SHAFT = 8.0 / 40.0


@pytest.mark.parametrize(
    ("psi", "thin", "with_shaft"),
    [
        (10, 0.00977, 0.00973),
        (20, 0.05513, 0.05492),
        (30, 0.12920, 0.12866),
        (45, 0.28900, 0.28731),
        (60, 0.49725, 0.49207),
        (75, 0.73976, 0.71350),
        (80, 0.82540, 0.74706),
        (86, 0.92986, 0.74706),
    ],
)
def test_c28_open_share_of_the_bore(psi: float, thin: float, with_shaft: float) -> None:
    plate = plate_width(radians(psi), CLOSED)
    assert open_share(plate) == pytest.approx(thin, abs=0.6e-5)
    past_both = open_share_with_shaft(shaft_in_bore(SHAFT), shaft_on_plate(SHAFT, plate))
    assert past_both == pytest.approx(with_shaft, abs=0.6e-5)


def test_c28_where_opening_further_gains_nothing() -> None:
    assert degrees(hidden_from(SHAFT, CLOSED)) == pytest.approx(78.527, abs=0.0006)
    most = open_share_with_shaft(shaft_in_bore(SHAFT), pi / 2.0)
    assert most == pytest.approx(0.74706, abs=0.6e-5)


def at(pivot: tuple[float, float], radius: float, angle: float) -> Point:
    """A pin in the plane (x, z), its angle from x towards z."""
    turn = Point(1.0, 0.0, 0.0).turned(-RIGHT, radians(angle))
    return Point(pivot[0], 0.0, pivot[1]) + turn * radius


FOUR_BAR = BallRod(
    driving_pivot=Point(0.0, 0.0, 0.0),
    driving_axis=-RIGHT,  # carries x towards z
    driving_pin=at((0.0, 0.0), 72.0, 75.0),
    driven_pivot=Point(310.0, 0.0, 60.0),
    driven_axis=-RIGHT,
    driven_pin=at((310.0, 60.0), 36.0, 50.0),
)


def test_c29_rod_length() -> None:
    length = (FOUR_BAR.driven_pin - FOUR_BAR.driving_pin).length()
    assert length == pytest.approx(315.022, abs=0.0006)


@pytest.mark.parametrize(
    ("pedal", "spindle"),
    [(5, 12.129), (10, 23.081), (15, 33.422), (20, 43.479), (25, 53.500), (30, 63.725)],
)
def test_c29_spindle_over_pedal(pedal: float, spindle: float) -> None:
    assert degrees(four_bar(pedal).angle) == pytest.approx(spindle, abs=0.0006)


def four_bar(pedal: float) -> Turn:
    return turned(FOUR_BAR, radians(pedal), 0.0)


def test_c29_gearing_at_rest_and_at_20_degrees() -> None:
    """The figure printed at rest, 2.604, is the mean over the first tenth of a degree."""
    assert degrees(four_bar(0.1).angle) / 0.1 == pytest.approx(2.604, abs=0.0006)
    assert four_bar(0.0).gearing == pytest.approx(2.604, abs=0.05)
    assert four_bar(20.0).gearing == pytest.approx(2.0002, abs=0.00006)


def test_c29_pedal_angle_that_opens_it_by_74_degrees() -> None:
    pedal = turned_back(FOUR_BAR, radians(74.0), 0.0)
    assert degrees(pedal) == pytest.approx(34.79, abs=0.006)


PER_DEGREE = 180.0 / pi  # N·m for each degree, as N·mm for each radian / 1000
FIRST = Spring(torque_closed=180.0, rate=2.2 * PER_DEGREE)
SECOND = Spring(torque_closed=150.0, rate=1.8 * PER_DEGREE)
FRICTION = 100.0


def geared(pad_room: float, springs: tuple[Spring, ...] = (FIRST, SECOND)) -> Opening:
    """A chain that gears the pedal up by 1.8 all the way."""
    throttle = Throttle(
        pad_room=pad_room,
        stages=(Cable(driving_radius=57.6, driven_radius=32.0, slack=0.0),),
        full_opening=radians(74.0),
        springs=springs,
        friction=FRICTION,
    )
    return respond(throttle, 190.0)


@pytest.mark.parametrize(
    ("opened", "both", "second_alone"),
    [(0, 330.0, 150.0), (40, 490.0, 222.0), (74, 626.0, 283.2)],
)
def test_c30_closing_torque(opened: float, both: float, second_alone: float) -> None:
    turn = radians(opened)
    first, second = (spring_torque(s.torque_closed, s.rate, turn) for s in (FIRST, SECOND))
    assert second == pytest.approx(second_alone, abs=0.06)
    assert first + second == pytest.approx(both, abs=0.06)


def test_c30_the_weaker_spring_alone() -> None:
    result = geared(200.0)
    assert result.one_spring_lost == pytest.approx(150.0, abs=1e-9)
    assert result.one_spring_lost / FRICTION == pytest.approx(1.5, rel=1e-12)


def test_c30_push_on_the_pad_at_full_opening() -> None:
    assert pad_force(626.0, FRICTION, 1.8, 190.0) == pytest.approx(6.878, abs=0.0006)
    assert geared(200.0).effort == pytest.approx(6.878, abs=0.0006)


STOP = radians(26.0)
FULL = radians(74.0)


def cable(slack: float) -> Cable:
    return Cable(driving_radius=60.0, driven_radius=32.0, slack=slack)


@pytest.mark.parametrize(
    ("pedal", "pull", "spindle"), [(10, 10.472, 18.75), (20, 20.944, 37.5), (26, 27.227, 48.75)]
)
def test_c31_cable_pulled_and_spindle_opened(pedal: float, pull: float, spindle: float) -> None:
    turn = turned(cable(0.0), radians(pedal), 0.0).angle
    assert degrees(turn) == pytest.approx(spindle, abs=0.006)
    assert 32.0 * turn == pytest.approx(pull, abs=0.0006)


def test_c31_pedal_and_pad_for_full_opening_with_slack() -> None:
    pedal = turned_back(cable(1.5), FULL, 0.0)
    assert degrees(pedal) == pytest.approx(40.899, abs=0.0006)
    throttle = Throttle(
        pad_room=190.0 * STOP,
        stages=(cable(1.5),),
        full_opening=FULL,
        springs=(FIRST, SECOND),
        friction=FRICTION,
    )
    result = respond(throttle, 190.0)
    assert result.pad_travel_full == pytest.approx(135.63, abs=0.006)
    assert degrees(result.at_stop) == pytest.approx(48.75 - degrees(1.5 / 32.0), abs=0.006)


def test_c31_the_quadrant_that_would_open_it_fully() -> None:
    quadrant = largest_quadrant(60.0, STOP, 1.5, FULL)
    assert quadrant == pytest.approx(19.92, abs=0.006)
    small = Cable(driving_radius=60.0, driven_radius=float(quadrant), slack=1.5)
    assert turned(small, STOP, 0.0).angle == pytest.approx(FULL, rel=1e-12)


def test_c32_no_pedal_stop() -> None:
    square = pi / 2.0
    rod = rod_force(300.0, 190.0, 72.0, square)
    assert rod == pytest.approx(791.67, abs=0.006)
    assert lever_torque(rod, 36.0, square) == pytest.approx(28500.0, abs=0.6)
    at_middle = turned(
        SquareRod(driving_radius=72.0, driven_radius=36.0, rod_length=300.0), 0.0, 0.0
    )
    assert stop_torque(300.0, 190.0, at_middle.gearing) == pytest.approx(28500.0, abs=0.6)
