"""A limit met by a value: margin, verdict, what was not judged."""

import numpy as np
import pytest

from pedalwright.core.checks import Finding, Limit, Sense, Source
from pedalwright.core.units import Num

TRADE = Source("common practice", "no source", "trade")


def judged(sense: Sense, value: Num, bound: Num = 10.0) -> Finding:
    return Limit("brakes.example", "An example.", sense, "N", TRADE).check(value, bound)


@pytest.mark.parametrize(
    ("sense", "value", "margin", "ok"),
    [
        ("at most", 8.0, 0.2, True),
        ("at most", 10.0, 0.0, True),
        ("at most", 10.1, -0.01, False),
        ("at least", 12.0, 0.2, True),
        ("at least", 10.0, 0.0, True),
        ("at least", 9.9, -0.01, False),
    ],
)
def test_the_margin_is_the_share_of_the_bound_in_hand(
    sense: Sense, value: float, margin: float, ok: bool
) -> None:
    found = judged(sense, value)
    assert found.margin == pytest.approx(margin)
    assert found.ok == ok
    assert found.judged


def test_a_negative_bound_keeps_its_sense() -> None:
    assert judged("at most", -12.0, bound=-10.0).margin == pytest.approx(0.2)
    assert judged("at least", -12.0, bound=-10.0).margin == pytest.approx(-0.2)


@pytest.mark.parametrize("sense", ["at most", "at least"])
@pytest.mark.parametrize(("value", "bound"), [(np.nan, 10.0), (10.0, np.nan), (np.nan, np.nan)])
def test_what_has_no_value_is_not_judged_and_not_ok(
    sense: Sense, value: float, bound: float
) -> None:
    found = judged(sense, value, bound)
    assert not found.ok
    assert not found.judged


def test_a_batch_is_judged_one_by_one() -> None:
    found = judged("at most", np.array([8.0, 12.0, np.nan]))
    assert np.array_equal(found.ok, [True, False, False])
    assert np.array_equal(found.judged, [True, True, False])


def test_a_finding_knows_its_room_and_what_it_is_about() -> None:
    limit = Limit("brakes.example", "An example.", "at most", "N", TRADE)
    assert limit.weight == "must"
    found = limit.check(1.0, 2.0, "front circuit")
    assert (found.room, found.about) == ("brakes", "front circuit")
