"""The bench without a browser: what it shows, what a change answers, what a second tab hears."""

import asyncio
import json
import re
from pathlib import Path
from typing import Any

import pytest
from starlette.testclient import TestClient

from pedalwright.app.fragments import whole
from pedalwright.app.streams import revisions, watch
from pedalwright.app.views import view
from pedalwright.app.workspace import Workspace
from pedalwright.assess import assess
from pedalwright.documents.verdict import state, verdict
from pedalwright.project import car_text, read

CAR = "/cars/larkfield-first.toml"
PIN = "brake.pedal.pin_radius"


def pin_in(folder: Path) -> str:
    return read(folder / "larkfield-first.toml").provenance[PIN].text


def asked(client: TestClient, act: str, **sent: object) -> dict[str, Any]:
    answer = client.post(f"{CAR}/{act}", json=sent)
    assert answer.status_code == 200, answer.text
    found: dict[str, Any] = answer.json()
    return found


def test_the_page_says_how_the_car_comes_out_and_lists_all_that_fails(client: TestClient) -> None:
    html = client.get(CAR).text
    findings = assess(read(car_text("larkfield-first")).design).findings
    assert f"<h1>{read(car_text('larkfield-first')).name}</h1>" in html
    assert str(verdict(findings)) in html
    failing = [f for f in findings if not f.ok]
    assert len(re.findall(r'<li class="finding (?:fails|short|unjudged)"', html)) == len(failing)


def test_the_worst_that_must_be_met_is_told_first(client: TestClient) -> None:
    html = client.get(CAR).text
    states = re.findall(r'<li class="finding (\w+)"', html)
    assert states == sorted(states, key=["unjudged", "fails", "short"].index)


def test_each_stage_counts_what_fails_in_it(client: TestClient) -> None:
    findings = assess(read(car_text("larkfield-first")).design).findings
    html = client.get(f"{CAR}/state").json()["html"]["stages"]
    fails = [int(n) for n in re.findall(r'class="fails">(\d+) fail', html)]
    assert sum(fails) == sum(state(f) == "fails" for f in findings)


def test_a_missing_number_is_counted_offered_and_never_nought(
    client: TestClient, folder: Path
) -> None:
    found = asked(client, "change", changes={"brake.masters.bore": "?"}, view={"stage": "brakes"})
    assert "missing" in found["html"]["stages"]
    assert "Measure what is missing in brakes." in found["html"]["next"]
    assert found["values"]["brake.masters.bore"]["tag"] == "missing"
    assert "unjudged" in found["html"]["findings"]
    assert 'bore = "?"' in (folder / "larkfield-first.toml").read_text()


def test_a_drag_redraws_without_saving_and_its_end_saves(client: TestClient, folder: Path) -> None:
    before = client.get(f"{CAR}/state").json()
    handle = next(h for h in before["handles"] if h["name"] == "pin")
    place = {"x": handle["x"], "y": handle["y"] + 5.0}
    tried = asked(client, "drag", handle="pin", **place)
    assert tried["revision"] > before["revision"]
    assert tried["html"]["drawing"] != before["html"]["drawing"]
    assert tried["html"]["ground"] == before["html"]["ground"]
    assert "was 4.01" in tried["html"]["figures"]
    assert "Since you took hold" in tried["html"]["since"]
    assert pin_in(folder) == "62 mm"
    dropped = asked(client, "drop")
    assert pin_in(folder) == tried["values"][PIN]["text"] == "57.2 mm"
    assert dropped["says"].startswith("Saved. ")
    undone = asked(client, "undo")
    assert pin_in(folder) == "62 mm"
    assert undone["html"]["drawing"] == before["html"]["drawing"]


def test_keys_move_by_steps_and_never_get_lost(client: TestClient, folder: Path) -> None:
    for _ in range(3):
        asked(client, "nudge", handle="pivot", x=0.0, y=1.0)
    asked(client, "nudge", handle="pivot", x=-10.0, y=0.0)
    asked(client, "drop")
    pivot = read(folder / "larkfield-first.toml").design.brake.pedal.pivot
    assert (pivot.x, pivot.z) == (110.0, 353.0)


def test_a_place_that_cannot_be_is_refused_with_a_sentence(client: TestClient) -> None:
    before = client.get(f"{CAR}/state").json()
    answer = client.post(f"{CAR}/drag", json={"handle": "pad", "x": 120.0, "y": 351.0})
    assert answer.status_code == 422
    assert answer.json()["faults"][0]["key"].startswith("brake.pedal.")
    after = client.get(f"{CAR}/state").json()
    assert after["html"]["drawing"] == before["html"]["drawing"]


@pytest.mark.parametrize(
    ("typed", "shown"),
    [("2 1/4 in", "57.15 mm"), ("57,5 mm", "57.5 mm"), ("5.75 cm", "57.5 mm")],
)
def test_a_field_takes_what_a_builder_writes_and_says_what_it_read(
    client: TestClient, folder: Path, typed: str, shown: str
) -> None:
    found = asked(client, "change", changes={PIN: typed}, view={"stage": "levers"})
    assert found["values"][PIN]["text"] == typed
    assert shown in found["values"][PIN]["shown"]
    assert pin_in(folder) == typed


@pytest.mark.parametrize("typed", ["1,234 mm", "900 mm", "57 kg", "pin", "57 mm 3", "5:1"])
def test_a_field_refuses_with_what_it_read_and_what_it_takes(
    client: TestClient, folder: Path, typed: str
) -> None:
    answer = client.post(f"{CAR}/change", json={"changes": {PIN: typed}})
    assert answer.status_code == 422
    (fault,) = answer.json()["faults"]
    assert fault["key"] == PIN
    assert fault["read"]
    assert fault["accepts"].endswith(".")
    assert pin_in(folder) == "62 mm"


@pytest.mark.parametrize(
    "sent",
    [
        {"changes": {}},
        {"changes": [PIN]},
        {"changes": {PIN: 3}},
        {"changes": {PIN: "60 mm\nformat = 2"}},
        {"changes": {"brake.pedal": "60 mm"}},
        {"changes": {"no.such.entry": "60 mm"}},
        {"changes": {PIN: {"value": "60 mm", "tag": "guessed"}}},
        {"changes": {PIN: "x" * 5000}},
        {"view": []},
        [],
    ],
)
def test_what_no_page_sends_is_refused(client: TestClient, folder: Path, sent: object) -> None:
    before = (folder / "larkfield-first.toml").read_text()
    assert client.post(f"{CAR}/change", json=sent).status_code == 422
    assert (folder / "larkfield-first.toml").read_text() == before


@pytest.mark.parametrize("x", ["NaN", "1e999", "true", '"3"', "null", "1e9"])
def test_a_drag_to_no_place_is_refused(client: TestClient, x: str) -> None:
    body = f'{{"handle": "pad", "x": {x}, "y": 100}}'
    kind = {"content-type": "application/json"}
    assert client.post(f"{CAR}/drag", content=body, headers=kind).status_code == 422


def test_whatever_a_builder_writes_is_shown_and_never_run(client: TestClient) -> None:
    evil = '<script>alert("1")</script>&amp;'
    asked(client, "change", changes={"name": evil, "note": evil})
    for path in (CAR, f"{CAR}/papers", f"{CAR}/ask/bore", f"{CAR}/compare"):
        html = client.get(path).text
        assert "<script>alert" not in html, path
        assert "&lt;script&gt;" in html, path


def test_the_numbers_of_a_handle_stand_beside_the_drawing(client: TestClient) -> None:
    html = client.get(f"{CAR}/held", params={"handle": "pad"}).text
    paths = re.findall(r'data-path="([^"]+)"', html)
    assert paths == ["brake.pedal.pad_radius", "brake.pedal.pad_lean"]
    assert client.get(f"{CAR}/held", params={"handle": "nose"}).status_code == 422


def test_every_field_has_a_label_and_says_what_was_read(client: TestClient) -> None:
    for stage in ("survey", "driver", "levers", "brakes", "clutch", "throttle", "strength"):
        html = client.get(CAR, params={"stage": stage}).text
        labels = re.findall(r'<label for="([^"]+)"', html)
        fields = re.findall(r'<(?:input|select) id="(field-[^"]+)"', html)
        assert fields, stage
        assert set(fields) <= set(labels), stage
        assert html.count('id="field-') == len(set(re.findall(r'id="(field-[^"]+)"', html))), stage


def test_the_foot_goes_down_through_the_whole_stroke(client: TestClient) -> None:
    seen = [
        client.get(f"{CAR}/state", params={"down": down, "part": "quick"}).json()
        for down in (0, 25, 50, 75, 100)
    ]
    assert len({found["html"]["drawing"] for found in seen}) == 5
    travels = [float(found["at"].split(" mm")[0]) for found in seen]
    stop = assess(read(car_text("larkfield-first")).design).brake.hard_stop.pad_travel
    assert travels == pytest.approx([stop * share for share in (0, 0.25, 0.5, 0.75, 1)], rel=1e-3)


def test_an_address_that_asks_for_nonsense_shows_the_usual(client: TestClient) -> None:
    odd = {"stage": "x", "pedal": "y", "down": "1e999", "drivers": "z|", "wide": "-4", "high": "q"}
    assert client.get(CAR, params=odd).status_code == 200


def test_the_working_behind_a_figure_ends_in_that_figure(client: TestClient) -> None:
    html = client.get(f"{CAR}/working", params={"code": "brakes.effort", "about": ""}).text
    assert "F_pedal = F_known · a_wanted / a_known" in html
    assert "= 517 N" in html
    assert client.get(f"{CAR}/working", params={"code": "x", "about": ""}).status_code == 404


def test_a_broken_file_is_told_line_by_line(client: TestClient, folder: Path) -> None:
    (folder / "broken.toml").write_text('format = 1\n[car]\nmass = "heavy"\n')
    answer = client.get("/cars/broken.toml")
    assert answer.status_code == 422
    assert "line 3" in answer.text
    assert "heavy" in answer.text


def test_a_file_an_editor_broke_keeps_the_page_and_says_so(
    client: TestClient, folder: Path
) -> None:
    client.get(CAR)
    file = folder / "larkfield-first.toml"
    file.write_text(file.read_text().replace('"980 kg"', '"980 elephants"'))
    found = client.get(f"{CAR}/state").json()
    assert "changed by somebody else" in found["html"]["state"]
    assert "car.mass" in found["html"]["state"]
    assert client.post(f"{CAR}/change", json={"changes": {PIN: "60 mm"}}).status_code == 422


class TestTabs:
    def test_a_second_tab_hears_of_every_state_or_the_newest(self, work: Workspace) -> None:
        async def listen() -> list[int]:
            news = revisions(work, "run")
            heard = [await anext(news)]
            for pin in (61.0, 60.0, 59.0):
                work.try_out({PIN: pin})  # faster than the tab: it hears of the last
            heard.append(await anext(news))
            await news.aclose()  # type: ignore[attr-defined]
            return [json.loads(event.removeprefix("data: "))["revision"] for event in heard]

        assert asyncio.run(listen()) == [0, 3]

    def test_a_tab_that_is_gone_is_told_nothing_more(self, work: Workspace) -> None:
        async def listen() -> None:
            news = revisions(work, "run")
            await anext(news)
            await news.aclose()  # type: ignore[attr-defined]

        asyncio.run(listen())
        assert work._listeners == []

    def test_what_an_editor_saves_is_noticed_while_nobody_asks(self, work: Workspace) -> None:
        async def notice() -> None:
            watching = asyncio.create_task(watch(lambda: [work], every=0.01))
            work.path.write_text(work.path.read_text().replace('"62 mm"', '"62.25 mm"'))
            for _ in range(500):
                await asyncio.sleep(0.01)
                if work.revision:
                    break
            watching.cancel()

        asyncio.run(notice())
        assert work.shown.project.provenance[PIN].text == "62.25 mm"

    def test_what_one_changes_is_what_the_other_asks_for(self, client: TestClient) -> None:
        mine = asked(client, "change", changes={PIN: "60 mm"}, view={"stage": "levers"})
        theirs = client.get(f"{CAR}/state", params={"stage": "levers"}).json()
        assert theirs == {key: mine[key] for key in theirs}


def test_a_window_stands_still_while_something_is_dragged(work: Workspace) -> None:
    looking = view({"stage": "levers"}, work.shown.project.design)

    def box(name: str) -> str:
        drawing = whole(work, looking, form=False)["html"][name]
        return re.search(r'viewBox="([^"]+)"', drawing)[1]  # type: ignore[index]

    still = box("drawing")
    assert box("ground") == still
    work.try_out({"brake.pedal.pad_radius": 320.0})
    assert box("drawing") == still
    assert box("ground") == still


def test_what_is_dragged_or_typed_is_assumed_and_what_a_tape_found_is_measured(
    client: TestClient, folder: Path
) -> None:
    def told() -> tuple[str, str]:
        found = read(folder / "larkfield-first.toml").provenance[PIN]
        return found.text, found.tag

    assert told() == ("62 mm", "measured")
    asked(client, "nudge", handle="pin", x=0.0, y=5.0)
    asked(client, "drop")
    assert told()[1] == "assumed"
    asked(client, "undo")
    assert told() == ("62 mm", "measured")
    asked(client, "change", changes={PIN: "60 mm"})
    assert told() == ("60 mm", "assumed")
    asked(client, "change", changes={PIN: "60.2 mm"}, measured=True)
    assert told() == ("60.2 mm", "measured")


def test_a_handle_let_go_where_it_was_changes_nothing(client: TestClient, folder: Path) -> None:
    before = (folder / "larkfield-first.toml").read_text()
    for by in (2.0, -2.0):
        asked(client, "nudge", handle="pin", x=0.0, y=by)
    asked(client, "drop")
    assert (folder / "larkfield-first.toml").read_text() == before


@pytest.mark.parametrize("side", ["plan", "front"])
def test_from_above_and_from_the_seat_pedals_are_moved_across_the_car(
    client: TestClient, folder: Path, side: str
) -> None:
    looks = {"side": side}
    handles = client.get(f"{CAR}/state", params=looks).json()["handles"]
    pivot = next(h for h in handles if h["name"] == "clutch.pivot")
    across = "x" if side == "front" else "y"
    place = {"x": pivot["x"], "y": pivot["y"]} | {across: pivot[across] + 10.0}
    asked(client, "drag", handle="clutch.pivot", view=looks, **place)
    asked(client, "drop", view=looks)
    assert read(folder / "larkfield-first.toml").design.clutch.pedal.pivot.y == 272.0


@pytest.mark.parametrize("side", ["space", "box"])
def test_in_space_nothing_is_taken_hold_of_and_it_is_there_without_a_script(
    client: TestClient, side: str
) -> None:
    html = client.get(CAR, params={"side": side, "turn": "5", "tip": "99"}).text
    assert client.get(f"{CAR}/state", params={"side": side}).json()["handles"] == []
    drawing = html.partition('id="drawing"')[2].partition('id="handles"')[0]
    assert "<svg" in drawing
    if side == "space":
        assert "turn=6" in html
        assert 'data-turned="5 5"' in html
