"""The pedal as the builder measures it, and the lever that follows from it."""

from dataclasses import dataclass
from typing import Literal

from pedalwright.core.points import Point
from pedalwright.core.units import N, Ratio, mm, rad

Hinge = Literal["hanging", "floor"]


@dataclass(frozen=True, kw_only=True, slots=True)
class Pedal:
    """A pedal on a cross-car pivot, at rest."""

    #: Hanging: pivot above the pad. Floor: pivot below the pad.
    hinge: Hinge
    #: Centre of the pivot tube, in the plane of the arm.
    pivot: Point
    #: Pivot to pad centre, seen from the side.
    pad_radius: mm
    #: Pad centre behind the vertical through the pivot.
    pad_lean: rad
    #: Pad centre to the right of the arm's plane (the joggle).
    pad_offset: mm
    pad_width: mm
    #: Pivot to rod pin.
    pin_radius: mm
    #: From the pad's line to the pin's, in the sense of the stroke; pi for a pin beyond the pivot.
    pin_angle: rad = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Lever:
    """A rigid lever at rest. A positive angle about `axis` moves the pad away from the driver."""

    pivot: Point
    axis: Point
    pad: Point
    pin: Point


@dataclass(frozen=True, kw_only=True, slots=True)
class Rod:
    """The rod's far end and the piston that carries it.

    The rod is as long as pin and socket are apart at rest: that is how its clevis is set.
    """

    #: Rod socket in the piston, at rest.
    socket: Point
    #: The way the piston moves when the pedal is pressed (unit length).
    direction: Point


@dataclass(frozen=True, kw_only=True, slots=True)
class Position:
    """A lever at one angle, or at many (stations in front, variants last)."""

    angle: rad
    pad: Point
    pin: Point
    socket: Point
    #: Arc of the pad centre.
    pad_travel: mm
    piston_travel: mm
    #: Pad movement over piston movement, here.
    ratio: Ratio
    #: Rod against the cylinder's axis.
    rod_angle: rad
    #: Rod against the line pivot-pin; 90 degrees pulls best, 0 is a dead point.
    rod_to_arm: rad


@dataclass(frozen=True, kw_only=True, slots=True)
class Forces:
    """What one push on the pad does to rod, piston and pivot."""

    piston: N
    rod: N
    side: N
    #: Force of the pivot on the lever.
    pivot: Point
    pivot_size: N
