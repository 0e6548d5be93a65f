"""Joint moments and the knee's sensitivity, solved independently with plain equations.

Strength: moments found twice, held to 0.1 N·m and 0.1 mm; slopes by central differences, held
to 0.001 degree per mm and 0.005 degree per degree.
"""

import numpy as np
import pytest

from pedalwright.core.points import Point
from pedalwright.driver import Body, joint_moments, knee_sensitivity, sole_at


def body(thigh: float, shank: float, ankle: tuple[float, float], ball: float) -> Body:
    return Body(
        thigh=thigh,
        shank=shank,
        heel_to_ball=ball,
        ankle_forward=ankle[0],
        ankle_height=ankle[1],
        shoe_length=np.nan,
        shoe_width=np.nan,
    )


A = body(432, 418, (81, 107), 203)
B = body(410, 395, (75, 95), 190)
D = body(379, 390, (66, 88), 176)
FLOOR = Point(0.0, 0.0, 0.0)


@pytest.mark.parametrize(
    ("leg", "hip", "sole", "push", "direction", "moments", "arms"),
    [
        pytest.param(A, (790, 255), 63.6, 500, 26.4, (-162.927646, -11.428457, -61.0),
                     (325.855293, 22.856915, 122.0), id="C8-1"),
        pytest.param(B, (800, 160), 66, 900, 5, (-80.983775, 61.146063, -70.025095),
                     (89.981972, 67.94007, 77.805662), id="C8-2"),
    ],
)  # fmt: skip
def test_independent_joint_moments(
    leg: Body,
    hip: tuple[float, float],
    sole: float,
    push: float,
    direction: float,
    moments: tuple[float, float, float],
    arms: tuple[float, float, float],
) -> None:
    posture = sole_at(leg, Point(hip[0], 0.0, hip[1]), 0.4, FLOOR, np.deg2rad(sole))
    found = joint_moments(posture, push, np.deg2rad(direction))
    newton_metres = [float(m) / 1000 for m in (found.hip, found.knee, found.ankle)]
    assert newton_metres == pytest.approx(list(moments), abs=0.1)
    assert [float(a) for a in (found.hip_arm, found.knee_arm, found.ankle_arm)] == pytest.approx(
        list(arms), abs=0.1
    )


@pytest.mark.parametrize(
    ("leg", "hip", "sole", "hip_rearward", "hip_up", "thigh", "sole_slope", "stretch"),
    [
        pytest.param(A, (790, 255), 63.6, 0.272427, 0.05032, -0.243224, -0.518638, 0.277035,
                     id="C9-1"),
        pytest.param(D, (735, 200), 60, 0.353477, 0.050505, -0.323485, -0.585988, 0.357067,
                     id="C9-2"),
    ],
)  # fmt: skip
def test_independent_sensitivity_of_the_knee(
    leg: Body,
    hip: tuple[float, float],
    sole: float,
    hip_rearward: float,
    hip_up: float,
    thigh: float,
    sole_slope: float,
    stretch: float,
) -> None:
    posture = sole_at(leg, Point(hip[0], 0.0, hip[1]), 0.4, FLOOR, np.deg2rad(sole))
    found = knee_sensitivity(leg, posture)
    assert np.rad2deg(found.hip_rearward) == pytest.approx(hip_rearward, abs=0.001)
    assert np.rad2deg(found.hip_up) == pytest.approx(hip_up, abs=0.001)
    assert np.rad2deg(found.thigh) == pytest.approx(thigh, abs=0.001)
    assert float(found.sole) == pytest.approx(sole_slope, abs=0.005)
    assert np.rad2deg(found.hip_to_ankle) == pytest.approx(stretch, abs=0.001)
