"""The invented cars that ship: each reads, and says where its numbers come from."""

from pathlib import Path

import pytest

from pedalwright.project import ProjectError, attempts, car_text, cars, diff, read


@pytest.mark.parametrize("name", cars())
def test_a_packaged_car_reads_and_nothing_in_it_is_missing(name: str) -> None:
    project = read(car_text(name))
    missing = [path for path, told in project.provenance.items() if told.tag == "missing"]
    assert missing == []
    assert project.name.lower().startswith(name.partition("-")[0])


@pytest.mark.parametrize("name", cars())
def test_what_is_assumed_says_why(name: str) -> None:
    told = read(car_text(name)).provenance
    assert [path for path, t in told.items() if t.tag == "assumed" and not t.note] == []


def test_attempts_come_in_the_order_in_which_they_were_made() -> None:
    assert attempts("larkfield") == ("larkfield-first", "larkfield-improved")
    assert attempts("larkfield-first") == ("larkfield-first",)
    assert attempts("brackwater") == ("brackwater-first", "brackwater-fix1", "brackwater-fix2")
    assert attempts("saltmarsh") == ("saltmarsh-first", "saltmarsh-improved")


def test_a_car_that_is_not_there_is_answered_with_those_that_are() -> None:
    with pytest.raises(ProjectError, match="larkfield"):
        attempts("larkfeld")
    with pytest.raises(ProjectError, match="Did you mean larkfield-first"):
        car_text("larkfield-frist")


def test_attempts_differ_in_what_their_notes_say() -> None:
    first, improved = (read(car_text(name)) for name in attempts("larkfield"))
    changes = {change.path: (change.old, change.new) for change in diff(first, improved)}
    assert changes["brake.pedal.pad_radius"] == ("248 mm", "272 mm")
    assert changes["brake.masters.bore"] == ("25.40 mm", "13/16 in")
    assert changes["clutch.master.bore"] == ("17.78 mm", "3/4 in")
    assert "car.wheelbase" not in changes
    assert diff(first, first) == ()


def test_a_tag_a_word_and_an_absence_are_differences() -> None:
    text = Path(__file__).with_name("car.toml").read_text(encoding="utf-8")
    old = read(text)
    new = text.replace('wheelbase = "2320 mm"', "", 1)
    new = new.replace('heel = "stays"', 'heel = "may lift"', 1)
    new = new.replace('mass = "980 kg"', 'mass = { value = "980 kg", tag = "assumed" }', 1)
    assert [tuple(change) for change in diff(old, read(new))] == [
        ("clutch.heel", "stays", "may lift"),
        ("car.mass", "980 kg", "980 kg (assumed)"),
        ("car.wheelbase", "2320 mm", "missing"),
    ]
