"""An edit changes its entry and nothing else: no remark, no space, no other value."""

import tomllib
from collections.abc import Iterator
from math import isclose
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pedalwright.core.quantity import parse, write
from pedalwright.project import Change, Project, ProjectError, changed, plus_minus_tree, read

CAR = Path(__file__).with_name("car.toml").read_text(encoding="utf-8")
PROJECT = read(CAR)
TYPED = [path for path, told in PROJECT.provenance.items() if told.text]
NUMBERS = [path for path in TYPED if PROJECT.provenance[path].like]
PIN = 'pin_radius = "54.5 ±0.5 mm"'


def leaves(raw: Any, keys: tuple[Any, ...] = ()) -> Iterator[tuple[tuple[Any, ...], Any]]:
    if isinstance(raw, (dict, list)):
        pairs = raw.items() if isinstance(raw, dict) else enumerate(raw)
        for key, below in pairs:
            yield from leaves(below, (*keys, key))
    else:
        yield keys, raw


def one_piece(before: str, after: str) -> tuple[str, str]:
    """The piece that differs, in the old text and in the new."""
    start = next(n for n, (a, b) in enumerate(zip(before, after, strict=False)) if a != b)
    end = next(n for n, (a, b) in enumerate(zip(before[::-1], after[::-1], strict=False)) if a != b)
    end = min(end, len(before) - start, len(after) - start)
    return before[start : len(before) - end], after[start : len(after) - end]


def test_one_value_is_replaced_where_it_stands() -> None:
    after = changed(PROJECT, {"brake.pedal.pin_radius": "2 1/8 in"})
    assert after.text == CAR.replace(PIN, 'pin_radius = "2 1/8 in"')
    assert after.design.brake.pedal.pin_radius == 53.975


def test_a_value_keeps_what_was_said_about_it() -> None:
    after = changed(PROJECT, {"car.cg_height": "480 mm"})
    assert after.text == CAR.replace('value = "470 mm"', 'value = "480 mm"', 1)
    assert after.provenance["car.cg_height"].tag == "assumed"


def test_a_number_that_was_assumed_is_measured() -> None:
    after = changed(PROJECT, {"car.cg_height": Change(value="481 mm", plus_minus="5 mm")})
    told = after.provenance["car.cg_height"]
    assert (told.tag, told.plus_minus, told.note) == ("measured", 5.0, "")
    after = changed(after, {"car.cg_height": Change(value="481 mm")})
    assert 'cg_height = "481 mm"\n' in after.text


def test_a_note_with_quotes_and_signs_is_kept_as_typed() -> None:
    note = 'the "big" tape\'s \\ end, 😀'
    after = changed(PROJECT, {"car.mass": Change(value="981 kg", tag="assumed", note=note)})
    assert after.provenance["car.mass"].note == note


def test_a_coordinate_is_replaced_within_its_point() -> None:
    after = changed(PROJECT, {"brake.pedal.pivot.y": "386 mm"})
    assert after.text == CAR.replace('["120 mm", "385 mm"', '["120 mm", "386 mm"', 1)


def test_a_whole_point_is_replaced() -> None:
    after = changed(PROJECT, {"drivers.D1.hip": ["1001 mm", "352 mm", "121 mm"]})
    assert after.text == CAR.replace(
        'hip = ["1000 mm", "352 mm", "120 mm"]', 'hip = ["1001 mm", "352 mm", "121 mm"]', 1
    )


def test_a_coordinate_says_something_of_its_own() -> None:
    change = Change(value="1002 mm", tag="assumed", note="seat not in yet")
    after = changed(PROJECT, {"drivers.D1.hip.x": change})
    assert after.provenance["drivers.D1.hip.x"].note == "seat not in yet"
    assert after.provenance["drivers.D1.hip.y"].tag == "measured"
    again = changed(after, {"drivers.D1.hip.x": "1003 mm"})
    assert again.provenance["drivers.D1.hip.x"].note == "seat not in yet"
    assert again.design.drivers[0].hip.x == 1003.0


def test_words_and_kinds_are_changed_alike() -> None:
    after = changed(PROJECT, {"clutch.heel": "may lift", "brake.rod.direction": "forward 1 deg up"})
    assert after.design.clutch.heel == "may lift"
    assert after.design.brake.rod.direction.x == pytest.approx(-0.99985, abs=1e-5)
    with pytest.raises(ProjectError, match="bore, stroke"):
        changed(PROJECT, {"brake.masters.front.bore": "19.05 mm"})


def test_rows_count_from_one() -> None:
    after = changed(PROJECT, {"throttle.opening.stages.2.driven_radius": "39 mm"})
    first, second = after.design.throttle.opening.stages
    assert (first.driven_radius, second.driven_radius) == (34.0, 39.0)  # type: ignore[union-attr]


def test_name_and_note_of_the_file() -> None:
    after = changed(PROJECT, {"name": "Larkfield, third"})
    assert after.name == "Larkfield, third"
    assert after.text == CAR.replace('name = "Larkfield, improved"', 'name = "Larkfield, third"')


@pytest.mark.parametrize("path", TYPED)
def test_written_back_by_the_same_hand_the_number_is_the_same(path: str) -> None:
    told = PROJECT.provenance[path]
    if not told.like:
        return
    value = value_at(PROJECT, path)
    text = write(value, told.unit, like=told.like)
    after = changed(PROJECT, {path: text})
    assert value_at(after, path) == value
    assert remarks(after.text) == remarks(CAR)


def value_at(project: Project, path: str) -> float:
    value: Any = project.design
    for key in path.split("."):
        if key == "through":
            return coordinate(project, path)
        if isinstance(value, tuple):
            named = [thing for thing in value if getattr(thing, "name", "") == key]
            value = named[0] if named else value[int(key) - 1]
        else:
            value = getattr(value, key)
    return float(value)


def coordinate(project: Project, path: str) -> float:
    """A coordinate of a face's point; the design keeps its offset only."""
    return parse(project.provenance[path].text, "mm").value


def remarks(text: str) -> list[str]:
    return [line.partition("#")[2] for line in text.splitlines() if "#" in line]


@given(
    path=st.sampled_from([p for p in NUMBERS if PROJECT.provenance[p].unit == "mm"]),
    share=st.floats(0.0, 0.02),
    style=st.sampled_from(["mm", "in", "cm"]),
    before=st.sampled_from([CAR, "\ufeff" + CAR, CAR.replace("\n", "\r\n")]),
)
def test_only_the_entry_changes(path: str, share: float, style: str, before: str) -> None:
    project = read(before)
    value = round(value_at(project, path) * (1 + share) + share, 3)
    text = write(value, "mm", like=style)
    after = changed(project, {path: text})
    assert isclose(value_at(after, path), value, abs_tol=1e-9)
    if after.text == before:
        return
    old, new = one_piece(before, after.text)
    assert "\n" not in old + new
    assert len(old) <= len(project.provenance[path].text) + 2
    was = dict(leaves(tomllib.loads(before.removeprefix("\ufeff"))))
    now = dict(leaves(tomllib.loads(after.text.removeprefix("\ufeff"))))
    assert was.keys() == now.keys()
    assert sum(was[k] != now[k] for k in was if was[k] == was[k]) <= 1


def test_an_entry_that_was_not_there_stands_behind_its_table() -> None:
    after = changed(PROJECT, {"brake.pedal.pin_angle": "1 deg"})
    assert after.text == CAR.replace(f"{PIN}\n", f'{PIN}\npin_angle = "1 deg"\n', 1)


def test_an_entry_beside_dotted_ones_is_dotted() -> None:
    after = changed(PROJECT, {"drivers.D1.person.thigh": "412 mm"})
    line = 'person.shoe_width = "98 mm"\n'
    assert after.text == CAR.replace(line, f'{line}person.thigh = "412 mm"\n', 1)


def test_an_entry_in_braces_stays_in_them() -> None:
    text = CAR.replace('[heel_rest]\ndrop = "75 mm"\nplate = "0 mm"', "", 1)
    text = text.replace("[car]", 'heel_rest = { drop = "75 mm" }\n\n[car]', 1)
    after = changed(read(text), {"heel_rest.plate": "3 mm"})
    assert 'heel_rest = { drop = "75 mm", plate = "3 mm" }\n' in after.text


def test_a_table_that_was_not_there_is_opened() -> None:
    bare = read("format = 1 # first\n")
    after = changed(bare, {"car.mass": "900 kg"})
    assert after.text == 'format = 1 # first\n\n[car]\nmass = "900 kg"\n'
    after = changed(after, {"toes_to_wall": "50 mm", "car.wheelbase": "2.4 m"})
    assert after.text == (
        'format = 1 # first\ntoes_to_wall = "50 mm"\n\n'
        '[car]\nmass = "900 kg"\nwheelbase = "2.4 m"\n'
    )


def test_a_new_mark_of_which_one_coordinate_is_known() -> None:
    after = changed(read("format = 1"), {"survey.marks.lamp.at.z": "300 mm"})
    mark = after.design.survey.mark("lamp")
    assert mark.z == 300.0
    assert after.provenance["survey.marks.lamp.at.x"].tag == "missing"
    assert after.text.endswith('[survey.marks.lamp]\nat = ["?", "?", "300 mm"]\n')


@pytest.mark.parametrize("path", [p for p, t in PROJECT.provenance.items() if not t.text])
def test_every_number_that_was_left_out_can_be_given(path: str) -> None:
    told = PROJECT.provenance[path]
    text = {"mm": "200 mm", "rad": "1 deg", "1": "0.3", "MPa": "300 MPa"}[told.unit]
    sized = {"pin_angle": text, "gap": "1 mm", "bush_pressure": "30 MPa", "inside": "2 mm"}
    sized |= {"poisson": "0.3", "elastic": "200 GPa", "thigh": "400 mm", "shank": "400 mm"}
    sized |= {"ankle_forward": "40 mm", "ankle_height": "90 mm", "foot_width": "100 mm"}
    sized |= {"knee_height": "520 mm", "buttock_knee": "600 mm"}
    text = sized.get(path.rpartition(".")[2], text)
    after = changed(PROJECT, {path: text})
    assert after.provenance[path].tag == "measured"
    assert after.provenance[path].text == text
    assert remarks(after.text) == remarks(CAR)


@pytest.mark.parametrize(
    ("path", "says"),
    [
        ("brake.pedal.pin_radus", "Did you mean pin_radius"),
        ("brak.pedal.pin_radius", "Did you mean brake"),
        ("brake.pedal", "This is a table"),
        ("brake.pedal.pivot.w", "has no w"),
        ("throttle.opening.stages.0.driven_radius", "has no 0"),
        ("format", "has no format"),
        ("", "This is a table"),
        ("a..b", "This is a table"),
    ],
)
def test_a_path_that_leads_nowhere(path: str, says: str) -> None:
    with pytest.raises(ProjectError, match=says):
        changed(PROJECT, {path: "1"})


def test_a_value_that_cannot_be_read_is_refused() -> None:
    with pytest.raises(ProjectError, match=r"brake\.pedal\.pin_radius: read '5:1'"):
        changed(PROJECT, {"brake.pedal.pin_radius": "5:1"})


def test_the_half_widths_have_the_shape_of_the_design() -> None:
    around = plus_minus_tree(PROJECT)
    assert around.brake.pedal.pin_radius == 0.5
    assert around.brake.pedal.pad_radius == 1.0
    assert around.brake.rod.direction.length() == 0.0
    assert around.survey.face("front_wall").offset == 2.0
    assert around.survey.face("tunnel").offset == pytest.approx(2.097, abs=1e-3)
    assert around.brake.front.lift == pytest.approx(0.2 * 0.28)
    assert around.brake.pedal.hinge == "hanging"
    assert [d.name for d in around.drivers] == ["D1", "D2"]
