"""What can be taken hold of on the picture of a pedal, and what its place says of the numbers.

A handle stands where its part is with the pedal at rest. Put somewhere else it answers with the
entries of the project file that bring it there, in inside units, and nothing else is touched.
"""

import json
from collections.abc import Iterator
from dataclasses import dataclass
from math import atan2, copysign, hypot, isfinite

from pedalwright.assess.stroke import Pressed
from pedalwright.design import Design
from pedalwright.documents.pictures.places import seen, towards
from pedalwright.documents.pictures.stroke import Look, heel_level
from pedalwright.drawing import XY


@dataclass(frozen=True, kw_only=True, slots=True)
class Handle:
    """One thing to take hold of."""

    name: str
    #: What a reader calls it.
    label: str
    at: XY
    #: Entries it moves, by their path.
    entries: tuple[str, ...]
    #: The way it can go where it cannot go both ways, of length 1.
    along: XY | None = None


def handles(design: Design, now: Pressed, look: Look) -> list[Handle]:
    """Everything that can be taken hold of; what has no place yet cannot."""
    found = (*_of_pedal(now, look), *_of_rods(now, look), *_of_people(design, now, look))
    return [handle for handle in found if isfinite(sum(handle.at))]


def put(design: Design, now: Pressed, handle: Handle, at: XY) -> dict[str, float]:
    """The numbers that bring a handle to a place, or as near as it can go."""
    x, z = _on_its_way(handle, at)
    match handle.name:
        case "pad":
            return _pad(now, handle, (x, z))
        case "pin":
            pivot = seen(now.lever.pivot)
            return {handle.entries[0]: hypot(x - pivot[0], z - pivot[1])}
        case "heel":
            return _heel(design, z)
        case _:
            slide = 0.0 if handle.name.startswith("hip") else float(now.slide)
            return dict(zip(handle.entries, (x - slide, z), strict=True))


def moved(handle: Handle, by: XY) -> XY:
    """Where a handle comes to by a step of a key; one that has its own way goes along it."""
    x, z = handle.at
    if handle.along is None:
        return x + by[0], z + by[1]
    ux, uz = handle.along
    forward = by[0] * _sense(ux) + by[1] * _sense(uz)
    return x + ux * forward, z + uz * forward


def _sense(part: float) -> float:
    return 0.0 if abs(part) < _SQUARE else copysign(1.0, part)


#: A way this square to a key is not moved along by it.
_SQUARE = 1e-6


def _of_pedal(now: Pressed, look: Look) -> Iterator[Handle]:
    """Pivot, pad and pin; on a slanting tube pad and pin are typed, not dragged."""
    table, lever = f"{look.pedal}.pedal", now.lever
    pivot = (f"{table}.pivot.x", f"{table}.pivot.z")
    yield Handle(name="pivot", label="pivot", at=seen(lever.pivot), entries=pivot)
    if now.pedal.axis is not None:
        return
    pad = (f"{table}.pad_radius", f"{table}.pad_lean")
    yield Handle(name="pad", label="pad", at=seen(lever.pad), entries=pad)
    if now.rod is not None and isfinite(sum(seen(lever.pin))):
        yield Handle(
            name="pin",
            label="rod pin",
            at=seen(lever.pin),
            entries=(f"{table}.pin_radius",),
            along=towards(seen(lever.pivot), seen(lever.pin)),
        )


def _of_rods(now: Pressed, look: Look) -> Iterator[Handle]:
    """The socket in the cylinder, and a relay lever's tube and pins."""
    if now.rod is None:
        return
    table, relay = f"{look.pedal}.rod", now.rod.relay
    places = [("socket", "rod socket", now.rod.socket)]
    if relay is not None:
        places += [
            ("relay.pivot", "relay lever's tube", relay.pivot),
            ("relay.driven_pin", "relay lever's pin from the pedal", relay.driven_pin),
            ("relay.driving_pin", "relay lever's pin to the cylinder", relay.driving_pin),
        ]
    for name, label, point in places:
        entries = (f"{table}.{name}.x", f"{table}.{name}.z")
        yield Handle(name=name, label=label, at=seen(point), entries=entries)


def _of_people(design: Design, now: Pressed, look: Look) -> Iterator[Handle]:
    """The hips of those who are drawn, and the rest their heels stand on."""
    for leg in now.legs:
        if leg.name in look.drivers and not look.close:
            person = next(p for p in design.drivers if p.name == leg.name)
            hip = f"drivers.{quoted(person.name)}.hip"
            yield Handle(
                name=f"hip {person.name}",
                label=f"hip of {person.name}",
                at=seen(person.hip),
                entries=(f"{hip}.x", f"{hip}.z"),
            )
    first = next((leg for leg in now.legs if leg.name in look.drivers), None)
    if first is not None:
        x, _ = seen(first.posture.heel)
        entry = "heel_rest.drop" if float(design.heel_rest.drop) > 0.0 else "heel_rest.plate"
        at = (x, heel_level(design))
        yield Handle(name="heel", label="heel rest", at=at, entries=(entry,), along=(0.0, 1.0))


def quoted(name: str) -> str:
    """A name as it stands in a path."""
    plain = all(c.isascii() and (c.isalnum() or c in "_-") for c in name)
    return name if plain and name else json.dumps(name)


def _on_its_way(handle: Handle, at: XY) -> XY:
    """The nearest place it can go to."""
    if handle.along is None:
        return at
    (x, z), (ux, uz) = handle.at, handle.along
    along = (at[0] - x) * ux + (at[1] - z) * uz
    return x + along * ux, z + along * uz


def _pad(now: Pressed, handle: Handle, at: XY) -> dict[str, float]:
    """Radius and lean of the arm whose pad stands there; lean is behind the vertical."""
    pivot = seen(now.lever.pivot)
    behind, above = at[0] - pivot[0], at[1] - pivot[1]
    up = above if now.pedal.hinge == "floor" else -above
    return dict(zip(handle.entries, (hypot(behind, above), atan2(behind, up)), strict=True))


def _heel(design: Design, z: float) -> dict[str, float]:
    """A tub in the floor is deepened or raised; without one the plate on it is."""
    floor, rest = float(design.survey.face("floor").offset), design.heel_rest
    if float(rest.drop) > 0.0:
        return {"heel_rest.drop": max(0.1, floor + float(rest.plate) - z)}
    return {"heel_rest.plate": max(0.0, z - floor)}
