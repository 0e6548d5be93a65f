"""A pedal box on a slide: every driver has his own place for it.

Walls are ahead, so room and travel are judged with the box where the foremost driver has it;
each leg is judged with the box where its own driver has it.
"""

from dataclasses import replace
from typing import TypeVar

import numpy as np

from pedalwright.core.points import REARWARD, Point
from pedalwright.core.units import mm
from pedalwright.design import BrakeDesign, ClutchDesign, Design
from pedalwright.driver import Driver
from pedalwright.linkage import Pedal, Rod

Part = TypeVar("Part", BrakeDesign, ClutchDesign)


def foremost(design: Design) -> mm:
    """How far the box stands rearward for the driver who has it furthest forward."""
    places = [place_of(design, driver) for driver in design.drivers] or [design.slide]
    least: mm = places[0]
    for place in places[1:]:
        least = np.minimum(least, place)
    return least


def place_of(design: Design, driver: Driver) -> mm:
    """How far rearward a driver has the box; the design's own place where he says nothing."""
    return design.slide if driver.slide is None else driver.slide


def slid(design: Design, by: mm) -> Design:
    """The design with pedals, cylinders, relay levers and springs moved rearward together.

    An accelerator's linkage beyond the pedal is a cable, or is set anew, and stays.
    """
    aft = REARWARD * by
    return replace(
        design,
        brake=moved(design.brake, aft),
        clutch=moved(design.clutch, aft),
        throttle=replace(design.throttle, pedal=_pedal(design.throttle.pedal, aft)),
    )


def moved(part: Part, aft: Point) -> Part:
    """A pedal with its cylinder, relay lever and spring moved together, any way."""
    spring = part.return_spring
    if spring is not None:
        spring = replace(spring, eye=spring.eye + aft, anchor=spring.anchor + aft)
    return replace(
        part, pedal=_pedal(part.pedal, aft), rod=_rod(part.rod, aft), return_spring=spring
    )


def _pedal(pedal: Pedal, aft: Point) -> Pedal:
    return replace(pedal, pivot=pedal.pivot + aft)


def _rod(rod: Rod, aft: Point) -> Rod:
    relay = rod.relay
    if relay is not None:
        relay = replace(
            relay,
            pivot=relay.pivot + aft,
            driven_pin=relay.driven_pin + aft,
            driving_pin=relay.driving_pin + aft,
        )
    return replace(rod, socket=rod.socket + aft, relay=relay)
