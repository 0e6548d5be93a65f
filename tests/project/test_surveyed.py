"""Marks from tapes in a project file: placed, called by name, asked about where need be."""

from collections.abc import Mapping
from pathlib import Path

import numpy as np
import pytest

from pedalwright.assess import assess
from pedalwright.core.batch import spread
from pedalwright.project import (
    Project,
    ProjectError,
    car_text,
    changed,
    diff,
    edit,
    plus_minus_tree,
    read,
)

TAPES = car_text("larkfield-tapes")
#: The two slips that were left in the survey, mended.
SLIPS = {
    'hook = "B", to = "P3", reading = "791 mm"': 'hook = "B", to = "P3", reading = "719 mm"',
    'mark = "T2", right = "-189 mm"': 'mark = "T2", right = "189 mm"',
}
FLAT = """
format = 1
[survey]
tapes = [
    { hook = "A", to = "P", reading = "450 mm" },
    { hook = "B", to = "P", reading = "440 mm" },
    { hook = "C", to = "P", reading = "480 mm" },
]
[survey.marks]
A.at = ["0 ±0 mm", "0 ±0 mm", "0 ±0 mm"]
B.at = ["600 ±0 mm", "0 ±0 mm", "0 ±0 mm"]
C.at = ["80 ±0 mm", "500 ±0 mm", "0 ±0 mm"]
"""


def with_(text: str, changes: Mapping[str, str]) -> str:
    for old, new in changes.items():
        assert old in text, old
        text = text.replace(old, new, 1)
    return text


@pytest.fixture(scope="module")
def slips() -> Project:
    return read(TAPES)


@pytest.fixture(scope="module")
def mended() -> Project:
    return read(with_(TAPES, SLIPS))


def complaints(text: str) -> list[str]:
    with pytest.raises(ProjectError) as caught:
        read(text)
    return str(caught.value).splitlines()


def survey_findings(project: Project) -> list[tuple[str, str]]:
    """Demands on the survey that are not met."""
    found = [f for f in assess(project.design).findings if f.room == "survey" and not f.ok]
    return [(f.limit.code, f.about) for f in found]


def test_the_wrong_digit_and_the_swapped_side_are_named(slips: Project) -> None:
    assert survey_findings(slips) == [
        ("survey.readings_agree", "T2 right of the datum is too small: left and right swapped"),
        ("survey.readings_agree", "B–P3 reads long: digits swapped: 719"),
    ]


def test_nothing_is_left_to_say_once_both_are_mended(mended: Project) -> None:
    assert survey_findings(mended) == []


@pytest.mark.parametrize("which", ["slips", "mended"])
def test_the_footwell_is_that_of_the_first_attempt(
    which: str, request: pytest.FixtureRequest
) -> None:
    """Within the ± of both; a slip that is clear does not move it."""
    project: Project = request.getfixturevalue(which)
    ours, theirs = project.design.survey, read(car_text("larkfield-first")).design.survey
    for name in ("front_wall", "floor", "tunnel", "rail"):
        assert ours.face(name).offset == pytest.approx(theirs.face(name).offset, abs=3.0), name
        assert ours.face(name).normal.dot(theirs.face(name).normal) > np.cos(0.015), name
    for end in ("start", "end"):
        for line in ("column", "cowl_rail"):
            gap = getattr(ours.line(line), end) - getattr(theirs.line(line), end)
            assert gap.length() < 4.0, (line, end)
    assert (ours.mark("rim_bottom") - theirs.mark("rim_bottom")).length() < 3.0


def test_the_same_demands_fail_as_in_the_first_attempt(mended: Project) -> None:
    def failing(project: Project) -> set[tuple[str, str]]:
        findings = assess(project.design).findings
        return {
            (f.limit.code, f.about)
            for f in findings
            if f.limit.weight == "must" and not f.ok and abs(float(f.margin)) > 0.03
        }

    first = failing(read(car_text("larkfield-first")))
    assert {one for one in failing(mended) if not one[0].startswith("survey")} == first


def test_a_mark_carries_its_plus_minus_to_whatever_is_called_by_it(mended: Project) -> None:
    told = mended.provenance
    for axis in "xyz":
        start, mark = told[f"survey.lines.column.start.{axis}"], told[f"survey.marks.K.at.{axis}"]
        assert start.text == "K"
        assert start.plus_minus == mark.plus_minus
        assert mark.tag == "measured"
        assert mark.plus_minus is not None
        assert 0.5 < mark.plus_minus < 3.0
    column = mended.design.survey.line("column")
    assert column.start == mended.design.survey.mark("K")
    assert told["survey.marks.A.at.y"].text == "180 ±0 mm"
    wall = told["survey.faces.front_wall.plane.offset"]
    assert wall.text == "A, B, E, F"
    assert wall.plus_minus is not None
    assert wall.plus_minus < 1.0


def test_the_plus_minus_of_marks_spreads_the_cars(mended: Project) -> None:
    around = plus_minus_tree(mended)
    cars = spread(mended.design, around, 50, np.random.default_rng(1))
    widths = np.ptp(np.asarray(cars.survey.line("column").end.y))
    assert widths == pytest.approx(2 * float(around.survey.line("column").end.y), rel=0.2)
    assert np.asarray(assess(cars).findings[0].margin).shape == (50,)


def test_a_mark_may_be_where_any_point_is_wanted(mended: Project) -> None:
    text = with_(mended.text, {'pivot = ["120 mm", "385 mm", "350 mm"]': 'pivot = "Z"'})
    text = with_(
        text,
        {"offsets = [": 'offsets = [\n    { mark = "Z", base = "K", rearward = "120 mm", '
         'right = "33 mm", up = "135 mm" },'},
    )  # fmt: skip
    project = read(text)
    pivot = project.design.brake.pedal.pivot
    assert float(pivot.x) == pytest.approx(120.0, abs=1.0)
    assert float(pivot.y) == pytest.approx(385.0, abs=1.0)
    assert project.provenance["brake.pedal.pivot.z"].text == "Z"
    hip = read(with_(text, {'hip = ["1000 mm", "352 mm", "120 mm"]': 'hip = "C"'}))
    assert float(hip.design.drivers[0].hip.x) == pytest.approx(900.0, abs=1.0)


def test_a_mark_may_be_called_by_another_name(mended: Project) -> None:
    text = mended.text.replace('to = "rim_bottom"', 'to = "L"')
    text = text.replace('mark = "rim_bottom"', 'mark = "L"')
    about = 'about = "wheel rim, its lowest point: findings look for it by this name"\nat = "?"'
    project = read(with_(text, {about: 'at = "L"'}))
    assert project.design.survey.mark("rim_bottom") == project.design.survey.mark("L")
    assert project.provenance["survey.marks.rim_bottom.at.x"].text == "L"


def test_two_places_are_asked_about_and_either_answer_is_taken() -> None:
    said = [line for line in complaints(FLAT) if "P fits" in line]
    assert len(said) == 1
    assert "survey.marks.P" in said[0]
    assert 'side = "up"' in said[0]
    for side, sign in (("up", 1.0), ("down", -1.0)):
        project = read(FLAT + f'P.side = "{side}"\nP.at = "?"\n')
        assert float(project.design.survey.mark("P").z) * sign > 200.0


def test_a_mark_without_enough_readings_is_missing_and_says_what_it_lacks() -> None:
    text = with_(FLAT, {'{ hook = "C", to = "P"': '{ hook = "C", to = "PP"'})
    project = read(text)
    told = project.provenance["survey.marks.P.at.x"]
    assert told.tag == "missing"
    assert told.note == "2 readings to marks that are known, 3 needed"
    assert np.isnan(float(project.design.survey.mark("P").x))
    assert project.design.survey.mark("A").x == 0.0


def test_a_slip_in_a_name_is_suspected(mended: Project) -> None:
    text = with_(mended.text, {'hook = "F", to = "P4"': 'hook = "F", to = "P44"'})
    told = read(text).provenance["survey.marks.P44.at.x"]
    assert told.tag == "missing"
    assert told.note.endswith("; P4 may be meant")


def test_a_net_that_floats_says_what_would_hold_it() -> None:
    text = FLAT
    for name, place in (("A", "0"), ("B", "600"), ("C", "80")):
        start = text.index(f'{name}.at = ["{place}')
        text = text[:start] + f'{name}.at = "?"' + text[text.index("]", start) + 1 :]
    told = read(text).provenance["survey.marks.P.at.x"]
    assert told.tag == "missing"
    assert "hold six numbers" in told.note


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('to = "P", reading = "450 mm"', 'to = "A", reading = "450 mm"', "both are at A"),
        ('reading = "450 mm"', 'reading = "4.5 mm"', "45 mm"),
        ('reading = "450 mm"', 'raeding = "450 mm"', "Did you mean reading"),
        ('hook = "A", to', "hook = 3, to", "hook is a text"),
        (
            "[survey.marks]",
            '[survey.lines.column]\nstart = "Q"\nend = "A"\ndiameter = "19 mm"\n[survey.marks]',
            "the marks are A, B, C, P",
        ),
        (
            "[survey.marks]",
            '[survey.faces.floor]\nmarks = ["A", "B"]\nlooks = "up"\n[survey.marks]',
            "Three or more different marks",
        ),
        (
            "[survey.marks]",
            '[survey.faces.floor]\nmarks = ["A", "B", "CC"]\nlooks = "up"\n[survey.marks]',
            "The marks are A, B, C, P",
        ),
        (
            "[survey.marks]",
            '[survey.faces.floor]\nmarks = ["A", "B", "C"]\n[survey.marks]',
            "which way it looks",
        ),
        (
            "[survey.marks]",
            '[[survey.offsets]]\nmark = "P"\nbase = "A"\n[survey.marks]',
            "rearward, right or up",
        ),
    ],
)
def test_what_cannot_be_read_is_told_in_a_sentence(old: str, new: str, says: str) -> None:
    text = with_(FLAT + 'P.side = "up"\nP.at = "?"\n', {old: new})
    said = complaints(text)
    assert any(says in line for line in said), said
    assert all("line " in line for line in said), said


def test_every_fault_of_a_survey_is_told_at_once() -> None:
    text = with_(
        FLAT,
        {
            'to = "P", reading = "450 mm"': 'to = "A", reading = "450 mm"',
            'reading = "440 mm"': 'reading = "44 m"',
            "[survey.marks]": '[survey.lines.column]\nstart = "Q"\n[survey.marks]',
        },
    )
    assert len(complaints(text)) == 3


def test_a_reading_can_be_changed_whether_or_not_it_is_a_list(
    tmp_path: Path, mended: Project
) -> None:
    file = tmp_path / "car.toml"
    file.write_text(mended.text, encoding="utf-8")
    numbers = [n for n, tape in enumerate(mended.design.survey.tapes, 1) if tape.to == "K"]
    single = next(
        n for n, tape in enumerate(mended.design.survey.tapes, 1) if len(tape.reading) == 1
    )
    changes = {
        f"survey.tapes.{numbers[0]}.reading.2": "333 mm",
        f"survey.tapes.{single}.reading.1": "444 mm",
        "survey.marks.K.about": "bush",
    }
    after = edit(file, changes)
    assert after.design.survey.tapes[numbers[0] - 1].reading[1] == 333.0
    assert after.design.survey.tapes[single - 1].reading == (444.0,)
    assert {path for path, _, _ in diff(mended, after)} >= set(changes)
    assert changed(after, {f"survey.tapes.{single}.hook": "B"}).text.count("\n") == (
        mended.text.count("\n")
    )


def test_a_tunnel_outside_the_door_is_noticed() -> None:
    text = car_text("larkfield-first")
    for right in ('"165 mm", "0 mm"]', '"545 mm", "0 mm"]'):
        (said,) = complaints(with_(text, {right: right.replace('"', '"-', 1)}))
        assert "left and right may be swapped" in said
        assert f"Did you mean {right[1:4]} mm?" in said


def test_the_survey_on_the_page_reads(checkout: Path) -> None:
    page = (checkout / "docs" / "project-file.md").read_text(encoding="utf-8")
    start = page.index("[survey]\ntape_class")
    example = page[start : page.index("```", start)]
    places = {"P1": (0, 0), "P2": (0, 300), "P3": (400, 0), "P4": (400, 300)}
    places |= {"W1": (150, 0), "W2": (150, 300), "W3": (150, 600)}
    others = (
        f'[survey.marks.{name}]\nat = ["{x} mm", "{y} mm", "5 mm"]\n'
        for name, (x, y) in places.items()
    )
    project = read("format = 1\n" + example + "".join(others))
    assert project.design.survey.face("floor").offset == pytest.approx(5.0, abs=40.0)
    assert project.design.survey.line("cowl_rail").may_cut == "yes"
    assert project.design.survey.tapes[1].add == -100.0
    assert {mark.name for mark in project.design.survey.marks} >= {"A", "B", "P4", "P5", "K", "N"}
