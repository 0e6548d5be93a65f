"""The flat parts a design describes by itself: the arms of brake and clutch, and their relays'."""

from collections.abc import Iterator
from dataclasses import replace

from pedalwright.design import Design
from pedalwright.design.tree import BrakeDesign, ClutchDesign
from pedalwright.hydraulics.parts import Twin
from pedalwright.making.profiles import Profile, pedal_arm, relay_arms


def car_profiles(design: Design) -> tuple[Profile, ...]:
    """Every arm, brake before clutch."""
    return (*_arms("brake", design.brake), *_arms("clutch", design.clutch))


def _arms(name: str, part: BrakeDesign | ClutchDesign) -> Iterator[Profile]:
    arm = pedal_arm(f"{name} arm", part.pedal, part.carrier)
    if isinstance(part, BrakeDesign) and isinstance(part.masters, Twin):
        pivot, pin = arm.bores
        bar = replace(pin, name="B", use="balance bar's tube, welded in", reamed=False)
        arm = replace(arm, bores=(pivot, bar))
    yield arm
    relay, arms = part.rod.relay, part.carrier.relay
    if relay is not None and arms is not None:
        hole = float(part.carrier.arm.pin_hole)
        yield from relay_arms(relay, arms, hole, name=f"{name} relay")
