"""Splayed knees and clearances, solved independently with plain equations.

Strength: found twice; held to 0.1 mm and 0.1 degree. The radii of knee and shin are the ones
the room itself takes.
"""

import numpy as np
import pytest

from pedalwright.core.points import Plane, Point
from pedalwright.driver import (
    Body,
    knee_between,
    knee_to_rim,
    shin_to_column,
    sole_at,
    thigh_to_rim,
    toe_swing,
    toe_to_wall,
)
from pedalwright.driver.formulas.leg import knee_angle
from pedalwright.survey.parts import Line

MM, DEG = 0.1, 0.1


def body(
    thigh: float, shank: float, ankle: tuple[float, float], ball: float, shoe: tuple[float, float]
) -> Body:
    return Body(
        thigh=thigh,
        shank=shank,
        heel_to_ball=ball,
        ankle_forward=ankle[0],
        ankle_height=ankle[1],
        shoe_length=shoe[0],
        shoe_width=shoe[1],
    )


@pytest.mark.parametrize(
    ("hip", "ankle", "thigh", "shank", "splay", "span", "off", "knee", "knee_deg"),
    [
        pytest.param((790, 85, 255), (-22, 190, 130), 432, 418, 0, 828.247548, 95.519068,
                     (362.6603, 140.2594, 285.8408), 154.016193, id="C6-1"),
        pytest.param((790, -85, 255), (-30, -200, 150), 432, 418, -15, 834.655618, 80.378366,
                     (366.2133, -165.4405, 278.6259), 158.190384, id="C6-2"),
        pytest.param((800, 85, 160), (45, 120, 125), 410, 395, 20, 756.620777, 137.404791,
                     (410.7474, 150.0905, 271.1109), 140.062842, id="C6-3"),
    ],
)  # fmt: skip
def test_independent_solution_of_a_splayed_leg(
    hip: tuple[float, float, float],
    ankle: tuple[float, float, float],
    thigh: float,
    shank: float,
    splay: float,
    span: float,
    off: float,
    knee: tuple[float, float, float],
    knee_deg: float,
) -> None:
    a, b = Point(*hip), Point(*ankle)
    found = knee_between(a, b, thigh, shank, np.deg2rad(splay))
    assert (float(found.x), float(found.y), float(found.z)) == pytest.approx(knee, abs=MM)
    distance = (b - a).length()
    assert float(distance) == pytest.approx(span, abs=MM)
    assert np.rad2deg(knee_angle(thigh, shank, distance)) == pytest.approx(knee_deg, abs=DEG)
    along = (b - a).unit()
    assert float((found - a - along * along.dot(found - a)).length()) == pytest.approx(off, abs=MM)


@pytest.mark.parametrize(
    ("leg", "hip", "trunk", "sole", "rim", "column", "wall", "expected"),
    [
        pytest.param(
            body(432, 418, (81, 107), 203, (300, 105)), (790, 255), 24, 63.6, (470, 600),
            ((430, 640), (60, 430)), -260,
            (171.155605, 170.236884, 144.924857, (-133.3906, 268.7135), 126.609446),
            id="C7-1",
        ),
        pytest.param(
            body(410, 395, (75, 95), 190, (282, 98)), (800, 160), 30, 66, (455, 520),
            ((420, 560), (40, 400)), -230,
            (182.04403, 182.04403, 201.905761, (-114.6997, 257.6198), 115.300267),
            id="C7-2",
        ),
    ],
)  # fmt: skip
def test_independent_clearances_from_the_side(
    leg: Body,
    hip: tuple[float, float],
    trunk: float,
    sole: float,
    rim: tuple[float, float],
    column: tuple[tuple[float, float], tuple[float, float]],
    wall: float,
    expected: tuple[float, float, float, tuple[float, float], float],
) -> None:
    at_hip, at_rim = Point(hip[0], 0.0, hip[1]), Point(rim[0], 0.0, rim[1])
    posture = sole_at(leg, at_hip, np.deg2rad(trunk), Point(0.0, 0.0, 0.0), np.deg2rad(sole))
    ends = [Point(x, 0.0, z) for x, z in column]
    shaft = Line(name="column", start=ends[0], end=ends[1], diameter=0.0)
    face = Plane(normal=Point(1.0, 0.0, 0.0), offset=wall)
    knee, thigh, shin, toe, toe_gap = expected
    assert float(knee_to_rim(posture, at_rim)) == pytest.approx(knee, abs=MM)
    assert float(thigh_to_rim(posture, at_rim)) == pytest.approx(thigh, abs=MM)
    assert float(shin_to_column(posture, shaft)) == pytest.approx(shin, abs=MM)
    assert (float(posture.toe.x), float(posture.toe.z)) == pytest.approx(toe, abs=MM)
    assert float(toe_to_wall(posture, face)) == pytest.approx(toe_gap, abs=MM)


@pytest.mark.parametrize(
    ("leg", "pitch", "wall", "swing_deg", "toe", "edge", "straight", "back"),
    [
        pytest.param(body(432, 418, (81, 107), 203, (300, 105)), 95, 80,
                     27.903273, 140.394089, 186.790381, 27.5, 23.601003, id="C7-3"),
        pytest.param(body(410, 395, (75, 95), 185, (275, 98)), 110, 70,
                     36.483737, 163.513514, 202.910771, 21.0, 36.255252, id="C7-4"),
    ],
)  # fmt: skip
def test_independent_swing_of_the_toes(
    leg: Body,
    pitch: float,
    wall: float,
    swing_deg: float,
    toe: float,
    edge: float,
    straight: float,
    back: float,
) -> None:
    swing = toe_swing(leg, pitch, wall)
    assert np.rad2deg(swing.angle) == pytest.approx(swing_deg, abs=DEG)
    assert float(swing.toe_aside) == pytest.approx(toe, abs=MM)
    assert float(swing.edge_aside) == pytest.approx(edge, abs=MM)
    assert float(swing.wall_gap) == pytest.approx(straight, abs=MM)
    assert float(swing.ball_drawn_back) == pytest.approx(back, abs=MM)
