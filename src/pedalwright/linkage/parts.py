"""The pedal as the builder measures it, and the lever that follows from it."""

from dataclasses import dataclass
from typing import Literal

from pedalwright.core.points import Point
from pedalwright.core.units import N, Ratio, mm, rad

Hinge = Literal["hanging", "floor"]


@dataclass(frozen=True, kw_only=True, slots=True)
class Pedal:
    """A pedal at rest. What is seen from the side is seen along its pivot tube."""

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
    #: Along the pivot tube, either way; left out, the tube lies straight across the car.
    axis: Point | None = None
    #: Pad along its arm, and how thick it is.
    pad_height: mm = 50.0
    pad_thickness: mm = 10.0
    #: From the pad's line to its face, in the sense of the stroke; 0 for a face along the arm.
    pad_face: rad = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Lever:
    """A rigid lever at rest. A positive angle about `axis` moves the pad away from the driver."""

    pivot: Point
    axis: Point
    pad: Point
    pin: Point


@dataclass(frozen=True, kw_only=True, slots=True)
class Relay:
    """A relay lever (bell crank) between the pedal's rod and the cylinder's, at rest.

    Its rods are as long as their ends are apart at rest, like the pedal's own.
    """

    #: Centre of its tube.
    pivot: Point
    #: Where the rod from the pedal ends.
    driven_pin: Point
    #: Where the rod to the cylinder begins.
    driving_pin: Point
    #: Along its tube, either way; left out, the tube lies straight across the car.
    axis: Point | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Rod:
    """The rod's far end and the piston that carries it.

    The rod is as long as pin and socket are apart at rest: that is how its clevis is set. A rod
    that is there already is asked whether it can be set so.
    """

    #: Rod socket in the piston, at rest.
    socket: Point
    #: The way the piston moves when the pedal is pressed (unit length).
    direction: Point
    #: What stands between the pedal's pin and this rod; left out, the pin pushes it itself.
    relay: Relay | None = None
    #: Middle of the pin to middle of the socket, of a rod that is there already as it is set;
    #: left out, the rod is cut to fit.
    length: mm | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Relayed:
    """A relay lever at the same angles as its pedal."""

    #: Positive with the pedal's stroke.
    angle: rad
    driven_pin: Point
    driving_pin: Point
    #: Arc of the pad over arc of the driven pin, here.
    ratio: Ratio


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
    #: Rod against the line pivot-pin; 90 degrees pulls best, 0 is a dead point. With a relay
    #: lever the smallest of the three angles between a rod and an arm.
    rod_to_arm: rad
    #: None where the pin pushes the cylinder's rod itself.
    relay: Relayed | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Stroke:
    """What is worth keeping of a whole stroke; axis 0 is the stations."""

    pad_travel: mm
    piston_travel: mm
    ratio: Ratio
    rod_angle: rad
    rod_to_arm: rad


@dataclass(frozen=True, kw_only=True, slots=True)
class Forces:
    """What one push on the pad does to rod, piston and pivot."""

    piston: N
    #: Along the rod that pushes the piston.
    rod: N
    side: N
    #: Force of the pivot on the lever.
    pivot: Point
    pivot_size: N
    #: Along the rod at the pedal's pin, and on the relay's tube, where there is a relay lever.
    pedal_rod: N | None = None
    relay_pivot: Point | None = None

    @property
    def at_pin(self) -> N:
        """Along the rod at the pedal's pin, whatever stands behind it."""
        return self.rod if self.pedal_rod is None else self.pedal_rod
