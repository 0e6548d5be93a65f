"""Reservoirs and residual valves: for each limit, one car that breaks only that one."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.core.checks import Finding, Limit
from pedalwright.hydraulics import (
    Demand,
    Feed,
    Reservoirs,
    ResidualValves,
    Tandem,
    check_feed,
    check_reservoirs,
    check_residual,
    feed_losses,
    limits,
    strokes,
)

HIGH = Reservoirs(front=80e3, rear=40e3, height=150.0)
#: C20: eight and four pistons of 38.1 with 8.5 mm of wear each.
NEEDED = (77.53e3, 38.76e3)
NONE = (0.0, 0.0)


def broken(
    reservoirs: Reservoirs,
    needed: tuple[float | None, float | None] = NEEDED,
    held: tuple[float, float] = NONE,
) -> set[tuple[str, str]]:
    found = check_reservoirs(reservoirs, needed, held)
    return {(f.limit.code, f.about) for f in found if not f.ok}


def test_a_high_and_full_reservoir_breaks_none() -> None:
    assert broken(HIGH) == set()


def test_each_circuit_needs_its_own_fluid() -> None:
    small = replace(HIGH, rear=38e3)
    assert broken(small) == {("hydraulics.reservoir", "rear circuit")}
    assert broken(small, (77.53e3, None)) == set()


def test_a_low_reservoir_drains_back_unless_a_valve_holds_it() -> None:
    low = replace(HIGH, height=-180.0)
    assert broken(low) == {
        ("hydraulics.drain_back", "front circuit"),
        ("hydraulics.drain_back", "rear circuit"),
    }
    two_psi = 2.0 * 0.0068947573
    assert broken(low, held=(two_psi, 0.0)) == {("hydraulics.drain_back", "rear circuit")}
    assert broken(low, held=(two_psi, two_psi)) == set()


def test_c19_two_psi_hold_1326_mm() -> None:
    """The level with the valve is what it holds above the wheel cylinders, less the drop."""
    found = list(check_reservoirs(replace(HIGH, height=-1000.0), NEEDED, (0.01379, 0.0)))
    level = next(f for f in found if f.limit.code == "hydraulics.drain_back")
    assert level.value == pytest.approx(326.0, abs=1.0)


#: A hose of 8 mm, half a metre long, to a cylinder of 20.64.
FEED = Feed(bore=8.0, length=500.0, above_port=120.0)
TANDEM = Tandem(bore=20.64, stroke=36.0)


def hose(feed: Feed) -> list[Finding]:
    moved = strokes(TANDEM, Demand(front=3500.0, rear=2000.0), dead_stroke=1.5)
    return list(check_feed(feed, feed_losses(feed, TANDEM, moved)))


def test_a_remote_reservoirs_hose_by_hand() -> None:
    """In metres and seconds: 0.0636 Pa s, the front piston's volume in 0.3 s, 8 mm of bore."""
    area = np.pi / 4 * 20.64e-3**2
    flow = area * (3500e-9 / area + 0.75e-3) / 0.3
    lost = 128 * 60e-6 * 1060.0 * 0.5 * flow / (np.pi * 0.008**4)
    front = next(found for found in hose(FEED) if found.about == "front circuit")
    assert front.value == pytest.approx(lost / 1e6, rel=1e-9)


@pytest.mark.parametrize(
    ("feed", "broken"),
    [
        (FEED, set()),
        (replace(FEED, above_port=10.0), {"hydraulics.above_port"}),
        (replace(FEED, bore=4.0), {"hydraulics.feed"}),
    ],
)
def test_one_hose_breaks_only_this_one(feed: Feed, broken: set[str]) -> None:
    assert {found.limit.code for found in hose(feed) if not found.ok} == broken


def test_a_drums_valve_before_discs_drags() -> None:
    ten_psi = 0.068947573
    valves = ResidualValves(front=0.0137895, rear=ten_psi)
    assert [f.ok for f in check_residual(valves, (True, True))] == [True, False]
    assert [f.ok for f in check_residual(valves, (True, False))] == [True]


def test_each_limit_of_the_room_is_tried_in_these_tests() -> None:
    known = {limit.code for limit in vars(limits).values() if isinstance(limit, Limit)}
    tried = {"stroke", "bar_square", "bar_tilt", "bar_end_float"}
    tried |= {"reservoir", "drain_back", "residual_drag", "feed", "above_port"}
    assert known == {f"hydraulics.{code}" for code in tried}
