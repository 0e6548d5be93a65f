"""Stops, threaded rod ends and return springs: what is set with spanner and rule."""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.points import Point
from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import MPa, N, N_mm, Num, Ratio, mm
from pedalwright.core.working import unrecorded
from pedalwright.linkage.circles import radius, turned
from pedalwright.linkage.formulas import (
    coil_index_factor,
    pad_by_screw,
    pad_return,
    spring_pull,
    spring_stress,
    thread_in,
    thread_out,
    turns,
    wire_strength,
)
from pedalwright.linkage.parts import Lever
from pedalwright.linkage.solve import STATIONS


@dataclass(frozen=True, kw_only=True, slots=True)
class Stop:
    """The pedal's own stop at full travel; it takes the leg, so that no piston and no wall does."""

    #: Arc of the pad from rest.
    full_travel: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class RodEnd:
    """A clevis or ball joint on the thread of a rod, as set."""

    thread: mm
    pitch: mm
    #: Thread in the end, as set.
    engaged: mm
    #: Thread the end could take.
    depth: mm
    #: Bare thread behind the end, for the lock-nut and for screwing in.
    bare: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class RodEnds:
    """The ends of one rod, and how far the build may ask it to be adjusted either way."""

    pedal: RodEnd
    #: Left out where the rod is screwed into nothing at the cylinder.
    cylinder: RodEnd | None = None
    #: ± of the rod's length that holes and brackets of a hand build ask for.
    take_up: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class RestStop:
    """The screw that a pedal comes back to, so that no piston is its stop."""

    #: Pivot to where the screw meets the arm.
    arm: mm
    screw: RodEnd


@dataclass(frozen=True, kw_only=True, slots=True)
class Reach:
    """How far a rod can be made longer and shorter, with what a thread needs left."""

    longer: mm
    shorter: mm
    #: Turns of the coarser end for the smaller of the two.
    turns: Ratio


@dataclass(frozen=True, kw_only=True, slots=True)
class ReturnSpring:
    """A coil spring pulling a pedal back, between an eye on the arm and one on the body."""

    #: Eyes at rest.
    eye: Point
    anchor: Point
    #: Eye to eye, unloaded. Without it nothing about the spring can be said.
    free_length: mm
    rate: N_mm
    #: Pull at which the coils begin to part.
    initial_tension: N = 0.0
    wire: mm
    #: Middle of wire to middle of wire across the coil.
    coil: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Sprung:
    """A return spring over the stroke; axis 0 is the stations."""

    length: mm
    pull: N
    #: Force on the pad towards the driver.
    on_pad: N
    stress: MPa
    strength: MPa


def rod_reach(ends: RodEnds) -> Reach:
    """What all ends of the rod can be screwed out and in together."""
    longer, shorter = _screwed(ends.pedal)
    coarsest = ends.pedal.pitch
    if ends.cylinder is not None:
        further, nearer = _screwed(ends.cylinder)
        longer, shorter = longer + further, shorter + nearer
        coarsest = np.maximum(coarsest, ends.cylinder.pitch)
    return Reach(longer=longer, shorter=shorter, turns=turns(np.minimum(longer, shorter), coarsest))


def rest_reach(stop: RestStop, pad_radius: mm) -> mm:
    """How far the screw raises and lowers the pad along its arc, the smaller of the two."""
    return pad_by_screw(np.minimum(*_screwed(stop.screw)), stop.arm, pad_radius)


def _screwed(end: RodEnd) -> tuple[mm, mm]:
    """How far one end can be screwed out, and in."""
    return (
        thread_out(end.engaged, end.thread),
        thread_in(end.engaged, end.depth, end.bare, end.thread),
    )


@no_answer_is_nan
def sprung(spring: ReturnSpring, lever: Lever, full_angle: Num) -> Sprung:
    """Pull, return and stress of a spring from rest to full travel."""
    with unrecorded():
        eye = turned(lever, spring.eye, np.linspace(0.0, full_angle, STATIONS))
        line = spring.anchor - eye
        length = line.length()
        pull = spring_pull(spring.initial_tension, spring.rate, length, spring.free_length)
        arm = lever.axis.dot((eye - lever.pivot).cross(line * (1.0 / length)))
        factor: Ratio = coil_index_factor(spring.coil, spring.wire)
        return Sprung(
            length=length,
            pull=pull,
            on_pad=pad_return(pull, -arm, radius(lever, lever.pad)),
            stress=spring_stress(factor, pull, spring.coil, spring.wire),
            strength=wire_strength(spring.wire),
        )
