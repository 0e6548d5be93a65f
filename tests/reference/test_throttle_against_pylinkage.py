"""Rods between levers against pylinkage, a general-purpose library for planar linkages.

Strength: other program. pylinkage turns a crank step by step and intersects two circles,
keeping to the nearest solution; the room answers in closed form.
"""

import numpy as np
import pytest
from pylinkage import Crank, Ground, RRRDyad
from pylinkage.simulation import Linkage

from pedalwright.core.points import RIGHT, Point
from pedalwright.throttle import BallRod, SquareRod, placed, turned

STEPS = 40
Flat = tuple[float, float]


def rod(pivot: Flat, pin: Flat, spindle: Flat, far_pin: Flat) -> BallRod:
    """A rod in the plane (x, z) whose levers both turn from z towards x."""

    def there(point: Flat) -> Point:
        return Point(point[0], 0.0, point[1])

    return BallRod(
        driving_pivot=there(pivot),
        driving_axis=RIGHT,
        driving_pin=there(pin),
        driven_pivot=there(spindle),
        driven_axis=RIGHT,
        driven_pin=there(far_pin),
    )


RODS = {
    "both levers above their pivots": rod((0, 0), (-20, 90), (300, 40), (285, 75)),
    "pull rod": rod((0, 0), (-25, 80), (-260, 30), (-280, 66)),
    "rod crosses over": rod((0, 0), (-15, 70), (250, 60), (262, 22)),
    "short rod": rod((0, 0), (-10, 60), (90, 30), (80, 72)),
    "square at mid-travel": placed(
        SquareRod(driving_radius=90.0, driven_radius=34.0, rod_length=180.0)
    ),
}


def stepped(made: BallRod, full_angle: float) -> np.ndarray:
    """The driven pin at every step, in the plane (x, z); pylinkage counts from x towards z."""

    def flat(point: Point) -> Flat:
        return float(point.x), float(point.z)

    (ax, az), (px, pz) = flat(made.driving_pivot), flat(made.driving_pin)
    (bx, bz), (qx, qz) = flat(made.driven_pivot), flat(made.driven_pin)
    pedal, spindle = Ground(ax, az), Ground(bx, bz)
    crank = Crank(
        anchor=pedal,
        radius=np.hypot(px - ax, pz - az),
        angular_velocity=-full_angle / STEPS,
        initial_angle=np.arctan2(pz - az, px - ax),
    )
    follower = RRRDyad(
        anchor1=crank.output,
        anchor2=spindle,
        distance1=np.hypot(qx - px, qz - pz),
        distance2=np.hypot(qx - bx, qz - bz),
        x=qx,
        y=qz,
    )
    machine = Linkage([pedal, spindle, crank, follower])
    start = follower.position
    return np.array([start, *(follower.position for _ in machine.step(iterations=STEPS))])


@pytest.mark.parametrize("full_angle", [0.25, -0.2])
@pytest.mark.parametrize("name", RODS)
def test_the_whole_stroke_agrees(name: str, full_angle: float) -> None:
    made = RODS[name]
    pins = stepped(made, full_angle)
    swing = np.asarray(turned(made, np.linspace(0.0, full_angle, STEPS + 1), 0.0).angle)
    arm = pins - np.array([float(made.driven_pivot.x), float(made.driven_pivot.z)])
    from_z = np.unwrap(np.arctan2(arm[:, 0], arm[:, 1]))
    assert np.ptp(swing) > 0.2
    np.testing.assert_allclose(swing, from_z - from_z[0], atol=1e-9)
