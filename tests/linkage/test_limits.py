"""For each limit of levers and rods, one design that breaks only that one."""

import numpy as np
import pytest

from pedalwright.core.points import REARWARD, Point
from pedalwright.linkage import Pedal, Position, Rod, check, lever, sweep

PEDAL = Pedal(
    hinge="hanging",
    pivot=Point(120.0, 0.0, 350.0),
    pad_radius=272.0,
    pad_lean=0.0,
    pad_offset=0.0,
    pad_width=60.0,
    pin_radius=54.5,
)
LEVER = lever(PEDAL)
GOOD = Rod(socket=LEVER.pin + Point(-120.0, 0.0, 2.0), direction=-REARWARD)


def broken(stroke: Position) -> set[str]:
    return {found.limit.code for found in check(stroke, "brake") if not found.ok}


def test_a_good_linkage_breaks_none() -> None:
    assert broken(sweep(LEVER, GOOD, 0.35)) == set()


#: Level pin and socket 14 mm apart in height: 6.7 degrees.
SLANTING = Rod(socket=LEVER.pin + Point(-120.0, 0.0, 14.0), direction=-REARWARD)
#: A cylinder 31 degrees from the arm at rest; the stroke brings the two nearer.
ALONG = Point(-np.sin(np.radians(31.0)), 0.0, -np.cos(np.radians(31.0)))
NEAR_LINE = Rod(socket=LEVER.pin + ALONG * 120.0, direction=ALONG)


@pytest.mark.parametrize(
    ("code", "rod"), [("linkage.rod_angle", SLANTING), ("linkage.dead_point", NEAR_LINE)]
)
def test_one_design_breaks_only_this_one(code: str, rod: Rod) -> None:
    assert broken(sweep(LEVER, rod, 0.1)) == {code}


def test_a_linkage_that_locks_breaks_both_unjudged() -> None:
    stroke = sweep(LEVER, GOOD, 2.5)
    found = list(check(stroke, "brake"))
    dead = next(f for f in found if f.limit.code == "linkage.dead_point")
    assert np.isnan(dead.value)
    assert not dead.ok
    assert not dead.judged
    assert dead.about == "brake"


def test_each_variant_is_judged_by_its_own_stroke() -> None:
    stroke = sweep(LEVER, GOOD, np.array([0.2, 2.5]))
    dead = next(f for f in check(stroke, "brake") if f.limit.code == "linkage.dead_point")
    assert np.array_equal(dead.ok, [True, False])
