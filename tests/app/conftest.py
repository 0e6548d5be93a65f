"""A folder of cars, and the page over it, without a browser."""

import re
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from pedalwright.app.guard import Entrance
from pedalwright.app.site import site
from pedalwright.app.workspace import Workspace
from pedalwright.project import new_file

HOST = "127.0.0.1:8417"
CAR = "larkfield-first.toml"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A folder with two attempts at a car, below one that is nobody's business."""
    (tmp_path / "secret.toml").write_text("format = 1\n")
    cars = tmp_path / "cars"
    cars.mkdir()
    for name in ("larkfield-first", "larkfield-improved"):
        new_file(cars / f"{name}.toml", name)
    return cars


@pytest.fixture
def client(folder: Path) -> Iterator[TestClient]:
    """The page as this machine sees it; a mistake of ours is raised in the test."""
    entrance = Entrance(hosts=frozenset({HOST}))
    with TestClient(site(folder, entrance), base_url=f"http://{HOST}") as client:
        yield client


@pytest.fixture
def work(folder: Path) -> Workspace:
    """One car being worked on, without a page."""
    return Workspace(folder / CAR)


@pytest.fixture
def followed(client: TestClient) -> Callable[[str], str]:
    """The answer of a page that may still be working on it, as its script follows it."""

    def follow(page: str) -> str:
        html = client.get(page).text
        found = re.search(r'data-job="(\w+)" data-state="(\w+)"', html)
        assert found is not None, html
        for _ in range(900):
            told = client.get(f"/cars/{CAR}/jobs/{found[1]}").json()
            if told["state"] == "done":
                answer: str = told["html"]
                return answer
            assert told["state"] in {"waits", "runs"}, told
            time.sleep(0.1)
        raise AssertionError("it was never done")

    return follow
