"""A list for the bench: it prints, and a machine reads it as CSV or JSON.

Cells are what the making rooms found, with the digits a builder can measure.
"""

import csv
import io
from dataclasses import dataclass
from math import isnan

Cell = str | float | int | None


@dataclass(frozen=True, kw_only=True, slots=True)
class Column:
    """A column: its name for machines, its heading, its unit, its digits after the point."""

    key: str
    heading: str
    unit: str = ""
    digits: int = 1

    @property
    def words(self) -> str:
        """The heading with its unit."""
        return f"{self.heading}, {self.unit}" if self.unit else self.heading

    def shown(self, cell: Cell) -> str:
        """A cell as it is printed; a number nobody knows is a dash."""
        if cell is None or (isinstance(cell, float) and isnan(cell)):
            return "–"
        if isinstance(cell, float):
            text = f"{cell:.{self.digits}f}"
            text = text.rstrip("0").rstrip(".") if "." in text else text
            return "0" if text == "-0" else text
        return str(cell)


@dataclass(frozen=True, kw_only=True, slots=True)
class Table:
    """A list for the bench."""

    #: For file names, without blanks.
    key: str
    title: str
    #: One or two sentences above it.
    says: str = ""
    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]
    #: Whether each row is ticked off when done.
    ticked: bool = True


def as_csv(table: Table) -> str:
    """With a row of headings, units in them; unknown numbers are empty."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow([column.words for column in table.columns])
    for row in table.rows:
        writer.writerow(
            [
                "" if (text := column.shown(cell)) == "–" else text
                for column, cell in zip(table.columns, row, strict=True)
            ]
        )
    return out.getvalue()


def as_data(table: Table) -> dict[str, object]:
    """For JSON: numbers as numbers, unknown as null."""
    return {
        "title": table.title,
        "says": table.says,
        "units": {column.key: column.unit for column in table.columns if column.unit},
        "rows": [
            {
                column.key: None if isinstance(cell, float) and isnan(cell) else cell
                for column, cell in zip(table.columns, row, strict=True)
            }
            for row in table.rows
        ],
    }


def key_of(name: str) -> str:
    """A name for a file: small letters, no blanks."""
    return "-".join("".join(c if c.isalnum() else " " for c in name.lower()).split())
