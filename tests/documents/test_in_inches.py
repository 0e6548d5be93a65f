"""A car typed in inches comes back in inches, in everything a builder reads."""

import re
from pathlib import Path

import pytest
from click.testing import CliRunner
from pypdf import PdfReader

from pedalwright.cli import main
from pedalwright.documents.questions import QUESTIONS
from pedalwright.project import new_file

#: A metric amount; a rule's own is followed by the builder's, one read back stands beside it.
METRIC = r"\b\d[\d.\u202f]* (?:mm|N|MPa|m/s²|N·mm)(?![\w²³/·])"
BESIDE = rf"{METRIC}(?:,? \(?[\d.\u202f]+(?:·10[⁻\d⁰¹²³⁴-⁹]+)? (?:in|lbf|psi|g|lbf·in)\b| = )"


def run(*arguments: str | Path) -> str:
    return CliRunner().invoke(main, [str(argument) for argument in arguments]).stdout


@pytest.fixture(scope="module")
def saltmarsh(tmp_path_factory: pytest.TempPathFactory) -> Path:
    file = tmp_path_factory.mktemp("inches") / "saltmarsh.toml"
    new_file(file, "saltmarsh-first")
    return file


def left_metric(text: str) -> list[str]:
    """Metric amounts with nothing in inches or pounds beside them."""
    plain = re.sub(r"(?<== )[\d.\u202f]+ \S+", "", " ".join(text.split()))
    return re.findall(METRIC, re.sub(BESIDE, "", plain))


def judged(text: str) -> str:
    """What stands above the list of numbers, without who asks: sources are quoted as they are."""
    kinds = "ours|trade|regulation|handbook|standard"
    return re.sub(rf"(?s)asked by .*?\((?:{kinds})\)", "", text.partition("ASSUMED, ")[0])


def test_findings(saltmarsh: Path) -> None:
    text = run("assess", saltmarsh)
    assert " in, at least " in text
    assert "lbf, at most 112.4 lbf" in text
    assert " psi, at most " in text
    assert "pad_height = 50 mm = 1.969 in" in text
    assert left_metric(judged(text)) == []


@pytest.mark.parametrize("question", list(QUESTIONS))
def test_answers(saltmarsh: Path, question: str) -> None:
    text = run("ask", saltmarsh, question)
    assert "WHAT TO DO NEXT" in text
    assert left_metric(judged(text)) == []


def test_what_is_to_be_typed_is_typed_by_the_builders_hand(saltmarsh: Path) -> None:
    assert 'brake.masters.front.bore = "13/16 in"' in run("ask", saltmarsh, "bore")
    assert 'cylinder_stiffness = "80000 lbf/in"' in run("ask", saltmarsh, "spongy")


def test_a_bore_typed_in_inches_stays_so_in_a_metric_file(tmp_path: Path) -> None:
    file = tmp_path / "larkfield.toml"
    new_file(file, "larkfield-first")
    assert 'brake.masters.bore = "19.05 mm"' in run("ask", file, "bore")
    file.write_text(file.read_text("utf-8").replace('"25.40 mm"', '"1 in"'), "utf-8")
    text = run("ask", file, "bore")
    assert 'brake.masters.bore = "3/4 in"' in text
    assert " lbf" not in text


def test_the_dossier(saltmarsh: Path, tmp_path: Path) -> None:
    run("dossier", saltmarsh, "-o", tmp_path / "dossier.pdf")
    pages = [page.extract_text() for page in PdfReader(tmp_path / "dossier.pdf").pages]
    text = re.sub(r"\s+", " ", " ".join(pages))
    assert "dimensions in inches" in text
    assert "brackets say each answer in your units" in text
    assert re.search(r"MPa \([\d.]+ psi\)", text)
    assert "1 3/4 in = 44.45 mm" in text


def test_the_head_of_the_file_turns_it_and_the_data_stay(saltmarsh: Path, tmp_path: Path) -> None:
    metric = tmp_path / "metric.toml"
    text = saltmarsh.read_text("utf-8").replace("format = 1\n", 'format = 1\nshown_in = "mm"\n')
    metric.write_text(text, "utf-8")
    assert " lbf" not in judged(run("assess", metric))
    for command in (("assess",), ("ask", "bore"), ("ask", "travel")):
        name, *more = command
        there = run(name, saltmarsh, *more, "--json")
        assert there == run(name, metric, *more, "--json")
