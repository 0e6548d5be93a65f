"""The forces of one push, part by part, from the foot to the frame."""

from dataclasses import replace
from typing import Literal

import pytest

from pedalwright.assess import Assessment, assess
from pedalwright.assess.loop import FRAME, load_loop
from pedalwright.core.points import Point
from pedalwright.design import Design
from pedalwright.linkage import Relay
from pedalwright.project import car_text, cars, read

PEDALS: tuple[Literal["brake", "clutch"], ...] = ("brake", "clutch")


@pytest.fixture(scope="module", params=sorted(cars()))
def design(request: pytest.FixtureRequest) -> Design:
    return read(car_text(request.param)).design


@pytest.fixture(scope="module")
def assessment(design: Design) -> Assessment:
    return assess(design)


@pytest.mark.parametrize("pedal", PEDALS)
def test_nothing_is_left_over_on_any_part(
    design: Design, assessment: Assessment, pedal: Literal["brake", "clutch"]
) -> None:
    """Forces and moments; of all parts but the frame, which the ground holds."""
    loop = load_loop(design, assessment, pedal)
    for body in loop.bodies[:-1]:
        force, moment = body.left_over
        assert force < 1e-6, body.name
        assert moment < 1e-4, body.name


@pytest.mark.parametrize("pedal", PEDALS)
def test_the_frame_bears_what_the_foot_pushes(
    design: Design, assessment: Assessment, pedal: Literal["brake", "clutch"]
) -> None:
    loop = load_loop(design, assessment, pedal)
    force, _ = loop.body(FRAME).left_over
    assert force == pytest.approx(float(loop.push), rel=1e-9)
    if loop.closing == "closed":
        (one,) = loop.on_frame
        foot = loop.bodies[0].acts[0]
        assert (one.at - foot.at).cross(foot.force.unit()).length() == pytest.approx(0.0, abs=1e-6)
    else:
        assert len(loop.on_frame) == 2


@pytest.mark.parametrize(
    ("car", "closing", "through"),
    [
        ("larkfield-first", "open", ()),
        ("larkfield-improved", "closed", ("brake_box",)),
        (
            "brackwater-fix2",
            "closed",
            ("bulkhead_plate", "left_cheek", "floor_plate", "floor_bracket"),
        ),
        ("saltmarsh-improved", "said", ()),
    ],
)
def test_where_it_closes(car: str, closing: str, through: tuple[str, ...]) -> None:
    design = read(car_text(car)).design
    loop = load_loop(design, assess(design), "brake")
    assert loop.closing == closing
    assert loop.through.parts == through


def test_an_open_loop_goes_by_what_hangs_on_the_frame() -> None:
    """The patch on the wall, the hanger on the rail: out at the nearest edge, the nearest end."""
    design = read(car_text("larkfield-first")).design
    wall, rail = load_loop(design, assess(design), "brake").out
    assert wall.parts == ("patch", "front_wall")
    assert wall.places[-1].z == pytest.approx(390.0)
    assert rail.parts[-1] == "cowl_rail"
    assert rail.places[-1].y == pytest.approx(600.0)


def test_a_box_that_cannot_be_judged_closes_nothing() -> None:
    design = read(car_text("larkfield-improved")).design
    mount = replace(design.brake.carrier.mount, cylinder_on="nothing of that name")
    carrier = replace(design.brake.carrier, mount=mount)
    other = replace(design, brake=replace(design.brake, carrier=carrier))
    assert load_loop(other, assess(other), "brake").closing == "not judged"


def test_a_relay_lever_is_held_by_its_tube() -> None:
    design = read(car_text("larkfield-improved")).design
    pin = Point(28.0, 385.0, 298.0)
    below = pin + Point(0.0, 0.0, -30.0)
    relay = Relay(pivot=pin + Point(0.0, 0.0, -90.0), driven_pin=pin, driving_pin=below)
    rod = replace(design.brake.rod, socket=below + Point(-110.0, 0.0, 1.0), relay=relay)
    relayed = replace(design, brake=replace(design.brake, rod=rod))
    found = assess(relayed)
    loop = load_loop(relayed, found, "brake")
    for body in loop.bodies[:-1]:
        force, moment = body.left_over
        assert force < 1e-6, body.name
        assert moment < 1e-4, body.name
    assert found.brake.forces.relay_pivot is not None
    tube = loop.body("relay lever").acts[-1]
    assert tube.size == pytest.approx(float(found.brake.forces.relay_pivot.length()), rel=1e-9)
