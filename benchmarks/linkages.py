"""One mechanism swept twice: by the house and by the general linkage library pylinkage.

Larkfield's improved brake pedal: pin 54.5 mm from the pivot, 15 degrees behind the vertical,
rod to a socket 106 mm ahead on a level cylinder, swung through 16 degrees in 24 steps.
"""

from math import atan2, cos, hypot, radians, sin

import pylinkage

from pedalwright.core.points import REARWARD, RIGHT, Point
from pedalwright.linkage import STATIONS, Lever, Position, Rod, sweep

SWING = radians(16.0)
PIN = (54.5 * sin(radians(15.0)), -54.5 * cos(radians(15.0)))
SOCKET = (-92.0, -56.6)


def ours() -> Position:
    """Ratio, rod angle, travel and every point over the stroke."""
    lever = Lever(
        pivot=Point(0.0, 0.0, 0.0),
        axis=RIGHT,
        pad=Point(272.0 * sin(radians(15.0)), 0.0, -272.0 * cos(radians(15.0))),
        pin=Point(PIN[0], 0.0, PIN[1]),
    )
    return sweep(lever, Rod(socket=Point(SOCKET[0], 0.0, SOCKET[1]), direction=-REARWARD), SWING)


def theirs() -> list[tuple[float, float]]:
    """Place of the socket over the stroke, from a crank and a slider on a line."""
    pivot = pylinkage.Ground(0.0, 0.0, name="pivot")
    ahead = pylinkage.Ground(-500.0, SOCKET[1], name="line ahead")
    behind = pylinkage.Ground(500.0, SOCKET[1], name="line behind")
    crank = pylinkage.Crank(
        anchor=pivot,
        radius=hypot(*PIN),
        angular_velocity=-SWING / (STATIONS - 1),
        initial_angle=atan2(PIN[1], PIN[0]),
    )
    slider = pylinkage.RRPDyad(
        revolute_anchor=crank.output,
        line_anchor1=ahead,
        line_anchor2=behind,
        distance=hypot(PIN[0] - SOCKET[0], PIN[1] - SOCKET[1]),
        x=SOCKET[0],
        y=SOCKET[1],
        name="slider",
    )
    linkage = pylinkage.Linkage([pivot, ahead, behind, crank, slider])
    return [positions[-1] for positions in linkage.step(iterations=STATIONS - 1)]
