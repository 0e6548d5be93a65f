"""Case C22: Bhandari, Design of Machine Elements, ex. 12.9, four internal shoes.

Strength: handbook. The actuating force 5025.4576 N and the torque 2181.614 N·m were read in an
open file of worked solutions of the book; how the torque divides between the shoes was
computed independently with plain equations.
"""

from math import radians

import pytest

from pedalwright.brakes.drums.formulas import (
    friction_moment,
    leading_force,
    pressure_moment,
    shoe_torque,
    trailing_pressure,
)

MU, P_MAX, ARM = 0.3, 1.0, 200.0
SHOE = {"w": 50.0, "r": 250.0}
LINING = {"theta_1": radians(15.0), "theta_2": radians(75.0), "theta_max": radians(75.0)}
M_N = pressure_moment(P_MAX, h=200.0, **SHOE, **LINING)
M_F = friction_moment(MU, P_MAX, h=200.0, **SHOE, **LINING)


def test_c22_actuating_force() -> None:
    assert leading_force(M_N, M_F, ARM) == pytest.approx(5025.4576, abs=0.0006)


def test_c22_torque_of_each_shoe_and_of_all_four() -> None:
    leading = shoe_torque(MU, P_MAX, **SHOE, **LINING)
    trailing = shoe_torque(MU, trailing_pressure(P_MAX, M_N, M_F), **SHOE, **LINING)
    assert leading / 1000.0 == pytest.approx(686.298, abs=0.0006)
    assert trailing / 1000.0 == pytest.approx(404.510, abs=0.0006)
    assert 2.0 * (leading + trailing) / 1000.0 == pytest.approx(2181.614, abs=0.0011)
    factor = (leading + trailing) / (leading_force(M_N, M_F, ARM) * 250.0)
    assert factor == pytest.approx(0.8682, abs=0.00006)
