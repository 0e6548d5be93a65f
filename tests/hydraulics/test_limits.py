"""For each limit of the cylinders, one design that breaks it."""

import numpy as np
import pytest

from pedalwright.hydraulics import Demand, Tandem, check, shortest_reserve, strokes

TANDEM = Tandem(bore=20.64, stroke=36.0)


@pytest.mark.parametrize(("volume", "broken"), [(3000.0, set()), (4000.0, {"hydraulics.stroke"})])
def test_a_third_of_the_stroke_stays_in_reserve(volume: float, broken: set[str]) -> None:
    found = strokes(TANDEM, Demand(front=volume, rear=2000.0), dead_stroke=1.5)
    used = shortest_reserve(TANDEM, found)
    findings = list(check(used))
    assert {finding.limit.code for finding in findings if not finding.ok} == broken
    (stroke,) = findings
    assert stroke.value == used


def test_what_is_missing_is_not_judged() -> None:
    (stroke,) = check(np.nan)
    assert not stroke.ok
    assert not stroke.judged
