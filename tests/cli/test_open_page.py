"""`pedalwright open`, as it is run: it answers, saves, says who may come in, and stops at once."""

import re
import signal
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from pedalwright.project import new_file


@pytest.fixture
def car(tmp_path: Path) -> Path:
    path = tmp_path / "car.toml"
    new_file(path, "larkfield-first")
    return path


@contextmanager
def opened(*arguments: str) -> Iterator[tuple[subprocess.Popen[str], str]]:
    """The command as it runs, and the link it printed."""
    command = [sys.executable, "-u", "-m", "pedalwright", "open", *arguments, "--no-browser"]
    with subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    ) as run:
        assert run.stdout is not None
        try:
            link = re.search(r"http://\S+", run.stdout.readline())
            assert link is not None
            yield run, link[0]
        finally:
            run.kill()


def got(link: str) -> str:
    for _ in range(200):
        try:
            with urllib.request.urlopen(link, timeout=10) as answer:
                text: str = answer.read().decode()
                return text
        except urllib.error.HTTPError:
            raise
        except OSError:
            time.sleep(0.05)
    raise AssertionError("it never answered")


def test_it_opens_a_car_and_stops_at_once(car: Path) -> None:
    with opened(str(car)) as (run, link):
        assert "<h1>Larkfield, first attempt</h1>" in got(link)
        assert re.match(r"http://127\.0\.0\.1:\d+/cars/car\.toml$", link)
        run.send_signal(signal.SIGINT)
        assert run.wait(timeout=5) == 0
        assert run.stderr is not None
        assert run.stderr.read() == ""


def test_a_second_one_finds_a_port_of_its_own(car: Path) -> None:
    with opened(str(car)) as (_, first), opened(str(car)) as (_, second):
        assert first != second
        assert "Larkfield" in got(first)
        assert "Larkfield" in got(second)


def test_a_folder_lists_its_cars(car: Path) -> None:
    with opened(str(car.parent)) as (_, link):
        assert 'href="/cars/car.toml"' in got(link)


def test_on_a_network_only_the_printed_link_lets_in(car: Path) -> None:
    with opened(str(car), "--lan") as (_, link):
        door = re.sub(r"//[^:/]+", "//127.0.0.1", link)
        where = door.partition("/enter")[0]
        with pytest.raises(urllib.error.HTTPError, match="401"):
            got(f"{where}/cars/car.toml")
        jar = urllib.request.build_opener(urllib.request.HTTPCookieProcessor())
        with jar.open(door, timeout=10) as answer:
            assert b"<h1>Larkfield" in answer.read()


def test_a_file_with_faults_is_told_and_nothing_is_opened(tmp_path: Path) -> None:
    path = tmp_path / "car.toml"
    path.write_text('format = 1\n[car]\nmass = "heavy"\n')
    ran = subprocess.run(
        [sys.executable, "-m", "pedalwright", "open", str(path), "--no-browser"],
        capture_output=True,
        text=True,
        check=False,
        timeout=30,
    )
    assert ran.returncode == 2
    assert "line 3" in ran.stderr
    assert "Traceback" not in ran.stderr
