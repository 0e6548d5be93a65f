"""Reach into a design for one of its two force pedals, and put a changed one back."""

from dataclasses import dataclass, replace
from typing import Literal, TypeAlias

from pedalwright.core.points import Point
from pedalwright.design import Carrier, Design
from pedalwright.linkage import Pedal, Rod, lever

PedalName: TypeAlias = Literal["brake", "clutch"]


@dataclass(frozen=True, kw_only=True, slots=True)
class Fitted:
    """One pedal as it stands in a design."""

    pedal: Pedal
    rod: Rod
    carrier: Carrier


def fitted(design: Design, name: PedalName) -> Fitted:
    """The pedal of that name."""
    part = design.brake if name == "brake" else design.clutch
    return Fitted(pedal=part.pedal, rod=part.rod, carrier=part.carrier)


def refitted(design: Design, name: PedalName, made: Fitted) -> Design:
    """The design with that pedal in the place of its own."""
    if name == "brake":
        brake = replace(design.brake, pedal=made.pedal, rod=made.rod, carrier=made.carrier)
        return replace(design, brake=brake)
    clutch = replace(design.clutch, pedal=made.pedal, rod=made.rod, carrier=made.carrier)
    return replace(design, clutch=clutch)


def with_pedal(made: Fitted, pedal: Pedal, *, cylinder_follows: bool) -> Fitted:
    """Another arm; the cylinder stays, or moves with the pin so that its rod stays as it was.

    A cylinder behind a relay lever stays.
    """
    if not cylinder_follows or made.rod.relay is not None:
        return replace(made, pedal=pedal)
    moved: Point = lever(pedal).pin - lever(made.pedal).pin
    return replace(made, pedal=pedal, rod=replace(made.rod, socket=made.rod.socket + moved))
