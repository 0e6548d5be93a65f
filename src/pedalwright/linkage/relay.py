"""A relay lever between pedal and cylinder: two circles joined by a rod, then the slider.

The relay is a lever of its own whose pad is the pin that the pedal's rod drives, so its second
half is the same slider as a pedal's. The first half, pin on circle to pin on circle, is closed
both ways too. Of the two angles at which the rod fits, the one that goes on from rest is taken;
from the first position on at which rod and either arm are in line, every answer is nan.
"""

import numpy as np

from pedalwright.core.points import RIGHT, Point
from pedalwright.core.solve import swing_roots, wrapped
from pedalwright.core.units import N, Num, mm, rad
from pedalwright.linkage.circles import circle, radius, turned
from pedalwright.linkage.formulas import pad_arc, ratio_through_relay, relay_ratio
from pedalwright.linkage.parts import Lever, Position, Relay, Relayed, Rod
from pedalwright.linkage.slider import angle_of_slide, rod_on_pin, slide


def relay_lever(lever: Lever, relay: Relay) -> Lever:
    """The relay as a lever, its axis turned so that the pedal's stroke is a positive angle."""
    axis = RIGHT if relay.axis is None else relay.axis.unit()
    either = Lever(pivot=relay.pivot, axis=axis, pad=relay.driven_pin, pin=relay.driving_pin)
    line = relay.driven_pin - lever.pin
    sense = np.sign(_arm(lever, lever.pin, line) * _arm(either, either.pad, line))
    return Lever(pivot=relay.pivot, axis=axis * sense, pad=either.pad, pin=either.pin)


def slide_through(lever: Lever, rod: Rod, relay: Relay, angle: rad) -> Position:
    """The pedal turned by `angle`, its relay lever, and the piston behind it."""
    second = relay_lever(lever, relay)
    pin = turned(lever, lever.pin, angle)
    relay_angle = _follow(second, second.pad, lever.pin, pin)
    behind = slide(second, rod, relay_angle)
    line = (behind.pad - pin) * _stretched(lever, second)
    at_pedal, at_relay = _arms(lever, second, pin, behind.pad, line)
    drives = (at_pedal > 0.0) & (at_relay > 0.0)
    at_pedal, at_relay = np.where(drives, at_pedal, np.nan), np.where(drives, at_relay, np.nan)
    pad_radius, driven_radius = radius(lever, lever.pad), radius(second, second.pad)
    ratio = relay_ratio(pad_radius, at_pedal, at_relay, driven_radius)
    square = np.minimum(at_pedal / radius(lever, lever.pin), at_relay / driven_radius)
    return Position(
        angle=angle,
        pad=turned(lever, lever.pad, angle),
        pin=pin,
        socket=behind.socket,
        pad_travel=pad_arc(pad_radius, angle),
        piston_travel=np.where(drives, behind.piston_travel, np.nan),
        ratio=ratio_through_relay(ratio, behind.ratio),
        rod_angle=behind.rod_angle,
        rod_to_arm=np.minimum(np.arcsin(np.minimum(square, 1.0)), behind.rod_to_arm),
        relay=Relayed(
            angle=relay_angle, driven_pin=behind.pad, driving_pin=behind.pin, ratio=ratio
        ),
    )


def angle_of_slide_through(lever: Lever, rod: Rod, relay: Relay, piston_travel: mm) -> rad:
    """The pedal's angle for a piston travel: first the relay's, then back along the rod."""
    second = relay_lever(lever, relay)
    driven = turned(second, second.pad, angle_of_slide(second, rod, piston_travel))
    return _follow(lever, lever.pin, second.pad, driven)


def relay_radii(lever: Lever, relay: Relay) -> tuple[mm, mm]:
    """Distances of the driven and the driving pin from the relay's axis."""
    second = relay_lever(lever, relay)
    return radius(second, second.pad), radius(second, second.pin)


def pedal_rod_arm(lever: Lever, here: Position, relayed: Relayed) -> mm:
    """Distance of the rod at the pedal's pin from the pedal's pivot, signed: pushing, pulling."""
    return _arm(lever, here.pin, (relayed.driven_pin - here.pin).unit())


def relay_tube_force(
    lever: Lever,
    rod: Rod,
    relay: Relay,
    socket: Point,
    relayed: Relayed,
    on_pedal: Point,
    along_rod: N,
) -> Point:
    """Force of the relay's tube on the relay; its first rod pushes the pedal by `on_pedal`."""
    second = relay_lever(lever, relay)
    return on_pedal - rod_on_pin(second, rod, relayed.driving_pin, socket, along_rod)


def _follow(led: Lever, point: Point, other_at_rest: Point, other: Point) -> rad:
    """How far `led` has turned when the far end of the rod on its `point` has gone to `other`."""
    still, cosine, sine = circle(led, point)
    rest, gap = still - other_at_rest, still - other
    length_squared = (point - other_at_rest).dot(point - other_at_rest)
    wanted = (length_squared - gap.dot(gap) - cosine.dot(cosine)) / 2.0
    before, behind = swing_roots(gap.dot(cosine), gap.dot(sine), wanted)
    return wrapped(np.where(rest.dot(sine) > 0.0, before, behind))


def _stretched(lever: Lever, second: Lever) -> Num:
    """One over the rod's length, negative for a rod that pulls the relay."""
    line = second.pad - lever.pin
    return np.sign(_arm(lever, lever.pin, line)) / line.length()


def _arms(lever: Lever, second: Lever, pin: Point, driven: Point, line: Point) -> tuple[mm, mm]:
    return _arm(lever, pin, line), _arm(second, driven, line)


def _arm(lever: Lever, point: Point, line: Point) -> mm:
    """Moment about the axis of a force of 1 along a line through a point of the lever."""
    return line.dot(lever.axis.cross(point - lever.pivot))
