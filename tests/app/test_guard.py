"""Who is let in, and what no question can do."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from pedalwright.app.guard import MOST_BYTES, Entrance
from pedalwright.app.site import site

HOST, CAR = "127.0.0.1:8417", "/cars/larkfield-first.toml"
TOKEN = "t" * 43


@pytest.fixture
def guest(folder: Path) -> Iterator[TestClient]:
    """A page on a network, and somebody who has not come through the door."""
    entrance = Entrance(hosts=frozenset({HOST, "192.0.2.7:8417"}), token=TOKEN, cookie="own")
    with TestClient(site(folder, entrance), base_url=f"http://{HOST}") as client:
        yield client


@pytest.mark.parametrize("host", ["evil.example", "127.0.0.1", "127.0.0.1:80", f"{HOST}.evil", ""])
def test_a_name_that_is_not_the_pages_own_is_refused(client: TestClient, host: str) -> None:
    answer = client.get("/", headers={"host": host})
    assert answer.status_code == 421
    assert "pedalwright" not in answer.text


def test_every_answer_says_what_a_page_may_do(client: TestClient) -> None:
    for path in ("/", CAR, "/static/bench.js", "/nowhere", f"{CAR}/take/results.json"):
        headers = client.get(path).headers
        policy = headers["content-security-policy"]
        assert "default-src 'none'" in policy, path
        assert "unsafe" not in policy, path
        assert headers["x-content-type-options"] == "nosniff", path
        assert headers["referrer-policy"] == "no-referrer", path
        assert "access-control-allow-origin" not in headers, path


def test_nothing_on_a_page_needs_what_the_policy_forbids(client: TestClient) -> None:
    for path in ("/", CAR, f"{CAR}/ask/bore", f"{CAR}/papers"):
        html = client.get(path).text
        assert not re.search(r"<script(?![^>]*\bsrc=)", html), path
        assert not re.search(r"<[^>]*\s(style|on\w+)=", html), path
        assert not re.search(r"(src|href)=\"(?!/|\?|#)", html), path


@pytest.mark.parametrize(
    "kind", ["text/plain", "application/x-www-form-urlencoded", "multipart/form-data", ""]
)
def test_a_form_of_another_site_changes_nothing(
    client: TestClient, folder: Path, kind: str
) -> None:
    body = '{"changes": {"name": "mine"}}'
    answer = client.post(f"{CAR}/change", content=body, headers={"content-type": kind})
    assert answer.status_code == 415
    assert 'name = "mine"' not in (folder / "larkfield-first.toml").read_text()


def test_a_script_of_another_site_changes_nothing(client: TestClient) -> None:
    sent = {"changes": {"name": "mine"}}
    for origin, status in (("http://evil.example", 403), ("null", 403), (f"http://{HOST}", 200)):
        answer = client.post(f"{CAR}/change", json=sent, headers={"origin": origin})
        assert answer.status_code == status, origin


def test_too_much_is_refused_whether_its_length_is_told_or_not(client: TestClient) -> None:
    large = b"[" + b" " * MOST_BYTES + b"]"
    kind = {"content-type": "application/json"}
    assert client.post("/new", content=large, headers=kind).status_code == 413
    pieces = (large[at : at + 100_000] for at in range(0, len(large), 100_000))
    assert client.post("/new", content=pieces, headers=kind).status_code == 413


@pytest.mark.parametrize("method", ["PUT", "DELETE", "PATCH", "OPTIONS"])
def test_a_page_is_read_and_changed_and_nothing_else(client: TestClient, method: str) -> None:
    assert client.request(method, CAR).status_code == 405


@pytest.mark.parametrize(
    "name",
    [
        "../secret.toml",
        "%2e%2e%2fsecret.toml",
        "..%5csecret.toml",
        "%2fetc%2fpasswd",
        "link.toml",
        ".hidden.toml",
        "larkfield-first.toml.1.bak",
        "larkfield-first",
        "a%00.toml",
        "",
    ],
)
def test_nothing_outside_the_folder_is_read(client: TestClient, folder: Path, name: str) -> None:
    (folder / "link.toml").symlink_to(folder.parent / "secret.toml")
    (folder / ".hidden.toml").write_text("format = 1\n")
    for rest in ("", "/state", f"/take/{name}"):
        answer = client.get(f"/cars/{name}{rest}")
        assert answer.status_code in {404, 405}, rest
        assert "format" not in answer.text


@pytest.mark.parametrize(
    "name", ["../out.toml", "/out.toml", "out", ".out.toml", "a/b.toml", "x" * 200]
)
def test_nothing_outside_the_folder_is_written(client: TestClient, folder: Path, name: str) -> None:
    before = sorted(folder.parent.rglob("*"))
    for path, sent in (
        ("/new", {"name": name, "like": "larkfield-first"}),
        ("/bring", {"name": name, "text": "format = 1\n"}),
    ):
        assert client.post(path, json=sent).status_code == 422
    assert sorted(folder.parent.rglob("*")) == before


def test_what_is_not_there_is_said_without_a_trace(client: TestClient) -> None:
    for path in ("/nowhere", "/cars/none.toml", f"{CAR}/take/nothing.svg", f"{CAR}/ask/nothing"):
        answer = client.get(path)
        assert answer.status_code == 404
        assert "Traceback" not in answer.text


def test_a_mistake_of_ours_is_said_without_a_trace(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(*_: object) -> object:
        raise ZeroDivisionError("a secret of the works")

    monkeypatch.setattr("pedalwright.app.bench.fragments.whole", broken)
    page = site(folder, Entrance(hosts=frozenset({HOST})))
    with TestClient(page, base_url=f"http://{HOST}", raise_server_exceptions=False) as client:
        answer = client.get(CAR)
    assert answer.status_code == 500
    assert "your file is as it was last saved" in answer.text
    assert "secret" not in answer.text
    assert "Zero" not in answer.text


class TestOnANetwork:
    def test_nothing_is_seen_without_the_token(self, guest: TestClient) -> None:
        for path in ("/", CAR, "/static/bench.js", f"{CAR}/take/larkfield-first.toml", "/x"):
            assert guest.get(path).status_code == 401, path
        assert guest.post(f"{CAR}/undo", json={}).status_code == 401

    @pytest.mark.parametrize("token", ["", "t", TOKEN + "t", "T" * 43, "é"])
    def test_a_wrong_token_opens_nothing(self, guest: TestClient, token: str) -> None:
        assert guest.get("/enter", params={"token": token}).status_code == 401
        guest.cookies.set("own", token.encode("ascii", "ignore").decode())
        assert guest.get("/").status_code == 401

    def test_the_link_lets_in_once_and_the_cookie_after_it(self, guest: TestClient) -> None:
        door = guest.get("/enter", params={"token": TOKEN, "to": CAR}, follow_redirects=False)
        assert door.status_code == 303
        assert door.headers["location"] == CAR  # the token is gone from the address
        cookie = door.headers["set-cookie"].lower()
        assert "httponly" in cookie
        assert "samesite=strict" in cookie
        assert guest.get(CAR).status_code == 200

    @pytest.mark.parametrize("to", ["//evil.example", "http://evil.example", "/\\evil.example"])
    def test_the_door_leads_nowhere_else(self, guest: TestClient, to: str) -> None:
        door = guest.get("/enter", params={"token": TOKEN, "to": to}, follow_redirects=False)
        assert door.headers["location"] == "/"

    def test_the_door_is_shut_where_there_is_no_token(self, client: TestClient) -> None:
        assert client.get("/enter", params={"token": ""}).status_code == 401
