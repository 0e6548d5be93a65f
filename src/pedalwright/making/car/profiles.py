"""The flat parts a design describes by itself: the arms of brake and clutch, and their relays'."""

from collections.abc import Iterator

from pedalwright.design import Design
from pedalwright.design.tree import BrakeDesign, ClutchDesign
from pedalwright.making.profiles import Profile, pedal_arm, relay_arms


def car_profiles(design: Design) -> tuple[Profile, ...]:
    """Every arm, brake before clutch."""
    return (*_arms("brake", design.brake), *_arms("clutch", design.clutch))


def _arms(name: str, part: BrakeDesign | ClutchDesign) -> Iterator[Profile]:
    yield pedal_arm(f"{name} arm", part.pedal, part.carrier)
    relay, arms = part.rod.relay, part.carrier.relay
    if relay is not None and arms is not None:
        hole = float(part.carrier.arm.pin_hole)
        yield from relay_arms(relay, arms, hole, name=f"{name} relay")
