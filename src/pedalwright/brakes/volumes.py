"""Fluid that the brakes at the wheels take: lift, give under pressure, wear."""

from dataclasses import dataclass, replace

from pedalwright.brakes.parts import Plumbing
from pedalwright.brakes.solve import piston_area
from pedalwright.brakes.wheels import WheelBrake
from pedalwright.core.units import MPa, mm3
from pedalwright.core.working import subject
from pedalwright.hydraulics import Demand
from pedalwright.hydraulics.formulas import (
    calliper_volume,
    fluid_compression,
    lift_volume,
    pad_volume,
    wear_volume,
)


@dataclass(frozen=True, kw_only=True, slots=True)
class Pressed:
    """Fluid taken up by pressure at the hard stop, front and rear; the hoses apart."""

    linings: tuple[mm3, mm3]
    callipers: tuple[mm3, mm3]
    fluid: tuple[mm3, mm3]


def lifts(front: WheelBrake, rear: WheelBrake) -> tuple[mm3, mm3]:
    """Fluid that brings the linings of both wheels of an axle to their discs, front and rear."""
    with subject("front axle"):
        front_lift = lift_volume(2 * front.pistons_moved, piston_area(front), front.lift)
    with subject("rear axle"):
        rear_lift = lift_volume(2 * rear.pistons_moved, piston_area(rear), rear.lift)
    return front_lift, rear_lift


def takes_pressure(front: WheelBrake, rear: WheelBrake, plumbing: Plumbing) -> bool:
    """Whether anything but the hoses was given that takes up fluid with pressure."""
    return (
        front.elasticity is not None
        or rear.elasticity is not None
        or (plumbing.fluid is not None and plumbing.fluid.volume is not None)
    )


def not_counted(front: WheelBrake, rear: WheelBrake, plumbing: Plumbing) -> tuple[str, ...]:
    """Causes of travel nobody gave numbers for: the pedal will go deeper than said by these."""
    missing = {
        "linings and callipers, front": front.elasticity is None,
        "linings and callipers, rear": rear.elasticity is None,
        "compression of the fluid": plumbing.fluid is None or plumbing.fluid.volume is None,
    }
    return tuple(cause for cause, left_out in missing.items() if left_out)


def pressed(
    front: WheelBrake, rear: WheelBrake, plumbing: Plumbing, pressures: tuple[MPa, MPa]
) -> Pressed:
    """Fluid taken up at these pressures; each circuit holds half of the fluid."""
    with subject("front axle"):
        front_linings, front_callipers = _elastic(front, pressures[0])
    with subject("rear axle"):
        rear_linings, rear_callipers = _elastic(rear, pressures[1])
    return Pressed(
        linings=(front_linings, rear_linings),
        callipers=(front_callipers, rear_callipers),
        fluid=(_compressed(plumbing, pressures[0]), _compressed(plumbing, pressures[1])),
    )


def demand(
    front: WheelBrake, rear: WheelBrake, plumbing: Plumbing, taken: Pressed | None = None
) -> Demand:
    """Fluid each circuit takes up to the hard stop: two wheels' lift and half of the hoses.

    With `taken`, what pressure takes up besides.
    """
    front_lift, rear_lift = lifts(front, rear)
    lifted = Demand(front=front_lift + plumbing.hoses / 2, rear=rear_lift + plumbing.hoses / 2)
    if taken is None:
        return lifted
    causes = (taken.linings, taken.callipers, taken.fluid)
    return Demand(
        front=lifted.front + sum(cause[0] for cause in causes),
        rear=lifted.rear + sum(cause[1] for cause in causes),
    )


def worn(brake: WheelBrake) -> WheelBrake:
    """The brake with the lift of worn linings, where that is known."""
    return brake if brake.lift_worn is None else replace(brake, lift=brake.lift_worn)


def wear_volumes(front: WheelBrake, rear: WheelBrake) -> tuple[mm3 | None, mm3 | None]:
    """Fluid that follows the linings from new to worn; None where no wear was given."""
    with subject("front circuit"):
        front_volume = _worn_away(front)
    with subject("rear circuit"):
        rear_volume = _worn_away(rear)
    return front_volume, rear_volume


def _elastic(brake: WheelBrake, pressure: MPa) -> tuple[mm3, mm3]:
    """Fluid that both wheels' linings and callipers take; 0 where nothing was given."""
    if brake.elasticity is None:
        return 0.0, 0.0
    squeeze = brake.elasticity.squeeze * pressure
    return (
        pad_volume(2 * brake.pistons_moved, piston_area(brake), squeeze),
        calliper_volume(2.0, brake.elasticity.calliper, pressure),
    )


def _compressed(plumbing: Plumbing, pressure: MPa) -> mm3:
    fluid = plumbing.fluid
    if fluid is None or fluid.volume is None:
        return 0.0
    return fluid_compression(fluid.volume / 2, pressure, fluid.bulk_modulus)


def _worn_away(brake: WheelBrake) -> mm3 | None:
    if brake.wear is None:
        return None
    return wear_volume(
        2 * brake.pistons_moved, piston_area(brake), brake.wear.lining, brake.wear.face
    )
