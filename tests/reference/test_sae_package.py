"""Where drivers sit by the SAE's equations; yardsticks, not limits.

Strength: the shoe plane (J4004), the pedal plane (J1516) and the 50 and 95 % seat curves
(J1517) were read second-hand in public code; all others are from memory, so that agreeing
with them proves that they were copied truly and no more. Tolerance 0.1 mm and 0.05 degree.
"""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.assess import assess
from pedalwright.core.points import Point
from pedalwright.driver import Body, hip_for_ankle, sole_at
from pedalwright.driver.yardsticks import (
    eyes_above_heel,
    eyes_behind_ball,
    hip_behind_ball,
    hip_behind_heel,
    hip_chosen_by,
    mean_hip_behind_ball,
    pedal_plane_angle,
    seat_reference,
    shoe_plane_angle,
    sitting,
)
from pedalwright.project import car_text, read

SHARES = (97.5, 95, 90, 50, 10, 5, 2.5)


@pytest.mark.parametrize(
    ("h30", "shoe_deg", "pedal_deg", "curves", "heel_95", "heel_50", "ball_height"),
    [
        pytest.param(150, 72.279, 72.817,
                     (986.776, 970.553, 949.935, 878.466, 809.767, 788.912, 774.039),
                     908.763, 816.677, 193.368, id="B-H30-150"),
        pytest.param(200, 68.836, 69.04,
                     (984.877, 969.951, 951.415, 884.17, 818.189, 798.393, 781.97),
                     896.659, 810.878, 189.307, id="B-H30-200"),
        pytest.param(255, 63.642, 63.886,
                     (972.032, 957.997, 941.397, 877.421, 814.247, 795.758, 778.537),
                     867.868, 787.292, 181.895, id="B-H30-255"),
        pytest.param(330, 54.627, 55.17,
                     (936.357, 922.632, 908.077, 846.229, 786.576, 770.106, 753.333),
                     805.117, 728.713, 165.527, id="B-H30-330"),
    ],
)  # fmt: skip
def test_seat_curves_and_sole_angles(
    h30: float,
    shoe_deg: float,
    pedal_deg: float,
    curves: tuple[float, ...],
    heel_95: float,
    heel_50: float,
    ball_height: float,
) -> None:
    sole = shoe_plane_angle(h30)
    assert np.rad2deg(sole) == pytest.approx(shoe_deg, abs=0.05)
    assert np.rad2deg(pedal_plane_angle(h30)) == pytest.approx(pedal_deg, abs=0.05)
    assert [hip_chosen_by(share, h30) for share in SHARES] == pytest.approx(list(curves), abs=0.1)
    assert hip_behind_heel(hip_chosen_by(95, h30), sole) == pytest.approx(heel_95, abs=0.1)
    assert hip_behind_heel(hip_chosen_by(50, h30), sole) == pytest.approx(heel_50, abs=0.1)
    assert 203 * np.sin(sole) == pytest.approx(ball_height, abs=0.1)


@pytest.mark.parametrize("car", ["larkfield-improved", "saltmarsh-improved"])
def test_a_seated_driver_is_set_beside_the_curves_of_his_seat_s_height(car: str) -> None:
    """The hip's own place, and the curves at its height; none outside 127 to 405 mm."""
    placed, *_ = assess(read(car_text(car)).design).drivers
    seated, rest = placed.throttle, placed.throttle.rest
    seat = sitting(seated)
    assert seat.height == pytest.approx(float(rest.hip.z) - seated.heel_height)
    assert seat.behind == pytest.approx(float(rest.hip.x - rest.ball.x))
    assert seat.half == hip_chosen_by(50, seat.height)
    assert seat.most == hip_chosen_by(95, seat.height)
    low = sitting(replace(seated, heel_height=float(rest.hip.z) - 120.0))
    assert np.isnan(low.half)
    assert low.behind == seat.behind


def test_one_seat_curve_by_hand() -> None:
    """95 % at 200 mm: 913.7 + 134.4632 - 78.212."""
    assert hip_behind_ball(200.0, 913.7, 0.672316, 0.00195530) == pytest.approx(969.951, abs=0.001)


@pytest.mark.parametrize(
    ("h30", "l6", "clutch", "reference", "eye", "eye_height"),
    [
        pytest.param(255, 550, 0, 882.3, 941.97, 893, id="B-REF-255-550-0"),
        pytest.param(255, 550, 1, 864.1, 929.47, 893, id="B-REF-255-550-1"),
        pytest.param(160, 480, 1, 858.2, 905.1, 798, id="B-REF-160-480-1"),
    ],
)
def test_seat_reference_and_eyes_from_memory(
    h30: float, l6: float, clutch: float, reference: float, eye: float, eye_height: float
) -> None:
    assert seat_reference(h30, l6, clutch) == pytest.approx(reference, abs=0.1)
    assert eyes_behind_ball(h30, l6, clutch) == pytest.approx(eye, abs=0.1)
    assert eyes_above_heel(h30) == pytest.approx(eye_height, abs=0.1)


@pytest.mark.parametrize(
    ("stature", "clutch", "expected"),
    [
        pytest.param(1755, 0, 911.45, id="B-SAM-1755-255"),
        pytest.param(1620, 1, 834.795, id="B-SAM-1620-255"),
    ],
)
def test_mean_seat_of_one_driver_from_memory(
    stature: float, clutch: float, expected: float
) -> None:
    found = mean_hip_behind_ball(stature, 255, np.deg2rad(13.5), 550, clutch)
    assert found == pytest.approx(expected, abs=0.1)


#: The 95 % manikin; its ankle was fitted, so lengths of foot are no quotation.
MANIKIN = Body(
    thigh=456,
    shank=459.1,
    heel_to_ball=203,
    ankle_forward=80.947,
    ankle_height=106.99,
    shoe_length=305,
    shoe_width=np.nan,
)
FLOOR = Point(0.0, 0.0, 0.0)


@pytest.mark.parametrize(
    ("h30", "behind_ball", "behind_heel", "knee", "ankle", "thigh_deg", "knee_deg", "shank_deg"),
    [
        pytest.param(130, 967.867307, 909.435371, (490.9914, 311.2198), (79.162, 108.3174),
                     23.416478, 130.354715, 26.228807, id="B-MAN-130"),
        pytest.param(180, 971.414062, 903.218573, (474.6124, 335.6686), (73.579, 112.1847),
                     19.96088, 130.909511, 29.12961, id="B-MAN-180"),
        pytest.param(255, 958.019173, 867.890338, (432.0131, 388.9665), (59.9275, 120.0332),
                     17.08477, 127.05685, 35.85838, id="B-MAN-255"),
        pytest.param(305, 936.926971, 828.892754, (390.5312, 430.5992), (47.5015, 125.4707),
                     15.988046, 122.358527, 41.653426, id="B-MAN-305"),
        pytest.param(380, 886.779135, 750.060869, (308.2485, 492.8622), (24.5698, 131.8924),
                     14.329905, 113.833173, 51.836922, id="B-MAN-380"),
    ],
)  # fmt: skip
def test_the_95_manikin_sits_on_the_95_seat_curve(
    h30: float,
    behind_ball: float,
    behind_heel: float,
    knee: tuple[float, float],
    ankle: tuple[float, float],
    thigh_deg: float,
    knee_deg: float,
    shank_deg: float,
) -> None:
    """Shoe plane, 87 degrees at the ankle (6.5 less to the sole) and lengths against the curve.

    A wrong digit in any of them breaks it: the curve and the manikin agree to 0.25 mm.
    """
    sole = shoe_plane_angle(h30)
    hip = hip_for_ankle(MANIKIN, FLOOR, sole, np.deg2rad(87 - 6.5), h30)
    assert float(hip.x) == pytest.approx(behind_heel, abs=0.1)
    posture = sole_at(MANIKIN, hip, 0.4, FLOOR, sole)
    assert float(hip.x - posture.ball.x) == pytest.approx(behind_ball, abs=0.1)
    assert float(hip.x - posture.ball.x) == pytest.approx(float(hip_chosen_by(95, h30)), abs=0.25)
    assert (float(posture.knee.x), float(posture.knee.z)) == pytest.approx(knee, abs=0.1)
    assert (float(posture.ankle.x), float(posture.ankle.z)) == pytest.approx(ankle, abs=0.1)
    thigh, shank = posture.knee - posture.hip, posture.knee - posture.ankle
    found = (np.arctan2(thigh.z, -thigh.x), posture.knee_angle, np.arctan2(shank.z, shank.x))
    assert [float(np.rad2deg(a)) for a in found] == pytest.approx(
        [thigh_deg, knee_deg, shank_deg], abs=0.1
    )
