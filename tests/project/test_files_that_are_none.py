"""Files that are no project: binary, cut short, newer, and TOML with a slip in it."""

from pathlib import Path

import pytest

from pedalwright.core.faults import InputError
from pedalwright.project import FileTroubleError, ProjectError, read
from pedalwright.project.reader import MOST_THINGS
from pedalwright.project.syntax import MOST_CHARACTERS

CAR = Path(__file__).with_name("car.toml").read_text(encoding="utf-8")


def sentence(text: str) -> str:
    with pytest.raises(ProjectError) as caught:
        read(text)
    return str(caught.value)


@pytest.mark.parametrize(
    ("data", "says"),
    [
        (b"\x89PNG\r\n\x1a\n\x00\xff", "line 1: read 'the bytes 89 50 4e 47"),
        ("format = 1\nname = 'Café'".encode("latin-1"), "line 2: read 'the bytes e9 27'"),
        ("format = 1".encode("utf-16"), "plain text in UTF-8"),
        (b"format = 1\nname = 'a'\n\x00\x00", "line 3: read 'a zero byte'"),
        (b"", "format = 1"),
    ],
)
def test_a_file_that_is_no_text(data: bytes, says: str, tmp_path: Path) -> None:
    path = tmp_path / "car.toml"
    path.write_bytes(data)
    with pytest.raises(ProjectError) as caught:
        read(path)
    assert says in str(caught.value)
    assert "car.toml" in str(caught.value)
    assert path.read_bytes() == data


def test_a_file_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(FileTroubleError) as caught:
        read(tmp_path / "none.toml")
    assert isinstance(caught.value, InputError)
    assert isinstance(caught.value, OSError)
    assert "none.toml" in str(caught.value)


def test_a_folder_is_no_file(tmp_path: Path) -> None:
    with pytest.raises(FileTroubleError, match="Name a project file"):
        read(tmp_path)


@pytest.mark.parametrize("cut", [0.2, 0.35, 0.5, 0.65, 0.8, 0.95])
def test_a_file_cut_short_within_an_entry_names_its_last_line(cut: float) -> None:
    start = CAR.index('= "', int(len(CAR) * cut))
    text = CAR[: start + 4]
    assert f"line {text.count(chr(10)) + 1}" in sentence(text)
    assert "cut short" in sentence(text)


def test_a_newer_file_is_refused_before_anything_else_is_judged() -> None:
    text = "format = 2\n[carriage]\nwheels = 3\n"
    said = sentence(text)
    assert "line 1, format" in said
    assert "newer" in said
    assert "carriage" not in said


@pytest.mark.parametrize("written", ['"1"', "0", "-1", "1.0", "true", "[1]"])
def test_another_format_is_refused(written: str) -> None:
    text = CAR.replace("format = 1", f"format = {written}", 1)
    if written == "1.0":
        read(text)
    else:
        assert "format = 1" in sentence(text)


SLIPS = [
    ('bore = "13/16 in"', "bore = 13/16 in", 'bore = "13/16 in"'),
    ('bore = "13/16 in"', 'bore = 13/16"', "bore = '13/16\"'"),
    ('bore = "13/16 in"', 'bore = "13/16""', "bore = '13/16\"'"),
    ('bore = "13/16 in"', 'bore = "13/16 in', 'bore = "13/16 in"'),
    ('bore = "13/16 in"', "bore = 20,64  # calliper", 'bore = "20,64"'),
    ('bore = "13/16 in"', "bore = 20.64 mm", 'bore = "20.64 mm"'),
    ('bore = "13/16 in"', "bore = ?", 'bore = "?"'),
    ('bore = "13/16 in"', "bore: 13", ""),
    ('bore = "13/16 in"', "bore =", ""),
    ('bore = "13/16 in"', 'bore = "20 mm"\nbore = "21 mm"', ""),
    ("[clutch.pedal]", "[brake.pedal]", ""),
    ("[clutch.pedal]", "[clutch.pedal", ""),
]


@pytest.mark.parametrize(("old", "new", "offer"), SLIPS)
def test_a_line_that_is_no_toml_is_named_and_mended(old: str, new: str, offer: str) -> None:
    text = CAR.replace(old, new, 1)
    with pytest.raises(ProjectError) as caught:
        read(text)
    (fault,) = caught.value.in_file
    assert fault.line == CAR[: CAR.index(old)].count("\n") + 1 + new.count("\n")
    assert fault.offers == ((offer,) if offer else ())
    if offer:
        read(CAR.replace(old, offer, 1))


def test_several_lines_that_are_no_toml_are_told_together() -> None:
    text = CAR.replace('mass = "980 kg"', "mass = 980 kg", 1)
    text = text.replace('bore = "13/16 in"', 'bore = 13/16"', 1)
    text = text.replace('stroke = "36 mm"', 'stroek = "36 mm"', 1)
    said = sentence(text)
    assert [line.partition("read")[2][:9] for line in said.splitlines()] == [
        " 'mass = ",
        " 'bore = ",
        " 'stroek'",
    ]


@pytest.mark.parametrize("text", ["x = " + "[" * 3000 + "]" * 3000, "x = " + "9" * 5000])
def test_what_would_choke_a_parser_is_refused(text: str) -> None:
    assert "beyond all measure" in sentence(f"format = 1\n{text}")


def test_a_file_far_too_long_is_refused() -> None:
    assert str(MOST_CHARACTERS) in sentence("# " + "x" * MOST_CHARACTERS)


def rows(count: int) -> str:
    mark = '\n[survey.marks.m{}]\nat = ["1 mm", "2 mm", "3 mm"]\n'
    return "".join(mark.format(n) for n in range(count))


@pytest.mark.slow
def test_ten_thousand_marks_are_read() -> None:
    assert len(read(CAR + rows(MOST_THINGS - 1)).design.survey.marks) == MOST_THINGS


def test_more_are_refused_and_the_limit_is_stated() -> None:
    said = sentence(CAR + rows(MOST_THINGS))
    assert f"survey.marks: read '{MOST_THINGS + 1} of them'" in said
    assert f"At most {MOST_THINGS}" in said


@pytest.mark.parametrize("name", ["../../etc/passwd", "C:\\car", "😀", "D 1", "a.b", 'say "hi"'])
def test_odd_names_are_only_names(name: str) -> None:
    key = "'" + name + "'"
    project = read(CAR.replace("[drivers.D2]", f"[drivers.{key}]", 1))
    assert project.design.drivers[1].name == name
    (path,) = [p for p in project.provenance if p.endswith(".trunk") and "D1" not in p]
    assert path.startswith('drivers."')


@pytest.mark.parametrize("name", ['""', '"  "', '"a\\nb"', '"\\u200b"', f'"{"x" * 61}"'])
def test_a_name_that_cannot_be_seen_is_refused(name: str) -> None:
    assert "A name is one line" in sentence(CAR.replace("[drivers.D2]", f"[drivers.{name}]", 1))


def test_windows_line_ends_and_a_byte_order_mark_change_nothing() -> None:
    plain = read(CAR)
    other = read("\ufeff" + CAR.replace("\n", "\r\n"))
    assert repr(other.design) == repr(plain.design)
    assert other.provenance == plain.provenance
