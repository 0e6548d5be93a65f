"""The box in full: every load case of both pedals on the bench with fine triangles and contact."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from pedalwright import linkage, structure
from pedalwright.assess.box import of_foot, seats_of, unit_push, walls_and_tubes
from pedalwright.assess.parts import Assessment, BrakePedal, ClutchPedal
from pedalwright.core.checks import Finding
from pedalwright.core.faults import Fault
from pedalwright.core.points import RIGHT
from pedalwright.core.units import N
from pedalwright.design import Design
from pedalwright.linkage import Position
from pedalwright.structure import Loads
from pedalwright.structure.box.full import Case, Full, Kind, Progress, full
from pedalwright.structure.box.full_limits import check_full, check_missing
from pedalwright.structure.box.missing import one_missing
from pedalwright.structure.box.parts import Unheld

#: A toe that catches under a pad and lifts it back, N (common practice, no source).
TOE_PULL: N = 150.0


@dataclass(frozen=True, kw_only=True, slots=True)
class FullTier:
    """The full answer of the box, with what is asked of it."""

    #: Why there is none; nothing where the box could be judged or is not described.
    faults: tuple[Fault, ...]
    box: Full | None
    findings: tuple[Finding, ...]


def _quiet(_what: str, _share: float) -> None:
    """Nobody wants to be told."""


def assess_full(
    design: Design, assessment: Assessment, progress: Progress = _quiet
) -> FullTier | None:
    """The box of an assessed design on the bench; None where no pedal hangs on one."""
    seats = seats_of(design)
    if not seats:
        return None
    there = {seat.pedal for seat in seats}
    both = assessment.brake, assessment.clutch
    cases = [case for case in cases_of(design, *both) if case.pedal in there]
    answer = full(design.box, walls_and_tubes(design), seats, cases, progress=progress)
    if isinstance(answer, Unheld):
        return FullTier(faults=answer.faults, box=None, findings=())
    progress("leaving out one fastener", 0.9)
    missing = one_missing(answer, cases)
    progress("done", 1.0)
    return FullTier(
        faults=(),
        box=answer,
        findings=(*check_full(answer, _fast(assessment, cases)), *check_missing(missing)),
    )


def cases_of(design: Design, brake: BrakePedal, clutch: ClutchPedal) -> Iterator[Case]:
    """Every load case of both pedals: hard stop, fright, hardest push, sideways, toe."""
    yield from _of("brake", design.brake.rod, brake, brake.hard_stop, structure.BRAKE_LOADS)
    yield from _of("clutch", design.clutch.rod, clutch, clutch.full, structure.CLUTCH_LOADS)


def _of(
    pedal: str, rod: linkage.Rod, made: BrakePedal | ClutchPedal, here: Position, loads: Loads
) -> Iterator[Case]:
    lever = made.lever
    square = unit_push(lever, here, linkage.forces(lever, rod, here, 1.0))
    pushes: tuple[tuple[Kind, N], ...] = (
        ("effort", loads.effort),
        ("panic", loads.panic),
        ("abuse", loads.abuse),
    )
    for kind, push in pushes:
        name = f"{pedal}, {float(push):.0f} N"
        yield Case(name=name, pedal=pedal, kind=kind, push=push, on=square)
    aside = linkage.forces_of(lever, rod, here, RIGHT)
    yield Case(
        name=f"{pedal}, {float(loads.sideways):.0f} N sideways",
        pedal=pedal,
        kind="sideways",
        push=loads.sideways,
        on=of_foot(lever, here, aside, RIGHT),
    )
    # Lifted it is held by its rod alone: no rest stop is counted on.
    back = -lever.axis.cross(here.pad - lever.pivot).unit()
    lifted = linkage.forces_of(lever, rod, here, back)
    yield Case(
        name=f"{pedal}, {TOE_PULL:.0f} N back by a toe",
        pedal=pedal,
        kind="toe",
        push=TOE_PULL,
        on=of_foot(lever, here, lifted, back),
    )


def _fast(assessment: Assessment, cases: Sequence[Case]) -> dict[str, float]:
    """What the condensed box says of the cases it knows."""
    known: dict[str, float] = {}
    for name, made in (("brake", assessment.brake), ("clutch", assessment.clutch)):
        box = made.strength.box
        if box is not None:
            known[f"{name}, {float(np.max(box.push)):.0f} N"] = float(np.max(box.total))
    return {case.name: known[case.name] for case in cases if case.name in known}
