"""Cards for the bench as PDF: lists with boxes to tick, drawings beside them.

Python words every cell; the template only lays them out. The same input gives the same bytes.
"""

import json
from collections.abc import Sequence
from dataclasses import dataclass
from importlib.resources import files
from math import isfinite, isqrt

from pedalwright.documents.cautions import CAUTIONS, FIRST_CAUTION
from pedalwright.documents.making_table import Cell, Column, Table
from pedalwright.documents.outside import METRIC, Units
from pedalwright.documents.tiles import Origin
from pedalwright.drawing import Drawing, svg
from pedalwright.making.tiling import A4, Paper

#: Room for a drawing on a card, mm on paper, on the narrower of the two papers.
WIDE, HIGH = 170.0, 110.0
#: Letters from which on a cell may be broken.
MUCH = 24


@dataclass(frozen=True, kw_only=True, slots=True)
class Card:
    """One chapter of the booklet."""

    title: str
    drawings: tuple[Drawing, ...] = ()
    tables: tuple[Table, ...] = ()


def cards_pdf(
    cards: Sequence[Card],
    origin: Origin,
    *,
    title: str,
    paper: Paper = A4,
    units: Units = METRIC,
) -> bytes:
    """All cards, each beginning on a sheet of its own; lengths as the builder's rule has them."""
    import typst  # 30 ms: only when a PDF is wanted

    drawn = {
        f"c{i}d{j}": drawing.fitted(WIDE, HIGH)
        for i, card in enumerate(cards)
        for j, drawing in enumerate(card.drawings)
    }
    content = {
        "title": title,
        "car": origin.car,
        "foot": f"{origin.file}, {origin.date}, pedalwright {origin.version}"
        + ("" if units is METRIC else "; a length without a mark is in mm"),
        "caution": FIRST_CAUTION,
        "cautions": CAUTIONS,
        "paper": "us-letter" if paper.name == "Letter" else paper.name.lower(),
        "cards": [
            {
                "title": card.title,
                "drawings": [
                    {
                        "key": f"c{i}d{j}",
                        "alt": drawing.description or drawing.title,
                        "caption": f"{drawing.title}, {drawn[f'c{i}d{j}'].scale_text}",
                    }
                    for j, drawing in enumerate(card.drawings)
                ],
                "tables": [_table(table, units) for table in card.tables],
            }
            for i, card in enumerate(cards)
        ],
    }
    pdf: bytes = typst.compile(
        files("pedalwright.documents").joinpath("making_cards.typ").read_bytes(),
        format="pdf",
        ignore_system_fonts=True,
        timestamp=0,
        sys_inputs={"data": json.dumps(content)}
        | {key: svg(drawing, physical=True).decode() for key, drawing in drawn.items()},
    )
    return pdf


def _table(table: Table, units: Units) -> dict[str, object]:
    return {
        "title": table.title,
        "says": table.says,
        "ticked": table.ticked,
        "headings": [_heading(column, units) for column in table.columns],
        # numbers stand under each other by their right edge, words by their left
        "right": [
            all(isinstance(row[i], int | float) for row in table.rows)
            for i in range(len(table.columns))
        ],
        "wides": _wides(table),
        "rows": [
            [_cell(column, cell, units) for column, cell in zip(table.columns, row, strict=True)]
            for row in table.rows
        ],
    }


def _heading(column: Column, units: Units) -> str:
    """A length in inches has its mark, so that its column needs no unit."""
    return column.heading if _in_inches(column, units) else column.words


def _cell(column: Column, cell: Cell, units: Units) -> str:
    if _in_inches(column, units) and isinstance(cell, int | float) and isfinite(cell):
        return units.lengths(float(cell), column.digits)
    return column.shown(cell)


def _in_inches(column: Column, units: Units) -> bool:
    return column.unit == "mm" and units is not METRIC


def _wides(table: Table) -> list[int]:
    """Columns with much to say share the room that is left; 0 for one as wide as its words."""
    longest = [
        max((len(column.shown(row[i])) for row in table.rows), default=0)
        for i, column in enumerate(table.columns)
    ]
    # by the root, so that a short note beside a long one still gets its lines
    return [isqrt(n) if n >= min(MUCH, max(longest)) else 0 for n in longest]
