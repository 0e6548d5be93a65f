"""The box on the bench in full: fine triangles, sheets that press on one another, every load case.

What the condensed box leaves out is here: contact, stress, forces in fasteners, what each held edge
bears, and the shape it all moves to.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from pedalwright.core.faults import InputError
from pedalwright.core.points import Point
from pedalwright.core.units import Array, N
from pedalwright.panels.box import made
from pedalwright.panels.made import Made
from pedalwright.panels.parts import Box
from pedalwright.shell.arrays import xyz
from pedalwright.shell.buckling import Buckling, buckling
from pedalwright.shell.build import Built, build
from pedalwright.shell.bulge import Bulge, bulges
from pedalwright.shell.forces import fastener_forces
from pedalwright.shell.judged import Judged, judged
from pedalwright.shell.mesh import Flags
from pedalwright.shell.parts import Bench
from pedalwright.shell.solve import Answer, SetUp, respond, set_up
from pedalwright.shell.stress import stresses
from pedalwright.structure.box.bench import FINE, Stood, stood
from pedalwright.structure.box.fasteners import RowWork, worked_rows
from pedalwright.structure.box.held import loose
from pedalwright.structure.box.parts import Held, PartGive, Push, Seat, Unheld
from pedalwright.structure.box.push import loads
from pedalwright.structure.box.ways import in_use
from pedalwright.survey.parts import Survey

#: A hard stop, a frightened driver, the hardest push; a foot slipping sideways, a toe under it.
Kind = Literal["effort", "panic", "abuse", "sideways", "toe"]
#: Told what is being done and how far it is, 0 to 1.
Progress = Callable[[str, float], None]


@dataclass(frozen=True, kw_only=True, slots=True)
class Case:
    """One pedal pushed one way."""

    name: str
    pedal: str
    kind: Kind
    #: On the pad, and what that does to flange and shaft.
    push: N
    on: Push


@dataclass(frozen=True, kw_only=True, slots=True)
class Borne:
    """What one held edge or tube's end bears, by case: the frame's force on the box."""

    name: str
    at: Point
    #: (cases, 3).
    force: Array


@dataclass(frozen=True, kw_only=True, slots=True)
class Full:
    """The answer of the bench to every case, cases in front."""

    cases: tuple[Case, ...]
    made: Made
    seats: tuple[Seat, ...]
    stood: Stood
    built: Built
    answer: Answer
    #: How far the pad goes along its push because the box gives, (cases,); by part, (cases, parts).
    pad: Array
    by_part: Array
    parts: tuple[str, ...]
    judged: tuple[Judged, ...]
    bulges: tuple[Bulge, ...]
    rows: tuple[RowWork, ...]
    borne: tuple[Borne, ...]
    #: Of the hardest case that is not sideways.
    buckling: Buckling | None

    def gives(self, case: int) -> tuple[PartGive, ...]:
        """Who gives in one case, most first."""
        found = [PartGive(n, float(g)) for n, g in zip(self.parts, self.by_part[case], strict=True)]
        return tuple(sorted(found, key=lambda one: -float(one.give)))


def full(
    box: Box,
    survey: Survey,
    seats: tuple[Seat, ...],
    cases: Sequence[Case],
    *,
    size: float = FINE,
    progress: Progress = lambda _what, _share: None,
) -> Full | Unheld:
    """Mesh, solve and read; a box that cannot be judged says why."""
    progress("meshing", 0.0)
    try:
        whole = in_use(made(box, survey), seats)
        stands = stood(whole, seats, size)
        built = build(stands.bench)
    except InputError as wrong:
        return Unheld(wrong.faults)
    progress("solving", 0.4)
    ready = set_up(built.mesh)
    if ready.loose:
        return Unheld(tuple(loose(name) for name in ready.loose))
    forces = _loads(built, stands, seats, cases)
    answer = respond(ready, forces)
    progress("reading the stress", 0.7)
    found = stresses(built.mesh, answer.moves)
    pushes = np.array([float(np.max(case.push)) for case in cases])
    hardest = int(np.argmax(np.abs(answer.work)))
    judged_parts = tuple(judged(built, found))
    progress("looking for webs that jump aside", 0.85)
    return Full(
        cases=tuple(cases),
        made=whole,
        seats=seats,
        stood=stands,
        built=built,
        answer=answer,
        pad=2 * answer.work / pushes,
        by_part=2 * answer.energy / pushes[:, None],
        parts=tuple(part.name for part in built.mesh.parts),
        judged=judged_parts,
        bulges=tuple(bulges(stands.bench, built, answer.moves)),
        rows=tuple(worked_rows(whole, fastener_forces(built, answer.moves))),
        borne=tuple(_borne(stands.bench, built, answer)),
        buckling=buckling(ready, answer.moves[hardest]),
    )


def without(full_answer: Full, fastener: str, cases: Sequence[Case], size: float) -> RowWork | None:
    """The row of one fastener with that one missing, all its others as they are then loaded.

    Its sheets neither press nor lean on one another there: the fasteners have it harder.
    """
    stands = stood(full_answer.made, full_answer.seats, size)
    left = tuple(one for one in stands.bench.fasteners if one.name != fastener)
    built = build(replace(stands.bench, fasteners=left, contacts=()))
    ready: SetUp = set_up(built.mesh)
    if ready.loose:
        return None
    answer = respond(ready, _loads(built, stands, full_answer.seats, cases))
    row = fastener.rpartition(", ")[0]
    found = worked_rows(full_answer.made, fastener_forces(built, answer.moves))
    return next((one for one in found if one.name == row), None)


def _loads(built: Built, stands: Stood, seats: tuple[Seat, ...], cases: Sequence[Case]) -> Array:
    rows: list[Mapping[str | int, tuple[float, ...]]] = []
    for case in cases:
        number = next(i for i, seat in enumerate(seats) if seat.pedal == case.pedal)
        flange, shaft = stands.flanges[number], stands.shafts[number]
        nothing = np.zeros((12, 12))
        where = Held(nothing, nothing[None], (), _at(built, flange), _at(built, shaft), 0.0)
        load = loads(where, case.on) * case.push
        one = np.asarray(load, dtype=np.float64).reshape(12)
        row: dict[str | int, tuple[float, ...]] = {
            flange: tuple(float(x) for x in one[:6]),
            shaft: tuple(float(x) for x in one[6:]),
        }
        rows.append(row)
    return built.mesh.loads(*rows)


def _at(built: Built, name: str) -> Point:
    return Point(*(float(x) for x in built.mesh.nodes[built.mesh.points[name]]))


def _borne(bench: Bench, built: Built, answer: Answer) -> Iterator[Borne]:
    """Sums of what the supports bear, each line of support by itself.

    A node in a corner belongs to the line that is told first.
    """
    mesh = built.mesh
    left: Flags = np.asarray(mesh.held.any(axis=1))
    for support in bench.supports:
        if isinstance(support.at, str):
            own = np.array([mesh.points[support.at]])
        else:
            start, end = xyz(support.at[0]), xyz(support.at[1])
            way = (end - start) / np.linalg.norm(end - start)
            reach = mesh.nodes - start
            along = reach @ way
            off = np.linalg.norm(reach - along[:, None] * way, axis=1)
            near = (off < 1e-3) & (along > -1e-3) & (along < np.linalg.norm(end - start) + 1e-3)
            own = np.flatnonzero(near & left)
        force = answer.reactions[:, own, :3]
        left[own] = False
        size = np.linalg.norm(force, axis=-1).sum(axis=0)
        weights = size if size.sum() > 0.0 else np.ones(len(own))
        middle = np.average(mesh.nodes[own], axis=0, weights=weights) if len(own) else np.zeros(3)
        yield Borne(
            name=support.name,
            at=Point(*(float(x) for x in middle)),
            force=force.sum(axis=1),
        )
