"""The way a force takes through the parts of a box, to the shaft or to the frame."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from pedalwright.core.points import Point
from pedalwright.core.units import Array
from pedalwright.panels.made import Clamp, Made
from pedalwright.shell.arrays import xyz
from pedalwright.structure.box.parts import Seat
from pedalwright.structure.box.ways import part_of

#: The middle of what joins two parts.
Places = dict[frozenset[str], list[Point]]


@dataclass(frozen=True, slots=True)
class Path:
    """The parts a force goes through, and places on the way; none where there is no way."""

    parts: tuple[str, ...] = ()
    places: tuple[Point, ...] = ()


def to_shaft(made: Made, seat: Seat) -> Path:
    """From the cylinder's flange to the pivot through the fewest parts."""
    ends = {part_of(clamp.sheet) for clamp in _clamps(made, seat.pivot_on)}
    parts = _fewest(made, [seat.cylinder_on], lambda name: name in ends)
    if not parts:
        return Path()
    pivot = _pivot(made, seat)
    flange = _flange(made, seat)
    return Path(parts, (flange, *_joined(made, parts, pivot), pivot))


def to_frame(made: Made, start: str, at: Point) -> Path:
    """From a place on a part to where the frame holds what it hangs on."""
    held = _held(made)
    parts = _fewest(made, [start], lambda name: name in held)
    if not parts:
        return Path()
    ways = [at, *(_middle(places) for places in _between(made, parts))]
    return Path(parts, (*ways, _nearest(held[parts[-1]], ways[-1])))


def flange_to_frame(made: Made, seat: Seat) -> Path:
    """From the cylinder's flange to the frame."""
    return to_frame(made, seat.cylinder_on, _flange(made, seat))


def shaft_to_frame(made: Made, seat: Seat) -> Path:
    """From the pivot to the frame, the shaft itself left out."""
    whole = to_frame(made, seat.pivot_on, _pivot(made, seat))
    return Path(tuple(p for p in whole.parts if p != seat.pivot_on), whole.places)


def held_middles(made: Made, part: str) -> list[Point]:
    """The middles of the lines along which the frame holds a part."""
    return [_middle(list(ends)) for ends in _held(made).get(part, [])]


def _fewest(made: Made, start: list[str], there: Callable[[str], bool]) -> tuple[str, ...]:
    """Parts from the first to one that is asked for, each joined to the next."""
    joined = _joints(made)
    lines: list[tuple[str, ...]] = [(name,) for name in start]
    been = set(start)
    while lines:
        for line in lines:
            if there(line[-1]):
                return line
        further: list[tuple[str, ...]] = []
        for line in lines:
            for pair in joined:
                beyond = pair - {line[-1]}
                if line[-1] in pair and beyond and not beyond & been:
                    been |= beyond
                    further.append((*line, *beyond))
        lines = further
    return ()


def _joints(made: Made) -> Places:
    """Every two parts that are joined, with the places at which they are."""
    found: Places = {}
    for one, other, place in _every(made):
        found.setdefault(frozenset((one, other)), []).append(place)
    return found


def _every(made: Made) -> Iterator[tuple[str, str, Point]]:
    for row in made.rows:
        if row.counted:
            for place in row.places:
                yield part_of(row.through[0]), part_of(row.through[-1]), place
    for glued in made.glued:
        layer = made.panel(part_of(glued.layer))
        if layer is not None:
            flat = next(f for f in layer.flats() if layer.sheet(f.face.name) == glued.layer)
            middle = _middle([flat.plane.point(place) for place in flat.outline])
            yield part_of(glued.layer), part_of(glued.base), middle
    for tube in made.tubes:
        for clamp in (tube.start_on, tube.end_on, *tube.carries):
            if clamp is not None:
                yield tube.name, part_of(clamp.sheet), clamp.master or clamp.centre
    for shaft in made.shafts:
        for clamp in (shaft.one, shaft.other):
            yield shaft.name, part_of(clamp.sheet), clamp.centre


def _between(made: Made, parts: tuple[str, ...]) -> Iterator[list[Point]]:
    joined = _joints(made)
    for one, other in pairwise(parts):
        yield joined[frozenset((one, other))]


def _joined(made: Made, parts: tuple[str, ...], pivot: Point) -> Iterator[Point]:
    """Joints on the way; in one and the same part by way of the pivot's foot on its base."""
    yield from (_middle(places) for places in _between(made, parts))
    panel = made.panel(parts[0])
    if len(parts) == 1 and panel is not None:
        foot = panel.lying.place(pivot)
        yield panel.lying.point(foot)


def _held(made: Made) -> dict[str, list[tuple[Point, Point]]]:
    """Of every part that the frame holds: the lines along which it does."""
    found: dict[str, list[tuple[Point, Point]]] = {}
    for held in made.held:
        found.setdefault(held.part, []).append((held.start, held.end))
    for tube in made.tubes:
        for how, at in ((tube.start_held, tube.start), (tube.end_held, tube.end)):
            if how != "free":
                found.setdefault(tube.name, []).append((at, at))
    return found


def _nearest(lines: list[tuple[Point, Point]], at: Point) -> Point:
    """The place on some lines that is nearest."""
    feet = [_on_line(xyz(start), xyz(end), xyz(at)) for start, end in lines]
    best = min(feet, key=lambda foot: float(np.linalg.norm(foot - xyz(at))))
    return Point(*(float(number) for number in best))


def _on_line(start: Array, end: Array, at: Array) -> Array:
    way = end - start
    length = float(way @ way)
    share = float((at - start) @ way) / length if length else 0.0
    return start + way * min(1.0, max(0.0, share))


def _clamps(made: Made, shaft: str) -> list[Clamp]:
    return [clamp for one in made.shafts if one.name == shaft for clamp in (one.one, one.other)]


def _pivot(made: Made, seat: Seat) -> Point:
    return _middle([clamp.centre for clamp in _clamps(made, seat.pivot_on)])


def _flange(made: Made, seat: Seat) -> Point:
    panel = made.panel(seat.cylinder_on)
    assert panel is not None, f"{seat.cylinder_on} is no panel"
    return panel.lying.point(panel.lying.place(seat.cylinder))


def _middle(places: list[Point]) -> Point:
    total = places[0]
    for place in places[1:]:
        total += place
    return total * (1.0 / len(places))
