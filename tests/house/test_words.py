"""What is written here promises nothing, and depends on nobody's machine or tracker."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

WRITTEN = {".cfg", ".css", ".csv", ".js", ".html", ".md", ".py", ".toml", ".txt", ".typ", ".yaml"}

# A check can be passed; nothing here can promise that a car will stop.
PROMISE = re.compile(
    r"(?<![-\w])(safe|approved|certified|guaranteed|legal)(?![-\w])", re.IGNORECASE
)

# Somebody's own folders, and numbers that only a tracker could explain.
FOLDER = re.compile(r"(?<![\w.\]/])/(?:work|home|root|tmp|mnt|opt|Users)/")
TICKET = re.compile(r"(?:\b(?:issue|ticket|pull request|PR) ?#?|(?<![\w#&/]))#\d+\b(?!;)")


def written(checkout: Path) -> Iterator[Path]:
    """Every text that is part of the project, this one apart, which must name the words."""
    top = checkout.iterdir()
    folders = ("src", "tests", "docs", "benchmarks", "examples", "exploration", ".ci")
    below = [path for folder in folders for path in (checkout / folder).rglob("*")]
    for path in [*top, *below]:
        text = path.suffix in WRITTEN or path.name in {"Makefile", "run", ".importlinter"}
        if text and path.is_file() and path != Path(__file__):
            yield path


def found(pattern: re.Pattern[str], checkout: Path) -> list[str]:
    return [
        f"{path.relative_to(checkout)}:{number}: {line.strip()}"
        for path in written(checkout)
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1)
        if pattern.search(line)
    ]


@pytest.mark.parametrize(
    ("pattern", "caught", "passed"),
    [
        (PROMISE, "The pedal is safe.", "Brakes are safety-critical; yaml.safe_load, fail-safe"),
        (FOLDER, "see /home/ann/car.toml", "make PYTHON=/path/to/python3.11, a/tmp/b"),
        (TICKET, "mended, see #12", "colour: #1a2b3c; &#160; [text](page#2)"),
    ],
)
def test_the_patterns_catch_what_they_should(
    pattern: re.Pattern[str], caught: str, passed: str
) -> None:
    assert pattern.search(caught)
    assert not pattern.search(passed)


def test_nothing_is_promised(checkout: Path) -> None:
    assert found(PROMISE, checkout) == []


def test_nobodys_folders_are_named(checkout: Path) -> None:
    assert found(FOLDER, checkout) == []


def test_no_tracker_is_needed_to_read_the_texts(checkout: Path) -> None:
    assert found(TICKET, checkout) == []
