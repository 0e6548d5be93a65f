"""Will a doubler do? Plates under the cylinder, small and large, thin and thick."""

import numpy as np

from pedalwright.assess.stroke import PedalName
from pedalwright.core.answers import Answer, Bar, Bars, Column, Row, Sentence, sentence
from pedalwright.design import Design
from pedalwright.panels.parts import Cheeks, Doubler
from pedalwright.search.box.additions import plate
from pedalwright.search.box.built import (
    bound_of,
    carrier,
    hung_on,
    in_box,
    part,
    strength,
    wall_under,
    with_part,
)
from pedalwright.search.box.cures import box_cures, words
from pedalwright.search.box.none import no_box
from pedalwright.search.changes import one
from pedalwright.search.cures import ranked
from pedalwright.search.tried import Candidate, alone

#: Plates tried: how wide, how thick, mm.
WIDE, THICK = (120.0, 160.0, 220.0, 300.0), (2.0, 3.0, 5.0)
COLUMNS = (Column("flange moves", "mm"), Column("pad sinks", "mm"))


def doubler(design: Design, pedal: PedalName) -> Answer:
    """Twelve plates under the cylinder, each built in and judged; and what does more."""
    title = "Will a doubler do?"
    now = alone(design)
    give, wall = in_box(now.assessment, pedal), wall_under(design, pedal)
    if give is None:
        return no_box("doubler", title, pedal)
    mount = carrier(design, pedal).mount
    bound = bound_of(now, "structure.flange_give", pedal)
    if wall is None or isinstance(part(design.box, mount.cylinder_on), Cheeks):
        return Answer(
            question="doubler",
            title=title,
            says=sentence("The cylinder sits on a channel: there is nothing for a plate to do."),
            outcome="passes",
            columns=(),
            rows=(),
        )
    found: list[tuple[Doubler, Candidate]] = []
    for wide in WIDE:
        for thick in THICK:
            made = plate(design, pedal, wall, wide, thick)
            if made is None or any(_alike(made, other) for other, _ in found):
                continue
            changed = with_part(design, made)
            candidate = alone(hung_on(changed, pedal, made.name, mount.pivot_on))
            if np.isfinite(_moves(candidate, pedal)):  # else it stands in the way of something
                found.append((made, candidate))
    enough = [made for made, candidate in found if _moves(candidate, pedal) <= bound]
    best = min((_moves(candidate, pedal) for _, candidate in found), default=float("nan"))
    return Answer(
        question="doubler",
        title=title,
        says=_says(enough, _moves(now, pedal), best, bound, wall.name),
        outcome="short" if enough else "fails",
        columns=COLUMNS,
        rows=tuple(_row(made, candidate, pedal, bound) for made, candidate in found),
        bars=Bars(
            title=f"the flange moves under {float(give.push):.0f} N",
            unit="mm",
            bars=(
                Bar("as it is", _moves(now, pedal)),
                *(Bar(_size(made), _moves(candidate, pedal)) for made, candidate in found),
            ),
            bound=bound,
            bound_says="what a flange may move",
        ),
        steps=ranked(
            design,
            list(box_cures(design, now.assessment, pedal)),
            lambda candidate: _moves(candidate, pedal),
            lambda before, after: _brings(before, after, pedal),
        ),
        notes=(
            sentence(
                "A plate spreads the push, but what lies between its edge and the frame bends as "
                "it did. A riveted plate is about half as stiff as one that is one piece with the "
                "sheet."
            ),
        ),
    )


def _moves(candidate: Candidate, pedal: PedalName) -> float:
    return one(strength(candidate.assessment, pedal).flange_give)


def _alike(one_plate: Doubler, other: Doubler) -> bool:
    """Cut to the same size by the edge of the wall."""
    return (one_plate.width, one_plate.height, one_plate.thickness) == (
        other.width,
        other.height,
        other.thickness,
    )


def _size(made: Doubler) -> str:
    return f"{one(made.width):.0f} x {one(made.height):.0f} x {one(made.thickness):g}"


def _row(made: Doubler, candidate: Candidate, pedal: PedalName, bound: float) -> Row:
    moves = _moves(candidate, pedal)
    return Row(
        name=_size(made),
        values=(moves, one(strength(candidate.assessment, pedal).give.total)),
        mark="passes" if moves <= bound else "short",
    )


def _says(enough: list[Doubler], now: float, best: float, bound: float, wall: str) -> Sentence:
    begins = sentence(
        f"On {words(wall)} the flange moves {{}} where {{}} may be; ", (now, "mm"), (bound, "mm")
    )
    if enough:
        return begins + sentence(
            "a plate of {} x {} x {} does.",
            (one(enough[0].width), "mm"),
            (one(enough[0].height), "mm"),
            (one(enough[0].thickness), "mm"),
        )
    return begins + sentence("no plate does: the best of them still lets it move {}.", (best, "mm"))


def _brings(before: Candidate, after: Candidate, pedal: PedalName) -> Sentence:
    return sentence(
        "the flange moves {} instead of {}",
        (_moves(after, pedal), "mm"),
        (_moves(before, pedal), "mm"),
    )
