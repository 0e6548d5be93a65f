"""Every entry of a file and every room belongs to one stage of the job."""

import pytest

from pedalwright.app.seen import seen
from pedalwright.app.stages import STAGES, counts, stage_of
from pedalwright.documents.verdict import ROOMS, state
from pedalwright.project import car_text, cars, read


@pytest.mark.parametrize("car", cars())
def test_every_entry_of_a_car_has_its_stage(car: str) -> None:
    project = read(car_text(car))
    homeless = [p for p in (*project.provenance, *project.words) if stage_of(p) is None]
    assert homeless == []


def test_every_room_is_judged_in_one_stage() -> None:
    assert sorted(room for stage in STAGES for room in stage.rooms) == sorted(ROOMS)


def test_no_entry_could_be_in_two_stages() -> None:
    begins = [begin for stage in STAGES for begin in stage.entries]
    assert len(begins) == len(set(begins))


def test_the_counts_are_those_of_the_findings() -> None:
    now = seen(read(car_text("brackwater-first")))
    told = counts(now.about, now.assessment.findings)
    states = [state(finding) for finding in now.assessment.findings]
    assert sum(count.fails for count in told) == states.count("fails")
    assert sum(count.short for count in told) == states.count("short")
    assert sum(count.unjudged for count in told) == states.count("unjudged")
    assert sum(count.missing for count in told) == len(now.about.tagged("missing"))
