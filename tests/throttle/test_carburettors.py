"""Several carburettors, an engine that rocks, open area, and rods at the bench."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.core.batch import stack
from pedalwright.core.points import REARWARD, RIGHT, UP, Point
from pedalwright.throttle import (
    STATIONS,
    BallEnd,
    BallEnds,
    BallRod,
    Barrel,
    Cable,
    EngineRock,
    Follower,
    Opening,
    Spring,
    SquareRod,
    Throttle,
    check,
    respond,
)

PAD_RADIUS = 235.0
FIRST = SquareRod(driving_radius=90.0, driven_radius=34.0, rod_length=350.0)
SECOND = SquareRod(driving_radius=78.0, driven_radius=38.0, rod_length=450.0)
GOOD = Throttle(
    pad_room=55.0,
    stages=(FIRST, SECOND),
    full_opening=np.deg2rad(78.0),
    springs=(Spring(torque_closed=450.0, rate=60.0), Spring(torque_closed=450.0, rate=60.0)),
    friction=100.0,
)
ALIKE = Follower(
    driven_from="spindle",
    stage=SquareRod(driving_radius=30.0, driven_radius=30.0, rod_length=180.0),
)
#: A level rod between two upright levers of one length.
BALL = BallRod(
    driving_pivot=Point(0.0, 0.0, 0.0),
    driving_axis=RIGHT,
    driving_pin=Point(0.0, 0.0, 40.0),
    driven_pivot=Point(300.0, 0.0, 0.0),
    driven_axis=RIGHT,
    driven_pin=Point(300.0, 0.0, 40.0),
)
END = BallEnd(reach=14.0, thread=5.0, engaged=8.0, bare=9.0)
ENDS = BallEnds(driving=END, driven=END)


def with_followers(*followers: Follower) -> Throttle:
    return replace(GOOD, followers=followers)


def failed(throttle: Throttle) -> list[str]:
    return [f.limit.code for f in check(respond(throttle, PAD_RADIUS)) if not f.ok]


# -- equality


def test_a_parallel_rod_keeps_the_second_spindle_equal() -> None:
    """Equal levers and a rod as long as the axes are apart: a parallelogram."""
    result = respond(with_followers(ALIKE), PAD_RADIUS)
    np.testing.assert_allclose(result.follower_angles[0], result.spindle_angle, atol=1e-12)
    assert result.unequal == pytest.approx(0.0, abs=1e-12)
    assert failed(with_followers(ALIKE)) == []


def test_one_cross_shaft_turns_two_alike() -> None:
    twin = Follower(driven_from="cross-shaft", stage=SECOND)
    assert respond(with_followers(twin), PAD_RADIUS).unequal == pytest.approx(0.0, abs=1e-12)


def test_with_one_stage_the_cross_shaft_is_the_pedals() -> None:
    cable = Cable(driving_radius=120.0, driven_radius=20.0, slack=0.0)
    single = replace(GOOD, stages=(cable,), full_opening=np.deg2rad(75.0))
    second = Follower(driven_from="cross-shaft", stage=replace(cable, driven_radius=24.0))
    result = respond(replace(single, followers=(second,)), PAD_RADIUS)
    pedal = np.asarray(result.pad_travel) / PAD_RADIUS
    np.testing.assert_allclose(result.follower_angles[0], pedal * 5.0, rtol=1e-12)
    assert result.unequal == pytest.approx(
        np.max(np.minimum(pedal * 6.0, np.deg2rad(75.0)) - pedal * 5.0)
    )


def test_the_worst_of_several_counts() -> None:
    off = replace(ALIKE, stage=SquareRod(driving_radius=30.0, driven_radius=30.6, rod_length=180.0))
    both = respond(with_followers(ALIKE, off), PAD_RADIUS).unequal
    assert both == respond(with_followers(off), PAD_RADIUS).unequal
    assert both is not None
    assert both > np.deg2rad(0.5)


def test_unequal_levers_break_this_limit_only() -> None:
    off = replace(ALIKE, stage=SquareRod(driving_radius=30.0, driven_radius=31.5, rod_length=180.0))
    assert failed(with_followers(off)) == ["throttle.equal"]


def test_a_follower_that_locks_is_not_ok() -> None:
    """Its lever is so short that the rod pulls it into line."""
    short = replace(
        ALIKE, stage=SquareRod(driving_radius=60.0, driven_radius=8.0, rod_length=180.0)
    )
    (found,) = (
        f
        for f in check(respond(with_followers(short), PAD_RADIUS))
        if f.limit.code == "throttle.equal"
    )
    assert not found.ok


# -- rock


def rocked(stage: BallRod | SquareRod | Cable, direction: Point, pad_room: float = 1e-6) -> float:
    """Degrees of the spindle at rest for 10 mm either way."""
    one = replace(GOOD, stages=(stage,), rock=EngineRock(direction=direction), pad_room=pad_room)
    turn = respond(one, PAD_RADIUS).rock_turn
    assert turn is not None
    return float(np.rad2deg(turn))


def test_along_the_rod_the_lever_swings_by_the_movement() -> None:
    """With the pin back at its place in the car the spindle's centre is 10 mm off: solved by
    the two circles, about the driving pin and about the moved spindle, in plain coordinates.
    """
    apart, radius, length = 310.0, 40.0, 300.0  # spindle at (310, 0), pin circle 40, rod 300
    base = np.hypot(apart, -radius)  # from the driving pin at (0, 40)
    at_spindle = np.arccos((base**2 + radius**2 - length**2) / (2 * base * radius))
    line = np.arctan2(radius, -apart)  # direction from spindle to the driving pin
    pin = line - at_spindle
    swing = np.abs(np.rad2deg(np.pi / 2 - pin))
    other_apart = 290.0
    base = np.hypot(other_apart, -radius)
    at_spindle = np.arccos((base**2 + radius**2 - length**2) / (2 * base * radius))
    swing_back = np.abs(np.rad2deg(np.pi / 2 - (np.arctan2(radius, -other_apart) - at_spindle)))
    expected = max(swing, swing_back)
    assert expected == pytest.approx(np.rad2deg(10.0 / 40.0), rel=0.05)
    assert rocked(BALL, REARWARD) == pytest.approx(expected, rel=1e-5)
    assert rocked(BALL, -REARWARD * 3.0) == pytest.approx(expected, rel=1e-5)


def test_across_the_rod_an_engine_may_rock() -> None:
    """Sideways and up the rod only tilts: 10 mm in 300 shorten it by 10^2 / 600 = 1/6 mm."""
    assert rocked(BALL, RIGHT) == pytest.approx(np.rad2deg(10.0**2 / 600.0 / 40.0), rel=0.01)
    assert rocked(BALL, UP) == pytest.approx(np.rad2deg(10.0**2 / 600.0 / 40.0), rel=0.1)


def test_a_cable_does_not_feel_it() -> None:
    cable = Cable(driving_radius=120.0, driven_radius=20.0, slack=0.0)
    assert rocked(cable, REARWARD) == 0.0


def test_a_square_rod_is_moved_along_itself() -> None:
    """At mid-travel it stands as the ball rod does, over a stroke of nothing."""
    square = SquareRod(driving_radius=40.0, driven_radius=40.0, rod_length=300.0)
    assert rocked(square, UP) == pytest.approx(rocked(BALL, REARWARD), rel=1e-6)


def test_rock_breaks_this_limit_only() -> None:
    assert failed(replace(GOOD, rock=EngineRock(direction=REARWARD))) == ["throttle.rock"]
    assert failed(replace(GOOD, stages=cable_to(78.5), rock=EngineRock(direction=UP))) == []


def test_a_car_mirrored_to_the_other_hand_rocks_alike() -> None:
    slanting = replace(
        BALL, driven_pivot=Point(300.0, 30.0, 5.0), driven_pin=Point(296.0, 30.0, 45.0)
    )
    mirrored = replace(
        slanting,
        driven_pivot=slanting.driven_pivot.mirrored(),
        driven_pin=slanting.driven_pin.mirrored(),
    )
    way = Point(0.3, 0.8, 0.5)
    assert rocked(slanting, way) == pytest.approx(rocked(mirrored, way.mirrored()), rel=1e-12)
    assert rocked(slanting, way) != pytest.approx(rocked(slanting, way.mirrored()), rel=1e-3)


def cable_to(opening: float) -> tuple[Cable]:
    turn = GOOD.pad_room / PAD_RADIUS
    return (Cable(driving_radius=np.deg2rad(opening) * 32.0 / turn, driven_radius=32.0, slack=0.0),)


# -- open area


def test_the_bore_opens_as_plate_and_shaft_let_it() -> None:
    """Area beside the shaft and past the plate, summed strip by strip over the bore."""
    barrel = Barrel(bore=40.0, shaft=8.0, closed=np.deg2rad(5.0))
    result = respond(replace(GOOD, stages=cable_to(78.0), barrel=barrel), PAD_RADIUS)
    assert result.open_share is not None
    assert result.open_at_half == np.asarray(result.open_share)[STATIONS // 2]
    y = (np.arange(200_000) + 0.5) / 200_000 * 20.0
    half = np.sqrt(20.0**2 - y**2)
    for station in range(0, STATIONS, 6):
        psi = np.deg2rad(5.0 + 78.0 * station / (STATIONS - 1))
        shadow = np.maximum(half * np.cos(psi) / np.cos(np.deg2rad(5.0)), np.minimum(4.0, half))
        share = 4 * np.mean(half - shadow) * 20.0 / (np.pi * 400.0)
        assert np.asarray(result.open_share)[station] == pytest.approx(share, abs=2e-6)


def test_once_the_shaft_hides_the_plate_the_share_stays_even_past_square() -> None:
    barrel = Barrel(bore=40.0, shaft=8.0, closed=np.deg2rad(5.0))
    turned = replace(GOOD, stages=cable_to(100.0), full_opening=np.deg2rad(100.0), barrel=barrel)
    share = np.asarray(respond(turned, PAD_RADIUS).open_share)
    assert np.all(np.diff(share) >= 0.0)
    assert share[-1] == share[-5]
    # 1 - (2/pi)(asin a + a sqrt(1 - a^2)) with a = 0.2
    assert share[-1] == pytest.approx(1 - 2 / np.pi * (np.arcsin(0.2) + 0.2 * np.sqrt(0.96)))


# -- cut rods


def test_a_rod_is_cut_by_its_joints() -> None:
    stages = (replace(FIRST, ends=ENDS), SECOND)
    follower = replace(ALIKE, stage=replace(BALL, ends=ENDS))
    result = respond(replace(GOOD, stages=stages, followers=(follower,)), PAD_RADIUS)
    assert [(rod.about, rod.length, rod.cut) for rod in result.rods] == [
        ("stage 1", 350.0, 350.0 - 28.0 + 16.0),
        ("follower 1", 300.0, 300.0 - 28.0 + 16.0),
    ]


@pytest.mark.parametrize(
    ("code", "end"),
    [
        ("throttle.thread_in", replace(END, engaged=4.9)),
        ("throttle.thread_left", replace(END, bare=4.9)),
    ],
)
def test_too_little_thread_breaks_this_limit_only(code: str, end: BallEnd) -> None:
    def ended(ends: BallEnds) -> Throttle:
        return replace(GOOD, stages=(FIRST, replace(SECOND, ends=ends)))

    assert failed(ended(ENDS)) == []
    assert failed(ended(replace(ENDS, driven=end))) == [code]
    (found,) = (f for f in check(respond(ended(replace(ENDS, driven=end)), 235.0)) if not f.ok)
    assert found.about == "stage 2, driven end"


# -- batches


def test_a_batch_is_its_singles() -> None:
    def car(radius: float) -> Throttle:
        off = replace(
            ALIKE, stage=SquareRod(driving_radius=30.0, driven_radius=radius, rod_length=180.0)
        )
        return replace(
            with_followers(off, ALIKE),
            rock=EngineRock(direction=REARWARD),
            barrel=Barrel(bore=radius + 10.0, shaft=8.0, closed=0.1),
            full_opening=radius / 23.0,
        )

    rows = [car(radius) for radius in (29.0, 30.5, 32.0)]
    batch = respond(stack(rows), PAD_RADIUS)
    for i, row in enumerate(rows):
        single = respond(row, PAD_RADIUS)
        for name in ("unequal", "rock_turn", "open_share", "open_at_half"):
            one, some = getattr(single, name), getattr(batch, name)
            np.testing.assert_allclose(
                np.broadcast_to(some, (*np.shape(one), 3))[..., i], one, rtol=1e-12, err_msg=name
            )


def test_nothing_is_said_about_what_is_not_there() -> None:
    result: Opening = respond(GOOD, PAD_RADIUS)
    assert (result.unequal, result.rock_turn, result.open_share) == (None, None, None)
    assert result.follower_angles == result.rods == ()
