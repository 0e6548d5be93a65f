"""Where a pedal's travel goes, and which change buys most of it back."""

from collections.abc import Iterator
from dataclasses import dataclass, fields, replace
from typing import Literal, TypeAlias

import numpy as np

from pedalwright.assess import assess
from pedalwright.brakes import parts as brakes
from pedalwright.clutch import parts as clutch
from pedalwright.core.units import N, mm
from pedalwright.design import Design
from pedalwright.fitting.pedals import PedalName, fitted, refitted, with_pedal
from pedalwright.hydraulics.parts import Cylinder, Masters, Tandem
from pedalwright.shelf.bores import bores

Change: TypeAlias = Literal[
    "next larger bore",
    "pin 2 mm further out",
    "mounts twice as stiff",
    "half the swelling of hoses",
    "dead stroke 0.5 mm less",
    "free play 0.5 mm less",
    "pads lifting 0.1 mm less",
]


@dataclass(frozen=True, kw_only=True, slots=True)
class Part:
    """One cause of pad travel."""

    cause: str
    travel: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Saving:
    """One change, by itself, and what it buys."""

    change: Change
    design: Design
    #: Pad travel saved, with all that gives counted.
    saves: mm
    #: Push on the pad added: for 6.43 m/s², or to hold the clutch released.
    costs: N


@dataclass(frozen=True, kw_only=True, slots=True)
class TravelAnswer:
    """A pedal's travel by cause, which sum to `total`, and changes, the best buy first."""

    total: mm
    room: mm
    causes: tuple[Part, ...]
    savings: tuple[Saving, ...]


def travel_answer(design: Design, name: PedalName) -> TravelAnswer:
    """Where the travel goes at 500 N on the brake, or to the clutch's release."""
    total, room, causes, effort = _spent(design, name)

    def saving(change: Change, tried: Design) -> Saving:
        after, _, _, push = _spent(tried, name)
        return Saving(change=change, design=tried, saves=total - after, costs=push - effort)

    savings = [saving(change, tried) for change, tried in _changes(design, name)]
    savings.sort(key=_worth, reverse=True)
    return TravelAnswer(total=total, room=room, causes=causes, savings=tuple(savings))


def _worth(saving: Saving) -> float:
    """A change that gives no answer is worth least."""
    return float(np.nan_to_num(np.min(saving.saves), nan=-np.inf))


def _spent(design: Design, name: PedalName) -> tuple[mm, mm, tuple[Part, ...], N]:
    assessment = assess(design)
    if name == "brake":
        brake = assessment.brake
        return brake.budget.total, brake.room, _parts(brake.budget), brake.result.effort_6_43
    made = assessment.clutch
    spent = made.result.budget
    return spent.total, made.room, _parts(spent), made.result.effort


def _parts(budget: brakes.Budget | clutch.Budget) -> tuple[Part, ...]:
    names = [field.name for field in fields(budget) if field.name != "total"]
    return tuple(Part(cause=name, travel=getattr(budget, name)) for name in names)


def _changes(design: Design, name: PedalName) -> Iterator[tuple[Change, Design]]:
    made = fitted(design, name)
    further = replace(made.pedal, pin_radius=made.pedal.pin_radius + 2.0)
    yield (
        "pin 2 mm further out",
        refitted(design, name, with_pedal(made, further, cylinder_follows=True)),
    )
    mount = made.carrier.mount
    if mount.cylinder_stiffness is not None and mount.pivot_stiffness is not None:
        stiff = replace(
            mount,
            cylinder_stiffness=2 * mount.cylinder_stiffness,
            pivot_stiffness=2 * mount.pivot_stiffness,
        )
        yield (
            "mounts twice as stiff",
            refitted(design, name, replace(made, carrier=replace(made.carrier, mount=stiff))),
        )
    yield from _brake_changes(design) if name == "brake" else _clutch_changes(design)


def _brake_changes(design: Design) -> Iterator[tuple[Change, Design]]:
    brake = design.brake
    plumbing = brake.plumbing
    fewer = replace(plumbing, hoses=plumbing.hoses / 2)
    yield "half the swelling of hoses", replace(design, brake=replace(brake, plumbing=fewer))
    less = replace(plumbing, dead_stroke=plumbing.dead_stroke - 0.5)
    yield "dead stroke 0.5 mm less", replace(design, brake=replace(brake, plumbing=less))
    wide = _wider_masters(brake.masters)
    if wide is not None:
        yield "next larger bore", replace(design, brake=replace(brake, masters=wide))
    closer = replace(
        brake,
        front=replace(brake.front, lift=brake.front.lift - 0.1),
        rear=replace(brake.rear, lift=brake.rear.lift - 0.1),
    )
    yield "pads lifting 0.1 mm less", replace(design, brake=closer)


def _clutch_changes(design: Design) -> Iterator[tuple[Change, Design]]:
    part = design.clutch
    release = part.release
    hose = replace(release, line_growth=release.line_growth / 2)
    yield "half the swelling of hoses", replace(design, clutch=replace(part, release=hose))
    less = replace(release, dead_stroke=release.dead_stroke - 0.5)
    yield "dead stroke 0.5 mm less", replace(design, clutch=replace(part, release=less))
    play = replace(release, free_play=release.free_play - 0.5)
    yield "free play 0.5 mm less", replace(design, clutch=replace(part, release=play))
    wide = _wider(part.master) if part.master is not None else None
    if wide is not None:
        yield "next larger bore", replace(design, clutch=replace(part, master=wide))


def _wider_masters(masters: Masters) -> Masters | None:
    """A tandem's bore, or both of a pair's."""
    if isinstance(masters, Tandem):
        larger = _larger(masters.bore)
        return None if larger is None else replace(masters, bore=larger)
    front, rear = _wider(masters.front), _wider(masters.rear)
    return None if front is None or rear is None else replace(masters, front=front, rear=rear)


def _wider(cylinder: Cylinder) -> Cylinder | None:
    larger = _larger(cylinder.bore)
    return None if larger is None else replace(cylinder, bore=larger)


def _larger(bore: mm) -> float | None:
    """The next larger bore on the shelf; None beyond the largest."""
    sizes = (row.diameter for row in bores() if row.diameter > np.max(bore) + 0.1)
    return next(sizes, None)
