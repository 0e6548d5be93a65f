"""Long work: a process of its own, told how far it is, given up, never in the way of a change."""

import io
import re
import time
import zipfile
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from pedalwright.app.jobs import Job, Jobs
from pedalwright.app.tasks import Task
from pedalwright.project import car_text

CAR = "/cars/larkfield-first.toml"
TEXT = car_text("larkfield-first")


@pytest.fixture
def jobs() -> Iterator[Jobs]:
    found = Jobs()
    yield found
    found.close()


def task(kind: str, *args: str, text: str = TEXT) -> Task:
    return Task(kind=kind, title=kind, file="larkfield-first.toml", text=text, args=args)


def until_it_runs(job: Job) -> None:
    for _ in range(600):
        if job.state != "waits":
            return
        time.sleep(0.05)
    raise AssertionError("it never began")


def test_work_is_done_away_from_the_page_and_asked_for_once(jobs: Jobs) -> None:
    job = jobs.ask(task("ask", "bore", "brake", ""))
    assert jobs.ask(task("ask", "bore", "brake", "")) is job
    assert job.over.wait(60.0)
    assert job.state == "done"
    assert isinstance(job.result, str)
    assert "20.64" in job.result
    assert jobs.ask(task("ask", "bore", "brake", "")) is job


def test_what_runs_is_given_up_at_once_and_the_next_is_done_all_the_same(jobs: Jobs) -> None:
    long = jobs.ask(task("spread"))
    until_it_runs(long)
    behind = jobs.ask(task("sheets", "a4", "100", "100"))
    unwanted = jobs.ask(task("full"))
    started = time.monotonic()
    jobs.cancel(long)
    jobs.cancel(unwanted)
    assert (long.state, unwanted.state) == ("cancelled", "cancelled")
    assert behind.over.wait(60.0)
    assert behind.state == "done"
    assert time.monotonic() - started < 30.0
    assert jobs.ask(task("spread")) is not long


def test_a_question_does_not_wait_behind_what_takes_long(jobs: Jobs) -> None:
    long = jobs.ask(task("spread"))
    until_it_runs(long)
    question = jobs.ask(task("ask", "drag", "brake", ""))
    assert question.over.wait(60.0)
    assert (question.state, long.state) == ("done", "runs")


def test_a_file_that_cannot_be_read_is_told_in_its_own_words(jobs: Jobs) -> None:
    job = jobs.ask(task("spread", text="format = 9\n"))
    assert job.over.wait(60.0)
    assert job.state == "failed"
    assert "broken" not in job.says


def test_a_worker_that_dies_is_told_and_replaced(jobs: Jobs) -> None:
    job = jobs.ask(task("spread"))
    until_it_runs(job)
    time.sleep(0.3)
    worker = jobs._others.worker
    assert worker is not None
    worker._process.kill()
    assert job.over.wait(20.0)
    assert job.state == "failed"
    again = jobs.ask(task("ask", "drag", "brake", ""))
    assert again.over.wait(60.0)
    assert again.state == "done"


def test_nothing_is_left_running_when_the_server_goes(jobs: Jobs) -> None:
    job = jobs.ask(task("spread"))
    until_it_runs(job)
    time.sleep(0.3)
    worker = jobs._others.worker
    assert worker is not None
    jobs.close()
    assert not worker.alive
    assert job.state == "cancelled"


def test_the_folder_of_sheets_is_packed_and_nothing_else_is_written(
    client: TestClient, folder: Path, followed: Callable[[str], str]
) -> None:
    before = sorted(folder.rglob("*"))
    html = followed(f"{CAR}/beside/sheets?paper=a4&bar_x=98.4+mm&bar_y=")
    link = re.search(r'href="([^"]+/file)"', html)
    assert link is not None
    with zipfile.ZipFile(io.BytesIO(client.get(link[1]).content)) as packed:
        names = packed.namelist()
        assert names[0] == "index.html"
        assert any(name.endswith(".dxf") for name in names)
        assert packed.testzip() is None
    assert sorted(folder.rglob("*")) == before


def test_the_bench_is_changed_while_something_is_worked_out(client: TestClient) -> None:
    client.get(f"{CAR}/beside/spread")
    strip = client.get(f"{CAR}/jobs").text
    assert "data-running" in strip
    changed = client.post(f"{CAR}/change", json={"changes": {"brake.masters.bore": "13/16 in"}})
    assert changed.status_code == 200
    key = re.search(r'data-cancel="(\w+)"', strip)
    assert key is not None
    told = client.post(f"{CAR}/jobs/{key[1]}/cancel", json={}).json()
    assert told == {"state": "cancelled"}
    assert "before the last change" in client.get(f"{CAR}/jobs").text


@pytest.mark.parametrize(
    ("page", "status"),
    [
        ("beside/nothing", 404),
        ("jobs/0123", 404),
        ("jobs/0123/file", 404),
        ("beside/sheets?paper=A0", 422),
        ("beside/sheets?paper=a4&bar_x=300", 422),
        ("ask/cut?by=long", 422),
    ],
)
def test_what_is_not_there_or_cannot_be_is_said(client: TestClient, page: str, status: int) -> None:
    assert client.get(f"{CAR}/{page}").status_code == status
