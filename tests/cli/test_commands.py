"""The commands as a user runs them."""

import json
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result
from pypdf import PdfReader

from pedalwright.cli import main


def run(*arguments: str | Path) -> Result:
    return CliRunner().invoke(main, [str(argument) for argument in arguments])


@pytest.fixture
def first(tmp_path: Path) -> Path:
    file = tmp_path / "first.toml"
    assert run("new", file, "--like", "larkfield-first").exit_code == 0
    return file


@pytest.fixture
def improved(tmp_path: Path) -> Path:
    file = tmp_path / "improved.toml"
    assert run("new", file).exit_code == 0
    return file


def report(file: Path) -> dict[str, Any]:
    result = run("assess", file, "--json")
    parsed: dict[str, Any] = json.loads(result.stdout)
    return parsed


def test_exit_codes_tell_the_verdict(first: Path, improved: Path, tmp_path: Path) -> None:
    assert run("assess", improved).exit_code == 0
    assert run("assess", first).exit_code == 1
    assert run("assess", tmp_path / "none.toml").exit_code == 2


def test_json_has_what_other_tools_lean_on(improved: Path) -> None:
    data = report(improved)
    assert set(data) >= {"pedalwright", "car", "results", "findings", "missing", "assumed"}
    assert data["results"]["brakes"]["deceleration_500N"]["unit"] == "m/s2"
    assert data["results"]["driver"]["D1.brake.rest.knee"]["unit"] == "deg"
    keys = "code asks value bound unit sense margin ok weight source room"
    assert set(data["findings"][0]) >= set(keys.split())
    assert "car.cg_height" in data["assumed"]


def test_a_missing_number_is_listed_and_leaves_the_rest_judged(improved: Path) -> None:
    text = improved.read_text()
    improved.write_text(
        text.replace('start = ["0 mm", "352 mm", "215 mm"]', 'start = ["?", "352 mm", "215 mm"]')
    )
    data = report(improved)
    assert "survey.lines.column.start.x" in data["missing"]
    column = [f for f in data["findings"] if f["code"] == "driver.shin_column"]
    assert column
    assert all(f["value"] is None and not f["ok"] for f in column)
    assert data["results"]["brakes"]["effort_6_43"]["value"] == pytest.approx(274.2, abs=0.5)


def test_bad_input_names_file_line_key_and_what_is_accepted(improved: Path) -> None:
    text = improved.read_text()
    improved.write_text(text.replace('bore = "13/16 in"', 'bore = "20,640"\ncolour = "red"'))
    result = run("assess", improved, "--json")
    assert result.exit_code == 2
    errors = json.loads(result.stdout)["errors"]
    assert len(errors) == 2
    assert all(set(error) >= {"where", "read", "accepts"} for error in errors)
    assert all("improved.toml" in error["where"] for error in errors)


def test_new_never_overwrites(first: Path) -> None:
    before = first.read_bytes()
    assert run("new", first).exit_code == 2
    assert first.read_bytes() == before


def test_demo_tells_the_story_of_both_attempts(tmp_path: Path) -> None:
    result = run("demo", "larkfield", "-o", tmp_path)
    assert result.exit_code == 0
    assert result.stdout.index("Larkfield, first attempt") < result.stdout.index(
        "Larkfield, improved"
    )
    assert (tmp_path / "larkfield-first" / "dossier.pdf").read_bytes().startswith(b"%PDF")
    for drawing in ("brake-side", "plan", "front-view"):
        assert (tmp_path / "larkfield-improved" / f"{drawing}.svg").exists()


@pytest.mark.parametrize(
    ("car", "last"),
    [("brackwater", "Brackwater, second fix"), ("saltmarsh", "Saltmarsh, improved")],
)
def test_demo_runs_the_other_cars(car: str, last: str, tmp_path: Path) -> None:
    result = run("demo", car, "-o", tmp_path)
    assert result.exit_code == 0
    assert last in result.stdout
    assert "ATTEMPT BY ATTEMPT" in result.stdout


def test_dossier_is_written_where_it_is_wanted(improved: Path, tmp_path: Path) -> None:
    pdf = tmp_path / "deep" / "car.pdf"
    assert run("dossier", improved, "-o", pdf).exit_code == 0
    assert pdf.read_bytes().startswith(b"%PDF")


def test_formula_lists_shows_and_works_out() -> None:
    assert "hydraulics.bore_area" in run("formula").stdout
    assert "A = π / 4 · d²" in run("formula", "hydraulics.bore_area").stdout
    worked = json.loads(run("formula", "hydraulics.bore_area", "d=13/16 in", "--json").stdout)
    assert worked["value"] == pytest.approx(334.5, abs=0.05)
    assert worked["unit"] == "mm2"


@pytest.mark.parametrize(
    "arguments",
    [
        ("hydraulics.bore_are", "d=1 mm"),
        ("hydraulics.bore_area", "d=1,905"),
        ("hydraulics.bore_area", "d=5 kg"),
        ("hydraulics.bore_area", "x=5 mm"),
    ],
)
def test_formula_refuses_in_sentences(arguments: tuple[str, ...]) -> None:
    result = run("formula", *arguments, "--json")
    assert result.exit_code == 2
    assert json.loads(result.stdout)["errors"]


def test_the_full_tier_is_told_as_it_goes_and_adds_its_findings(improved: Path) -> None:
    plain, full = run("assess", improved, "--json"), run("assess", improved, "--json", "--full")
    assert plain.exit_code == full.exit_code == 0, full.output
    assert "structure.panel_panic" in [f["code"] for f in json.loads(full.stdout)["findings"]]
    assert "structure.panel_panic" not in [f["code"] for f in json.loads(plain.stdout)["findings"]]
    assert "meshing" in full.stderr


def test_the_full_tier_of_a_car_without_a_box_says_so(tmp_path: Path) -> None:
    car = tmp_path / "car.toml"
    run("new", car, "--like", "saltmarsh-improved")
    assert "No box is described" in run("assess", car, "--full").stderr


def test_the_full_tier_draws_how_the_box_moves(improved: Path, tmp_path: Path) -> None:
    folder = tmp_path / "drawn"
    result = run("assess", improved, "--full", "-o", folder)
    assert result.exit_code == 0, result.output
    assert sorted(path.name for path in folder.iterdir()) == [
        "box-brake-moves.svg",
        "box-brake-stress.svg",
        "box-clutch-moves.svg",
        "box-clutch-stress.svg",
    ]
    assert "moves drawn 20 times as large" in (folder / "box-brake-moves.svg").read_text()


def test_a_dossier_in_full_has_the_findings_of_the_bench(improved: Path, tmp_path: Path) -> None:
    plain, full = tmp_path / "plain.pdf", tmp_path / "full.pdf"
    assert run("dossier", improved, "-o", plain).exit_code == 0
    assert run("dossier", improved, "-o", full, "--full").exit_code == 0
    told = [
        " ".join(page.extract_text() for page in PdfReader(file).pages) for file in (plain, full)
    ]
    assert ["structure.panel_panic" in text for text in told] == [False, True]
    assert ["more than it yields at" in text for text in told] == [False, True]
