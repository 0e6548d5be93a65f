"""How thick must the sheet be? The part that gives most, in every gauge that is sold."""

from dataclasses import replace

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
from pedalwright.panels.parts import Rail, Tie
from pedalwright.search.box.built import GAUGES, LISTS, bound_of, in_box, part, strength, with_part
from pedalwright.search.box.cures import words
from pedalwright.search.box.none import no_box
from pedalwright.search.changes import one
from pedalwright.search.tried import Candidate, alone

COLUMNS = (
    Column("flange moves", "mm"),
    Column("pad sinks", "mm"),
    Column("of that this part", "mm"),
)


def thickness(design: Design, pedal: PedalName, wanted: float | None) -> Answer:
    """Every gauge of the part that gives most; `wanted` is a give of the pad that is asked for."""
    now = alone(design)
    give = in_box(now.assessment, pedal)
    if give is None:
        return no_box("thickness", "How thick must the sheet be?", pedal)
    sheets = [own for own in give.by_part if hasattr(part(design.box, own.part), "thickness")]
    name = max(sheets, key=lambda own: one(own.give)).part
    made = part(design.box, name)
    assert not isinstance(made, (Rail, Tie))
    bound = bound_of(now, "structure.give", pedal) if wanted is None else wanted
    path = f"box.{LISTS[type(made)]}.{name}.thickness"
    fitted = one(made.thickness)
    gauges = sorted({*(g for g in GAUGES if 0.5 * fitted <= g <= 4.0 * fitted), fitted})
    tried = [(gauge, alone(with_part(design, replace(made, thickness=gauge)))) for gauge in gauges]
    enough = [gauge for gauge, candidate in tried if _sinks(candidate, pedal) <= bound]
    rows = tuple(
        _row(gauge, candidate, pedal, name, gauge == fitted, gauge in enough[:1], path, bound)
        for gauge, candidate in tried
    )
    return Answer(
        question="thickness",
        title="How thick must the sheet be?",
        says=_says(name, fitted, enough, bound, _sinks(now, pedal)),
        outcome="passes" if fitted in enough else "short" if enough else "fails",
        columns=COLUMNS,
        rows=rows,
        bars=Bars(
            title=f"pad sinks under {float(give.push):.0f} N, by thickness",
            unit="mm",
            bars=tuple(Bar(f"{gauge:g} mm", _sinks(c, pedal)) for gauge, c in tried),
            bound=bound,
            bound_says="all that arm, rod and mounts may give",
        ),
        notes=(
            sentence(
                "Bending goes with the cube of the thickness, so twice as thick is eight times as "
                "stiff where nothing else gives; folding, an angle or a closed box does more."
            ),
            sentence("Give another length to ask for another give: `--by {}`.", (2.0, "mm")),
        ),
    )


def _sinks(candidate: Candidate, pedal: PedalName) -> float:
    return one(strength(candidate.assessment, pedal).give.total)


def _row(
    gauge: float,
    candidate: Candidate,
    pedal: PedalName,
    name: str,
    is_fitted: bool,
    is_least: bool,
    path: str,
    bound: float,
) -> Row:
    give = in_box(candidate.assessment, pedal)
    assert give is not None
    own = next((one(o.give) for o in give.by_part if o.part == name), 0.0)
    passes = _sinks(candidate, pedal) <= bound
    judged: Mark = "passes" if passes else "short"
    mark: Mark = "now" if is_fitted else judged
    if is_least:
        mark = "keep" if is_fitted else "take"
    return Row(
        name=f"{gauge:g} mm",
        values=(one(give.flange_moves), _sinks(candidate, pedal), own),
        mark=mark,
        changes=() if is_fitted else (Change(path, gauge, "mm"),),
    )


def _says(name: str, fitted: float, enough: list[float], bound: float, sinks: float) -> Sentence:
    begins = sentence(
        f"{words(name)} of {{}} lets the pad sink {{}}, and {{}} may be; ",
        (fitted, "mm"),
        (sinks, "mm"),
        (bound, "mm"),
    )
    if fitted in enough:
        if enough[0] < fitted:
            return begins + sentence("it may be thinner, down to {}.", (enough[0], "mm"))
        return begins + sentence("no thinner gauge does.")
    if enough:
        return begins + sentence("it takes {}.", (enough[0], "mm"))
    return begins + sentence("no gauge that is sold does it alone: ask `spongy` what does.")
