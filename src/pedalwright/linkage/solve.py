"""Lever, rod and piston over the whole stroke, in closed form, whatever stands between them.

Hanging, floor-hinged and over-pivot pedals, push and pull rods, a relay lever or none: one
model, and signs decide. See `slider` for a rod that the pin pushes itself, `relay` for the rest.
"""

import numpy as np

from pedalwright.core.points import RIGHT, UP, Plane, Point
from pedalwright.core.solve import no_answer_is_nan, swing_roots, wrapped
from pedalwright.core.units import Num, mm, rad
from pedalwright.core.working import unrecorded
from pedalwright.linkage.circles import circle, radius, turned
from pedalwright.linkage.formulas import pedal_rod_force, piston_force, rod_force, side_force
from pedalwright.linkage.parts import Forces, Lever, Pedal, Position, Rod, Stroke
from pedalwright.linkage.relay import (
    angle_of_slide_through,
    pedal_rod_arm,
    relay_tube_force,
    slide_through,
)
from pedalwright.linkage.slider import angle_of_slide, rod_on_pin, slide

#: Stations of a stroke in every curve and every "over the stroke" answer.
STATIONS = 25
#: What may be lost of an angle in the arithmetic.
_ROUNDING = 1e-9


def lever(pedal: Pedal) -> Lever:
    """The pedal's points at rest. The axis is turned so that a push is a positive angle.

    With a slanting tube, lean and angles are measured square to the tube, and the pad's offset
    along it.
    """
    up = -1.0 if pedal.hinge == "hanging" else 1.0
    across = RIGHT
    vertical = UP
    if pedal.axis is not None:
        across = pedal.axis.unit() * np.sign(pedal.axis.dot(RIGHT))
        vertical = (UP - across * across.dot(UP)).unit()
    axis = across * -up
    to_pad = vertical.turned(axis, -pedal.pad_lean) * up
    return Lever(
        pivot=pedal.pivot,
        axis=axis,
        pad=pedal.pivot + to_pad * pedal.pad_radius + across * pedal.pad_offset,
        pin=pedal.pivot + to_pad.turned(axis, pedal.pin_angle) * pedal.pin_radius,
    )


@no_answer_is_nan
def position(lever: Lever, rod: Rod, angle: rad) -> Position:
    """Everything about the lever turned by `angle`; angle is () or (stations, variants)."""
    if rod.relay is None:
        return slide(lever, rod, angle)
    return slide_through(lever, rod, rod.relay, angle)


def sweep(lever: Lever, rod: Rod, full_angle: rad) -> Position:
    """The whole stroke from rest to `full_angle`; shapes (stations,) or (stations, variants)."""
    with unrecorded():
        return position(lever, rod, np.linspace(0.0, full_angle, STATIONS))


def stroke(lever: Lever, rod: Rod, full_angle: rad) -> Stroke:
    """The curves of a stroke, without the points on the way: a batch of many fits in memory."""
    here = sweep(lever, rod, full_angle)
    return Stroke(
        pad_travel=here.pad_travel,
        piston_travel=here.piston_travel,
        ratio=here.ratio,
        rod_angle=here.rod_angle,
        rod_to_arm=here.rod_to_arm,
    )


def angle_of_arc(lever: Lever, pad_travel: mm) -> rad:
    """How far the lever turns while its pad goes along its arc."""
    return pad_travel / radius(lever, lever.pad)


def arc_of_angle(lever: Lever, angle: rad) -> mm:
    """How far the pad goes along its arc while the lever turns."""
    return radius(lever, lever.pad) * angle


def pad_after(lever: Lever, pad_travel: mm) -> Point:
    """Pad centre after a travel along its arc, whatever the lever drives."""
    return turned(lever, lever.pad, angle_of_arc(lever, pad_travel))


@no_answer_is_nan
def angle_at_travel(lever: Lever, rod: Rod, piston_travel: mm) -> rad:
    """The angle at which the piston has moved so far; nan where the linkage cannot get there.

    Negative for a piston pulled back from rest.
    """
    if rod.relay is None:
        return angle_of_slide(lever, rod, piston_travel)
    return angle_of_slide_through(lever, rod, rod.relay, piston_travel)


def pad_travel_at(lever: Lever, rod: Rod, piston_travel: mm) -> mm:
    """Arc of the pad for a piston travel; the short way where nothing else is asked."""
    return arc_of_angle(lever, angle_at_travel(lever, rod, piston_travel))


def pedal_rod_length(lever: Lever, rod: Rod) -> mm:
    """Length of the rod at the pedal's pin, between the middles of its ends."""
    end = rod.socket if rod.relay is None else rod.relay.driven_pin
    return (end - lever.pin).length()


def rod_wanted(lever: Lever, rod: Rod) -> mm:
    """Length of the rod that pushes the piston, between pin and socket at rest."""
    pin = lever.pin if rod.relay is None else rod.relay.driving_pin
    return (rod.socket - pin).length()


@no_answer_is_nan
def angle_at_face(lever: Lever, face: Plane, gap: mm) -> rad:
    """The angle at which the pad centre comes within `gap` of a wall; nan if it never does.

    Negative for a pad that is nearer than that already at rest.
    """
    still, cosine, sine = circle(lever, lever.pad)
    _, nearing = swing_roots(
        face.normal.dot(cosine), face.normal.dot(sine), gap - face.height(still)
    )
    angle = wrapped(nearing)
    too_near = face.height(lever.pad) < gap
    return np.where(too_near | (angle > -_ROUNDING), angle, np.nan)


def arc_to_face(lever: Lever, face: Plane, gap: mm) -> mm:
    """Arc of the pad until its centre comes within `gap` of a wall; nan if it never does."""
    return arc_of_angle(lever, angle_at_face(lever, face, gap))


@no_answer_is_nan
def forces(lever: Lever, rod: Rod, here: Position, push: Num) -> Forces:
    """A push square to the arm, along the pad's path."""
    square = lever.axis.cross(here.pad - lever.pivot).unit()
    return forces_of(lever, rod, here, square * push)


@no_answer_is_nan
def forces_of(lever: Lever, rod: Rod, here: Position, foot: Point) -> Forces:
    """A push of any direction on the pad centre: moments give the rod, the pivot the remainder."""
    pad_radius = radius(lever, lever.pad)
    square = lever.axis.dot((here.pad - lever.pivot).cross(foot)) / pad_radius
    piston = piston_force(square, here.ratio)
    along_rod = rod_force(piston, here.rod_angle)
    side = side_force(piston, here.rod_angle)
    if rod.relay is None or here.relay is None:
        pivot = -(foot + rod_on_pin(lever, rod, here.pin, here.socket, along_rod))
        return Forces(
            piston=piston, rod=along_rod, side=side, pivot=pivot, pivot_size=pivot.length()
        )
    pedal_rod = pedal_rod_force(square, pad_radius, pedal_rod_arm(lever, here, here.relay))
    on_pedal = (here.relay.driven_pin - here.pin).unit() * -pedal_rod
    pivot = -(foot + on_pedal)
    return Forces(
        piston=piston,
        rod=along_rod,
        side=side,
        pivot=pivot,
        pivot_size=pivot.length(),
        pedal_rod=np.abs(pedal_rod),
        relay_pivot=relay_tube_force(
            lever, rod, rod.relay, here.socket, here.relay, on_pedal, along_rod
        ),
    )
