"""Body lengths as shares of stature: Drillis and Contini 1966 as quoted by Winter; de Leva 1996.

Strength: the shares were read second-hand in three places that agree; de Leva's mean stature
of 1741 mm is from memory. Tolerance 0.1 mm.
"""

import pytest

from pedalwright.driver import Person, body
from pedalwright.driver.yardsticks import (
    shank_by_de_leva,
    standing_hip_height,
    standing_knee_height,
    thigh_by_de_leva,
)


@pytest.mark.parametrize(
    ("stature", "thigh", "shank", "ankle", "foot", "breadth", "hip", "knee"),
    [
        pytest.param(1756, 430.22, 431.976, 68.484, 266.912, 96.58, 930.68, 500.46, id="R-1756"),
        pytest.param(1500, 367.5, 369.0, 58.5, 228.0, 82.5, 795.0, 427.5, id="R-1500"),
    ],
)
def test_shares_of_stature(
    stature: float,
    thigh: float,
    shank: float,
    ankle: float,
    foot: float,
    breadth: float,
    hip: float,
    knee: float,
) -> None:
    """A shoe adds 25 mm under the heel, 20 to the length and 10 to the width (common practice)."""
    found = body(Person(stature=stature))
    assert float(found.thigh) == pytest.approx(thigh, abs=0.1)
    assert float(found.shank) == pytest.approx(shank, abs=0.1)
    assert float(found.ankle_height) == pytest.approx(ankle + 25, abs=0.1)
    assert float(found.shoe_length) == pytest.approx(foot + 20, abs=0.1)
    assert float(found.shoe_width) == pytest.approx(breadth + 10, abs=0.1)
    assert float(standing_hip_height(stature)) == pytest.approx(hip, abs=0.1)
    assert float(standing_knee_height(stature)) == pytest.approx(knee, abs=0.1)


@pytest.mark.parametrize(
    ("stature", "thigh", "shank"),
    [
        pytest.param(1756, 425.837565, 444.093509, id="R-1756"),
        pytest.param(1500, 363.756462, 379.350948, id="R-1500"),
    ],
)
def test_second_opinion_of_de_leva(stature: float, thigh: float, shank: float) -> None:
    assert thigh_by_de_leva(stature) == pytest.approx(thigh, abs=0.1)
    assert shank_by_de_leva(stature) == pytest.approx(shank, abs=0.1)


def test_the_ball_of_the_foot_is_where_the_sae_shoe_has_it() -> None:
    """203 mm for a stature of 1750 mm; the share is ours, so this is a comparison of two."""
    assert float(body(Person(stature=1750)).heel_to_ball) == pytest.approx(203, abs=0.1)
