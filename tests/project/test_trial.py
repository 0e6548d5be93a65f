"""What is tried while a handle is dragged is what the file would read if it were typed."""

from math import isfinite
from operator import attrgetter
from pathlib import Path

import pytest

from pedalwright.core.points import Point
from pedalwright.project import (
    Project,
    ProjectError,
    car_text,
    changed,
    chosen,
    measured,
    read,
    save,
    tried,
)
from pedalwright.project.trial import CHOSEN


@pytest.fixture(params=["larkfield-first", "brackwater-first", "saltmarsh-first"])
def project(request: pytest.FixtureRequest) -> Project:
    return read(car_text(request.param))


def lengths(project: Project) -> dict[str, float]:
    """Every number of the pedals that has a value, by its path."""
    found: dict[str, float] = {}
    for pedal in ("brake", "clutch", "throttle"):
        for path, told in project.provenance.items():
            if path.startswith(f"{pedal}.pedal.") and told.unit in {"mm", "rad"}:
                value = float(attrgetter(path)(project.design))
                if isfinite(value):
                    found[path] = value
    return found


def test_it_is_what_the_changed_file_would_read(project: Project) -> None:
    for path, value in lengths(project).items():
        trial = tried(project, {path: value + 0.7 if value > 1.0 else value + 0.02})
        text = trial.provenance[path].text
        typed = changed(project, {path: chosen(project.provenance[path], text)})
        assert trial.design == typed.design, path
        assert trial.provenance[path] == typed.provenance[path], path
        assert trial.text == project.text


def test_a_hand_sets_no_finer_than_a_tenth_and_keeps_the_unit_typed_in() -> None:
    metric = tried(read(car_text("larkfield-first")), {"brake.pedal.pin_radius": 54.4637})
    assert metric.provenance["brake.pedal.pin_radius"].text == "54.5 mm"
    inches = tried(read(car_text("saltmarsh-first")), {"brake.pedal.pin_radius": 44.47})
    assert inches.provenance["brake.pedal.pin_radius"].text == "1 3/4 in"


def test_two_coordinates_of_one_point_move_together() -> None:
    project = read(car_text("larkfield-first"))
    trial = tried(project, {"brake.pedal.pivot.x": 131.0, "brake.pedal.pivot.z": 340.0})
    assert trial.design.brake.pedal.pivot == Point(131.0, 385.0, 340.0)


@pytest.mark.parametrize(
    ("path", "number", "says"),
    [
        ("brake.pedal.pad_radius", 5000.0, "It can be from"),
        ("brake.pedal.pin_radius", 300.0, "nearer to the pivot than the pad"),
        ("drivers.D1.hip.x", 50.0, "a hip is behind"),
    ],
)
def test_what_no_file_may_say_cannot_be_tried(path: str, number: float, says: str) -> None:
    with pytest.raises(ProjectError, match=says):
        tried(read(car_text("larkfield-first")), {path: number})


def test_saving_makes_one_backup_when_it_is_asked_to(tmp_path: Path) -> None:
    path = tmp_path / "car.toml"
    path.write_text(car_text("larkfield-first"))
    first = read(path)
    second = changed(first, {"brake.pedal.pin_radius": "55 mm"})
    save(first, second, backup=True)
    third = changed(second, {"brake.pedal.pin_radius": "56 mm"})
    save(second, third, backup=False)
    assert sorted(file.name for file in tmp_path.iterdir()) == ["car.toml", "car.toml.1.bak"]
    assert read(path).design.brake.pedal.pin_radius == 56.0
    assert (tmp_path / "car.toml.1.bak").read_text() == first.text


def test_a_number_that_was_picked_is_assumed_until_a_tape_has_found_it() -> None:
    project = read(car_text("larkfield-first"))
    path = "brake.pedal.pin_radius"
    assert project.provenance[path].tag == "measured"
    picked = changed(project, {path: chosen(project.provenance[path], "55 mm")})
    assert (picked.provenance[path].tag, picked.provenance[path].note) == ("assumed", CHOSEN)
    found = changed(picked, {path: measured(picked.provenance[path], "54.8 ±0.3 mm")})
    assert (found.provenance[path].tag, found.provenance[path].note) == ("measured", "")
    assert found.provenance[path].plus_minus == pytest.approx(0.3)


def test_what_the_builder_said_of_an_assumption_and_of_its_doubt_stays() -> None:
    project = read(car_text("larkfield-first"))
    path = "throttle.pedal.pivot.x"
    picked = chosen(project.provenance[path], "112 mm")
    assert (picked.tag, picked.note) == ("assumed", "bracket not made yet")
