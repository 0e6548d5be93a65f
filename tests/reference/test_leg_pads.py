"""Feet that slide or roll on a pad, solved independently with plain equations.

Strength: found twice, by closed form and by Newton iteration; held to 0.1 mm and 0.1 degree.
The legs above these feet are not part of the published case.
"""

import numpy as np
import pytest

from pedalwright.core.points import Point
from pedalwright.driver import Body, curved_sole_on_pad, heel_fixed_on_pad

MM, DEG = 0.1, 0.1
HEEL, HIP, TRUNK = Point(0.0, 0.0, 0.0), Point(790.0, 0.0, 255.0), 0.4


def foot(heel_to_ball: float) -> Body:
    return Body(
        thigh=432,
        shank=418,
        heel_to_ball=heel_to_ball,
        ankle_forward=81,
        ankle_height=107,
        shoe_length=300,
        shoe_width=105,
    )


@pytest.mark.parametrize(
    ("pivot", "arm", "arm_deg", "rounding", "centre", "sole_deg", "along", "contact"),
    [
        pytest.param((-230, 330), 200, -55, 10, (-115.2847, 166.1696), 58.082109, 201.997272,
                     (-106.7966, 171.4566), id="C4-1 0"),
        pytest.param((-230, 330), 200, -63, 10, (-139.2019, 151.7987), 50.261631, 205.718285,
                     (-131.5122, 158.1915), id="C4-1 8"),
        pytest.param((-230, 330), 200, -71, 10, (-164.8864, 140.8963), 43.156757, 216.654743,
                     (-158.0464, 148.1911), id="C4-1 16"),
        pytest.param((-150, -10), 180, 75, 0, (-103.4126, 163.8666), 57.744894, 193.769034,
                     (-103.4126, 163.8666), id="C4-2 0"),
        pytest.param((-150, -10), 180, 85, 0, (-134.312, 169.315), 51.576208, 216.118692,
                     (-134.312, 169.315), id="C4-2 10"),
        pytest.param((-150, -10), 180, 95, 0, (-165.688, 169.315), 45.620306, 236.896832,
                     (-165.688, 169.315), id="C4-2 20"),
    ],
)  # fmt: skip
def test_independent_solution_of_the_accelerator_foot(
    pivot: tuple[float, float],
    arm: float,
    arm_deg: float,
    rounding: float,
    centre: tuple[float, float],
    sole_deg: float,
    along: float,
    contact: tuple[float, float],
) -> None:
    turn = np.deg2rad(arm_deg)
    pad = Point(pivot[0] + arm * np.cos(turn), 0.0, pivot[1] + arm * np.sin(turn))
    assert (float(pad.x), float(pad.z)) == pytest.approx(centre, abs=MM)
    found = heel_fixed_on_pad(foot(203), HIP, TRUNK, HEEL, pad, rounding)
    assert np.rad2deg(found.posture.sole_angle) == pytest.approx(sole_deg, abs=DEG)
    assert float(found.along_sole) == pytest.approx(along, abs=MM)
    assert (float(found.contact.x), float(found.contact.z)) == pytest.approx(contact, abs=MM)


@pytest.mark.parametrize(
    ("pivot", "arm", "first_deg", "turned_deg", "rounding", "slides"),
    [
        pytest.param((-230, 330), 200, -55, (-8, -16), 10, (3.721013, 14.657471), id="C4-1"),
        pytest.param((-150, -10), 180, 75, (10, 20), 0, (22.349658, 43.127798), id="C4-2"),
    ],
)
def test_independent_slide_of_the_sole_along_the_pad(
    pivot: tuple[float, float],
    arm: float,
    first_deg: float,
    turned_deg: tuple[float, float],
    rounding: float,
    slides: tuple[float, float],
) -> None:
    turn = np.deg2rad([first_deg, *(first_deg + turned for turned in turned_deg)])
    pads = Point(pivot[0] + arm * np.cos(turn), 0.0, pivot[1] + arm * np.sin(turn))
    along = heel_fixed_on_pad(foot(203), HIP, TRUNK, HEEL, pads, rounding).along_sole
    assert np.asarray(along)[1:] - np.asarray(along)[0] == pytest.approx(slides, abs=1e-5)


@pytest.mark.parametrize(
    ("pad", "face_deg", "heel_to_ball", "curve", "sole_deg", "centre", "contact", "offset"),
    [
        pytest.param((-85, 190), 58, 203, 60, 66.277561, (-26.7379, 209.9859),
                     (-77.6208, 178.1908), -13.925199, id="C5-1"),
        pytest.param((-100, 150), 45, 185, 80, 56.527137, (-35.3035, 198.4406),
                     (-91.872, 141.872), -11.494676, id="C5-2"),
    ],
)  # fmt: skip
def test_independent_solution_of_a_curved_sole_on_a_flat_pad(
    pad: tuple[float, float],
    face_deg: float,
    heel_to_ball: float,
    curve: float,
    sole_deg: float,
    centre: tuple[float, float],
    contact: tuple[float, float],
    offset: float,
) -> None:
    face = np.deg2rad(face_deg)
    point = Point(pad[0], 0.0, pad[1])
    found = curved_sole_on_pad(foot(heel_to_ball), HIP, TRUNK, HEEL, point, face, curve)
    assert np.rad2deg(found.posture.sole_angle) == pytest.approx(sole_deg, abs=DEG)
    assert (float(found.contact.x), float(found.contact.z)) == pytest.approx(contact, abs=MM)
    off = Point(np.sin(face), 0.0, np.cos(face))
    middle = found.contact + off * curve
    assert (float(middle.x), float(middle.z)) == pytest.approx(centre, abs=MM)
    along = Point(-np.cos(face), 0.0, np.sin(face))
    assert float((found.contact - point).dot(along)) == pytest.approx(offset, abs=MM)
