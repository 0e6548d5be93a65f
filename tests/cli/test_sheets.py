"""`sheets`: a folder that a builder can take to the bench."""

import json
from pathlib import Path

import ezdxf
import pypdf
import pytest
from click.testing import CliRunner

from pedalwright.cli import main
from pedalwright.project import read

NAMES = {"templates.pdf", "cards.pdf", "lists.json", "order-of-work.csv"}


@pytest.mark.parametrize("car", ["larkfield-improved", "brackwater-fix2", "saltmarsh-improved"])
@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_every_car_has_its_sheets(car: str, paper: str, tmp_path: Path) -> None:
    file, folder = tmp_path / "car.toml", tmp_path / "bench"
    runner = CliRunner()
    assert runner.invoke(main, ["new", str(file), "--like", car]).exit_code == 0
    run = runner.invoke(main, ["sheets", str(file), "-o", str(folder), "--paper", paper])
    assert run.exit_code == 0, run.output
    there = {path.name for path in folder.iterdir()}
    assert there >= NAMES
    assert all(name in run.output for name in there)
    arms = [path for path in folder.iterdir() if path.suffix == ".dxf"]
    assert {"brake-arm", "clutch-arm"} <= {path.stem for path in arms}
    for arm in arms:
        assert not ezdxf.readfile(arm).audit().has_errors
    width = 210.0 if paper == "A4" else 215.9
    for name in ("templates.pdf", "card-leg.pdf", "survey-sheet.pdf"):
        page = pypdf.PdfReader(folder / name).pages[0]
        short = min(float(page.mediabox.width), float(page.mediabox.height))
        assert short / 72.0 * 25.4 == pytest.approx(width, abs=0.1)
    said = written(folder / "card-leg.pdf")
    for driver in read(file).design.drivers:
        assert f"{driver.name} thigh" in said
        assert f"{driver.name} shank" in said
    lists = json.loads((folder / "lists.json").read_text(encoding="utf-8"))
    assert lists["holes-brake-arm"]["rows"]
    assert lists["order-of-work"]["rows"][0]["job"] == "survey"


def test_legs_are_corrected_for_the_printer_and_the_sheet_asks_for_this_car(
    tmp_path: Path,
) -> None:
    file, folder = tmp_path / "car.toml", tmp_path / "bench"
    runner = CliRunner()
    runner.invoke(main, ["new", str(file), "--like", "larkfield-tapes"])
    bars = ["--scale-x", "98.4", "--scale-y", "99.1"]
    assert runner.invoke(main, ["sheets", str(file), "-o", str(folder), *bars]).exit_code == 0
    assert "98.4" in written(folder / "card-leg.pdf")
    assert "right door post, inside" in written(folder / "survey-sheet.pdf")


def written(file: Path) -> str:
    """Every word of a PDF."""
    return " ".join(page.extract_text() for page in pypdf.PdfReader(file).pages)


def test_an_unreadable_file_writes_nothing(tmp_path: Path) -> None:
    file = tmp_path / "none.toml"
    file.write_text("format = 1\nname = ", encoding="utf-8")
    run = CliRunner().invoke(main, ["sheets", str(file), "-o", str(tmp_path / "bench")])
    assert run.exit_code == 2
    assert not (tmp_path / "bench").exists()
