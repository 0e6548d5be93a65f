"""Cases C01, C02, C03, C16: pedal levers, solved independently with plain equations.

Strength: other program. Each number was found outside this project in a short script (moment
arms and a finite difference for the ratio, moments and forces for the loads) and is printed
to the digits given here.
"""

import numpy as np
import pytest

from pedalwright.core.points import RIGHT, Point
from pedalwright.linkage import Lever, Position, Rod, forces_of, lever, parts, position
from pedalwright.structure.formulas.stiffness import (
    flange_give,
    pivot_force,
    pivot_share_between,
    spring_give,
)


def forward_and_up(x: float, y: float) -> Point:
    """The cases measure forward and up; the car measures rearward and up."""
    return Point(-x, 0.0, y)


LEVER = Lever(
    pivot=forward_and_up(0.0, 0.0),
    axis=RIGHT,
    pad=forward_and_up(-20.0, -290.0),
    pin=forward_and_up(6.0, -58.0),
)
ROD = Rod(socket=forward_and_up(136.0, -52.0), direction=forward_and_up(1.0, 0.0))


@pytest.mark.parametrize(
    ("degrees", "piston_travel", "ratio", "rod_angle"),
    [
        (0.0, 0.0, 4.9881, 2.643),
        (4.0, 4.056, 5.0240, 2.396),
        (8.0, 8.071, 5.0912, 2.026),
        (12.0, 12.019, 5.1941, 1.535),
        (16.0, 15.876, 5.3386, 0.924),
    ],
)
def test_c01_hanging_pedal_over_its_travel(
    degrees: float, piston_travel: float, ratio: float, rod_angle: float
) -> None:
    here = position(LEVER, ROD, np.radians(degrees))
    assert here.piston_travel == pytest.approx(piston_travel, abs=0.0006)
    assert here.ratio == pytest.approx(ratio, abs=0.00006)
    assert np.degrees(here.rod_angle) == pytest.approx(rod_angle, abs=0.0006)
    assert here.pad_travel == pytest.approx(np.hypot(20.0, 290.0) * np.radians(degrees))


def test_c02_inclined_foot_force() -> None:
    here = position(LEVER, ROD, np.radians(8.0))
    down = np.radians(15.0)
    foot = forward_and_up(np.cos(down), -np.sin(down)) * 500.0
    moment = RIGHT.dot((here.pad - LEVER.pivot).cross(foot))
    found = forces_of(LEVER, ROD, here, foot)
    assert moment == pytest.approx(137_381.0, abs=0.6)
    assert found.rod == pytest.approx(2407.6, abs=0.06)
    assert found.piston == pytest.approx(2406.1, abs=0.06)
    assert found.side == pytest.approx(85.1, abs=0.06)
    assert found.pivot_size == pytest.approx(1935.1, abs=0.06)


def square_pedal(pin_radius: float) -> Position:
    """A hanging pedal with its rod square to the arm at rest."""
    made = lever(
        parts.Pedal(
            hinge="hanging",
            pivot=Point(0.0, 0.0, 0.0),
            pad_radius=280.0,
            pad_lean=0.0,
            pad_offset=0.0,
            pad_width=60.0,
            pin_radius=pin_radius,
        )
    )
    rod = Rod(socket=made.pin + Point(-120.0, 0.0, 0.0), direction=Point(-1.0, 0.0, 0.0))
    return position(made, rod, 0.0)


@pytest.mark.parametrize(
    ("error", "ratio"), [(-2.0, 5.1852), (-1.0, 5.0909), (0.0, 5.0), (1.0, 4.9123), (2.0, 4.8276)]
)
def test_c03_hand_build_error_on_a_short_rod_arm(error: float, ratio: float) -> None:
    assert square_pedal(56.0 + error).ratio == pytest.approx(ratio, abs=0.00006)


def test_c03_a_millimetre_short_costs_pressure_and_travel_alike() -> None:
    change = square_pedal(55.0).ratio / square_pedal(56.0).ratio - 1.0
    assert 100.0 * change == pytest.approx(1.818, abs=0.0006)


def test_c16_give_of_flange_and_pivot_seen_at_the_pad() -> None:
    ratio = square_pedal(56.0).ratio
    pivot_share = pivot_share_between(ratio)
    flange = spring_give(500.0, ratio, 2000.0)
    pivot = spring_give(500.0, pivot_share, 8000.0)
    assert flange_give(500.0, ratio, 2000.0) == pytest.approx(1.25)
    assert flange == pytest.approx(6.25)
    assert pivot_force(500.0, pivot_share) == pytest.approx(2000.0)
    assert pivot == pytest.approx(1.0)
    assert 500.0 / (flange + pivot) == pytest.approx(68.97, abs=0.006)


def test_c16_the_pivot_force_is_that_of_the_lever() -> None:
    here = square_pedal(56.0)
    made = Lever(pivot=Point(0.0, 0.0, 0.0), axis=RIGHT, pad=here.pad, pin=here.pin)
    rod = Rod(socket=here.socket, direction=Point(-1.0, 0.0, 0.0))
    found = forces_of(made, rod, here, Point(-500.0, 0.0, 0.0))
    assert found.pivot_size == pytest.approx(2000.0)
