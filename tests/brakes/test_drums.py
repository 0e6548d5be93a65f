"""Drums worked out from their shoes: C21 and C22 through the room, sensitivity, grabbing."""

from dataclasses import replace
from math import radians

import numpy as np
import pytest

from pedalwright.brakes import (
    Car,
    Disc,
    Drum,
    Lining,
    Plumbing,
    ShoeDrum,
    WheelBrake,
    brake_at,
    drum_factor,
    grab_share,
    sensitivity,
    wear_volumes,
)
from pedalwright.brakes.wheels import Wear
from pedalwright.hydraulics import Tandem

#: C21: actuation 150 above the pivot, pivot 75 below the centre of a drum of radius 100.
SHORT = ShoeDrum(
    cylinder_bore=19.05,
    pistons_moved=2.0,
    drum_radius=100.0,
    shoes="leading-trailing",
    push_arm=150.0,
    pivot_distance=75.0,
    friction_low=0.30,
    friction=0.35,
    friction_high=0.40,
    lift=0.5,
)
#: C22, Bhandari ex. 12.9: radius 250, lining from 15 to 75 degrees, both arms 200.
LONG = replace(
    SHORT,
    drum_radius=250.0,
    push_arm=200.0,
    pivot_distance=200.0,
    friction=0.30,
    lining=Lining(start=radians(15.0), end=radians(75.0)),
)


@pytest.mark.parametrize(
    ("mu", "simplex", "duplex", "duo_servo"),
    [(0.30, 1.4286, 2.0, 3.3333), (0.35, 1.7898, 2.6250, 4.9219), (0.40, 2.2360, 3.4286, 7.3469)],
)
def test_c21_each_kind_of_drum(mu: float, simplex: float, duplex: float, duo_servo: float) -> None:
    assert drum_factor(SHORT, mu) == pytest.approx(simplex, abs=0.00006)
    two_leading = replace(SHORT, shoes="two-leading")
    assert drum_factor(two_leading, mu) == pytest.approx(duplex, abs=0.00006)
    duo = replace(SHORT, shoes="duo-servo")
    assert drum_factor(duo, mu) == pytest.approx(duo_servo, abs=0.00006)


def test_c21_torque_of_the_whole_drum() -> None:
    """204.05 N·m at 4 MPa; the tandem here gives 4 MPa to both circuits."""
    car = Car(mass=900.0, front_share=0.48, wheelbase=2300.0, cg_height=460.0, tyre_radius=300.0)
    push = 4.0 * np.pi / 4.0 * 20.0**2 / 5.0
    plumbing = Plumbing(hoses=0.0, dead_stroke=1.5, efficiency=1.0)
    tandem = Tandem(bore=20.0, stroke=36.0)
    found = brake_at(car, tandem, SHORT, SHORT, plumbing, push=push, ratio=5.0)
    assert found.rear_torque / 1000.0 == pytest.approx(204.05, abs=0.006)


def test_c22_pressure_spread_over_the_lining() -> None:
    assert drum_factor(LONG, 0.3) == pytest.approx(0.8682, abs=0.00006)


def test_a_very_short_lining_opposite_the_pivot_is_the_short_sum() -> None:
    """The short sum's pressure acts square to the line centre-pivot."""
    stub = replace(SHORT, lining=Lining(start=radians(89.9), end=radians(90.1)))
    assert drum_factor(stub, 0.35) == pytest.approx(1.7898, rel=2e-3)


KINDS = [
    SHORT,
    LONG,
    replace(SHORT, shoes="two-leading"),
    replace(SHORT, shoes="duo-servo"),
    replace(LONG, shoes="two-leading"),
]


@pytest.mark.parametrize("drum", KINDS)
def test_sensitivity_is_the_slope_of_the_logarithms(drum: ShoeDrum) -> None:
    """With low and high close together: dC/C over dmu/mu by finite difference."""
    close = replace(drum, friction_low=0.2999, friction_high=0.3001)
    slope = (drum_factor(drum, 0.3001) - drum_factor(drum, 0.2999)) / 0.0002
    assert sensitivity(close) == pytest.approx(slope * 0.3 / drum_factor(drum, 0.3), rel=1e-6)


def test_a_drum_whose_frictions_are_not_known_has_no_sensitivity() -> None:
    drum = Drum(
        cylinder_bore=22.22,
        pistons_moved=2.0,
        drum_radius=127.0,
        factor_low=3.0,
        factor=3.0,
        factor_high=4.4,
        lift=0.85,
    )
    assert sensitivity(drum) is None
    assert grab_share(drum) is None


@pytest.mark.parametrize("drum", KINDS)
def test_at_the_grabbing_friction_the_factor_runs_away(drum: ShoeDrum) -> None:
    share = grab_share(drum)
    assert share is not None
    grabs = drum.friction_high / share
    assert drum_factor(drum, grabs * 0.999999) > 1e4
    assert drum_factor(drum, grabs * 1.000001) == np.inf


def test_c20_fluid_that_follows_the_wear() -> None:
    """Fixed callipers of 38.1: eight pistons in front, four behind, 8 mm of pad, 0.5 of disc."""
    front: WheelBrake = Disc(
        piston_bore=38.1,
        pistons_one_side=2.0,
        pistons_moved=4.0,
        effective_radius=110.0,
        friction_low=0.3,
        friction=0.36,
        friction_high=0.42,
        lift=0.12,
        wear=Wear(lining=8.0, face=0.5),
    )
    rear = replace(front, pistons_moved=2.0)
    volumes = wear_volumes(front, rear)
    assert [volume / 1000.0 for volume in volumes if volume is not None] == pytest.approx(
        [77.53, 38.76], abs=0.006
    )
    assert wear_volumes(SHORT, rear)[0] is None
