"""Stops, rod ends and return springs: sums by hand, and one design that breaks only one limit."""

from collections.abc import Iterable
from dataclasses import replace

import numpy as np
import pytest

from pedalwright.core.checks import Finding
from pedalwright.core.points import Point
from pedalwright.linkage import (
    Pedal,
    RestStop,
    ReturnSpring,
    RodEnd,
    RodEnds,
    Stop,
    check_made_rod,
    check_rest_stop,
    check_rod_ends,
    check_spring,
    check_stop,
    lever,
    rod_reach,
    sprung,
)

PEDAL = lever(
    Pedal(
        hinge="hanging",
        pivot=Point(120.0, 0.0, 350.0),
        pad_radius=272.0,
        pad_lean=0.0,
        pad_offset=0.0,
        pad_width=60.0,
        pin_radius=54.5,
    )
)
#: The arm hangs straight down; the spring pulls it rearward, level, 100 under the pivot.
SPRING = ReturnSpring(
    eye=Point(120.0, 0.0, 250.0),
    anchor=Point(220.0, 0.0, 250.0),
    free_length=80.0,
    rate=2.0,
    initial_tension=5.0,
    wire=2.0,
    coil=14.0,
)


def failing(findings: Iterable[Finding]) -> set[str]:
    return {found.limit.code for found in findings if not found.ok}


# -- springs ----------------------------------------------------------------------------


def test_a_spring_at_rest_by_hand() -> None:
    """20 longer than unloaded: 5 + 2 x 20 = 45 N, 100 off the pivot, 272 to the pad."""
    here = sprung(SPRING, PEDAL, 0.3)
    assert np.asarray(here.length)[0] == pytest.approx(100.0)
    assert np.asarray(here.pull)[0] == pytest.approx(45.0)
    assert np.asarray(here.on_pad)[0] == pytest.approx(45.0 * 100.0 / 272.0)


def test_the_stress_of_its_wire_by_hand() -> None:
    """Coil index 7: Wahl's factor 27/24 + 0.615/7 = 1.2129; tau = k 8 F D / (pi d^3)."""
    here = sprung(SPRING, PEDAL, 0.0)
    wanted = 1.212857 * 8.0 * 45.0 * 14.0 / (np.pi * 8.0)
    assert np.asarray(here.stress)[0] == pytest.approx(wanted, rel=1e-6)


def test_the_work_of_the_foot_is_what_the_spring_stores() -> None:
    here = sprung(SPRING, PEDAL, 0.4)
    arc = np.linspace(0.0, 0.4 * 272.0, 25)
    done = np.trapezoid(np.asarray(here.on_pad), arc)
    stretch = np.asarray(here.length) - 80.0
    stored = 5.0 * (stretch[-1] - stretch[0]) + (stretch[-1] ** 2 - stretch[0] ** 2)
    assert done == pytest.approx(stored, rel=1e-4)


def test_a_slack_spring_pulls_nothing() -> None:
    here = sprung(replace(SPRING, free_length=101.0), PEDAL, 0.0)
    assert np.asarray(here.pull)[0] == 0.0


def test_without_its_free_length_nothing_is_said() -> None:
    unknown = sprung(replace(SPRING, free_length=np.nan), PEDAL, 0.3)
    found = list(check_spring(unknown, "clutch"))
    assert len(found) == 2
    assert not any(f.ok or f.judged for f in found)


def test_a_spring_that_is_neither_weak_nor_tired() -> None:
    assert failing(check_spring(sprung(SPRING, PEDAL, 0.3), "clutch")) == set()


@pytest.mark.parametrize(
    ("code", "spring"),
    [
        ("linkage.spring_return", replace(SPRING, rate=0.3)),
        ("linkage.spring_stress", replace(SPRING, rate=12.0)),
    ],
)
def test_one_spring_breaks_only_this_one(code: str, spring: ReturnSpring) -> None:
    assert failing(check_spring(sprung(spring, PEDAL, 0.3), "clutch")) == {code}


def test_a_spring_past_its_dead_centre_pushes_the_pedal_down() -> None:
    """Anchor above the pivot: once the eye is past the line it pulls the other way."""
    over = replace(SPRING, anchor=Point(125.0, 0.0, 450.0), free_length=150.0)
    here = np.asarray(sprung(over, PEDAL, -0.2).on_pad)
    assert here[0] > 0.0
    found = sprung(replace(over, anchor=Point(115.0, 0.0, 450.0)), PEDAL, 0.3)
    assert np.all(np.asarray(found.on_pad) < 0.0)
    assert "linkage.spring_return" in failing(check_spring(found, "clutch"))


# -- rod ends ---------------------------------------------------------------------------

END = RodEnd(thread=8.0, pitch=1.25, engaged=14.0, depth=20.0, bare=12.0)
ENDS = RodEnds(pedal=END, cylinder=END, take_up=6.0)


def test_both_ends_reach_together() -> None:
    """Out 14 - 8 = 6 at each end; in the lesser of 20 - 14 = 6 and 12 - 6.4 = 5.6."""
    reach = rod_reach(ENDS)
    assert reach.longer == pytest.approx(12.0)
    assert reach.shorter == pytest.approx(11.2)
    assert reach.turns == pytest.approx(11.2 / 1.25)
    assert rod_reach(replace(ENDS, cylinder=None)).longer == pytest.approx(6.0)


def test_ends_with_thread_and_room_break_none() -> None:
    assert failing(check_rod_ends(ENDS, "brake")) == set()


@pytest.mark.parametrize(
    ("code", "ends"),
    [
        ("linkage.thread_left", replace(ENDS, pedal=replace(END, engaged=7.5, depth=30.0))),
        ("linkage.lock_nut", replace(ENDS, pedal=replace(END, bare=6.0), take_up=4.0)),
        ("linkage.adjuster_reach", replace(ENDS, take_up=11.5)),
    ],
)
def test_one_rod_breaks_only_this_one(code: str, ends: RodEnds) -> None:
    if code == "linkage.thread_left":
        ends = replace(ends, take_up=5.0)
    assert failing(check_rod_ends(ends, "brake")) == {code}


# -- a rod that is there already --------------------------------------------------------


@pytest.mark.parametrize(
    ("wanted", "ends", "ok"),
    [
        (100.4, None, True),
        (100.6, None, False),
        (111.9, ENDS, True),
        (112.1, ENDS, False),
        (88.9, ENDS, True),
        (88.7, ENDS, False),
    ],
)
def test_a_made_rod_of_100_reaches(wanted: float, ends: RodEnds | None, ok: bool) -> None:
    """Its two ends can be screwed out by 12.0 and in by 11.2 together."""
    assert failing(check_made_rod(wanted, 100.0, ends, "brake")) == (
        set() if ok else {"linkage.rod_fits"}
    )


# -- rest stops -------------------------------------------------------------------------

REST = RestStop(arm=136.0, screw=END)


def test_a_rest_stop_moves_the_pad_by_the_lever_of_its_screw() -> None:
    """5.6 in, at half the pad's radius: 11.2 at the pad."""
    assert failing(check_rest_stop(REST, 272.0, "brake")) == set()
    reach = next(
        found.value
        for found in check_rest_stop(REST, 272.0, "brake")
        if found.limit.code == "linkage.rest_reach"
    )
    assert reach == pytest.approx(11.2)


def test_one_rest_stop_breaks_only_its_reach() -> None:
    assert failing(check_rest_stop(replace(REST, arm=310.0), 272.0, "brake")) == {
        "linkage.rest_reach"
    }


def test_a_rest_stop_is_a_thread_like_any_other() -> None:
    """What is short of thread cannot be screwed either."""
    short = replace(REST, screw=replace(END, engaged=7.5))
    bare = replace(REST, screw=replace(END, bare=6.0))
    assert failing(check_rest_stop(short, 272.0, "brake")) == {
        "linkage.thread_left",
        "linkage.rest_reach",
    }
    assert failing(check_rest_stop(bare, 272.0, "brake")) == {
        "linkage.lock_nut",
        "linkage.rest_reach",
    }


# -- stops ------------------------------------------------------------------------------


def stopped(at: float, **more: float) -> set[str]:
    facts = {"needed": 135.0, "room": 150.0, "piston": 28.0, "stroke": 33.0, **more}
    return failing(check_stop(Stop(full_travel=at), "clutch", **facts))


def test_a_stop_between_work_and_wall_breaks_none() -> None:
    assert stopped(142.0) == set()


@pytest.mark.parametrize(
    ("code", "at", "more"),
    [
        ("linkage.stop_after_work", 134.0, {}),
        ("linkage.stop_before_wall", 151.0, {}),
        ("linkage.stop_saves_piston", 142.0, {"piston": 33.5}),
    ],
)
def test_one_stop_breaks_only_this_one(code: str, at: float, more: dict[str, float]) -> None:
    assert stopped(at, **more) == {code}


def test_a_brakes_stop_is_not_asked_about_a_piston() -> None:
    found = list(check_stop(Stop(full_travel=80.0), "brake", needed=74.0, room=147.0))
    assert {f.limit.code for f in found} == {"linkage.stop_after_work", "linkage.stop_before_wall"}
    assert all(f.ok for f in found)
