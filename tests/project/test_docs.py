"""What the pages on the project file say is what the program does."""

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from pedalwright.project import ProjectError, car_text, read
from pedalwright.project.keys_page import keys_page, notes
from pedalwright.structure.parts import PushRod

CAR = Path(__file__).with_name("car.toml").read_text(encoding="utf-8")


@pytest.fixture
def blocks(checkout: Path) -> Callable[[str], list[str]]:
    page = (checkout / "docs" / "project-file.md").read_text(encoding="utf-8")
    return lambda kind: re.findall(rf"^```{kind}\n(.*?)^```", page, re.MULTILINE | re.DOTALL)


def test_the_page_of_keys_is_in_step(checkout: Path) -> None:
    page = (checkout / "docs" / "project-keys.md").read_text(encoding="utf-8")
    assert page == keys_page(), "run `make fix`"


def test_a_comment_belongs_to_the_field_below_it() -> None:
    assert notes(PushRod)["inside"] == "0 for a solid rod."
    assert "elastic" not in notes(PushRod)


def test_the_example_of_a_file_reads(blocks: Callable[[str], list[str]]) -> None:
    (example,) = blocks("toml")
    project = read(example)
    assert project.design.brake.pedal.pin_radius == 54.5
    assert project.design.survey.face("front_wall").offset == 0.0


def test_an_entry_of_a_point_reads_as_told(checkout: Path) -> None:
    page = (checkout / "docs" / "project-file.md").read_text(encoding="utf-8")
    found = re.search(r"`(at = .*?)`", page)
    assert found is not None
    told = read(f"format = 1\n[survey.marks.rim_bottom]\n{found[1]}").provenance
    tags = [told[f"survey.marks.rim_bottom.at.{axis}"].tag for axis in "xyz"]
    assert tags == ["measured", "assumed", "missing"]


def test_the_sentences_are_those_that_are_told(blocks: Callable[[str], list[str]]) -> None:
    (example,) = blocks("text")
    text = CAR.replace('mass = "980 kg"', "mass = 980 kg", 1)
    text = text.replace('"2320 mm"', '"2.32"', 1).replace("bore =", "boer =", 1)
    with pytest.raises(ProjectError) as caught:
        read(text)
    said = str(caught.value).splitlines()
    told = example.splitlines()
    assert len(said) == len(told) == 3
    for one, other in zip(said, told, strict=True):
        assert without_what_may_grow(one) == without_what_may_grow(other)


def without_what_may_grow(sentence: str) -> str:
    """Without the number of the line and the list of known keys."""
    return re.sub(r"^.*?line \d+|(?<=Known here: ).*?\.", "", sentence)


def test_the_example_in_python_runs(
    blocks: Callable[[str], list[str]],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    (example,) = blocks("python")
    monkeypatch.chdir(tmp_path)
    Path("my-car.toml").write_text(CAR, encoding="utf-8")
    exec(compile(example, "project-file.md", "exec"), {})
    assert "brake.pedal.pin_radius 54.5 ±0.5 mm -> 55 mm" in capsys.readouterr().out
    assert {path.name for path in tmp_path.iterdir()} == {"my-car.toml", "my-car.toml.1.bak"}


def test_the_shelf_of_the_page_reads(blocks: Callable[[str], list[str]]) -> None:
    (shelf,) = [block for block in blocks("ini") if block.startswith("[stock]")]
    car, _, _ = car_text("larkfield-improved").partition("\n[stock]\n")
    stock = read(f"{car}\n{shelf}").design.stock
    assert [arm.pad_radius for arm in stock.arms] == [310.0]
    assert [(tin.count, tin.pack) for tin in stock.rivets] == [(62.0, 10.0)]
