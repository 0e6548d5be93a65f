"""Findings put in order and into words."""

import numpy as np
import pytest

from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.documents.text import bar
from pedalwright.documents.verdict import by_room, compared, percent, state, verdict, weakest

HANDBOOK = Source("a handbook", "p. 1", "handbook")
MUST = Limit("brakes.must", "It stops.", "at most", "N", HANDBOOK)
SHOULD = Limit("driver.should", "It is comfortable.", "at least", "rad", HANDBOOK, "should")


def must(value: float) -> Finding:
    return MUST.check(value, 500.0)


def should(degrees: float) -> Finding:
    return SHOULD.check(np.deg2rad(degrees), np.deg2rad(75.0))


def test_a_should_that_fails_does_not_fail_the_car() -> None:
    judged = verdict([must(400.0), should(60.0)])
    assert judged.ok
    assert judged.shoulds_failed == 1


def test_what_could_not_be_judged_is_not_met() -> None:
    judged = verdict([must(np.nan)])
    assert not judged.ok
    assert judged.unjudged == 1
    assert state(must(np.nan)) == "unjudged"


def test_a_failing_must_is_weaker_than_a_worse_should() -> None:
    assert weakest([must(501.0), should(10.0), must(100.0)]).value == 501.0


def test_rooms_come_in_the_order_of_the_job_and_passing_ones_together() -> None:
    rooms = dict(by_room([must(400.0), must(450.0), must(600.0), should(80.0)]))
    assert list(rooms) == ["driver", "brakes"]
    assert [(row.finding.value, row.more) for row in rooms["brakes"]] == [(600.0, 0), (450.0, 1)]


def test_angles_are_said_in_degrees() -> None:
    assert compared(should(68.5)) == "68.5°, at least 75.0°"


@pytest.mark.parametrize(
    ("margin", "text"),
    [
        (0.123, "+12 %"),
        (-0.03, "-3 %"),
        (-0.0, "+0 %"),
        (np.nan, "?"),
        (40.0, "+999 %"),
        (np.inf, "+999 %"),
    ],
)
def test_margins_in_words(margin: float, text: str) -> None:
    assert percent(margin) == text


@pytest.mark.parametrize(
    ("margin", "gauge"),
    [
        (0.0, "│"),
        (0.4, "│████"),
        (5.0, "│██████████"),
        (-0.01, "█│"),
        (-0.4, "██│"),
        (-9, "█████│"),
        (np.inf, "│██████████"),
        (-np.inf, "█████│"),
    ],
)
def test_bars(margin: float, gauge: str) -> None:
    assert bar(margin) == gauge
