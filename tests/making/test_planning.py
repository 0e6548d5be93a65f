"""The order of work: laws on random networks, gates, access, circles, rivets from the middle."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from pedalwright.core.checks import Finding
from pedalwright.making.planning import (
    CURES,
    Job,
    Order,
    ancestors,
    check,
    order,
    rivet_sequence,
    skin_pins,
)

MOCK = Job(name="mock", does="Make it in card", hours=2.0, undo="throw it away")
TRIAL = Job(name="trial", does="Sit in it", hours=1.0, after=("mock",), gate=True)
CUT = Job(name="cut", does="Cut the wall", hours=1.0, after=("trial",), one_way=True)
BOLT = Job(name="bolt", does="Bolt the cylinder on", hours=1.0, after=("cut",), reaches=("N7",))
COVER = Job(
    name="cover", does="Rivet the cover on", hours=1.0, after=("cut",), one_way=True, hides=("N7",)
)
JOBS = (MOCK, TRIAL, CUT, COVER, BOLT)


@st.composite
def networks(draw: st.DrawFn) -> list[Job]:
    """Up to nine jobs, each waiting for some of those before it."""
    jobs: list[Job] = []
    for i in range(draw(st.integers(1, 9))):
        before = draw(st.sets(st.integers(0, i - 1), max_size=3)) if i else set()
        jobs.append(
            Job(
                name=f"J{i}",
                does=f"Job {i}",
                hours=draw(st.floats(0.25, 8.0)),
                after=tuple(f"J{j}" for j in sorted(before)),
                one_way=draw(st.booleans()),
            )
        )
    return jobs


@given(jobs=networks())
def test_nothing_begins_before_what_it_waits_for(jobs: list[Job]) -> None:
    plan = order(jobs)
    timed = {one.job.name: one for one in plan.jobs}
    place = {one.job.name: i for i, one in enumerate(plan.jobs)}
    assert set(timed) == {job.name for job in jobs}
    for job in jobs:
        for before in job.after:
            assert timed[before].end <= timed[job.name].start + 1e-9
            assert place[before] < place[job.name]


@given(jobs=networks())
def test_the_critical_path_is_as_long_as_the_work_and_has_no_slack(jobs: list[Job]) -> None:
    plan = order(jobs)
    hours = {job.name: job.hours for job in jobs}
    slack = {one.job.name: one.slack for one in plan.jobs}
    assert sum(hours[name] for name in plan.critical) == pytest.approx(plan.hours)
    assert all(slack[name] < 1e-9 for name in plan.critical)
    assert min(slack.values()) >= -1e-9


@given(jobs=networks(), late=st.floats(0.1, 3.0), which=st.integers(0, 8))
def test_a_job_may_be_late_by_its_slack(jobs: list[Job], late: float, which: int) -> None:
    plan = order(jobs)
    one = plan.jobs[which % len(plan.jobs)]
    slower = [
        replace(job, hours=job.hours + one.slack + late) if job == one.job else job for job in jobs
    ]
    assert order(slower).hours == pytest.approx(plan.hours + late)


def broken(jobs: tuple[Job, ...], **asked: tuple[str, ...]) -> dict[str, Finding]:
    found = {f.limit.code: f for f in check(jobs, order(jobs), **asked) if not f.ok}
    assert set(found) <= set(CURES)
    return found


def test_a_nut_is_tightened_before_it_is_shut_in() -> None:
    """Nobody wrote that the cover waits for the bolt; the nut says so."""
    plan = order(JOBS)
    assert [one.job.name for one in plan.jobs] == ["mock", "trial", "cut", "bolt", "cover"]
    assert "bolt" in ancestors([one.job for one in plan.jobs], "cover")
    assert broken(JOBS) == {}


def test_a_nut_that_has_to_be_tightened_behind_the_cover_is_named() -> None:
    late = replace(BOLT, after=("cover",))
    found = broken((MOCK, TRIAL, CUT, COVER, late))
    assert set(found) == {"making.reached"}
    assert found["making.reached"].about == "N7, once this is done: Rivet the cover on"
    assert "captive nut" in CURES["making.reached"]


def test_a_one_way_step_without_a_trial_is_named() -> None:
    found = broken((MOCK, TRIAL, replace(CUT, after=("mock",)), COVER, BOLT))
    assert set(found) == {"making.gate_first"}
    assert found["making.gate_first"].value == 0.0


def test_what_is_riveted_over_cannot_be_serviced() -> None:
    assert set(broken(JOBS, serviced=("N7",))) == {"making.serviced"}
    screwed = replace(COVER, one_way=False, undo="undo the screws")
    assert broken((MOCK, TRIAL, CUT, screwed, BOLT), serviced=("N7",)) == {}


def test_jobs_that_wait_for_each_other_are_named() -> None:
    one = Job(name="a", does="One", hours=1.0, after=("b",))
    other = Job(name="b", does="Other", hours=1.0, after=("a",))
    plan = order((one, other, MOCK))
    assert set(plan.circle) == {"a", "b"}
    assert np.isnan(plan.hours)
    found = broken((one, other, MOCK))
    assert set(found) == {"making.no_circle"}
    assert found["making.no_circle"].value == pytest.approx(1 / 3)


def test_what_can_be_undone_goes_before_what_cannot() -> None:
    fit = Job(name="fit", does="Clamp the pedals", hours=5.0, after=("trial",), undo="unclamp")
    plan = order((MOCK, TRIAL, CUT, fit))
    names = [one.job.name for one in plan.jobs]
    assert names.index("fit") < names.index("cut")


def test_the_next_step_only() -> None:
    plan: Order = order(JOBS)
    first = plan.next_step(frozenset())
    assert first is not None
    assert first.job.name == "mock"
    after = plan.next_step(frozenset({"mock", "trial"}))
    assert after is not None
    assert after.job.name == "cut"
    assert plan.next_step(frozenset(job.name for job in JOBS)) is None


def test_a_row_of_rivets_is_set_from_the_middle_outward_and_pins_come_last() -> None:
    row = [(35.0 * i, 0.0) for i in range(13)]
    steps = rivet_sequence(row)
    assert sorted(step.hole for step in steps) == list(range(13))
    assert [step.hole for step in steps if step.pinned] == [4, 8, 0, 12]
    assert [step.hole for step in steps[:4]] == [6, 5, 7, 3]
    assert steps[0].pinned is False
    assert steps[-1].pinned
    assert skin_pins(13) == 4
    assert skin_pins(0) == 0


def test_a_mistake_in_the_list_is_ours() -> None:
    with pytest.raises(AssertionError, match=r"nobody does \['welding'\]"):
        order([replace(MOCK, after=("welding",))])
    with pytest.raises(AssertionError, match="same name"):
        order([MOCK, MOCK])
