"""A channel built into a box from the page: what it writes, and what it does for the pedal."""

from pathlib import Path

import pytest
from starlette.testclient import TestClient

from pedalwright.app.building import channel, offers
from pedalwright.assess import assess
from pedalwright.core.faults import InputError
from pedalwright.panels.box import made
from pedalwright.project import car_text, read

CAR = "/cars/larkfield-first.toml"


def test_it_is_written_as_a_part_of_the_file_and_makes_the_pedal_stiff() -> None:
    before = read(car_text("larkfield-first"))
    assert set(offers(before.design)) == {"brake", "clutch"}
    after = channel(before, "brake")
    (new,) = after.design.box.cheeks
    told = after.provenance["box.cheeks.brake_channel.rise"]
    assert (told.text, told.tag) == ("31.4 mm", "assumed")
    mount = after.design.brake.carrier.mount
    assert (mount.cylinder_on, mount.pivot_on) == (new.name, new.name)
    assert made(after.design.box, after.design.survey).panel(new.name) is not None
    was, now = (
        next(
            float(f.value)
            for f in assess(one.design).findings
            if (f.limit.code, f.about) == ("structure.give", "brake, 500 N")
        )
        for one in (before, after)
    )
    assert now < 0.3 * was
    assert list(offers(after.design)) == ["clutch"]


def test_what_it_replaces_stays_as_a_comment_and_all_else_as_it_was() -> None:
    before = read(car_text("larkfield-first"))
    after = channel(before, "brake")
    assert "# [box.hangers.brake_hanger]" in after.text
    assert after.design.box.hangers == tuple(
        one for one in before.design.box.hangers if one.name != "brake_hanger"
    )
    kept = [line for line in before.text.split("\n") if line in after.text.split("\n")]
    assert len(kept) > len(before.text.split("\n")) - 30


def test_both_pedals_are_carried_one_after_the_other_and_undone(
    client: TestClient, folder: Path
) -> None:
    file = folder / "larkfield-first.toml"
    before = file.read_text()
    page = client.get(CAR, params={"stage": "strength"}).text
    assert page.count('data-act="build"') == 2
    for pedal in ("brake", "clutch"):
        answer = client.post(f"{CAR}/build", json={"pedal": pedal})
        assert answer.status_code == 200, answer.text
    assert len(read(file).design.box.cheeks) == 2
    for _ in range(2):
        client.post(f"{CAR}/undo", json={})
    assert file.read_text() == before


def test_a_car_without_such_a_wall_is_offered_none_and_left_alone() -> None:
    project = read(car_text("larkfield-improved"))
    assert list(offers(project.design)) == []
    assert channel(project, "throttle") is project


def test_a_pedal_that_is_none_changes_nothing(client: TestClient, folder: Path) -> None:
    before = (folder / "larkfield-first.toml").read_text()
    client.post(f"{CAR}/build", json={"pedal": "horn"})
    assert (folder / "larkfield-first.toml").read_text() == before
    with pytest.raises(InputError):
        read("format = 1\n[box.cheeks.x]\non = 3\n")
