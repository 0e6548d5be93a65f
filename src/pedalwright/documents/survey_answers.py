"""Questions about the frame as it was measured: what must go back where a member is cut."""

from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from pedalwright.core.answers import (
    Answer,
    Bar,
    Bars,
    Column,
    Outcome,
    Price,
    Row,
    Sentence,
    Step,
    sentence,
)
from pedalwright.core.units import Num
from pedalwright.design import Design
from pedalwright.fitting import PedalName
from pedalwright.search.changes import one
from pedalwright.structure.trims import (
    CoverPlates,
    Gussets,
    PutBack,
    Trim,
    Trimmed,
    check_trim,
    modulus,
    sized,
    trimmed,
    whole,
)
from pedalwright.survey import Line

#: A notch that is looked at where the file has no trim: how far in, how long, mm (ours).
DEPTH, LENGTH = 10.0, 120.0
#: Minutes to cut, fit and tack; the weld itself is a qualified welder's (ours).
MINUTES = 240.0


def put_back(design: Design, _pedal: PedalName, by: float | None) -> Answer:
    """For every trim of the file, else for a notch in each member that may be cut."""
    trims = design.trims or tuple(_supposed(design, by))
    members = {line.name: line for line in design.survey.lines}
    pairs = [(members[trim.member], trim) for trim in trims if trim.member in members]
    every = [(member, trim, trimmed(member, trim)) for member, trim in pairs]
    return Answer(
        question="trim",
        title="What must go back where a frame member is cut?",
        says=_says(design, every),
        outcome=_outcome(design, pairs),
        columns=(Column("modulus", "mm3"), Column("stiffness", "mm4"), Column("weld", "mm")),
        rows=tuple(row for one_of in every for row in _rows(*one_of)) or tuple(_members(design)),
        bars=_bars(every) or _widths(design),
        steps=tuple(step for member, trim, _ in every for step in _steps(member, trim)),
        notes=(
            sentence("Bending over the member's height only; sharp corners, so 5 to 10 % high."),
            sentence("Welds by EN 1993-1-8, throat 0.7 of the thinner part; a guide below 4 mm."),
            sentence("A qualified welder welds a chassis member, and the change needs sign-off."),
        ),
    )


def _supposed(design: Design, by: float | None) -> Iterator[Trim]:
    for line in design.survey.lines:
        if line.may_cut == "yes":
            yield Trim(
                name="notch", member=line.name, way="notch", depth=by or DEPTH, length=LENGTH
            )


def _outcome(design: Design, pairs: list[tuple[Line, Trim]]) -> Outcome:
    if not design.trims:
        return "open"
    musts = [
        finding
        for member, trim in pairs
        for finding in check_trim(member, trim)
        if finding.limit.weight == "must"
    ]
    if any(not finding.judged for finding in musts):
        return "open"
    return "passes" if all(bool(finding.ok) for finding in musts) else "fails"


def _says(design: Design, every: list[tuple[Line, Trim, Trimmed]]) -> Sentence:
    if not every:
        return sentence(
            "No member of the frame may be cut: none is marked may_cut in the survey, and no trim "
            "stands in the file."
        )
    said = sentence("")
    for member, trim, found in every:
        lost = 1.0 - one(found.modulus_bare) / one(found.modulus_before)
        back = one(found.modulus_after) / one(found.modulus_before)
        words = f"A {trim.way} of {{}} in {trim.member} takes {{}} of its strength"
        said += sentence(words, (one(trim.depth), "mm"), (lost, "share"))
        if trim.put_back is not None:
            said += sentence("; with what goes back it has {} of what it had", (back, "share"))
        elif design.trims:
            said += sentence(", and nothing goes back")
        said += sentence(". " if member is not every[-1][0] else ".")
    return said


def _rows(member: Line, trim: Trim, found: Trimmed) -> Iterator[Row]:
    name = f"{trim.member}, {trim.way} {one(trim.depth):.0f}"
    yield Row(
        name=f"{trim.member} as it is",
        values=(one(found.modulus_before), one(found.before.inertia), np.nan),
    )
    yield Row(
        name=f"{name}, nothing back",
        values=(one(found.modulus_bare), one(found.bare.inertia), np.nan),
        mark="fails",
    )
    if trim.put_back is not None:
        yield _row(f"{name}, as in the file", found)
    for option in sized(member, trim):
        yield _row(f"  {_words(option)}", trimmed(member, _with(trim, option)))


def _members(design: Design) -> Iterator[Row]:
    """What there is, where none of it is cut."""
    for line in design.survey.lines:
        before = whole(line)
        why = sentence("not marked may_cut, or its wall is not known")
        values = (one(modulus(before)), one(before.inertia), np.nan)
        yield Row(name=line.name, values=values, why=(why,))


def _row(name: str, found: Trimmed) -> Row:
    enough = one(found.modulus_after) >= one(found.modulus_before)
    return Row(
        name=name,
        values=(one(found.modulus_after), one(found.after.inertia), one(found.weld)),
        mark="passes" if enough else "fails",
    )


def _bars(every: list[tuple[Line, Trim, Trimmed]]) -> Bars | None:
    if len(every) != 1:
        return None
    ((_, trim, found),) = every
    bars = [Bar("nothing back", one(found.modulus_bare))]
    if trim.put_back is not None:
        bars.append(Bar("as in the file", one(found.modulus_after)))
    return Bars(
        title="section modulus where it is trimmed",
        unit="mm3",
        bars=tuple(bars),
        bound=one(found.modulus_before),
        bound_says="as it was",
    )


def _widths(design: Design) -> Bars:
    """How stout each member is, where there is no trim to draw, or more than one."""
    widths = tuple(Bar(line.name, one(line.diameter)) for line in design.survey.lines)
    return Bars(title="members, across", unit="mm", bars=widths)


def _steps(member: Line, trim: Trim) -> Iterator[Step]:
    for option in sized(member, trim):
        if not np.isfinite(one(option.lap)):
            continue
        found = trimmed(member, _with(trim, option))
        yield Step(
            what=_told(option, found.lap),
            brings=sentence(
                "{} of the section modulus it had, {} of weld in all",
                (one(found.modulus_after) / one(found.modulus_before), "share"),
                (one(found.weld), "mm"),
            ),
            price=Price(minutes=MINUTES, buy="plate, a welder's hour", worse=()),
        )


def _told(option: PutBack, lap: Num) -> Sentence:
    reach = (one(lap), "mm")
    match option:
        case CoverPlates(thickness=t):
            return sentence(
                "Weld a plate of {} over the cut and one on the far face, as wide as the member, "
                "each reaching {} beyond it at both ends.",
                (one(t), "mm"),
                reach,
            )
        case Gussets(thickness=t, height=h):
            return sentence(
                "Weld a cheek of {} on each side, {} high from the edge of the cut, reaching {} "
                "beyond it at both ends.",
                (one(t), "mm"),
                (one(h), "mm"),
                reach,
            )
        case _:
            return sentence(
                "Lead a flat bar {} x {} past the cut, {} off the far face, its ends brought down "
                "and welded {} along the member.",
                (one(option.width), "mm"),
                (one(option.thickness), "mm"),
                (one(option.distance), "mm"),
                reach,
            )


def _words(option: PutBack) -> str:
    match option:
        case CoverPlates(thickness=t):
            return f"cover plates {one(t):g}"
        case Gussets(thickness=t, height=h):
            return f"gussets {one(t):g}, {one(h):.0f} high"
        case _:
            return f"triangle, {one(option.distance):.0f} off"


def _with(trim: Trim, option: PutBack) -> Trim:
    return replace(trim, put_back=option)
