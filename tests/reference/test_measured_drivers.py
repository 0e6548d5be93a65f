"""Thirty-eight measured drivers (a public teaching data set): hip fore-aft against stature.

Their hips move back 0.43 mm per mm of stature, standard error 0.053. Strength: read data,
line computed by us; a placement of average drivers should keep within two standard errors.
"""

import numpy as np
import pytest

from pedalwright.core.points import Point
from pedalwright.driver import Person, body, hip_for_ankle
from pedalwright.driver.yardsticks import mean_hip_behind_ball, shoe_plane_angle

SLOPE, TWO_ERRORS = 0.4265, 0.11
STATURES = np.array([1550.0, 1900.0])


def slope(positions: np.ndarray) -> float:
    return float(np.diff(positions)[0] / np.diff(STATURES)[0])


def test_the_seat_model_from_memory_moves_back_as_drivers_do() -> None:
    found = mean_hip_behind_ball(STATURES, 255, np.deg2rad(13.5), 550, 0)
    assert slope(np.asarray(found)) == pytest.approx(SLOPE, abs=TWO_ERRORS)


def test_our_own_legs_move_the_hip_back_as_drivers_do() -> None:
    """Every stature with the same sole and ankle angle, as the SAE's manikin sits.

    Measured from the ball of the foot, where the pedal is.
    """
    legs = body(Person(stature=STATURES))
    sole = shoe_plane_angle(255)
    heel = Point(0.0, 0.0, 0.0)
    hip = hip_for_ankle(legs, heel, sole, np.deg2rad(80.5), 255)
    ball = legs.heel_to_ball * -np.cos(sole)
    assert slope(np.asarray(hip.x - ball)) == pytest.approx(SLOPE, abs=TWO_ERRORS)
