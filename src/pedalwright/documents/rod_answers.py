"""The question about push rods: whether they are level, and whether a made one fits."""

from collections.abc import Iterator, Sequence
from typing import TypeAlias

import numpy as np

from pedalwright import fitting, linkage
from pedalwright.core.answers import (
    Answer,
    Bar,
    Bars,
    Change,
    Column,
    Outcome,
    Row,
    Sentence,
    Step,
    sentence,
)
from pedalwright.core.checks import Finding
from pedalwright.core.points import Point
from pedalwright.design import Design
from pedalwright.fitting import PedalName
from pedalwright.search.changes import Changes, one
from pedalwright.search.cures import step_to
from pedalwright.search.prices import MOVE_CYLINDER, MOVE_REST, NEW_ROD, Job
from pedalwright.search.reasons import reason
from pedalwright.search.tried import Candidate, alone

PEDALS: tuple[PedalName, ...] = ("brake", "clutch")
Moves: TypeAlias = Sequence[tuple[PedalName, fitting.SocketMove]]


def rod_angle(design: Design) -> Answer:
    """Whether the rods are level, where a cylinder would level its own, and whether each fits."""
    now = alone(design)
    moves: Moves = [(pedal, fitting.level_rod(design, pedal)) for pedal in PEDALS]
    unfit = now.fails(_does_not_fit)
    wished = float(fitting.ROD_ANGLE_WISHED)
    return Answer(
        question="rod-angle",
        title="Is the push rod's angle right?",
        says=_says(moves, unfit),
        outcome="fails" if unfit else _outcome(moves),
        columns=(Column("now", "rad"), Column("levelled", "rad"), Column("move by", "mm")),
        rows=tuple(
            Row(
                name=pedal,
                values=(
                    one(move.before.rod_angle),
                    one(move.after.rod_angle),
                    one(move.distance),
                ),
                mark="passes" if one(move.before.rod_angle) <= wished else "short",
            )
            for pedal, move in moves
        ),
        bars=Bars(
            title="largest rod angle over the stroke",
            unit="rad",
            bars=tuple(Bar(pedal, one(move.before.rod_angle)) for pedal, move in moves),
            bound=wished,
            bound_says="wished for",
        ),
        steps=(*_let_in(design, now, unfit), *_levelling(design, now, moves)),
    )


def _does_not_fit(finding: Finding) -> bool:
    return finding.limit.code == "linkage.rod_fits"


def _outcome(moves: Moves) -> Outcome:
    worst = max(one(move.before.rod_angle) for _, move in moves)
    if worst <= fitting.ROD_ANGLE_WISHED:
        return "passes"
    return "short" if worst <= linkage.ROD_ANGLE_MOST else "fails"


def _says(moves: Moves, unfit: Sequence[Finding]) -> Sentence:
    name, worst = max(moves, key=lambda entry: one(entry[1].before.rod_angle))
    told = sentence(
        f"The {name}'s rod stands at most {{}} off its cylinder's axis; {{}} is wished for, "
        "and {} is borne at the ends of the stroke.",
        (one(worst.before.rod_angle), "rad"),
        (float(fitting.ROD_ANGLE_WISHED), "rad"),
        (float(linkage.ROD_ANGLE_MOST), "rad"),
    )
    for finding in unfit:
        told = told + sentence(" It cannot be put together as drawn: ") + reason(finding)
        told = told + sentence(".")
    return told


def _levelling(design: Design, now: Candidate, moves: Moves) -> Iterator[Step]:
    """Move a cylinder square to its own axis, where that straightens its rod."""
    for pedal, move in moves:
        if one(move.after.rod_angle) < one(move.before.rod_angle):
            yield step_to(
                now,
                alone(design, _socket(design, pedal, move.by)),
                sentence(
                    f"Move the {pedal}'s cylinder by {{}}, square to its axis: {{}} up, {{}} "
                    "rearward.",
                    (one(move.distance), "mm"),
                    (one(move.by.z), "mm"),
                    (one(move.by.x), "mm"),
                ),
                sentence(
                    "rod within {} instead of {}",
                    (one(move.after.rod_angle), "rad"),
                    (one(move.before.rod_angle), "rad"),
                ),
                MOVE_CYLINDER,
            )


def _let_in(design: Design, now: Candidate, unfit: Sequence[Finding]) -> Iterator[Step]:
    """For a rod that does not reach: each change that lets it in, the least first."""
    for pedal in PEDALS:
        length = fitting.fitted(design, pedal).rod.length
        if length is None or pedal not in {finding.about for finding in unfit}:
            continue
        fit = fitting.fit_rod(design, pedal, length)
        for way in sorted(_ways(design, pedal, fit), key=lambda way: abs(way[0])):
            by, what, changes, job = way
            if np.isfinite(by):
                brings = sentence("the rod goes in with its ends as they are set")
                yield step_to(now, alone(design, changes), what, brings, job)


def _ways(
    design: Design, pedal: PedalName, fit: fitting.RodFit
) -> Iterator[tuple[float, Sentence, Changes, Job]]:
    """How far each change goes, in words, in the file, and its job."""
    made = fitting.fitted(design, pedal)
    short = one(fit.too_short)
    yield (
        short,
        sentence(
            f"Make the {pedal}'s rod {{}} {'longer' if short > 0.0 else 'shorter'}: {{}} from "
            "middle to middle.",
            (abs(short), "mm"),
            (one(fit.distance), "mm"),
        ),
        (Change(f"{pedal}.rod.length", one(fit.distance), "mm"),),
        NEW_ROD,
    )
    along = one(fit.move_cylinder)
    yield (
        along,
        sentence(
            f"Move the {pedal}'s cylinder along its axis by {{}}, "
            f"{'away from' if along > 0.0 else 'towards'} the pedal.",
            (abs(along), "mm"),
        ),
        _socket(design, pedal, made.rod.direction * along),
        MOVE_CYLINDER,
    )
    arc = one(fit.move_pad)
    lean = one(made.pedal.pad_lean) - arc / one(made.pedal.pad_radius)
    yield (
        arc,
        sentence(
            f"Let the {pedal}'s pad rest {{}} {'further from' if arc > 0.0 else 'nearer to'} "
            "the driver.",
            (abs(arc), "mm"),
        ),
        (Change(f"{pedal}.pedal.pad_lean", lean, "rad"),),
        MOVE_REST,
    )


def _socket(design: Design, pedal: PedalName, by: Point) -> Changes:
    """The cylinder moved, as the numbers of its socket that change."""
    socket = fitting.fitted(design, pedal).rod.socket
    return tuple(
        Change(f"{pedal}.rod.socket.{axis}", one(getattr(socket + by, axis)), "mm")
        for axis in ("x", "y", "z")
        if one(getattr(by, axis)) != 0.0
    )
