"""A file is written whole or not at all, beside a numbered copy of what was there."""

import os
import stat
from pathlib import Path

import pytest

from pedalwright.project import (
    AlreadyThereError,
    ChangedMeanwhileError,
    FileTroubleError,
    ProjectError,
    edit,
    new_file,
    read,
)

CAR = Path(__file__).with_name("car.toml").read_text(encoding="utf-8")
PIN = {"brake.pedal.pin_radius": "55 mm"}


@pytest.fixture
def car(tmp_path: Path) -> Path:
    path = tmp_path / "car.toml"
    path.write_bytes(CAR.encode())
    return path


def names(folder: Path) -> set[str]:
    return {path.name for path in folder.iterdir()}


def test_an_edit_is_on_the_disk_and_the_old_file_beside_it(car: Path) -> None:
    after = edit(car, PIN)
    assert car.read_text(encoding="utf-8") == after.text
    assert read(car).design.brake.pedal.pin_radius == 55.0
    assert (car.parent / "car.toml.1.bak").read_text(encoding="utf-8") == CAR
    assert names(car.parent) == {"car.toml", "car.toml.1.bak"}


def test_copies_are_numbered_and_never_written_over(car: Path) -> None:
    (car.parent / "car.toml.2.bak").write_text("mine", encoding="utf-8")
    first = edit(car, PIN)
    edit(first, {"car.mass": "990 kg"})
    assert (car.parent / "car.toml.2.bak").read_text(encoding="utf-8") == "mine"
    assert (car.parent / "car.toml.3.bak").read_text(encoding="utf-8") == first.text


def test_an_edit_that_changes_nothing_writes_nothing(car: Path) -> None:
    edit(car, {"brake.pedal.pin_radius": "54.5 ±0.5 mm"})
    assert names(car.parent) == {"car.toml"}


def test_a_value_that_cannot_be_read_writes_nothing(car: Path) -> None:
    with pytest.raises(ProjectError, match=r"car\.toml, line \d+, brake\.pedal\.pin_radius"):
        edit(car, {**PIN, "car.mass": "991 kg", "brake.pedal.pin_radius": "5:1"})
    assert car.read_text(encoding="utf-8") == CAR
    assert names(car.parent) == {"car.toml"}


def test_a_file_saved_by_somebody_else_meanwhile_is_left_alone(car: Path) -> None:
    project = read(car)
    theirs = CAR.replace("980 kg", "985 kg")
    car.write_text(theirs, encoding="utf-8")
    with pytest.raises(ChangedMeanwhileError, match="nothing was written"):
        edit(project, PIN)
    assert car.read_text(encoding="utf-8") == theirs
    assert names(car.parent) == {"car.toml"}


def test_a_newer_file_is_left_alone(car: Path) -> None:
    car.write_text("format = 2\n", encoding="utf-8")
    with pytest.raises(ProjectError, match="newer"):
        edit(car, PIN)
    assert car.read_text(encoding="utf-8") == "format = 2\n"
    assert names(car.parent) == {"car.toml"}


@pytest.mark.parametrize("broken", ["fsync", "write"])
def test_a_disk_that_fails_leaves_the_file_as_it_was(
    car: Path, broken: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    project = read(car)
    calls = 0
    real = getattr(os, broken)

    def fails_for_the_new_file(*arguments: object) -> object:
        nonlocal calls
        calls += 1
        if calls > 1:
            raise OSError(28, "No space left on device")
        return real(*arguments)

    monkeypatch.setattr(os, broken, fails_for_the_new_file)
    with pytest.raises(FileTroubleError, match="No space left"):
        edit(project, PIN)
    assert calls > 1
    assert car.read_text(encoding="utf-8") == CAR
    assert {name for name in names(car.parent) if not name.endswith(".bak")} == {"car.toml"}


def test_a_name_that_cannot_be_taken_leaves_the_file_as_it_was(
    car: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(_: Path, target: Path) -> Path:
        raise PermissionError(13, "Permission denied", str(target))

    monkeypatch.setattr(Path, "replace", refuse)
    with pytest.raises(FileTroubleError, match="Permission denied"):
        edit(car, PIN)
    assert car.read_text(encoding="utf-8") == CAR
    assert {name for name in names(car.parent) if not name.endswith(".bak")} == {"car.toml"}


def test_a_link_stays_a_link_and_rights_stay_as_they_were(car: Path, tmp_path: Path) -> None:
    car.chmod(0o640)
    link = tmp_path / "link.toml"
    link.symlink_to(car)
    edit(link, PIN)
    assert link.is_symlink()
    assert read(car).design.brake.pedal.pin_radius == 55.0
    assert stat.S_IMODE(car.stat().st_mode) == 0o640


def test_line_ends_and_byte_order_mark_stay_as_they_were(tmp_path: Path) -> None:
    path = tmp_path / "car.toml"
    data = b"\xef\xbb\xbf" + CAR.replace("\n", "\r\n").encode()
    path.write_bytes(data)
    edit(path, PIN)
    assert path.read_bytes() == data.replace("54.5 ±0.5 mm".encode(), b"55 mm")


def test_a_new_file_is_never_written_over_another(tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    new_file(path, "larkfield-first")
    written = path.read_bytes()
    with pytest.raises(AlreadyThereError) as caught:
        new_file(path, "larkfield-improved")
    assert isinstance(caught.value, FileExistsError)
    assert path.read_bytes() == written


def test_a_new_file_needs_a_folder(tmp_path: Path) -> None:
    with pytest.raises(FileTroubleError, match="Name a file that can be written"):
        new_file(tmp_path / "none" / "mine.toml", "larkfield-first")
