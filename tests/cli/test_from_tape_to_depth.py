"""A morning with the tape, from a new file to how deep the floor must drop."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from pedalwright.assess import assess
from pedalwright.cli import main
from pedalwright.documents.outside import METRIC
from pedalwright.documents.pictures import pictures
from pedalwright.project import edit, read


def run(*arguments: str | Path) -> Result:
    return CliRunner().invoke(main, [str(argument) for argument in arguments])


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "x.toml"
    assert run("new", path, "--like", "larkfield-tapes").exit_code == 0
    return path


def ankles(file: Path) -> dict[str, float]:
    """Ankles that no foot can hold, by driver, pedal and place, deg."""
    report = json.loads(run("assess", file, "--json").stdout)
    bent = (found for found in report["findings"] if found["code"] == "driver.ankle_min")
    return {found["about"]: found["value"] for found in bent if not found["ok"]}


def test_from_an_empty_file_to_how_deep(file: Path, tmp_path: Path) -> None:
    surveyed = run("survey", file, "-o", tmp_path / "survey")
    assert surveyed.exit_code == 1
    assert "Digits swapped: 719?" in " ".join(surveyed.stdout.split())
    assert "Left and right swapped?" in " ".join(surveyed.stdout.split())

    edit(file, {"survey.offsets.6.right": "189 mm", "survey.tapes.35.reading.1": "719 mm"})
    assert run("survey", file).exit_code == 0

    report = json.loads(run("assess", file, "--json").stdout)
    driver = report["results"]["driver"]
    soles = {name: driver[f"{name}.brake.rest.sole"]["value"] for name in ("D1", "D2")}
    assert soles["D1"] == pytest.approx(67.0, abs=2.5)
    assert soles["D2"] < soles["D1"]
    assert ankles(file)["D1, brake, rest"] == pytest.approx(69.0, abs=2.0)
    assert all("D1" in about for about in ankles(file))

    asked = " ".join(run("ask", file, "floor-drop").stdout.split())
    assert "HOW DEEP MUST THE FLOOR DROP?" in asked
    assert "Both drivers can have at most a drop of 64 mm" in asked
    assert "make it a drop of 55 mm" in asked
    edit(file, {"heel_rest.drop": "55 mm"})
    assert ankles(file) == {}


def test_every_drawing_has_both_drivers_between_walls_by_tape(file: Path) -> None:
    design = read(file).design
    drawn = {p.key: p.svg.decode() for p in pictures(design, assess(design), METRIC)}
    for key in ("brake-side", "clutch-side", "plan", "front-view"):
        assert 'data-part="driver-D1"' in drawn[key]
        assert 'data-part="driver-D2"' in drawn[key]
    for key in ("plan", "front-view"):
        assert 'data-part="tunnel"' in drawn[key]
        assert 'data-part="rail"' in drawn[key]
