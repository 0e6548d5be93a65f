"""The page for builders says what the program does."""

import re
from pathlib import Path

from pedalwright.core.quantity import QuantityError, is_missing, parse

ROW = re.compile(r"^\| `(.+?)` \| (\S+) \| (.+) \|$", re.MULTILINE)


def page(checkout: Path) -> str:
    return (checkout / "docs" / "quantities.md").read_text(encoding="utf-8")


def answer(typed: str, unit: str) -> str:
    try:
        return parse(typed, unit).shown
    except QuantityError as refusal:
        return str(refusal)


def test_every_line_of_the_page_is_what_happens(checkout: Path) -> None:
    rows = ROW.findall(page(checkout))
    assert [(typed, answer(typed, unit)) for typed, unit, _ in rows] == [
        (typed, said) for typed, _, said in rows
    ]


def test_no_line_of_the_page_is_left_out(checkout: Path) -> None:
    lines = [line for line in page(checkout).splitlines() if line.startswith("| `")]
    assert len(lines) == len(ROW.findall(page(checkout))) > 40


def test_what_the_page_calls_missing_is(checkout: Path) -> None:
    sentence = page(checkout).rsplit("An empty box,", 1)[1].split(" is a missing")[0]
    names = re.findall(r"`(.+?)`", sentence)
    assert len(names) == 5
    assert all(is_missing(name) for name in names)
