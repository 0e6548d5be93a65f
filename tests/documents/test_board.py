"""The big drawing of the page from every side: what moves in it, and what can be taken hold of."""

from dataclasses import replace
from xml.etree import ElementTree as ET

import numpy as np
import pytest

from pedalwright.assess import assess
from pedalwright.assess.stroke import PEDAL_NAMES, PedalName
from pedalwright.documents.pictures.board import Board
from pedalwright.documents.pictures.handles import Handle, handles, put, says
from pedalwright.documents.pictures.stroke import Look, SideName, looked_at
from pedalwright.drawing import svg
from pedalwright.project import Project, car_text, changed, read, tried

CARS = ("larkfield-first", "brackwater-fix2", "saltmarsh-first")
ROUND: tuple[SideName, ...] = ("plan", "front")


def board(project: Project, side: SideName, pedal: PedalName = "brake", **looks: object) -> Board:
    design = project.design
    names = tuple(person.name for person in design.drivers)
    look = replace(Look(pedal=pedal, side=side, drivers=names), **looks)  # type: ignore[arg-type]
    found = assess(design)
    return Board(design=design, assessment=found, now=looked_at(design, found, look), look=look)


def held(project: Project, side: SideName, pedal: PedalName = "brake") -> dict[str, Handle]:
    there = board(project, side, pedal)
    return {handle.name: handle for handle in handles(project.design, there.now, there.look)}


def drawn(there: Board) -> ET.Element:
    return ET.fromstring(svg(there.moving(there.window()), physical=False))


def points(drawing: ET.Element, part: str) -> list[str]:
    return [e.get("points", "") for e in drawing.iter() if e.get("data-part") == part]


@pytest.mark.parametrize("car", CARS)
@pytest.mark.parametrize("side", ROUND)
@pytest.mark.parametrize("down", [0, 50, 100])
def test_nothing_of_a_measured_car_is_drawn_nowhere(car: str, side: SideName, down: int) -> None:
    there = board(read(car_text(car)), side, down=down, sweep=True, room=True)
    window = there.window()
    for drawing in (there.ground(window), there.moving(window)):
        assert b"nan" not in svg(drawing, physical=False)


@pytest.mark.parametrize("pedal", PEDAL_NAMES)
@pytest.mark.parametrize("side", ROUND)
def test_the_foot_moves_the_pedal_it_is_on_and_no_other(side: SideName, pedal: PedalName) -> None:
    project = read(car_text("larkfield-first"))
    rest, pressed = (drawn(board(project, side, pedal, down=down)) for down in (0, 60))
    for name, part in (
        ("clutch", "clutch-pad"), ("brake", "brake-pad"), ("throttle", "accelerator-pad"),
    ):  # fmt: skip
        assert (points(rest, part) != points(pressed, part)) == (name == pedal), part


@pytest.mark.parametrize("side", ROUND)
def test_only_those_drivers_are_drawn_who_are_looked_at(side: SideName) -> None:
    project = read(car_text("larkfield-first"))
    parts = {e.get("data-part") for e in drawn(board(project, side, drivers=("D2",))).iter()}
    assert "shoe-D2" in parts
    assert "shoe-D1" not in parts


@pytest.mark.parametrize("side", ["side", *ROUND])
def test_a_shoes_way_holds_the_shoe_at_every_place_of_the_stroke(side: SideName) -> None:
    project = read(car_text("larkfield-first"))
    there = board(project, side, drivers=("D1",), sweep=True)
    swept = [e for e in drawn(there).iter() if e.get("data-part") == "sweep-D1"]
    filled = [e for e in swept if "fill-tint" in e.get("class", "")]
    assert len(filled) == 2
    assert len(swept) == 5


@pytest.mark.parametrize("car", CARS)
@pytest.mark.parametrize("side", ROUND)
@pytest.mark.parametrize("pedal", PEDAL_NAMES)
def test_a_handle_put_somewhere_is_there_or_as_near_as_its_way_allows(
    car: str, side: SideName, pedal: PedalName
) -> None:
    project = read(car_text(car))
    there = board(project, side, pedal)
    for name, handle in held(project, side, pedal).items():
        at = (handle.at[0] + 3.0, handle.at[1] + 2.0)
        numbers = put(project.design, there.now, handle, at)
        assert set(numbers) == set(handle.entries), name
        trial = tried(project, numbers)
        new = held(trial, side, pedal)[name].at
        ways = [(1.0, 0.0), (0.0, 1.0)] if handle.along is None else [handle.along]
        for way in ways:
            off = np.dot(np.subtract(new, at), way)
            assert off == pytest.approx(0.0, abs=0.35), name  # typed to a hundredth of an inch
        typed = {path: trial.provenance[path].text for path in numbers}
        assert changed(project, typed).design == trial.design


def test_a_pad_goes_across_by_its_joggle_and_a_pedal_by_its_pivot() -> None:
    project = read(car_text("larkfield-first"))
    there = held(project, "front")
    assert there["brake.pad"].entries == ("brake.pedal.pad_offset",)
    assert there["clutch.pivot"].entries == ("clutch.pedal.pivot.y", "clutch.pedal.pivot.z")
    assert held(project, "plan")["hip D1"].entries == ("drivers.D1.hip.x", "drivers.D1.hip.y")
    assert says(there["clutch.pivot"], "front") == "clutch pivot, 262.0 to the right, 350.0 up"


def test_the_floor_is_dropped_below_itself_and_built_up_above_it() -> None:
    project = read(car_text("larkfield-first"))  # floor 5 up, a tub 75 deep
    there = board(project, "side")
    heel = held(project, "side")["heel"]

    def level(z: float) -> dict[str, float]:
        return put(project.design, there.now, heel, (heel.at[0], z))

    assert level(-50.0) == {"heel_rest.drop": 55.0, "heel_rest.plate": 0.0}
    assert level(5.0) == {"heel_rest.drop": 0.0, "heel_rest.plate": 0.0}
    assert level(20.0) == {"heel_rest.drop": 0.0, "heel_rest.plate": 15.0}


def test_the_floor_can_be_taken_hold_of_with_nobody_in_the_car() -> None:
    project = read(car_text("larkfield-first"))
    there = board(project, "side", drivers=())
    assert "heel" in {h.name for h in handles(project.design, there.now, there.look)}
