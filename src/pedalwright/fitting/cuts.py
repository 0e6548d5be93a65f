"""How to shorten a donor's pedal arm: where to cut, where to drill, what the old hole does.

An arm is shortened at its pad end and the pad put back on, so nothing is spliced where the arm
bends. Shortening moves the pad towards a hole that stays: the ratio falls with the arm. The new
hole brings it back, if the old one leaves it room.
"""

from dataclasses import dataclass, replace
from typing import Literal, TypeAlias

import numpy as np

from pedalwright.core.units import MPa, N, Num, Ratio, mm
from pedalwright.design import Design
from pedalwright.fitting.formulas import moment_beside_pin, moment_beyond_pivot
from pedalwright.fitting.outcomes import Outcome, outcome
from pedalwright.fitting.pedals import Fitted, PedalName, fitted, refitted, with_pedal
from pedalwright.fitting.ratios import pin_radius_for
from pedalwright.fitting.rescue import Hole, Metal, RescuePlan, hole_rescue
from pedalwright.linkage import Pedal
from pedalwright.structure import BRAKE_LOADS, CLUTCH_LOADS
from pedalwright.structure.formulas.arm import bending_stress, depth_at
from pedalwright.structure.formulas.sections import net_modulus

Joint: TypeAlias = Literal["weld the pad on", "bolt the pad on"]


@dataclass(frozen=True, kw_only=True, slots=True)
class Donor:
    """A pedal as it came off its car."""

    pad_radius: mm
    pin_radius: mm
    pin_hole: mm
    #: What the arm is made of, as far as a file and a magnet tell.
    metal: Metal = "unknown"


@dataclass(frozen=True, kw_only=True, slots=True)
class PadJoint:
    """A way to put the pad back on."""

    how: Joint
    #: Whether the joint is counted on. A weld on cast, alloy or unknown metal never is.
    counted: bool
    metal: Metal


@dataclass(frozen=True, kw_only=True, slots=True)
class Section:
    """Bending at a hole under the hardest push, and what the arm bears."""

    push: N
    from_pivot: mm
    stress: MPa
    bears: MPa


@dataclass(frozen=True, kw_only=True, slots=True)
class CutPlan:
    """What to do to a donor arm, and what comes of it."""

    donor: Donor
    #: The donor's arm uncut in this car; cut with its hole left; cut and drilled anew.
    as_it_came: Outcome
    hole_left: Outcome
    redrilled: Outcome
    #: Length to take off at the pad end; negative: the arm has to grow.
    cut_off: mm
    #: New hole, from the pivot and from the new pad centre.
    pin_radius: mm
    pin_from_pad: mm
    #: Of the arm ratio and of the effort, if the old hole is used on the cut arm; shares.
    ratio_lost: Ratio
    effort_gained: Ratio
    #: At the new pin's hole and at the old one.
    at_pin: Section
    at_old_hole: Section
    joints: tuple[PadJoint, ...]
    #: How the pin gets to its new place beside the old hole.
    drilling: RescuePlan


def cut_plan(
    design: Design,
    name: PedalName,
    donor: Donor,
    *,
    pad_radius: mm,
    ratio: Num | None = None,
    pin_radius: mm | None = None,
    cylinder_follows: bool = True,
) -> CutPlan:
    """Shorten a donor arm to `pad_radius`, its pin where the ratio or the radius wants it.

    Without either the arm keeps the donor's own ratio. The arm's depths in `design` are the
    donor's, uncut. The cylinder is not bolted down yet and moves with the pin, unless it is told
    to stay.
    """
    made = fitted(design, name)

    def attempt(pedal: Pedal) -> Design:
        arm = _cut(made, donor, pedal.pad_radius)
        moved = with_pedal(arm, pedal, cylinder_follows=cylinder_follows)
        return refitted(design, name, moved)

    cut = replace(made.pedal, pad_radius=pad_radius)
    if pin_radius is None:
        own = donor.pin_radius * pad_radius / donor.pad_radius
        pin_radius = (
            own
            if ratio is None
            else pin_radius_for(
                attempt(replace(cut, pin_radius=own)),
                name,
                "ratio",
                ratio,
                cylinder_follows=cylinder_follows,
            )
        )
    came = attempt(replace(made.pedal, pad_radius=donor.pad_radius, pin_radius=donor.pin_radius))
    left = outcome(attempt(replace(cut, pin_radius=donor.pin_radius)), name)
    wanted = attempt(replace(cut, pin_radius=pin_radius))
    as_it_came, redrilled = outcome(came, name), outcome(wanted, name)
    old = Hole(radius=donor.pin_radius, diameter=donor.pin_hole, angle=made.pedal.pin_angle)
    return CutPlan(
        donor=donor,
        as_it_came=as_it_came,
        hole_left=left,
        redrilled=redrilled,
        cut_off=donor.pad_radius - pad_radius,
        pin_radius=pin_radius,
        pin_from_pad=pad_radius - pin_radius,
        ratio_lost=1.0 - left.arm_ratio / as_it_came.arm_ratio,
        effort_gained=left.effort / as_it_came.effort - 1.0,
        at_pin=_section(fitted(wanted, name), name, pin_radius, made.carrier.arm.pin_hole),
        at_old_hole=_section(fitted(wanted, name), name, donor.pin_radius, donor.pin_hole),
        joints=(
            PadJoint(how="weld the pad on", counted=donor.metal == "steel", metal=donor.metal),
            PadJoint(how="bolt the pad on", counted=True, metal=donor.metal),
        ),
        drilling=hole_rescue(wanted, name, old, metal=donor.metal),
    )


def _cut(made: Fitted, donor: Donor, pad_radius: mm) -> Fitted:
    """A tapered arm is deeper where its pad comes to sit after the cut."""
    arm = made.carrier.arm
    depth = depth_at(
        arm.depth_at_pad, arm.depth_at_pivot, donor.pad_radius - pad_radius, donor.pad_radius
    )
    return replace(made, carrier=replace(made.carrier, arm=replace(arm, depth_at_pad=depth)))


def _section(made: Fitted, name: PedalName, from_pivot: mm, hole: mm) -> Section:
    pedal, arm = made.pedal, made.carrier.arm
    push = (BRAKE_LOADS if name == "brake" else CLUTCH_LOADS).abuse
    depth = depth_at(
        arm.depth_at_pad, arm.depth_at_pivot, pedal.pad_radius - from_pivot, pedal.pad_radius
    )
    where = (push, pedal.pad_radius, pedal.pin_radius, from_pivot)
    moment = np.where(
        np.cos(pedal.pin_angle) > 0.0, moment_beside_pin(*where), moment_beyond_pivot(*where)
    )
    return Section(
        push=push,
        from_pivot=from_pivot,
        stress=bending_stress(moment, net_modulus(arm.thickness, depth, hole)),
        bears=arm.yield_strength,
    )
