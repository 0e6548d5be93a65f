"""Read the tables that ship with the house: CSV, one row a thing, each row with its source."""

import csv
from dataclasses import fields
from functools import cache
from importlib.resources import files
from typing import TypeVar, get_type_hints

T = TypeVar("T")


@cache
def table(row: type[T], name: str) -> tuple[T, ...]:
    """All rows of `name`.csv as frozen dataclasses; a column is a field of the same name.

    Fields hinted `float` are numbers (an empty cell is nan: not known), all others text. A
    column without a field, or a field without a column, is a programmer's mistake.
    """
    hints = get_type_hints(row)
    names = [field.name for field in fields(row)]  # type: ignore[arg-type]
    text = files("pedalwright.shelf").joinpath(f"{name}.csv").read_text(encoding="utf-8")
    lines = csv.DictReader(text.splitlines())
    assert lines.fieldnames == names, f"{name}.csv: columns are {lines.fieldnames}, not {names}"
    return tuple(
        row(**{key: _cell(cell, hints[key]) for key, cell in line.items()}) for line in lines
    )


def _cell(cell: str, hint: object) -> float | str:
    if hint is not float:
        return cell
    return float(cell) if cell else float("nan")
