"""Rods between levers on slanting axes against a numeric solution that knows no closed form.

Strength: independent. Levers are turned with scipy's rotations; the driven lever's turn is
followed from rest in small steps by a root finder, until the rod has its length again.
"""

import numpy as np
import pytest
from scipy.optimize import brentq
from scipy.spatial.transform import Rotation

from pedalwright.core.points import Point
from pedalwright.throttle import BallRod, turned, turned_back

Vector = tuple[float, float, float]


def rod(*points: Vector) -> BallRod:
    a, u, p, b, v, q = (Point(*point) for point in points)
    return BallRod(
        driving_pivot=a,
        driving_axis=u,
        driving_pin=p,
        driven_pivot=b,
        driven_axis=v,
        driven_pin=q,
    )


RODS = {
    "cross-car pedal, lengthways spindle": rod(
        (100, 475, 300), (0, 1, 0), (90, 470, 390), (-60, 300, 420), (-1, 0, 0), (-55, 305, 456)
    ),
    "slanting cross-shaft, push": rod(
        (0, 0, 0), (0.2, 1.0, 0.1), (-12, 30, 70), (240, -60, 20), (-0.3, 0.9, 0.3), (236, -40, 62)
    ),
    "pull, axes askew": rod(
        (0, 0, 0), (0.1, 1.0, -0.2), (5, -10, 64), (-190, 80, 30), (0.4, 0.8, 0.5), (-215, 70, 66)
    ),
    "upright relay": rod(
        (0, 0, 0), (0, 0, 2.5), (10, 55, 5), (-260, 40, 30), (0.0, 0.3, 1.0), (-255, 92, 18)
    ),
}


def array(point: Point) -> np.ndarray:
    return np.array([point.x, point.y, point.z], dtype=float)


def at(pivot: Point, axis: Point, pin: Point, angle: float) -> np.ndarray:
    turn = array(axis) / np.linalg.norm(array(axis)) * angle
    return array(pivot) + Rotation.from_rotvec(turn).apply(array(pin) - array(pivot))


def followed(made: BallRod, angles: np.ndarray) -> np.ndarray:
    """The driven lever's turn at each angle, from the one before."""
    length = np.linalg.norm(array(made.driven_pin) - array(made.driving_pin))
    turns = [0.0]
    for angle in angles[1:]:
        near = at(made.driving_pivot, made.driving_axis, made.driving_pin, angle)

        def stretched(phi: float, near: np.ndarray = near) -> float:
            far = at(made.driven_pivot, made.driven_axis, made.driven_pin, phi)
            return float(np.linalg.norm(far - near) - length)

        turns.append(brentq(stretched, turns[-1] - 0.05, turns[-1] + 0.05, xtol=1e-14))
    return np.array(turns)


def off_line(made: BallRod, angle: float, turn: float) -> float:
    """Smaller angle of the rod to the two levers, each seen along its axis' own path."""
    ends = (
        (made.driving_pivot, made.driving_axis, made.driving_pin, angle),
        (made.driven_pivot, made.driven_axis, made.driven_pin, turn),
    )
    near, far = (at(*end) for end in ends)
    sines = []
    for end, pin in zip(ends, (near, far), strict=True):
        path = np.cross(array(end[1]), pin - array(end[0]))
        cosine = (far - near) @ path / np.linalg.norm(far - near) / np.linalg.norm(path)
        sines.append(abs(cosine))
    return float(np.arcsin(min(sines)))


@pytest.mark.parametrize("full_angle", [0.28, -0.2])
@pytest.mark.parametrize("name", RODS)
def test_the_whole_stroke_agrees(name: str, full_angle: float) -> None:
    made = RODS[name]
    angles = np.linspace(0.0, full_angle, 161)
    turn = turned(made, angles, 0.0)
    numeric = followed(made, angles)
    assert np.abs(numeric[-1]) > 0.15
    np.testing.assert_allclose(turn.angle, numeric, atol=1e-9)
    np.testing.assert_allclose(turned_back(made, numeric, 0.0), angles, atol=1e-9)
    expected = [off_line(made, *pair) for pair in zip(angles, numeric, strict=True)]
    np.testing.assert_allclose(turn.rod_to_lever, expected, atol=1e-7)
    slope = np.gradient(numeric, angles, edge_order=2)
    np.testing.assert_allclose(np.asarray(turn.gearing)[2:-2], slope[2:-2], rtol=2e-4)
