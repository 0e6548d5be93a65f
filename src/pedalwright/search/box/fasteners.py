"""How many rivets? The row that is worked hardest, closer and wider, under the hardest push."""

from dataclasses import replace

import numpy as np

from pedalwright.assess.box import seats_of, walls_and_tubes
from pedalwright.assess.stroke import PedalName
from pedalwright.core.answers import (
    Answer,
    Bar,
    Bars,
    Change,
    Column,
    Mark,
    Row,
    Sentence,
    sentence,
)
from pedalwright.design import Design
from pedalwright.panels.made import Row as Fasteners
from pedalwright.panels.parts import Cheeks, Doubler, Gusset, Stiffener
from pedalwright.search.box.built import LISTS, case_of, part, with_part
from pedalwright.search.box.none import no_box
from pedalwright.search.changes import one
from pedalwright.search.tried import alone
from pedalwright.structure.box.bench import COARSE
from pedalwright.structure.box.fasteners import RowWork
from pedalwright.structure.box.full import Full, full

#: Pitches tried beside the one there is, in diameters (common practice: 4 to 8; never below 3).
PITCHES = (4.0, 5.0, 6.0, 8.0, 10.0)
LEAST = 3.0
COLUMNS = (
    Column("pitch", "mm"),
    Column("worst shear", "N"),
    Column("worst pull", "N"),
    Column("of what one bears", "1"),
)
TITLE = "How many rivets or bolts?"
Joined = Doubler | Cheeks | Gusset | Stiffener


def rivets(design: Design, pedal: PedalName, by: float | None) -> Answer:
    """The hardest worked row at several pitches; `by` is one more pitch to look at."""
    now = _worked(design, pedal)
    rows = [] if now is None else [row for row in now.rows if row.known]
    if now is None or not rows:
        return no_box("rivets", TITLE, pedal)
    hardest = max(rows, key=_use)
    row = next(row for row in now.made.rows if row.name == hardest.name)
    owner = _owner(design, row)
    if owner is None:
        return no_box("rivets", TITLE, pedal)
    tried = _tried(design, pedal, row, owner, by)
    enough = [pitch for pitch, own in tried if _use(own) <= 1.0]
    path = f"box.{LISTS[type(owner)]}.{owner.name}.joined.pitch"
    widest, fitted = max(enough, default=-1.0), one(row.joining.pitch)
    return Answer(
        question="rivets",
        title=TITLE,
        says=_says(row, hardest, enough, tried),
        outcome="passes" if _use(hardest) <= 1.0 else "short" if enough else "fails",
        columns=COLUMNS,
        rows=tuple(_row(pitch, own, fitted, widest, path) for pitch, own in tried),
        bars=Bars(
            title="the hardest worked fastener under the hardest push, of what it bears",
            unit="1",
            bars=tuple(Bar(f"{pitch:g} mm, {own.count}", _use(own)) for pitch, own in tried),
            bound=1.0,
            bound_says="what one bears",
        ),
        notes=(
            sentence(
                "Found on the bench with sheets that press on one another; shear and pull by EN "
                "1993-1-8 from memory, a blind rivet by its maker, else by the least sold in its "
                "size."
            ),
            sentence(
                "Nearer than {} a hole weakens the next.", (LEAST * one(row.joining.diameter), "mm")
            ),
        ),
    )


def _tried(
    design: Design, pedal: PedalName, row: Fasteners, owner: Joined, by: float | None
) -> list[tuple[float, RowWork]]:
    """The row at every pitch, as the bench finds it then."""
    width, fitted = one(row.joining.diameter), one(row.joining.pitch)
    more = () if by is None else (by,)
    pitches = sorted({*(float(round(n * width)) for n in PITCHES), fitted, *more})
    found: list[tuple[float, RowWork]] = []
    for pitch in pitches:
        if pitch < LEAST * width:
            continue
        joined = replace(row.joining, pitch=pitch)
        answer = _worked(with_part(design, replace(owner, joined=joined)), pedal)
        own = [] if answer is None else [work for work in answer.rows if work.name == row.name]
        found += [(pitch, work) for work in own]
    return found


def _worked(design: Design, pedal: PedalName) -> Full | None:
    """The box under the hardest push of one pedal."""
    seats = tuple(seat for seat in seats_of(design) if seat.pedal == pedal)
    if not seats:
        return None
    case = case_of(alone(design), pedal, "abuse")
    found = full(design.box, walls_and_tubes(design), seats, (case,), size=COARSE)
    return found if isinstance(found, Full) else None


def _owner(design: Design, row: Fasteners) -> Joined | None:
    """The part whose own fasteners these are: the one that says how it is joined."""
    for sheet in row.through:
        own = part(design.box, sheet.rpartition(".")[0])
        if isinstance(own, Joined):
            return own
    return None


def _use(row: RowWork) -> float:
    return float(np.max(row.use))


def _row(pitch: float, own: RowWork, fitted: float, widest: float, path: str) -> Row:
    passes: Mark = "passes" if _use(own) <= 1.0 else "short"
    mark: Mark = "now" if pitch == fitted else passes
    if pitch == widest:
        mark = "keep" if pitch == fitted else "take"
    return Row(
        name=f"{own.count} of them",
        values=(pitch, float(np.max(own.shear)), float(np.max(own.pull)), _use(own)),
        mark=mark,
        changes=() if pitch == fitted else (Change(path, pitch, "mm"),),
    )


def _says(
    row: Fasteners, own: RowWork, enough: list[float], tried: list[tuple[float, RowWork]]
) -> Sentence:
    name = row.name.replace("_", " ")
    begins = sentence(
        f"Hardest worked is {name}: {own.count} of them, {{}} apart, and the worst is asked for "
        "{} times what it bears; ",
        (one(row.joining.pitch), "mm"),
        (_use(own), "1"),
    )
    if enough:
        count = next(work.count for pitch, work in tried if pitch == max(enough))
        return begins + sentence(f"{count} of them, {{}} apart, do.", (max(enough), "mm"))
    return begins + sentence("no pitch does: the load must go another way, ask `doubler`.")
