"""From a push on the pad to stress in arm, pin, rod and pivot, and to the give at the pad."""

from typing import Literal

import numpy as np

from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import N, N_mm, Ratio, mm, rad
from pedalwright.core.working import subject, unrecorded
from pedalwright.structure.arm import HeldArm, Place
from pedalwright.structure.box.parts import Carried
from pedalwright.structure.box.push import box_give
from pedalwright.structure.fixings.parts import Fastened, Fixing, Load, WeldUse
from pedalwright.structure.fixings.solve import fixed
from pedalwright.structure.formulas.arm import bending_stress, equivalent_stress
from pedalwright.structure.formulas.fatigue import cycles, damage
from pedalwright.structure.formulas.pins import (
    bearing_pressure,
    double_shear,
    end_load,
    mid_span_moment,
    pin_moment,
    single_shear,
)
from pedalwright.structure.formulas.rods import buckling_load, slenderness
from pedalwright.structure.formulas.sections import round_area, round_inertia, round_modulus
from pedalwright.structure.formulas.stiffness import (
    flange_give,
    pin_rod_force,
    pivot_force,
    rod_stiffness,
    spring_give,
)
from pedalwright.structure.parts import (
    Arm,
    ClevisPin,
    Give,
    Loaded,
    Loads,
    Mount,
    Pivot,
    Pushes,
    PushRod,
    Reactions,
    Relaying,
    Strength,
    Stress,
)
from pedalwright.structure.relay import relay_gives, relay_strength

#: A brake pedal, N. 500 N: the most UN R13-H lets a stop need; 1250 N: acceptance of series
#: cars; 2000 N: student-formula rules; 200 N sideways: common practice.
BRAKE_LOADS = Loads(
    effort=500.0,
    panic=1250.0,
    abuse=2000.0,
    sideways=200.0,
    life=(
        Pushes(push=150.0, times=1e6),
        Pushes(push=350.0, times=2e4),
        Pushes(push=700.0, times=500.0),
    ),
)
#: A clutch pedal, N: common practice; at the hardest push its end stop takes the leg.
CLUTCH_LOADS = Loads(
    effort=200.0,
    panic=1000.0,
    abuse=1500.0,
    sideways=200.0,
    life=(Pushes(push=200.0, times=1e6), Pushes(push=500.0, times=1e3)),
)
#: Category of plain metal with a drilled hole, EN 1993-1-9 table 8.1 (from memory), MPa. A weld on
#: the arm where it works hardest has a third to two thirds of that.
DRILLED = 90.0
#: A crack nobody looks for and a part nobody can do without: EN 1993-1-9, 3(7) (from memory).
UNSEEN = 1.35


@no_answer_is_nan
def respond(
    arm: Arm,
    pivot: Pivot,
    clevis_pin: ClevisPin,
    push_rod: PushRod,
    mount: Mount,
    *,
    pad_radius: mm,
    pin_radius: mm,
    pin_angle: rad,
    pad_offset: mm,
    ratio: Ratio,
    rod_length: mm,
    rod_share: Ratio,
    pivot_share: Ratio,
    relaying: Relaying | None = None,
    reactions: Reactions | None = None,
    carried: Carried | None = None,
    loads: Loads = BRAKE_LOADS,
) -> Strength:
    """All load cases at one position of the pedal, usually the hard stop.

    `pin_angle` is 0 for a pin between pivot and pad, pi for one beyond the pivot. At this
    position `ratio` is that of pad to piston; `rod_share` and `pivot_share` are what the rod at
    the pedal's pin and the pivot bear over the push, whatever stands behind that rod. Where a box
    carries the pedal, it gives as `carried` says, and not as the mount's stiffnesses.
    """
    held = HeldArm.between(arm, pad_radius, pin_radius, pin_angle, pad_offset)
    places = held.worst_places()

    with subject(f"{np.max(loads.abuse):.0f} N"):
        rod = pin_rod_force(loads.abuse, rod_share)
        at_pivot = pivot_force(loads.abuse, pivot_share)
        abuse = _loaded(held, places, pivot, clevis_pin, loads.abuse, rod, at_pivot)
    with subject("sideways"):
        sideways = Stress(size=held.sideways(loads.sideways), bears=arm.yield_strength)
    area = round_area(push_rod.outside, push_rod.inside)
    with subject("push rod"):
        slim = slenderness(1.0, rod_length, round_inertia(push_rod.outside, push_rod.inside), area)
        bows_at = buckling_load(area, push_rod.elastic, push_rod.yield_strength, slim)
    with subject("give"):
        push = loads.effort
        bending, shear, torsion = held.give(push)
        in_rod = spring_give(push, rod_share, rod_stiffness(push_rod.elastic, area, rod_length))
        if carried is None:
            in_box = None
            of_cylinder, of_pivot = _said(mount.cylinder_stiffness), _said(mount.pivot_stiffness)
            at_cylinder = spring_give(push, ratio, of_cylinder)
            at_bracket = spring_give(push, pivot_share, of_pivot)
            flange = flange_give(push, ratio, of_cylinder)
        else:
            in_box = box_give(carried.held, carried.unit, push)
            at_cylinder, at_bracket = in_box.flange, in_box.pivot
            flange = in_box.flange_moves
        in_relay = 0.0 if relaying is None else relay_gives(relaying, push)
    return Strength(
        effort=_in_proportion(abuse, loads.effort),
        panic=_in_proportion(abuse, loads.panic),
        abuse=abuse,
        sideways=sideways,
        give=Give(
            push=push,
            arm_bending=bending,
            arm_shear=shear,
            arm_twist=torsion,
            push_rod=in_rod,
            cylinder_mount=at_cylinder,
            pivot_mount=at_bracket,
            relay=in_relay,
            total=bending + shear + torsion + in_rod + at_cylinder + at_bracket + in_relay,
        ),
        flange_give=flange,
        buckling_load=bows_at,
        damage=_damage(abuse, loads),
        flange=_fixed(mount.flange, reactions, loads, "flange"),
        bracket=_fixed(mount.bracket, reactions, loads, "bracket"),
        relay=None if relaying is None else relay_strength(relaying, loads.abuse),
        box=in_box,
    )


def _said(stiffness: N_mm | None) -> N_mm:
    """Unknown where nobody said it."""
    return np.nan if stiffness is None else stiffness


def _fixed(
    fixing: Fixing | None,
    reactions: Reactions | None,
    loads: Loads,
    which: Literal["flange", "bracket"],
) -> Fastened | WeldUse | None:
    """A fixing under the hardest push."""
    if fixing is None or reactions is None:
        return None
    unit = reactions.flange if which == "flange" else reactions.bracket
    with subject(f"{np.max(loads.abuse):.0f} N, {which}"):
        return fixed(fixing, Load(at=unit.at, force=unit.force * loads.abuse))


def _damage(loaded: Loaded, loads: Loads) -> Ratio:
    """Shares of life used by each kind of push, added up; the stress goes from nothing and back."""
    total: Ratio = 0.0
    for pushes in loads.life:
        with subject(f"{np.max(pushes.push):.0f} N, many times"):
            swing = loaded.arm.size * pushes.push / loaded.push * UNSEEN
            total = total + damage(pushes.times, cycles(swing, DRILLED))
    return total


def _in_proportion(loaded: Loaded, push: N) -> Loaded:
    """The same pedal under another push: every force and stress grows with it."""
    share = push / loaded.push

    def under(stress: Stress) -> Stress:
        return Stress(size=stress.size * share, bears=stress.bears)

    return Loaded(
        push=push,
        rod_force=loaded.rod_force * share,
        pivot_force=loaded.pivot_force * share,
        arm_moment=loaded.arm_moment * share,
        arm_torque=loaded.arm_torque * share,
        arm_worst_at=loaded.arm_worst_at,
        arm_edge=loaded.arm_edge * share,
        arm_face=loaded.arm_face * share,
        arm=under(loaded.arm),
        arm_collapse=under(loaded.arm_collapse),
        pin=under(loaded.pin),
        pin_bearing=under(loaded.pin_bearing),
        pivot_tube=under(loaded.pivot_tube),
        pivot_shaft=under(loaded.pivot_shaft),
        bush=under(loaded.bush),
    )


def _loaded(
    held: HeldArm,
    places: tuple[Place, Place],
    pivot: Pivot,
    pin: ClevisPin,
    push: N,
    rod: N,
    at_pivot: N,
) -> Loaded:
    yields, folds = places
    here = held.yielding(push, yields)
    collapse = held.folding(push, folds)
    with unrecorded():
        torque, moment = held.torque(push), held.moment(push)
    bent_pin = bending_stress(
        pin_moment(rod, pin.fork_thickness, pin.gap, pin.inner_thickness),
        round_modulus(pin.diameter, 0.0),
    )
    tube = bending_stress(
        mid_span_moment(at_pivot, pivot.span), round_modulus(pivot.tube_outside, pivot.tube_inside)
    )
    end = end_load(at_pivot, torque, pivot.span)
    arm = held.arm
    return Loaded(
        push=push,
        rod_force=rod,
        pivot_force=at_pivot,
        arm_moment=moment,
        arm_torque=torque,
        arm_worst_at=held.pad_radius - yields.from_pad,
        arm_edge=here.edge,
        arm_face=here.face,
        arm=Stress(size=here.worse, bears=arm.yield_strength),
        arm_collapse=Stress(size=collapse, bears=arm.yield_strength),
        pin=Stress(
            size=equivalent_stress(bent_pin, double_shear(rod, pin.diameter)),
            bears=pin.yield_strength,
        ),
        pin_bearing=Stress(
            size=bearing_pressure(rod, pin.diameter, arm.thickness),
            bears=np.minimum(arm.yield_strength, pin.yield_strength),
        ),
        pivot_tube=Stress(size=tube, bears=pivot.tube_yield),
        pivot_shaft=Stress(
            size=equivalent_stress(0.0, single_shear(end, pivot.shaft_diameter)),
            bears=pivot.shaft_yield,
        ),
        bush=Stress(
            size=bearing_pressure(end, pivot.shaft_diameter, pivot.bush_length),
            bears=pivot.bush_pressure,
        ),
    )
