"""The frozen tree of what the builder measures and chooses.

The project file has the same shape and the same names: `brake.pedal.pin_radius` in the file
is `design.brake.pedal.pin_radius` here. Numbers may be arrays (a batch); a number that is
not known is nan. Provenance (measured, assumed, default, ±) lives beside the tree, in
`project`, so that the rooms stay numeric.
"""

from dataclasses import dataclass
from typing import Literal

from pedalwright.brakes.parts import Car, Plumbing
from pedalwright.brakes.wheels import WheelBrake
from pedalwright.clutch.parts import Release
from pedalwright.core.units import mm
from pedalwright.driver.parts import Driver, HeelRest
from pedalwright.hydraulics.parts import Cylinder, Masters
from pedalwright.linkage.adjusters import RestStop, ReturnSpring, RodEnds, Stop
from pedalwright.linkage.parts import Pedal, Rod
from pedalwright.panels.parts import NO_BOX, Box
from pedalwright.shelf.stock import EMPTY, Stock
from pedalwright.structure.parts import Arm, ClevisPin, Mount, Pivot, PushRod, PushTest, RelayArms
from pedalwright.structure.trims.parts import Trim
from pedalwright.survey.parts import Survey
from pedalwright.throttle.parts import Throttle


@dataclass(frozen=True, kw_only=True, slots=True)
class Carrier:
    """What carries the load of one pedal: arm, pivot, pin, rod and what they are bolted to."""

    arm: Arm
    pivot: Pivot
    clevis_pin: ClevisPin
    push_rod: PushRod
    mount: Mount
    #: Left out without a relay lever; with one, and left out, its strength is not judged.
    relay: RelayArms | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class BrakeDesign:
    """The brake from pad to discs."""

    pedal: Pedal
    rod: Rod
    carrier: Carrier
    masters: Masters
    plumbing: Plumbing
    front: WheelBrake
    rear: WheelBrake
    stop: Stop | None = None
    rest_stop: RestStop | None = None
    rod_ends: RodEnds | None = None
    return_spring: ReturnSpring | None = None
    #: Pushes tried on the car, to find what gives more than it should.
    push_tests: tuple[PushTest, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class ClutchDesign:
    """The clutch from pad to release bearing."""

    pedal: Pedal
    rod: Rod
    carrier: Carrier
    release: Release
    #: None for a cable.
    master: Cylinder | None = None
    #: The pad's arc up to whatever it meets, measured with a bent strip; left out, it is taken
    #: to end where the toes meet the front wall.
    pad_room: mm | None = None
    #: Whether the heel stays on its rest or may lift when the ankle would bend too far.
    heel: Literal["stays", "may lift"] = "stays"
    stop: Stop | None = None
    rest_stop: RestStop | None = None
    rod_ends: RodEnds | None = None
    return_spring: ReturnSpring | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class ThrottleDesign:
    """The accelerator from pad to spindle."""

    pedal: Pedal
    opening: Throttle


@dataclass(frozen=True, kw_only=True, slots=True)
class Design:
    """One car, one attempt."""

    car: Car
    survey: Survey
    heel_rest: HeelRest
    #: Pad centre to wall when the toes just touch it.
    toes_to_wall: mm
    drivers: tuple[Driver, ...]
    brake: BrakeDesign
    clutch: ClutchDesign
    throttle: ThrottleDesign
    #: How deep a pocket for the toes is let into the front wall ahead of the pads.
    toe_pocket: mm = 0.0
    #: How far the pedal box stands on its slide rearward of where it was measured.
    slide: mm = 0.0
    #: The sheet metal and tubes that carry the pedals; left out, mounts are as stiff as is said.
    box: Box = NO_BOX
    #: Where members of the frame are cut for room, and what goes back.
    trims: tuple[Trim, ...] = ()
    #: What there is to make it from.
    stock: Stock = EMPTY
