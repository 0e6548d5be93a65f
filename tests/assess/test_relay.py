"""A brake worked through a relay lever: arm and pin feel its rod, the flange the cylinder's."""

from dataclasses import replace

import pytest

from pedalwright.assess import assess
from pedalwright.core.points import Point
from pedalwright.design import Design
from pedalwright.linkage import Relay, Rod, forces, lever
from pedalwright.project import car_text, read


@pytest.fixture(scope="module")
def relayed() -> Design:
    """Larkfield's brake with a relay of 90 to 60 on the wall, and its cylinder higher up."""
    design = read(car_text("larkfield-improved")).design
    pin = lever(design.brake.pedal).pin
    tube = Point(28.0, 385.0, float(pin.z) - 94.0)
    relay = Relay(
        pivot=tube,
        driven_pin=tube + Point(0.0, 0.0, 90.0),
        driving_pin=tube + Point(0.0, 0.0, 60.0),
    )
    rod = Rod(
        socket=relay.driving_pin + Point(-110.0, 0.0, 1.0),
        direction=design.brake.rod.direction,
        relay=relay,
    )
    return replace(design, brake=replace(design.brake, rod=rod))


def test_arm_and_pin_feel_the_pedals_own_rod(relayed: Design) -> None:
    brake = assess(relayed).brake
    found = forces(brake.lever, relayed.brake.rod, brake.hard_stop, 500.0)
    assert brake.strength.effort.rod_force == pytest.approx(found.pedal_rod, rel=1e-9)
    assert found.rod > 1.4 * brake.strength.effort.rod_force


def test_the_flange_feels_the_piston(relayed: Design) -> None:
    brake = assess(relayed).brake
    ratio, stiffness = brake.hard_stop.ratio, relayed.brake.carrier.mount.cylinder_stiffness
    assert ratio == pytest.approx(1.5 * 5.0, rel=0.05)
    assert brake.strength.flange_give == pytest.approx(500.0 * ratio / stiffness, rel=1e-9)
    assert brake.strength.give.cylinder_mount == pytest.approx(
        500.0 * ratio**2 / stiffness, rel=1e-9
    )
