"""Answers to a builder's questions, as text and as data."""

import textwrap
from collections.abc import Iterator, Sequence
from typing import Any

import numpy as np

from pedalwright.core.answers import Answer, Bars, Change, Column, Figure, Row, Sentence, Step
from pedalwright.core.quantity import show
from pedalwright.documents.about import About
from pedalwright.documents.cautions import FIRST_CAUTION
from pedalwright.documents.outside import METRIC, Units, outside

WIDTH = 100
#: Cells of the longest bar.
CELLS = 40
#: Words for a candidate's mark.
MARKS = {
    "take": "TAKE",
    "keep": "KEEP",
    "now": "now",
    "passes": "passes",
    "short": "short",
    "fails": "fails",
    None: "",
}


def answer_text(about: About, answer: Answer) -> str:
    """The whole answer: a sentence, the figures behind it, what to do next and its price."""
    return "\n".join(line.rstrip() for line in _lines(about, answer)) + "\n"


def said(words: Sentence, units: Units = METRIC) -> str:
    """A sentence with its figures written in."""
    pieces = [units.prose(piece) for piece in words.text.split("{}")]
    figures = [*(shown(found, units) for found in words.figures), ""]
    return "".join(text + written for text, written in zip(pieces, figures, strict=True))


def shown(found: Figure, units: Units = METRIC) -> str:
    """A figure as a reader wants it: angles in degrees, shares in per cent."""
    if np.isnan(found.value):
        return "no value"
    if found.unit == "share":
        return f"{found.value:.0%}".replace("%", " %")
    return units.said(found.value, found.unit)


def typed(change: Change, hand: str = "") -> str:
    """A change as it is typed into the project file, in the unit or form it stands there in."""
    if change.unit in {"1", "share"}:
        text = f"{change.value:.5g}"
    elif hand:
        text = show(change.value, change.unit, like=hand, digits=5)
    else:
        value, unit = outside(change.value, change.unit)
        text = f"{float(value):.5g} {unit}"
    return f'{change.path} = "{text}"'


def answer_data(about: About, answer: Answer) -> dict[str, Any]:
    """The answer as numbers, texts and null; sentences come with their figures.

    Any, because JSON has no closer type.
    """
    heads = [{"head": column.head, "unit": _outer(column.unit)} for column in answer.columns]
    return {
        "pedalwright": about.version,
        "car": about.car,
        "question": answer.question,
        "title": answer.title,
        "answer": _sentence(answer.says),
        "outcome": answer.outcome,
        "columns": heads,
        "rows": [_row(row, answer.columns) for row in answer.rows],
        "bars": _bars(answer.bars),
        "next": [_step(step) for step in answer.steps],
        "notes": [_sentence(note) for note in answer.notes],
    }


def _lines(about: About, answer: Answer) -> Iterator[str]:
    units = about.units
    yield answer.title.upper()
    yield f"{about.car}   ({about.file}, {about.date}; pedalwright {about.version})"
    yield ""
    yield from textwrap.wrap(said(answer.says, units), WIDTH)
    if answer.rows:
        yield ""
        yield from _table(answer, units)
    if answer.bars is not None:
        yield ""
        yield from _drawn(answer.bars, units)
    yield ""
    yield "WHAT TO DO NEXT"
    for number, step in enumerate(answer.steps, start=1):
        yield from _next(number, step, about)
    if not answer.steps:
        yield "  Nothing: it can stay as it is." if answer.outcome == "passes" else "  See above."
    if answer.notes:
        yield ""
        yield "WHAT THIS RESTS ON"
        for note in answer.notes:
            yield from textwrap.wrap(
                said(note, units), WIDTH, initial_indent="  - ", subsequent_indent="    "
            )
    yield ""
    yield from textwrap.wrap(FIRST_CAUTION, WIDTH)


def _table(answer: Answer, units: Units) -> Iterator[str]:
    names = [units.prose(row.name) for row in answer.rows]
    cells = [
        [_cell(v, column, units) for v, column in zip(row.values, answer.columns, strict=True)]
        for row in answer.rows
    ]
    lead = max(map(len, names)) + 2
    heads = [column.head for column in answer.columns]
    wide = [max(11, *(len(cell) + 2 for cell in down)) for down in zip(heads, *cells, strict=True)]
    yield " " * (lead + 2) + _in_columns(heads, wide)
    for name, row, across in zip(names, answer.rows, cells, strict=True):
        pointer = "> " if row.mark in {"take", "keep"} else "  "
        yield f"{pointer}{name:<{lead}}{_in_columns(across, wide)}  {MARKS[row.mark]}"
        for why in row.why:
            yield from textwrap.wrap(
                said(why, units), WIDTH, initial_indent="      ", subsequent_indent="        "
            )


def _in_columns(cells: Sequence[str], wide: Sequence[int]) -> str:
    return "".join(f"{cell:>{width}}" for cell, width in zip(cells, wide, strict=True))


def _cell(value: float, column: Column, units: Units) -> str:
    return shown(Figure(value, column.unit), units) if np.isfinite(value) else "-"


def _drawn(bars: Bars, units: Units) -> Iterator[str]:
    """Every bar to one scale; a mark stands where the bound is."""
    finite = [bar.value for bar in bars.bars if np.isfinite(bar.value)]
    longest = max([*finite, bars.bound or 0.0], default=0.0) or 1.0
    names = [units.prose(bar.name) for bar in bars.bars]
    lead = max(map(len, names)) + 2
    at = None if bars.bound is None else round(CELLS * bars.bound / longest)
    yield f"  {units.prose(bars.title)}"
    for name, bar in zip(names, bars.bars, strict=True):
        cells = round(CELLS * max(bar.value, 0.0) / longest) if np.isfinite(bar.value) else 0
        line = ("█" * cells).ljust(CELLS + 1)
        if at is not None:
            line = line[:at] + "│" + line[at + 1 :]
        yield f"  {name:<{lead}}{line} {_cell(bar.value, Column('', bars.unit), units)}"
    if at is not None and bars.bound is not None:
        bound = shown(Figure(bars.bound, bars.unit), units)
        yield f"  {'':<{lead}}{'':<{at}}│ {bars.bound_says}, {bound}"


def _next(number: int, step: Step, about: About) -> Iterator[str]:
    units = about.units
    assumed = " (assumed figures)" if step.assumed else ""
    yield from _told(f"  {number}. ", said(step.what, units) + assumed)
    yield from _told("     brings  ", said(step.brings, units))
    price = step.price
    buy = f"buy {units.prose(price.buy)}" if price.buy else "nothing to buy"
    yield from _told("     costs   ", f"about {price.minutes:.0f} minutes; {buy}")
    if price.worse:
        yield from _told("     worse   ", "; ".join(said(worse, units) for worse in price.worse))
    if step.breaks:
        broken = "; ".join(said(broken, units) for broken in step.breaks)
        yield from _told("     FAILS   ", broken)
    for change in step.changes:
        yield f"     type    {typed(change, about.hand(change.path, change.unit))}"


def _told(lead: str, text: str) -> Sequence[str]:
    return textwrap.wrap(text, WIDTH, initial_indent=lead, subsequent_indent=" " * len(lead))


def _number(value: float) -> float | None:
    return float(value) if np.isfinite(value) else None


def _outer(unit: str) -> str:
    return outside(0.0, unit)[1]


def _figure(found: Figure) -> dict[str, Any]:
    value, unit = outside(found.value, found.unit)
    return {"value": _number(float(value)), "unit": unit}


def _sentence(words: Sentence) -> dict[str, Any]:
    return {"text": said(words), "figures": [_figure(found) for found in words.figures]}


def _row(row: Row, columns: Sequence[Column]) -> dict[str, Any]:
    values = {
        column.head: _figure(Figure(value, column.unit))["value"]
        for column, value in zip(columns, row.values, strict=True)
    }
    return {
        "name": row.name,
        "values": values,
        "mark": row.mark,
        "why": [_sentence(why) for why in row.why],
        "changes": [_change(change) for change in row.changes],
    }


def _change(change: Change) -> dict[str, Any]:
    return {"path": change.path, **_figure(Figure(change.value, change.unit))}


def _bars(bars: Bars | None) -> dict[str, Any] | None:
    if bars is None:
        return None
    return {
        "title": bars.title,
        "unit": _outer(bars.unit),
        "bars": [
            {"name": bar.name, "value": _figure(Figure(bar.value, bars.unit))["value"]}
            for bar in bars.bars
        ],
        "bound": None if bars.bound is None else _figure(Figure(bars.bound, bars.unit))["value"],
        "bound_says": bars.bound_says,
    }


def _step(step: Step) -> dict[str, Any]:
    return {
        "what": _sentence(step.what),
        "brings": _sentence(step.brings),
        "price": {
            "minutes": step.price.minutes,
            "buy": step.price.buy,
            "worse": [_sentence(worse) for worse in step.price.worse],
        },
        "breaks": [_sentence(broken) for broken in step.breaks],
        "assumed": step.assumed,
        "changes": [_change(change) for change in step.changes],
    }
