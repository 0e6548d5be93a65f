"""What can be taken hold of on the big drawing, and what its place says of the numbers.

From the side that is one pedal in all its parts; from above and from the seat it is how all three
stand across the car. A handle stands where its part is with the pedal at rest. Put somewhere else
it answers with the entries of the project file that bring it there, in inside units, and nothing
else is touched.
"""

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import atan2, copysign, hypot, isfinite

from pedalwright import linkage
from pedalwright.assess.stroke import PEDAL_NAMES, Pressed, pedal_of
from pedalwright.core.points import REARWARD, RIGHT, Point
from pedalwright.design import Design
from pedalwright.documents.pictures.places import seen, towards
from pedalwright.documents.pictures.stroke import Look, SideName, heel_level
from pedalwright.documents.pictures.views import FROM_ABOVE, FROM_THE_LEFT, FROM_THE_SEAT, View
from pedalwright.drawing import XY

#: The numbers of a place that lie to the right and up on the paper of each side.
AXES: Mapping[SideName, tuple[str, str]] = {
    "side": ("x", "z"),
    "plan": ("x", "y"),
    "front": ("y", "z"),
}
VIEWS: Mapping[SideName, View] = {
    "side": FROM_THE_LEFT,
    "plan": FROM_ABOVE,
    "front": FROM_THE_SEAT,
}
WAYS = {"x": "rearward", "y": "to the right", "z": "up"}


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
    if look.side == "side":
        found = (*_of_pedal(now, look), *_of_rods(now, look), *_of_people(design, now, look))
    else:
        found = (*_of_row(design, now, look), *_of_rods(now, look), *_of_people(design, now, look))
    return [handle for handle in found if isfinite(sum(handle.at))]


def put(design: Design, now: Pressed, handle: Handle, at: XY) -> dict[str, float]:
    """The numbers that bring a handle to a place, or as near as it can go."""
    at = _on_its_way(handle, at)
    match handle.name.rpartition(".")[2]:
        case _ if handle.name.startswith("hip "):
            return dict(zip(handle.entries, at, strict=True))
        case "pad" if len(handle.entries) == 1:
            return _pad_across(design, handle, at)
        case "pad":
            return _pad(now, handle, at)
        case "pin":
            pivot = seen(now.lever.pivot)
            return {handle.entries[0]: hypot(at[0] - pivot[0], at[1] - pivot[1])}
        case "heel":
            return _heel(design, at[1])
        case _:
            slide = float(now.slide)
            aft = {path: slide if path.endswith(".x") else 0.0 for path in handle.entries}
            return {path: to - aft[path] for path, to in zip(handle.entries, at, strict=True)}


def says(handle: Handle, side: SideName) -> str:
    """What a handle is and where it stands, for those who do not see it."""
    places = (f"{to:.1f} {WAYS[axis]}" for to, axis in zip(handle.at, AXES[side], strict=True))
    return ", ".join((handle.label, *places))


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
    yield _place("pivot", "pivot", lever.pivot, f"{table}.pivot", look)
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


def _of_row(design: Design, now: Pressed, look: Look) -> Iterator[Handle]:
    """Every pedal across the car: its pivot, and its pad by the joggle of the arm."""
    aft = REARWARD * now.slide
    for name in PEDAL_NAMES:
        pedal, table = pedal_of(design, name), f"{name}.pedal"
        lever = now.lever if name == look.pedal else linkage.lever(pedal)
        by = aft if name != look.pedal else REARWARD * 0.0
        yield _place(f"{name}.pivot", f"{name} pivot", lever.pivot + by, f"{table}.pivot", look)
        if pedal.axis is None:
            yield Handle(
                name=f"{name}.pad",
                label=f"{name} pad",
                at=VIEWS[look.side](lever.pad + by),
                entries=(f"{table}.pad_offset",),
                along=VIEWS[look.side](RIGHT),
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
        yield _place(name, label, point, f"{table}.{name}", look)


def _of_people(design: Design, now: Pressed, look: Look) -> Iterator[Handle]:
    """The hips of those who are drawn, and the rest everybody's heels stand on."""
    legs = [leg for leg in now.legs if leg.name in look.drivers]
    for leg in legs:
        if not look.close:
            person = next(p for p in design.drivers if p.name == leg.name)
            hip = f"drivers.{quoted(person.name)}.hip"
            yield _place(f"hip {person.name}", f"hip of {person.name}", person.hip, hip, look)
    if look.side == "plan":
        return
    under = legs[0].posture.heel if legs else now.lever.pad
    across, _ = VIEWS[look.side](under)
    yield Handle(
        name="heel",
        label="heel rest",
        at=(across, heel_level(design)),
        entries=("heel_rest.drop", "heel_rest.plate"),
        along=(0.0, 1.0),
    )


def _place(name: str, label: str, point: Point, table: str, look: Look) -> Handle:
    """A point of the car, of which this side shows two numbers."""
    entries = tuple(f"{table}.{axis}" for axis in AXES[look.side])
    return Handle(name=name, label=label, at=VIEWS[look.side](point), entries=entries)


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


def _pad_across(design: Design, handle: Handle, at: XY) -> dict[str, float]:
    """The joggle of the arm that brings its pad there."""
    (path,) = handle.entries
    pedal = pedal_of(design, path.partition(".")[0])
    along = handle.along or (0.0, 0.0)
    by = sum((to - now) * way for to, now, way in zip(at, handle.at, along, strict=True))
    return {path: float(pedal.pad_offset) + by}


def _heel(design: Design, z: float) -> dict[str, float]:
    """A tub is let into the floor, or raised; above the floor stands a plate."""
    floor, rest = float(design.survey.face("floor").offset), design.heel_rest
    drop = max(0.0, floor + float(rest.plate) - z)
    plate = float(rest.plate) if drop > 0.0 else max(0.0, z - floor)
    return {"heel_rest.drop": drop, "heel_rest.plate": plate}
