"""A net of 60 marks and 300 tapes: eight known hooks, the rest taped to five of them and others."""

from functools import cache

import numpy as np

from pedalwright.core.points import Point
from pedalwright.survey import Adjustment, Distance, Station, adjust

MARKS, HOOKS, TAPES, EACH = 60, 8, 300, 5
#: Standard deviation of a tape, mm.
SIGMA = 1.0


@cache
def _net() -> tuple[list[Station], list[Distance]]:
    rng = np.random.default_rng(61)
    at = rng.uniform((0.0, -600.0, -100.0), (1200.0, 600.0, 500.0), (MARKS, 3))
    pairs = {(int(h), p) for p in range(HOOKS, MARKS) for h in rng.permutation(HOOKS)[:EACH]}
    while len(pairs) < TAPES:
        one, other = sorted(int(i) for i in rng.integers(HOOKS, MARKS, 2))
        if one < other:
            pairs.add((one, other))
    stations = [
        Station(name=f"M{i}", at=Point(*at[i].tolist())) if i < HOOKS else Station(name=f"M{i}")
        for i in range(MARKS)
    ]
    tapes = [
        Distance(
            hook=f"M{one}",
            to=f"M{other}",
            length=float(np.linalg.norm(at[one] - at[other]) + rng.normal(0.0, SIGMA)),
            sigma=SIGMA,
        )
        for one, other in sorted(pairs)
    ]
    return stations, tapes


def adjusted() -> Adjustment:
    """Place all marks, check all tapes."""
    found = adjust(*_net())
    assert len(found.marks) == MARKS, "every mark is placed"
    assert not found.two_places, "on one side of its hooks"
    return found
