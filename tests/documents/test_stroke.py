"""The picture a builder works on: what it shows, and what can be taken hold of on it."""

from dataclasses import replace
from xml.etree import ElementTree as ET

import numpy as np
import pytest

from pedalwright.assess import assess
from pedalwright.assess.stroke import PEDAL_NAMES, PedalName
from pedalwright.core.points import Point
from pedalwright.design import Design
from pedalwright.documents.pictures.handles import Handle, handles, moved, put
from pedalwright.documents.pictures.stroke import (
    Look,
    footwell_picture,
    looked_at,
    stroke_picture,
    window,
)
from pedalwright.drawing import svg
from pedalwright.linkage import Relay
from pedalwright.project import Project, car_text, changed, read, tried

CARS = ("larkfield-first", "brackwater-fix2", "saltmarsh-first")


def look_at(design: Design, pedal: PedalName, down: int = 0, *, close: bool = False) -> Look:
    names = tuple(person.name for person in design.drivers)
    return Look(pedal=pedal, down=down, drivers=names, close=close)


def held(project: Project, pedal: PedalName) -> dict[str, Handle]:
    design = project.design
    look = look_at(design, pedal)
    now = looked_at(design, assess(design), look)
    return {handle.name: handle for handle in handles(design, now, look)}


def drawn(design: Design, look: Look) -> tuple[bytes, bytes]:
    now = looked_at(design, assess(design), look)
    seen = window(design, now, look)
    return (
        svg(footwell_picture(design, look, seen), physical=False),
        svg(stroke_picture(design, now, look, seen), physical=False),
    )


def parts(drawing: bytes) -> set[str]:
    return {element.get("data-part", "") for element in ET.fromstring(drawing).iter()}


@pytest.mark.parametrize("car", CARS)
@pytest.mark.parametrize("pedal", PEDAL_NAMES)
@pytest.mark.parametrize("down", [0, 50, 100])
def test_everything_measured_is_seen_and_nothing_is_nowhere(
    car: str, pedal: PedalName, down: int
) -> None:
    design = read(car_text(car)).design
    ground, front = drawn(design, look_at(design, pedal, down))
    assert b"nan" not in ground + front
    named = [line.name for line in design.survey.lines] + [m.name for m in design.survey.marks]
    assert set(named) <= parts(ground)
    assert {"front_wall", "floor", "heel-rest"} <= parts(ground)
    assert {"arm", "pad", "pivot"} <= parts(front)
    assert ("push-rod" in parts(front)) == (pedal != "throttle")
    if down == 0:  # a leg that cannot follow the pad to its end is not drawn there
        assert {f"foot-{person.name}" for person in design.drivers} <= parts(front)


def test_a_driver_who_is_not_looked_at_is_not_drawn() -> None:
    design = read(car_text("larkfield-first")).design
    look = replace(look_at(design, "brake"), drivers=("D2",))
    _, front = drawn(design, look)
    assert "leg-D2" in parts(front)
    assert "leg-D1" not in parts(front)


@pytest.mark.parametrize("close", [False, True])
def test_the_window_has_the_shape_of_the_paper_and_holds_what_is_looked_at(close: bool) -> None:
    design = read(car_text("larkfield-first")).design
    for paper in ((200.0, 100.0), (100.0, 130.0)):
        look = replace(look_at(design, "clutch", close=close), paper=paper)
        now = looked_at(design, assess(design), look)
        box = window(design, now, look)
        assert box.width / box.height == pytest.approx(paper[0] / paper[1])
        for point in (now.lever.pivot, now.lever.pad, now.pad_full):
            assert box.left < point.x < box.right
            assert box.bottom < point.z < box.top


@pytest.mark.parametrize("car", CARS)
@pytest.mark.parametrize("pedal", PEDAL_NAMES)
def test_a_handle_put_somewhere_is_there_or_as_near_as_its_way_allows(
    car: str, pedal: PedalName
) -> None:
    project = read(car_text(car))
    design = project.design
    look = look_at(design, pedal)
    now = looked_at(design, assess(design), look)
    for name, handle in held(project, pedal).items():
        at = (handle.at[0] + 4.0, handle.at[1] + 6.0)
        numbers = put(design, now, handle, at)
        assert set(numbers) == set(handle.entries), name
        there = held(tried(project, numbers), pedal)[name].at
        off = (there[0] - at[0], there[1] - at[1])
        if name == "heel":  # it is the height that is taken hold of; feet slide on it
            assert off[1] == pytest.approx(0.0, abs=0.15)
        elif handle.along is None:
            assert off == pytest.approx((0.0, 0.0), abs=0.35)  # lean is set to a 20th of a degree
        else:  # what is left to go is square to its way
            ux, uz = handle.along
            assert off[0] * ux + off[1] * uz == pytest.approx(0.0, abs=0.15)


@pytest.mark.parametrize("car", CARS)
def test_what_is_put_can_be_typed_into_the_file(car: str) -> None:
    project = read(car_text(car))
    look = look_at(project.design, "brake")
    now = looked_at(project.design, assess(project.design), look)
    for handle in held(project, "brake").values():
        numbers = put(project.design, now, handle, (handle.at[0] + 3.0, handle.at[1] - 3.0))
        trial = tried(project, numbers)
        typed = {path: trial.provenance[path].text for path in numbers}
        assert changed(project, typed).design == trial.design


def test_a_key_moves_a_handle_its_own_way_only() -> None:
    free = Handle(name="pivot", label="pivot", at=(10.0, 20.0), entries=("a", "b"))
    assert moved(free, (1.0, -2.0)) == (11.0, 18.0)
    down_and_back = (0.6, -0.8)
    pin = Handle(name="pin", label="pin", at=(0.0, 0.0), entries=("r",), along=down_and_back)
    assert moved(pin, (0.0, 1.0)) == pytest.approx((-0.6, 0.8))  # up is back along it
    assert moved(pin, (1.0, 0.0)) == pytest.approx((0.6, -0.8))  # rearward is forth
    upright = replace(pin, along=(0.0, 1.0))
    assert moved(upright, (5.0, 0.0)) == (0.0, 0.0)


def test_a_relay_lever_has_handles_and_an_accelerator_no_rod() -> None:
    project = read(car_text("larkfield-improved"))
    pin = Point(28.0, 385.0, 298.0)
    relay = Relay(
        pivot=pin + Point(0.0, 0.0, -90.0),
        driven_pin=pin,
        driving_pin=pin + Point(0.0, 0.0, -30.0),
    )
    brake = project.design.brake
    design = replace(project.design, brake=replace(brake, rod=replace(brake.rod, relay=relay)))
    look = look_at(design, "brake")
    names = {h.name for h in handles(design, looked_at(design, assess(design), look), look)}
    assert {"relay.pivot", "relay.driven_pin", "relay.driving_pin", "socket"} <= names
    throttle = held(project, "throttle")
    assert {"pin", "socket"} & set(throttle) == set()


def test_what_has_no_place_yet_cannot_be_taken_hold_of() -> None:
    project = changed(read(car_text("larkfield-first")), {"brake.rod.socket.x": "?"})
    assert "socket" not in held(project, "brake")
    assert "pivot" in held(project, "brake")


def test_a_slanting_tube_has_no_pad_to_drag_in_a_side_view() -> None:
    design = read(car_text("larkfield-first")).design
    pedal = replace(design.brake.pedal, axis=Point(0.0, np.cos(0.1), np.sin(0.1)))
    slanting = replace(design, brake=replace(design.brake, pedal=pedal))
    look = look_at(slanting, "brake")
    now = looked_at(slanting, assess(slanting), look)
    assert "pad" not in {handle.name for handle in handles(slanting, now, look)}
