"""The box condensed to where its pedals hang, once for as long as it stays as it is.

A box takes some tenths of a second to mesh and to solve; after that a push on the pad costs one
small matrix product.
"""

from collections.abc import Iterator
from functools import lru_cache

from pedalwright.core.faults import Fault, InputError
from pedalwright.core.points import Point
from pedalwright.panels.box import made
from pedalwright.panels.made import Made
from pedalwright.panels.parts import Box
from pedalwright.shell.build import build
from pedalwright.shell.condense import condense
from pedalwright.shell.mesh import Mesh
from pedalwright.shell.solve import set_up
from pedalwright.structure.box.bench import stood
from pedalwright.structure.box.parts import Held, Seat, Unheld
from pedalwright.structure.box.ways import joints
from pedalwright.survey.parts import Survey

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
    points = tuple(dict.fromkeys((*stands.flanges, *stands.shafts)))
    answer = condense(ready, points)
    found: list[Held] = []
    for seat, flange, shaft in zip(seats, stands.flanges, stands.shafts, strict=True):
        own = answer.pick(flange, shaft)
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
