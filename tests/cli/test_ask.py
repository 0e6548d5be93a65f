"""`ask` as a builder uses it."""

import json
import re
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from pedalwright.cli import main
from pedalwright.documents.answers import typed
from pedalwright.documents.questions import QUESTIONS
from pedalwright.project import car_text, changed, edit, read
from pedalwright.search.changes import number


def run(*arguments: str | Path) -> Result:
    return CliRunner().invoke(main, [str(argument) for argument in arguments])


@pytest.fixture
def first(tmp_path: Path) -> Path:
    file = tmp_path / "first.toml"
    assert run("new", file, "--like", "larkfield-first").exit_code == 0
    return file


def answer(file: Path, *arguments: str) -> dict[str, Any]:
    parsed: dict[str, Any] = json.loads(run("ask", file, *arguments, "--json").stdout)
    return parsed


def test_without_a_question_the_questions_are_listed(first: Path) -> None:
    listed = [line.split()[0] for line in run("ask", first).stdout.splitlines()]
    assert listed == list(QUESTIONS)
    assert [q["question"] for q in json.loads(run("ask", first, "--json").stdout)] == listed


def test_the_page_lists_the_questions_that_can_be_asked(checkout: Path) -> None:
    page = (checkout / "docs" / "questions.md").read_text()
    rows = re.findall(r"^\| `([a-z-]+)` \| (.+?)(?: \(.*\))? \|$", page, re.MULTILINE)
    assert dict(rows) == {name: question.asks for name, question in QUESTIONS.items()}


@pytest.mark.parametrize("question", list(QUESTIONS))
def test_text_and_data_say_the_same_sentence(first: Path, question: str) -> None:
    text = " ".join(run("ask", first, question).stdout.split())
    data = answer(first, question)
    assert " ".join(data["answer"]["text"].split()) in text
    assert data["question"] == question
    for figure in data["answer"]["figures"]:
        assert isinstance(figure["value"], float)
    assert data["rows"]
    assert all(set(row["values"]) == {c["head"] for c in data["columns"]} for row in data["rows"])
    assert "█" in text
    assert "WHAT TO DO NEXT" in text
    for step in data["next"]:
        assert step["price"]["minutes"] > 0


def test_what_is_typed_into_the_file_gives_what_was_promised(first: Path) -> None:
    found = answer(first, "bore")
    (taken,) = [row for row in found["rows"] if row["mark"] == "take"]
    (change,) = taken["changes"]
    edit(first, {change["path"]: f"{change['value']} mm"})
    again = json.loads(run("assess", first, "--json").stdout)
    assert again["results"]["brakes"]["effort_6_43"]["value"] == pytest.approx(
        taken["values"]["full stop"], rel=1e-9
    )


@pytest.mark.parametrize("car", ["larkfield-first", "brackwater-first", "saltmarsh-first"])
@pytest.mark.parametrize("question", list(QUESTIONS))
def test_whatever_an_answer_says_to_type_can_be_typed(car: str, question: str) -> None:
    if question in {"thickness", "doubler", "rivets", "weld", "load-path"} and "brack" in car:
        pytest.skip("a dozen boxes each; one car is enough")
    project = read(car_text(car))
    found = QUESTIONS[question].answers(project.design, "brake", None)
    for step in found.steps:
        lines = dict(typed(change).split(" = ") for change in step.changes)
        tried = changed(project, {path: text.strip('"') for path, text in lines.items()})
        for change in step.changes:
            assert number(tried.design, change.path) == pytest.approx(change.value, rel=1e-4)


def test_a_length_can_be_typed_as_a_builder_writes_it(first: Path) -> None:
    cut = answer(first, "cut", "--by", "1 1/2 in")
    assert cut["answer"]["figures"][1]["value"] == pytest.approx(38.1, rel=1e-9)
    clutch = answer(first, "cut", "--pedal", "clutch")
    assert "clutch" in clutch["title"]


@pytest.mark.parametrize("arguments", [("bor",), ("cut", "--by", "5 kg")])
def test_what_cannot_be_asked_is_refused_in_sentences(
    first: Path, arguments: tuple[str, ...]
) -> None:
    result = run("ask", first, *arguments, "--json")
    assert result.exit_code == 2
    assert set(json.loads(result.stdout)["errors"][0]) >= {"where", "read", "accepts"}


def test_a_missing_number_leaves_an_answer_that_says_so(first: Path) -> None:
    text = first.read_text()
    first.write_text(re.sub(r"cg_height = \{[^}]*\}", 'cg_height = "?"', text))
    data = answer(first, "balance")
    assert data["outcome"] in {"fails", "open"}
    assert "no value" in data["answer"]["text"] or "not" in data["answer"]["text"]
