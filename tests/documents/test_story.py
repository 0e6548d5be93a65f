"""Attempts side by side."""

from pedalwright.core.checks import Limit, Source
from pedalwright.documents.outside import METRIC
from pedalwright.documents.story import story_text

EFFORT = Limit(
    "brakes.effort", "It stops.", "at most", "N", Source("a handbook", "p. 1", "handbook")
)
TRAVEL = Limit(
    "brakes.travel", "It is short.", "at most", "mm", Source("a handbook", "p. 2", "handbook")
)


def test_only_what_fails_somewhere_is_told_with_its_cure() -> None:
    first = [EFFORT.check(517.0, 500.0), TRAVEL.check(40.0, 90.0)]
    then = [EFFORT.check(274.0, 500.0), TRAVEL.check(75.0, 90.0)]
    text = story_text([("car-first", first), ("car-improved", then)], METRIC)
    assert "517 N fails" in text
    assert "274 N passes" in text
    assert "It is short." not in text


def test_a_car_without_a_fault_says_so() -> None:
    assert "Nothing fails" in story_text([("car-one", [EFFORT.check(1.0, 500.0)])], METRIC)
