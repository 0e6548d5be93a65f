"""What nobody knows is missing: nan inside, listed by its path, never nought and never a fault."""

from math import isnan, radians
from pathlib import Path

import pytest

from pedalwright.assess import assess
from pedalwright.project import read

CAR = Path(__file__).with_name("car.toml").read_text(encoding="utf-8")
WHEELBASE = 'wheelbase = "2320 mm"'
NOTHING = ['""', '"?"', '"  "', '"-"', '"n/a"', '"#REF!"', '"nan"', '"inf"', "nan", "inf", "-inf"]


def without(line: str, instead: str = "") -> str:
    assert line in CAR
    return CAR.replace(line, instead, 1)


@pytest.mark.parametrize("typed", NOTHING)
def test_what_stands_for_nothing_is_missing(typed: str) -> None:
    project = read(without(WHEELBASE, f"wheelbase = {typed}"))
    assert isnan(float(project.design.car.wheelbase))
    assert project.provenance["car.wheelbase"].tag == "missing"
    assert project.provenance["car.wheelbase"].shown == "no value"


def test_what_is_left_out_is_missing() -> None:
    project = read(without(WHEELBASE))
    assert isnan(float(project.design.car.wheelbase))
    assert project.provenance["car.wheelbase"].tag == "missing"


def test_nought_is_a_number() -> None:
    project = read(without('drop = "75 mm"', 'drop = "0 mm"'))
    assert project.design.heel_rest.drop == 0.0
    assert project.provenance["heel_rest.drop"].tag == "measured"


def test_a_note_says_why_a_number_is_missing() -> None:
    project = read(without(WHEELBASE, 'wheelbase = { value = "?", note = "wheels are off" }'))
    assert project.provenance["car.wheelbase"].tag == "missing"
    assert project.provenance["car.wheelbase"].note == "wheels are off"


def test_a_default_is_told_as_one_and_why() -> None:
    project = read(without('dead_stroke = "1.5 mm"\nefficiency', "efficiency"))
    told = project.provenance["brake.plumbing.dead_stroke"]
    assert project.design.brake.plumbing.dead_stroke == 1.5
    assert told.tag == "default"
    assert "port" in told.note
    assert told.text == ""


def test_a_question_mark_is_not_answered_with_a_default() -> None:
    project = read(without('dead_stroke = "1.5 mm"\nefficiency', 'dead_stroke = "?"\nefficiency'))
    assert isnan(float(project.design.brake.plumbing.dead_stroke))
    assert project.provenance["brake.plumbing.dead_stroke"].tag == "missing"


def test_a_field_of_its_own_default_is_told_as_default() -> None:
    project = read(CAR)
    assert project.design.brake.pedal.pin_angle == 0.0
    assert project.provenance["brake.pedal.pin_angle"].tag == "default"


def test_what_is_estimated_from_the_stature_is_not_called_missing() -> None:
    project = read(CAR)
    assert isnan(float(project.design.drivers[0].person.thigh))
    told = project.provenance["drivers.D1.person.thigh"]
    assert (told.tag, told.shown) == ("default", "not measured")


def test_a_point_of_which_one_coordinate_is_known() -> None:
    project = read(without('at = ["560 mm", "352 mm", "385 mm"]', 'at = ["?", "352 mm", ""]'))
    at = project.design.survey.marks[0].at
    assert (isnan(float(at.x)), at.y, isnan(float(at.z))) == (True, 352.0, True)
    tags = {axis: project.provenance[f"survey.marks.rim_bottom.at.{axis}"].tag for axis in "xyz"}
    assert tags == {"x": "missing", "y": "measured", "z": "missing"}


def test_a_column_that_nobody_measured_is_listed_and_the_rest_is_judged() -> None:
    whole = read(CAR)
    project = read(CAR.replace("[survey.lines.column]", "[survey.lines.shaft]", 1))
    assert project.provenance["survey.lines.column"].tag == "missing"
    assert "survey.lines.column" not in whole.provenance
    before = {(f.limit.code, f.about) for f in assess(whole.design).findings if f.judged}
    after = {(f.limit.code, f.about) for f in assess(project.design).findings if f.judged}
    assert {code for code, _ in before - after} == {"driver.shin_column"}


def test_an_empty_project_is_all_missing_and_nothing_of_it_is_judged() -> None:
    project = read("format = 1")
    numbers = {p: t for p, t in project.provenance.items() if t.tag not in {"missing", "default"}}
    assert numbers == {}
    assert project.provenance["drivers"].tag == "missing"
    assert [f.limit.code for f in assess(project.design).findings if f.judged] == []


def test_bare_numbers_are_read_in_the_unit_of_the_house_and_say_so() -> None:
    text = without('pad_lean = "15 deg"', "pad_lean = 15").replace(WHEELBASE, "wheelbase = 2320")
    project = read(text)
    assert project.design.brake.pedal.pad_lean == pytest.approx(radians(15), rel=1e-15)
    assert "read as deg" in project.provenance["brake.pedal.pad_lean"].shown
    assert "read as mm" in project.provenance["car.wheelbase"].shown


def test_a_wall_across_the_car_needs_an_x_only() -> None:
    wall = 'through = ["0 mm", "352 mm", "150 mm"]'
    project = read(without(wall, 'through = ["12 mm", "?", "?"]'))
    assert project.design.survey.face("front_wall").offset == 12.0
    project = read(without(wall, 'through = ["?", "352 mm", "150 mm"]'))
    assert isnan(float(project.design.survey.face("front_wall").offset))
