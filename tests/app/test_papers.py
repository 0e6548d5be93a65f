"""Answers, comparison and what can be taken along."""

import html
import io
import json
import re
from collections.abc import Callable
from pathlib import Path
from xml.etree import ElementTree as ET

from pypdf import PdfReader
from starlette.testclient import TestClient

from pedalwright.documents.questions import QUESTIONS
from pedalwright.project import read

CAR = "/cars/larkfield-first.toml"


def test_every_question_is_answered_on_a_page(
    client: TestClient, followed: Callable[[str], str]
) -> None:
    for name, question in QUESTIONS.items():
        page = f"{CAR}/ask/{name}?by=10+mm"
        assert 'class="answer' in followed(page), name
        text = html.unescape(client.get(page).text)
        assert html.escape(question.asks, quote=False) in text
        assert 'class="answer' in text, "what was worked out is there at once"


def test_the_list_says_which_questions_help(client: TestClient) -> None:
    listed = client.get(f"{CAR}/ask").text
    assert set(re.findall(r"/ask/([\w-]+)", listed)) == set(QUESTIONS)
    assert "helps with" in listed


def test_what_an_answer_says_to_type_can_be_written_into_the_file(
    client: TestClient, folder: Path, followed: Callable[[str], str]
) -> None:
    page = followed(f"{CAR}/ask/clutch")
    found = re.search(r"data-change='([^']+)'", page)
    assert found is not None
    changes = json.loads(html.unescape(found[1]))
    assert changes == {"clutch.master.bore": "20.638 mm"}
    assert client.post(f"{CAR}/change", json={"changes": changes}).status_code == 200
    master = read(folder / "larkfield-first.toml").design.clutch.master
    assert master is not None
    assert master.bore == 20.638


def test_a_length_that_cannot_be_read_is_answered_with_what_can(client: TestClient) -> None:
    answer = client.get(f"{CAR}/ask/cut", params={"by": "a bit"})
    assert answer.status_code == 422
    assert "a bit" in answer.text


def test_two_files_stand_side_by_side(client: TestClient) -> None:
    page = client.get(f"{CAR}/compare", params={"with": "larkfield-improved.toml"}).text
    assert page.count("<svg") == 2
    assert "brake.pedal.pin_radius" in page
    assert re.search(r"Mended: [1-9]", page)
    assert client.get(f"{CAR}/compare", params={"with": "../secret.toml"}).status_code == 404


def test_everything_listed_can_be_taken(client: TestClient) -> None:
    listed = set(re.findall(rf'href="{CAR}/take/([^"]+)"', client.get(f"{CAR}/papers").text))
    assert {"dossier.pdf", "results.json", "larkfield-first.toml", "brake-side.svg"} <= listed
    for name in listed:
        content = client.get(f"{CAR}/take/{name}").content
        match name.rpartition(".")[2]:
            case "pdf":
                assert len(PdfReader(io.BytesIO(content)).pages) > 1
            case "json":
                assert json.loads(content)["findings"]
            case "svg":
                assert ET.fromstring(content).tag.endswith("svg")
            case _:
                assert content


def test_the_project_file_is_taken_as_it_is(client: TestClient, folder: Path) -> None:
    taken = client.get(f"{CAR}/take/larkfield-first.toml")
    assert taken.content == (folder / "larkfield-first.toml").read_bytes()
    assert "attachment" in taken.headers["content-disposition"]


def test_the_cautions_stand_at_the_foot_of_every_page(client: TestClient) -> None:
    for path in (
        "/",
        CAR,
        f"{CAR}/ask",
        f"{CAR}/ask/bore",
        f"{CAR}/compare",
        f"{CAR}/papers",
        "/x",
    ):
        text = " ".join(client.get(path).text.split())
        assert "Brakes, clutch and throttle are safety-critical." in text, path
        assert "Never lie under a car held by a jack." in text, path


class TestTheFolder:
    def test_its_cars_are_listed_and_nothing_else(self, client: TestClient, folder: Path) -> None:
        (folder / "notes.txt").write_text("x")
        page = client.get("/").text
        assert re.findall(r'href="/cars/([^"]+)"', page) == [
            "larkfield-first.toml",
            "larkfield-improved.toml",
        ]
        assert str(folder.parent) not in page

    def test_a_new_one_is_like_an_invented_car_and_never_over_another(
        self, client: TestClient, folder: Path
    ) -> None:
        sent = {"name": "my car.toml", "like": "saltmarsh-first"}
        assert client.post("/new", json=sent).json() == {"file": "my car.toml"}
        assert client.get("/cars/my car.toml").status_code == 200
        assert client.post("/new", json=sent).status_code == 422
        assert client.post("/new", json=sent | {"like": "x", "name": "b.toml"}).status_code == 422
        assert not (folder / "b.toml").exists()

    def test_one_from_elsewhere_is_copied_even_with_faults_to_mend(
        self, client: TestClient, folder: Path
    ) -> None:
        sent = {"name": "theirs.toml", "text": "format = 1\n[car]\nmass = 'heavy'\n"}
        assert client.post("/bring", json=sent).status_code == 200
        assert (folder / "theirs.toml").read_text() == sent["text"]
        assert client.get("/cars/theirs.toml").status_code == 422
