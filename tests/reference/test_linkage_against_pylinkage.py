"""Lever, rod and piston against pylinkage, a general-purpose library for planar linkages.

Strength: other program. pylinkage turns a crank step by step and intersects the rod's circle
with the cylinder's line, keeping to the nearest solution; the room answers in closed form.
"""

import numpy as np
import pytest
from pylinkage import Crank, Ground, RRPDyad
from pylinkage.simulation import Linkage

from pedalwright.core.points import RIGHT, Point
from pedalwright.linkage import STATIONS, Lever, Rod, sweep

FORWARD = Point(-1.0, 0.0, 0.0)


def lever_of(hinge: int, pin: tuple[float, float], pad: tuple[float, float]) -> Lever:
    """A lever about a pivot at (120, 350); points are (rearward, up) from the pivot."""
    return Lever(
        pivot=Point(120.0, 0.0, 350.0),
        axis=RIGHT * hinge,
        pad=Point(120.0 + pad[0], 0.0, 350.0 + pad[1]),
        pin=Point(120.0 + pin[0], 0.0, 350.0 + pin[1]),
    )


HANGING = lever_of(1, pin=(-6.0, -58.0), pad=(20.0, -290.0))
BEYOND = lever_of(1, pin=(-11.0, 43.0), pad=(55.0, -222.0))
FLOOR = lever_of(-1, pin=(11.0, 34.0), pad=(56.0, 171.0))
SLOPING = Point(-np.cos(0.15), 0.0, np.sin(0.15))


def held(lever: Lever, back: float, up: float, direction: Point) -> Rod:
    """A rod whose socket lies (back, up) from the pin at rest."""
    socket = Point(lever.pin.x + back, 0.0, lever.pin.z + up)
    return Rod(socket=socket, direction=direction)


MECHANISMS = {
    "push rod of a hanging pedal": (HANGING, held(HANGING, -130.0, 6.0, FORWARD), 0.35),
    "pull rod of a hanging pedal": (HANGING, held(HANGING, 110.0, -4.0, FORWARD), 0.35),
    "sloping cylinder": (HANGING, held(HANGING, -90.0, 18.0, SLOPING), 0.30),
    "pin beyond the pivot": (BEYOND, held(BEYOND, 101.0, 0.0, -FORWARD), 0.50),
    "floor hinge": (FLOOR, held(FLOOR, -95.0, 0.0, FORWARD), 0.45),
}


def stepped(lever: Lever, rod: Rod, full_angle: float) -> tuple[np.ndarray, np.ndarray]:
    """Pin and socket at every station of the stroke, in the plane (forward, up)."""

    def flat(point: Point) -> tuple[float, float]:
        return -float(point.x), float(point.z)

    (px, py), (bx, by), (sx, sy) = flat(lever.pivot), flat(lever.pin), flat(rod.socket)
    ux, uy = flat(rod.direction)
    pivot, seat, ahead = Ground(px, py), Ground(sx, sy), Ground(sx + 100.0 * ux, sy + 100.0 * uy)
    crank = Crank(
        anchor=pivot,
        radius=np.hypot(bx - px, by - py),
        angular_velocity=float(lever.axis.y) * full_angle / (STATIONS - 1),
        initial_angle=np.arctan2(by - py, bx - px),
    )
    slider = RRPDyad(
        revolute_anchor=crank.output,
        line_anchor1=seat,
        line_anchor2=ahead,
        distance=np.hypot(sx - bx, sy - by),
        x=sx,
        y=sy,
    )
    machine = Linkage([pivot, seat, ahead, crank, slider])
    pins, sockets = [crank.position], [slider.position]
    for _ in machine.step(iterations=STATIONS - 1):
        pins.append(crank.position)
        sockets.append(slider.position)
    return np.array(pins), np.array(sockets)


@pytest.mark.parametrize("name", MECHANISMS)
def test_the_whole_stroke_agrees(name: str) -> None:
    lever, rod, full_angle = MECHANISMS[name]
    pins, sockets = stepped(lever, rod, full_angle)
    stroke = sweep(lever, rod, full_angle)
    assert np.asarray(stroke.piston_travel)[-1] > 10.0
    np.testing.assert_allclose(np.stack([-stroke.pin.x, stroke.pin.z], axis=1), pins, atol=1e-9)
    here = np.stack([-stroke.socket.x, stroke.socket.z], axis=1)
    np.testing.assert_allclose(here, sockets, atol=1e-9)
    travel = np.hypot(*(sockets - sockets[0]).T)
    np.testing.assert_allclose(stroke.piston_travel, travel, atol=1e-9)
