"""A brake worked through a relay lever: arm and pin feel its rod, the flange the cylinder's."""

import math
from dataclasses import replace

import pytest

from pedalwright.assess import BrakePedal, assess
from pedalwright.core.points import Point
from pedalwright.design import Design
from pedalwright.linkage import Relay, Rod, forces, lever
from pedalwright.project import car_text, read
from pedalwright.structure import PushRod, RelayArms


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
    stiff = replace(
        design.brake.carrier.mount,
        cylinder_on="",
        pivot_on="",
        cylinder_stiffness=5000.0,
        pivot_stiffness=8000.0,
    )
    carrier = replace(design.brake.carrier, mount=stiff)
    return replace(design, brake=replace(design.brake, rod=rod, carrier=carrier))


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


ARMS = RelayArms(
    thickness=12.0,
    driven_depth=45.0,
    driving_depth=45.0,
    spacing=50.0,
    tube_outside=35.0,
    tube_inside=25.0,
    push_rod=PushRod(outside=10.0, elastic=210000.0, yield_strength=640.0),
    bracket_stiffness=10000.0,
    elastic=210000.0,
    poisson=0.3,
    yield_strength=355.0,
)


def made(relayed: Design, arms: RelayArms | None) -> Design:
    carrier = replace(relayed.brake.carrier, relay=arms)
    return replace(relayed, brake=replace(relayed.brake, carrier=carrier))


def test_a_relay_of_unknown_make_is_not_judged(relayed: Design) -> None:
    asked = [f for f in assess(relayed).findings if f.limit.code.startswith("structure.relay")]
    assert len(asked) == 2
    assert not any(f.judged or f.ok for f in asked)
    assert assess(relayed).brake.strength.give.relay == 0.0


def torque(relayed: Design, brake: BrakePedal, push: float) -> float:
    """The force of the pedal's rod times its distance from the relay's tube, by coordinates."""
    found = forces(brake.lever, relayed.brake.rod, brake.hard_stop, push)
    there, relay = brake.hard_stop.relay, relayed.brake.rod.relay
    assert there is not None
    assert relay is not None
    assert found.pedal_rod is not None
    line = (there.driven_pin - brake.hard_stop.pin).unit()
    return float(found.pedal_rod) * float((there.driven_pin - relay.pivot).cross(line).length())


def test_the_relay_lever_by_hand(relayed: Design) -> None:
    brake = assess(made(relayed, ARMS)).brake
    relay, turning = brake.strength.relay, torque(relayed, brake, 2000.0)
    assert relay is not None
    assert relay.arm.size == pytest.approx(turning / (12.0 * 45.0**2 / 6.0), rel=1e-9)
    shear = turning * 17.5 / (math.pi / 32.0 * (35.0**4 - 25.0**4))
    assert relay.tube.size == pytest.approx(math.sqrt(3.0) * shear, rel=1e-9)
    found = forces(brake.lever, relayed.brake.rod, brake.hard_stop, 2000.0)
    assert relay.rod_force == pytest.approx(found.rod, rel=1e-9)


def test_what_the_relay_gives_is_the_energy_in_it(relayed: Design) -> None:
    """Twice the energy of arms, tube, rod and bracket under 500 N, over the 500 N."""
    brake = assess(made(relayed, ARMS)).brake
    found = forces(brake.lever, relayed.brake.rod, brake.hard_stop, 500.0)
    assert found.relay_pivot is not None
    turning = torque(relayed, brake, 500.0)
    bending = 210000.0 * 12.0 * 45.0**3 / 12.0
    arms = sum((turning / r) ** 2 * r**3 / (6.0 * bending) for r in (90.0, 60.0))
    shear = 210000.0 / 2.6
    tube = turning**2 * 50.0 / (2.0 * shear * math.pi / 32.0 * (35.0**4 - 25.0**4))
    length = math.hypot(110.0, 1.0)
    rod = float(found.rod) ** 2 * length / (2.0 * 210000.0 * math.pi * 25.0)
    bracket = float(found.relay_pivot.length()) ** 2 / (2.0 * 10000.0)
    energy = arms + tube + rod + bracket
    assert brake.strength.give.relay == pytest.approx(2.0 * energy / 500.0, rel=1e-9)
    give = brake.strength.give
    without = assess(relayed).brake.strength.give
    assert give.total - give.relay == pytest.approx(without.total, rel=1e-9)


@pytest.mark.parametrize(
    ("code", "arms"),
    [
        ("structure.relay_arm", replace(ARMS, driving_depth=30.0)),
        ("structure.relay_tube", replace(ARMS, tube_inside=33.0)),
    ],
)
def test_one_relay_breaks_only_this_one(relayed: Design, code: str, arms: RelayArms) -> None:
    def failing(arms: RelayArms) -> set[tuple[str, str]]:
        found = assess(made(relayed, arms)).findings
        return {(f.limit.code, f.about) for f in found if not f.ok}

    assert {code for code, _ in failing(arms) - failing(ARMS)} == {code}
