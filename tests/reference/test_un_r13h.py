"""Cases C10, C11, C12: limit lines of UN R13-H and the older R13.

Strength: the coefficients 0.0060 and 0.0158, 2 v2/150 and the formula of the mean deceleration
were read in public texts that quote the rules; the limit line of Annex 5, 0.0067 and v2/150
are from memory, to verify. The arithmetic was done independently with plain equations.
"""

import numpy as np
import pytest

from pedalwright.brakes.formulas import (
    front_adhesion,
    front_lock,
    rear_adhesion,
    rear_lock,
    utilisation_limit,
)
from pedalwright.brakes.stop.formulas import (
    allowed_distance,
    implied_deceleration,
    mean_deceleration,
)

#: The two-seater of C08 with 68 % of its braking in front.
LOADS = {"phi": 0.68, "psi": 1.1 / 2.3, "h": 460.0, "L": 2300.0}


@pytest.mark.parametrize(
    ("k", "least", "reached"),
    [(0.2, 0.10, 0.1495), (0.4, 0.24, 0.3188), (0.6, 0.38, 0.5124), (0.8, 0.52, 0.7358)],
)
def test_c10_limit_line_from_memory(k: float, least: float, reached: float) -> None:
    first_lock = np.minimum(front_lock(mu=k, **LOADS), rear_lock(mu=k, **LOADS))
    assert utilisation_limit(k) == pytest.approx(least)
    assert first_lock == pytest.approx(reached, abs=0.00006)
    assert first_lock >= utilisation_limit(k)


def test_c10_the_rear_curve_stays_below_the_front() -> None:
    z = np.linspace(0.15, 0.8, 66)
    assert np.all(front_adhesion(z=z, **LOADS) > rear_adhesion(z=z, **LOADS))


@pytest.mark.parametrize(
    ("b", "speed", "distance"),
    [
        (0.0060, 100.0, 70.0),
        (0.0060, 60.0, 27.6),
        (0.0067, 100.0, 77.0),
        (0.0067, 60.0, 30.12),
        (0.0158, 100.0, 168.0),
        (0.0158, 60.0, 62.88),
        (1 / 150, 80.0, 50.667),
    ],
)
def test_c11_stopping_distance(b: float, speed: float, distance: float) -> None:
    assert allowed_distance(speed, b) == pytest.approx(distance, abs=0.0006)


@pytest.mark.parametrize(
    ("b", "deceleration"),
    [(0.0060, 6.43), (0.0067, 5.7582), (0.0158, 2.4418), (1 / 150, 5.787), (2 / 150, 2.8935)],
)
def test_c11_deceleration_behind_it(b: float, deceleration: float) -> None:
    assert implied_deceleration(b) == pytest.approx(deceleration, abs=0.0006)


def test_c12_mean_deceleration_of_a_logged_stop() -> None:
    found = mean_deceleration(80.0 / 3.6, 10.0 / 3.6, 27.957, 67.159)
    assert found == pytest.approx(6.2001, abs=0.0006)


def test_c12_how_long_the_brakes_took_to_bite_drops_out() -> None:
    early = mean_deceleration(80.0 / 3.6, 10.0 / 3.6, 27.957, 67.159)
    late = mean_deceleration(80.0 / 3.6, 10.0 / 3.6, 27.957 + 15.0, 67.159 + 15.0)
    assert late == pytest.approx(early)
