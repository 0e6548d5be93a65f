"""What a number is worth is what the car does when the file says it otherwise."""

import json
import re
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner

from pedalwright.assess import assess
from pedalwright.cli import main
from pedalwright.core.doubts import Doubt, Move
from pedalwright.core.quantity import write
from pedalwright.project import Project, car_text, changed, doubts, read
from pedalwright.search import re_measure, worth_lines, worth_measuring
from pedalwright.search.changes import number

MENDED = (
    car_text("larkfield-tapes")
    .replace('to = "P3", reading = "791 mm"', 'to = "P3", reading = "719 mm"')
    .replace('mark = "T2", right = "-189 mm"', 'mark = "T2", right = "189 mm"')
)


@pytest.fixture(scope="module")
def first() -> Project:
    return read(car_text("larkfield-first"))


@pytest.fixture(scope="module")
def taped() -> Project:
    return read(MENDED)


def doubt_of(project: Project, path: str) -> Doubt:
    return next(doubt for doubt in doubts(project) if doubt.path == path)


@pytest.mark.parametrize(
    "path",
    [
        "drivers.D1.hip.x",
        "brake.carrier.arm.depth_at_pivot",
        "survey.faces.floor.plane.through.z",
        "survey.faces.tunnel.plane.through.x",
        "throttle.opening.stages.2.driven_radius",
    ],
)
def test_a_number_moves_what_the_file_would_move(first: Project, path: str) -> None:
    doubt = doubt_of(first, path)
    told = first.provenance[path]
    value = float(told.shown.split()[0].replace("\u202f", "")) if told.unit == "mm" else None
    at = number(first.design, path) if value is None else value
    other = changed(first, {path: write(at + doubt.plus_minus, told.unit)}).design
    for move in doubt.moves:
        expected = number(first.design, move.path) + float(move.by)
        assert number(other, move.path) == pytest.approx(expected, rel=1e-6, abs=1e-6)


@pytest.mark.parametrize(
    "path",
    ["survey.tapes.1.reading", "survey.tapes.30.reading", "survey.offsets.2.up"],
)
def test_a_reading_moves_the_marks_as_the_survey_would(taped: Project, path: str) -> None:
    """Straight lines of the adjustment against placing every mark anew."""
    doubt = doubt_of(taped, path)
    survey = taped.design.survey
    if ".tapes." in path:
        tape = survey.tapes[int(path.split(".")[2]) - 1]
        entries = {
            f"{path}.{n}": f"{float(reading) + doubt.plus_minus:.6f} mm"
            for n, reading in enumerate(tape.reading, 1)
        }
    else:
        up = survey.offsets[int(path.split(".")[2]) - 1].up
        assert up is not None
        entries = {path: f"{float(up) + doubt.plus_minus:.6f} mm"}
    other = changed(taped, entries).design
    assert len(doubt.moves) > 3
    largest = max(abs(float(move.by)) for move in doubt.moves)
    for move in doubt.moves:
        went = number(other, move.path) - number(taped.design, move.path)
        assert went == pytest.approx(float(move.by), abs=0.02 * largest + 1e-4), move.path


def test_the_effect_of_each_number_is_what_assess_says(first: Project) -> None:
    known = doubts(first)
    found = worth_measuring(first.design, known)
    best = found.numbers[0]
    up = {best.doubt.path: write(1000.0 + best.doubt.plus_minus, "mm")}
    assert best.doubt.path == "drivers.D1.hip.x"

    def value(project: Project) -> float:
        key = (best.decides.limit.code, best.decides.about)
        return next(
            float(np.asarray(f.value))
            for f in assess(project.design).findings
            if (f.limit.code, f.about) == key
        )

    down = {best.doubt.path: write(1000.0 - best.doubt.plus_minus, "mm")}
    largest = max(abs(value(changed(first, step)) - value(first)) for step in (up, down))
    assert best.moves == pytest.approx(largest, rel=1e-6)


def test_shares_of_one_verdict_add_up_and_an_exact_number_is_worth_nothing(first: Project) -> None:
    known = doubts(first)
    found = worth_measuring(first.design, known)
    assert sum(float(each.share) for each in found.numbers) == pytest.approx(1.0, abs=1e-9)
    assert all(0.0 <= each.decides_share <= 1.0 for each in found.numbers)
    best = found.numbers[0].doubt
    exact = [d for d in known if d.path != best.path]
    assert best.path not in {
        each.doubt.path for each in worth_measuring(first.design, exact).numbers
    }


def test_open_verdicts_are_those_that_some_cars_of_the_spread_turn(first: Project) -> None:
    """Each open verdict is reached by the sum of squares; none beyond it is listed."""
    found = worth_measuring(first.design, doubts(first))
    assert found.turns
    margins = [abs(float(np.asarray(f.margin))) for f in found.open]
    assert max(margins) < 1.0
    clear = {"structure.flange_give", "throttle.full_opening"}
    assert clear.isdisjoint({f.limit.code for f in found.open})


def test_where_nothing_turns_the_nearest_is_named(first: Project) -> None:
    path = "drivers.D1.hip.x"
    tiny = Doubt(
        path=path,
        name=path,
        plus_minus=1e-6,
        unit="mm",
        tag="measured",
        why="",
        moves=(Move(path=path, by=1e-6),),
    )
    found = worth_measuring(first.design, [tiny])
    assert not found.turns
    assert found.numbers[0].doubt is tiny
    answer = re_measure(first.design, [tiny])
    assert answer.outcome == "passes"
    assert "no verdict turns" in answer.says.text


def test_without_a_plus_minus_nothing_is_ranked(first: Project) -> None:
    assert worth_measuring(first.design, ()).numbers == ()
    supposed = re_measure(first.design)
    assert any("1 in 100" in note.text for note in supposed.notes)


def test_assess_ends_with_three_numbers(tmp_path: Path) -> None:
    file = tmp_path / "x.toml"
    file.write_text(MENDED, encoding="utf-8")
    said = CliRunner().invoke(main, ["assess", str(file)]).stdout
    tail = said[said.index("MOST WORTH MEASURING AGAIN:") :].splitlines()
    assert [line[:5] for line in tail if line[:2] == "  " and line[2].isdigit()] == [
        "  1. ",
        "  2. ",
        "  3. ",
    ]
    assert "drivers.D1.hip.x, ± 15 mm" in tail[1]
    data = json.loads(CliRunner().invoke(main, ["assess", str(file), "--json"]).stdout)
    assert len(data["worth_measuring"]) == 3
    assert data["worth_measuring"][0]["path"] == "drivers.D1.hip.x"
    asked = json.loads(CliRunner().invoke(main, ["ask", str(file), "re-measure", "--json"]).stdout)
    assert asked["rows"][0]["name"] == "drivers.D1.hip.x"
    assert asked["outcome"] == "open"


def test_a_mark_that_was_read_badly_is_worth_reading_again() -> None:
    """The rim by eye, ± 40 mm a tape: its readings come before most other numbers."""

    def roughly(line: str) -> str:
        return re.sub(r'"(-?\d+) mm"', r'"\1 ±40 mm"', line) if '"rim_bottom"' in line else line

    project = read("\n".join(roughly(line) for line in MENDED.splitlines()))
    found = worth_measuring(project.design, doubts(project))
    names = [each.doubt.name for each in found.numbers]
    best = next(i for i, name in enumerate(names) if "rim_bottom" in name)
    assert best < 10
    assert found.numbers[best].decides.limit.code == "driver.knee_rim"
    assert found.numbers[best].doubt.path.startswith("survey.")
    assert len(worth_lines(found)) == 3
