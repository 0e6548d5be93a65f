"""How many millimetres of weld? What hangs the pivot from its tube, welded."""

from math import inf

from pedalwright.assess.stroke import PedalName
from pedalwright.core.answers import Answer, Bar, Bars, Column, Mark, Row, Sentence, sentence
from pedalwright.design import Design
from pedalwright.panels.metals import metal
from pedalwright.panels.parts import Hanger
from pedalwright.panels.recipes.eyes import foot_on
from pedalwright.search.box.built import carrier, case_of, part
from pedalwright.search.box.cures import words
from pedalwright.search.changes import one
from pedalwright.search.tried import alone
from pedalwright.structure.box.full import Case
from pedalwright.structure.fixings.parts import Load, Run, Welded, WeldUse
from pedalwright.structure.fixings.solve import fixed

#: Throats of fillets by hand on sheet and tube, mm; and how long a run may be looked for.
THROATS, LONGEST, STEP = (1.5, 2.0, 2.5, 3.0), 120.0, 1.0
#: EN 1993-1-8 table 4.1 (from memory); a weld by hand is asked for half as much again (ours).
CORRELATION, BY_HAND = 0.85, 1.5
#: Runs: on both faces of both straps.
RUNS = 4
COLUMNS = (Column("throat", "mm"), Column("each run", "mm"), Column("in all", "mm"))
TITLE = "How many millimetres of weld?"


def weld(design: Design, pedal: PedalName, by: float | None) -> Answer:
    """Runs on both faces of each strap across the tube; `by` is a run that is looked at."""
    hung = part(design.box, carrier(design, pedal).mount.pivot_on)
    if not isinstance(hung, Hanger):
        return Answer(
            question="weld",
            title=TITLE,
            says=sentence(
                "Nothing of this pedal's carrier is hung from a tube by welds: what is folded and "
                "bolted holds it, or its fixing stands in the mount."
            ),
            outcome="open",
            columns=(),
            rows=(),
        )
    hardest, room = case_of(alone(design), pedal, "abuse"), one(hung.width)
    lengths = {throat: _least(design, hung, hardest, throat) for throat in THROATS}
    fits = [throat for throat, length in lengths.items() if length <= room]
    rows = [_row(throat, length, room, fits) for throat, length in lengths.items()]
    if by is not None:
        enough = _use(design, hung, hardest, THROATS[1], by) * BY_HAND <= 1.0
        mark: Mark = "passes" if enough else "short"
        rows.append(Row(name=f"runs of {by:g} mm", values=(THROATS[1], by, RUNS * by), mark=mark))
    return Answer(
        question="weld",
        title=TITLE,
        says=_says(hung, hardest, lengths, room, fits),
        outcome="passes" if fits else "fails",
        columns=COLUMNS,
        rows=tuple(rows),
        bars=Bars(
            title="length of each of the four runs, by throat",
            unit="mm",
            bars=tuple(Bar(f"throat {throat:g} mm", length) for throat, length in lengths.items()),
            bound=room,
            bound_says="what a strap of that width has room for",
        ),
        notes=(
            sentence(
                "EN 1993-1-8, 4.5.3.3, simplified, from memory, with half as much again for a weld "
                "by hand. The code begins at {}: below, a coupon bent in a vice decides.",
                (4.0, "mm"),
            ),
            sentence(
                "Throat is 0.7 of the fillet's leg. A weld that carries a brake needs sign-off."
            ),
        ),
    )


def _least(design: Design, hung: Hanger, case: Case, throat: float) -> float:
    """The shortest run that bears the push, in whole mm; without end where none does."""
    length = 5.0
    while length <= LONGEST:
        if _use(design, hung, case, throat, length) * BY_HAND <= 1.0:
            return length
        length += STEP
    return inf


def _use(design: Design, hung: Hanger, case: Case, throat: float, length: float) -> float:
    """How hard the runs work: across the tube's face, one on each face of each strap."""
    rail = next(rail for rail in design.box.rails if rail.name == hung.rail)
    line = design.survey.line(rail.line)
    way = (line.end - line.start).unit()
    top = foot_on(line, hung.pivot)
    down = (hung.pivot - top).unit()
    along = way.cross(down)
    level = top + down * (one(line.diameter if line.height is None else line.height) / 2)
    thick, apart = one(hung.thickness), one(hung.spacing) / 2
    middles = [level + way * (s * (apart + f)) for s in (-1.0, 1.0) for f in (0.0, thick)]
    runs = [
        Run(start=middle - along * (length / 2), end=middle + along * (length / 2))
        for middle in middles
    ]
    made = Welded(
        runs=tuple(runs),
        axis=down,
        throat=throat,
        thickness=thick if line.wall is None else min(thick, one(line.wall)),
        tensile_strength=metal(hung.metal, thick).tensile_strength,
        correlation=CORRELATION,
    )
    found = fixed(made, Load(at=case.on.at_pivot, force=case.on.pivot * case.push))
    assert isinstance(found, WeldUse)
    return one(found.use)


def _row(throat: float, length: float, room: float, fits: list[float]) -> Row:
    mark: Mark = "passes" if length <= room else "short"
    if fits and throat == fits[0]:
        mark = "take"
    return Row(
        name=f"fillet {throat / 0.7:.1f} mm", values=(throat, length, RUNS * length), mark=mark
    )


def _says(
    hung: Hanger, case: Case, lengths: dict[float, float], room: float, fits: list[float]
) -> Sentence:
    begins = sentence(
        f"{words(hung.name)} is pulled with {{}} under the hardest push; ",
        (one(case.on.pivot.length()) * one(case.push), "N"),
    )
    if fits:
        return begins + sentence(
            "with a throat of {} it takes four runs of {}, two on each strap.",
            (fits[0], "mm"),
            (lengths[fits[0]], "mm"),
        )
    return begins + sentence(
        "no fillet up to {} fits on straps {} wide: make them wider or hang the pivot otherwise.",
        (max(lengths), "mm"),
        (room, "mm"),
    )
