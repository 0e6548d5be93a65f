"""The box condensed to where its pedals hang, once for as long as it stays as it is.

A box takes some tenths of a second to mesh and to solve; after that a push on the pad costs one
small matrix product.
"""

from collections.abc import Iterator, Mapping
from functools import lru_cache

import numpy as np

from pedalwright.core.faults import Fault, InputError
from pedalwright.core.points import Point
from pedalwright.panels.box import made
from pedalwright.panels.made import Made
from pedalwright.panels.parts import Box
from pedalwright.shell.build import build
from pedalwright.shell.condense import condense, laps
from pedalwright.shell.mesh import Flags, Mesh
from pedalwright.shell.solve import SetUp, respond, set_up
from pedalwright.structure.box.bench import Stood, stood
from pedalwright.structure.box.parts import Held, Seat, Unheld
from pedalwright.structure.box.ways import joints
from pedalwright.survey.parts import Survey

#: Of the push on the cylinder, what the shaft bears of a pedal of about four to one.
PULL = 0.75
#: Boxes that are kept: those of a search, or of a hand that goes to and fro.
KEPT = 64


@lru_cache(maxsize=KEPT)
def held(box: Box, survey: Survey, seats: tuple[Seat, ...]) -> tuple[Held, ...] | Unheld:
    """For every seat how the box answers it; of a box that cannot be judged, why."""
    try:
        whole = made(box, survey)
        if unknown := tuple(_unknown(whole, seats)):
            return Unheld(unknown)
        stands = stood(whole, seats)
        built = build(stands.bench)
    except InputError as wrong:
        return Unheld(wrong.faults)
    ready = set_up(built.mesh)
    if ready.loose:
        return Unheld(tuple(loose(name) for name in ready.loose))
    pressing = _pressing(ready, stands)
    known = laps(ready, np.flatnonzero(pressing.any(axis=0)))
    found: list[Held] = []
    for number, seat in enumerate(seats):
        flange, shaft = stands.flanges[number], stands.shafts[number]
        own = condense(ready, (flange, shaft), pressing[number], known)
        found.append(
            Held(
                own.give,
                own.by_part,
                own.parts,
                _place(built.mesh, flange),
                _place(built.mesh, shaft),
                joints(whole, seat),
            )
        )
    return tuple(found)


def _pressing(ready: SetUp, stands: Stood) -> Flags:
    """Which places of contact press while each pedal is pushed, (seats, contacts).

    Any pedal pushes its cylinder away from the feet and pulls its shaft the other way, roughly by
    a quarter less; which places press depends little on how much.
    """
    cases: list[Mapping[str | int, tuple[float, ...]]] = [
        {
            flange: _forces(-away),
            shaft: _forces(away * PULL),
        }
        for flange, shaft, away in zip(stands.flanges, stands.shafts, stands.away, strict=True)
    ]
    answer = respond(ready, ready.mesh.loads(*cases))
    flags: Flags = answer.pressed > 0.0
    return flags


def _forces(force: Point) -> tuple[float, ...]:
    return float(force.x), float(force.y), float(force.z)


def _unknown(made: Made, seats: tuple[Seat, ...]) -> Iterator[Fault]:
    """Parts a pedal is said to hang on that are not there."""
    panels = [panel.name for panel in made.panels if panel.counted]
    shafts = [shaft.name for shaft in made.shafts]
    for seat in seats:
        where = f"{seat.pedal}.carrier.mount"
        for key, name, there in (
            ("cylinder_on", seat.cylinder_on, panels),
            ("pivot_on", seat.pivot_on, shafts),
        ):
            if name not in there:
                accepts = f"A part of the box: {', '.join(there) or 'none is described'}."
                yield Fault(where=f"{where}.{key}", read=name, accepts=accepts)


def _place(mesh: Mesh, name: str) -> Point:
    return Point(*(float(number) for number in mesh.nodes[mesh.points[name]]))


def loose(name: str) -> Fault:
    """A part that nothing holds."""
    return Fault(
        where=f"box, {name}",
        read="a part that nothing holds",
        accepts="Each part hangs on the frame: by an edge that is held, a row of fasteners, a "
        "fold or a tube.",
    )
