"""`survey` as a builder runs it: what it says, draws and prints."""

import io
import json
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from click.testing import CliRunner, Result
from pypdf import PdfReader

from pedalwright.cli import main
from pedalwright.project import car_text, edit


def run(*arguments: str | Path) -> Result:
    return CliRunner().invoke(main, [str(argument) for argument in arguments])


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "x.toml"
    assert run("new", path, "--like", "larkfield-tapes").exit_code == 0
    return path


def mended(file: Path) -> Path:
    text = file.read_text(encoding="utf-8")
    text = text.replace('to = "P3", reading = "791 mm"', 'to = "P3", reading = "719 mm"')
    text = text.replace('mark = "T2", right = "-189 mm"', 'mark = "T2", right = "189 mm"')
    file.write_text(text, encoding="utf-8")
    return file


def test_from_an_empty_file_to_the_two_slips_and_their_lines(file: Path) -> None:
    result = run("survey", file)
    assert result.exit_code == 1
    said = " ".join(result.stdout.split())
    assert "134 readings place 22 marks; 69 are to spare." in said
    assert "Most likely it is T2 right of the datum, which reads -189 mm" in said
    assert "Left and right swapped?" in said
    assert "Most likely it is B–P3, which reads 791 mm; the others say 719" in said
    assert "Digits swapped: 719?" in said
    assert "floor through P1, P2, P3, P4; farthest off" in said
    assert "rail through R1, R2, R3; tilt known to" in said
    assert "survey.offsets.6.right" in said
    assert "survey.tapes.35.reading" in said
    assert all(line.isprintable() and len(line) <= 100 for line in result.stdout.splitlines())


def test_the_places_it_names_are_the_lines_to_mend(file: Path) -> None:
    edit(file, {"survey.offsets.6.right": "189 mm", "survey.tapes.35.reading.1": "719 mm"})
    result = run("survey", file)
    assert result.exit_code == 0
    assert "CANNOT ALL BE RIGHT" not in result.stdout
    assert "as it should" in result.stdout


def test_four_tapes_of_a_rectangle_ask_for_a_fifth(tmp_path: Path) -> None:
    """The flat net of the reference cases, its heights held."""
    file = tmp_path / "flat.toml"
    marks = {"A": (0, 0), "B": (650, 0), "C": (650, 480), "D": (0, 480)}
    tapes = {"A": 378.5, "B": 515.4, "C": 467.3, "D": 292.4}
    rows = "".join(
        f'    {{ hook = "{n}", to = "P", reading = "{r} ±2 mm" }},\n' for n, r in tapes.items()
    )
    at = "".join(f'{n}.at = ["{x} ±0 mm", "{y} ±0 mm", "0 ±0 mm"]\n' for n, (x, y) in marks.items())
    file.write_text(
        f"format = 1\n[survey]\ntapes = [\n{rows}]\n[survey.marks]\n{at}"
        'P.at = ["?", "?", "0 ±0 mm"]\nP.side = "right"\n',
        encoding="utf-8",
    )
    said = " ".join(run("survey", file).stdout.split())
    assert "A–P, B–P, C–P and D–P cannot all be right, by 11.05 mm" in said
    assert "do not say which is wrong: C–P or A–P would explain it" in said
    assert "measure P from one more mark" in said


def test_the_same_as_data(file: Path) -> None:
    result = run("survey", file, "--json")
    data = json.loads(result.stdout)
    assert result.exit_code == 1
    assert data["spare"] == 69
    assert {s["likely"][0] for s in data["suspicions"]} == {"B–P3", "T2 right of the datum"}
    mark = next(m for m in data["marks"] if m["name"] == "K")
    assert mark["at"] == pytest.approx([0.0, 352.0, 215.0], abs=2.5)
    assert len(data["readings"]) == 134


def test_a_file_without_tapes_says_so_and_prints_the_usual_sheet(tmp_path: Path) -> None:
    file = tmp_path / "plain.toml"
    file.write_text(car_text("saltmarsh-first"), encoding="utf-8")
    result = run("survey", file, "-o", tmp_path / "out")
    assert result.exit_code == 0
    assert "nothing to adjust" in result.stdout
    assert [path.name for path in (tmp_path / "out").iterdir()] == ["survey-sheet.pdf"]


def words_of(pdf: bytes) -> str:
    pages = PdfReader(io.BytesIO(pdf)).pages
    return " ".join(" ".join(page.extract_text() for page in pages).split())


@pytest.mark.parametrize(("paper", "size"), [("A4", (595, 842)), ("Letter", (612, 792))])
def test_the_sheet_has_every_mark_tape_and_caution(
    file: Path, tmp_path: Path, paper: str, size: tuple[int, int]
) -> None:
    out = tmp_path / paper
    run("survey", mended(file), "-o", out, "--paper", paper)
    pdf = (out / "survey-sheet.pdf").read_bytes()
    first = PdfReader(io.BytesIO(pdf)).pages[0].mediabox
    assert (round(float(first.width)), round(float(first.height))) == size
    said = words_of(pdf)
    for words in (
        "Hook the tape on the first mark",
        "without looking at the first number",
        "right door post, inside",
        "rim bottom",
        "cowl rail",
        "y 180 mm",
        "sign-off by a competent person",
        "Never lie under a car",
        "may any of it go?",
    ):
        assert words in said, words
    assert said.count("Brakes, clutch and throttle") == len(PdfReader(io.BytesIO(pdf)).pages)
    again = tmp_path / f"{paper}-again"
    run("survey", file, "-o", again, "--paper", paper)
    assert (again / "survey-sheet.pdf").read_bytes() == pdf


def test_a_car_that_stood_nose_down_says_so_and_is_asked_for_it(file: Path, tmp_path: Path) -> None:
    text = mended(file).read_text(encoding="utf-8")
    lean = '[survey]\npitch = "0.4 deg"\nroll = "-0.2 deg"\n'
    file.write_text(text.replace("[survey]\n", lean, 1), encoding="utf-8")
    said = " ".join(run("survey", file, "-o", tmp_path).stdout.split())
    assert "The car rose 0.4° rearward and -0.2° to the right while it was measured" in said
    assert "straight edge across both rails" in words_of(
        (tmp_path / "survey-sheet.pdf").read_bytes()
    )


SVG = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize("view", ["plan", "side"])
def test_the_drawing_rings_what_is_doubtful_and_nothing_else(
    file: Path, tmp_path: Path, view: str
) -> None:
    def ringed(out: Path) -> list[str]:
        root = ET.parse(out / f"survey-{view}.svg").getroot()
        groups = [
            g for g in root.iter(f"{SVG}g") if "mark-" in g.get("data-part", g.get("class", ""))
        ]
        assert len(groups) == 23
        return [
            g.findtext(f"{SVG}title", "")
            for g in groups
            if any(c.get("data-part") == "doubtful" for c in g.iter())
        ]

    run("survey", file, "-o", tmp_path / "slips")
    assert sorted(ringed(tmp_path / "slips")) == ["P3", "T2"]
    run("survey", mended(file), "-o", tmp_path / "mended")
    assert ringed(tmp_path / "mended") == []
