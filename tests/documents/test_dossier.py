"""The dossier as a reader meets it: read back from the PDF."""

import re
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from pedalwright.cli.open import worked
from pedalwright.documents.dossier import dossier_pdf
from pedalwright.documents.pictures import pictures
from pedalwright.project import new_file


def made(file: Path) -> bytes:
    about, design, assessment, steps = worked(file)
    return dossier_pdf(about, assessment, steps, pictures(design, assessment, about.units))


@pytest.fixture(
    scope="module", params=["larkfield-first", "larkfield-improved", "saltmarsh-improved"]
)
def pdf(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> bytes:
    file: Path = tmp_path_factory.mktemp("dossier") / f"{request.param}.toml"
    new_file(file, request.param)
    return made(file)


@pytest.fixture(scope="module")
def pages(pdf: bytes) -> list[str]:
    return [re.sub(r"\s+", " ", page.extract_text()) for page in PdfReader(BytesIO(pdf)).pages]


def test_page_one_tells_the_verdict_the_sums_and_who_signs(pages: list[str]) -> None:
    first = pages[0]
    assert "demands" in first
    assert "Three sums to check by hand" in first
    assert "Needs sign-off" in first
    assert "Assumed, to be measured" in first


def test_every_page_carries_the_first_caution(pages: list[str]) -> None:
    assert all("safety-critical" in page for page in pages)


def test_no_page_promises_anything(pages: list[str]) -> None:
    text = " ".join(pages).lower()
    assert not re.search(r"\b(guarante|approv|certifi)ed\b", text)


def test_every_part_is_there(pages: list[str]) -> None:
    text = " ".join(pages)
    for heading in (
        "Drawings",
        "Strength and give",
        "Findings",
        "Working",
        "Numbers it rests on",
        "Sources",
        "Cautions",
    ):
        assert re.search(rf"\d {heading}", text), heading


def test_who_gives_is_told_part_by_part(pages: list[str]) -> None:
    text = " ".join(pages)
    assert re.search(r"brake at [\d.]+ (N|lbf): who gives", text)
    assert "together" in text
    assert "takes hands on" in text


def test_same_inputs_same_bytes(tmp_path: Path) -> None:
    twice = []
    for folder in ("a", "b"):
        file = tmp_path / folder / "car.toml"
        file.parent.mkdir()
        new_file(file, "larkfield-improved")
        twice.append(made(file))
    assert twice[0] == twice[1]


def test_one_number_can_be_followed_to_the_last_page(pages: list[str]) -> None:
    """The pin radius of the file stands among the numbers the dossier rests on."""
    text = " ".join(pages)
    assert "brake.pedal.pin_radius" in text
