"""Which parts of a box hang together, and by how many joints a pedal's forces meet in it."""

from collections.abc import Mapping
from dataclasses import replace
from math import inf

from pedalwright.panels.made import Made
from pedalwright.structure.box.parts import Seat

#: Parts that each part is joined to.
Ways = Mapping[str, set[str]]


def ways(made: Made) -> Ways:
    """By fasteners, glue, and the tubes and shafts that are fixed to them."""
    found: dict[str, set[str]] = {}

    def join(one: str, other: str) -> None:
        found.setdefault(one, set()).add(other)
        found.setdefault(other, set()).add(one)

    for row in made.rows:
        if row.counted:
            join(part_of(row.through[0]), part_of(row.through[-1]))
    for glued in made.glued:
        join(part_of(glued.layer), part_of(glued.base))
    for tube in made.tubes:
        for clamp in (tube.start_on, tube.end_on, *tube.carries):
            if clamp is not None:
                join(tube.name, part_of(clamp.sheet))
    for shaft in made.shafts:
        for clamp in (shaft.one, shaft.other):
            join(shaft.name, part_of(clamp.sheet))
    return found


def joints(made: Made, seat: Seat) -> float:
    """Joints from the part that carries the cylinder to one that carries the shaft.

    0 in one and the same piece; without end where there is no way but through the frame.
    """
    ends = {
        part_of(clamp.sheet)
        for shaft in made.shafts
        if shaft.name == seat.pivot_on
        for clamp in (shaft.one, shaft.other)
    }
    found, reached, steps = ways(made), {seat.cylinder_on}, 0
    while not reached & ends:
        further = reached.union(*(found.get(one, set()) for one in reached))
        if further == reached:
            return inf
        reached, steps = further, steps + 1
    return float(steps)


def in_use(made: Made, seats: tuple[Seat, ...]) -> Made:
    """Without the parts that no pedal's force can reach, and those not counted on."""
    found = ways(made)
    reached = {name for seat in seats for name in (seat.cylinder_on, seat.pivot_on)}
    while (further := reached.union(*(found.get(one, set()) for one in reached))) != reached:
        reached = further
    panels = tuple(p for p in made.panels if p.counted and p.name in reached)
    there = {panel.name for panel in panels}
    return replace(
        made,
        panels=panels,
        rows=tuple(row for row in made.rows if {part_of(s) for s in row.through} <= there),
        glued=tuple(one for one in made.glued if part_of(one.base) in there),
        touching=tuple(pair for pair in made.touching if {part_of(s) for s in pair} <= there),
        shafts=tuple(shaft for shaft in made.shafts if shaft.name in reached),
        tubes=tuple(tube for tube in made.tubes if tube.name in reached),
        held=tuple(held for held in made.held if held.part in there),
    )


def part_of(sheet: str) -> str:
    """The part a face belongs to."""
    return sheet.rpartition(".")[0]
