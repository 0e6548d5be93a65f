"""The page of a demo: one file that needs nothing else to be looked at."""

import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from pedalwright.cli import main


@pytest.fixture(scope="module")
def page(tmp_path_factory: pytest.TempPathFactory) -> str:
    folder: Path = tmp_path_factory.mktemp("demo")
    assert CliRunner().invoke(main, ["demo", "larkfield", "-o", str(folder)]).exit_code == 0
    return (folder / "index.html").read_text("utf-8")


def test_nothing_is_fetched_from_anywhere(page: str) -> None:
    assert not re.search(r"(src|href)=\"(https?:)?//", page)
    assert "<script" not in page


def test_both_attempts_their_verdicts_and_their_documents(page: str) -> None:
    assert page.index("Larkfield, first attempt") < page.index("Larkfield, improved")
    assert 'class="verdict fails"' in page
    assert 'class="verdict met"' in page
    assert 'href="larkfield-improved/dossier.pdf"' in page


def test_rooms_that_fail_stand_open(page: str) -> None:
    first, improved = page.split("<h1>")[1:3]
    assert '<details open="">' in first
    assert "linkage: all met" in improved


def test_each_drawing_is_described_by_its_own_words(page: str) -> None:
    ids = re.findall(r'\bid="([^"]+)"', page)
    assert len(ids) == len(set(ids))
    for named in re.findall(r'aria-labelledby="([^"]+)"', page):
        assert set(named.split()) <= set(ids)
    titles = dict(re.findall(r'<title id="([^"]+)">([^<]+)<', page))
    assert titles["attempt-1-ratio-title"] == titles["attempt-2-ratio-title"]


def test_drawings_are_inside_and_cautions_at_the_foot(page: str) -> None:
    assert page.count("<svg") >= 12
    assert page.rindex("Never lie under a car held by a jack.") > page.rindex("</svg>")
