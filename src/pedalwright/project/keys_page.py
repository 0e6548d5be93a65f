"""docs/project-keys.md: every key of a project file, made from the dataclasses that declare it."""

import inspect
import re
from collections.abc import Iterator, Sequence
from dataclasses import MISSING
from math import isnan
from typing import NamedTuple

from pedalwright.core.quantity import show
from pedalwright.core.quantity.kinds import kind
from pedalwright.core.quantity.unit_words import unit_named
from pedalwright.design.tree import Design
from pedalwright.project import rules
from pedalwright.project.schema import (
    Direction,
    Face,
    Kinds,
    Name,
    Named,
    Node,
    Number,
    Part,
    Place,
    Rows,
    Table,
    Text,
    Word,
    kind_of,
    schema,
)

HEAD = """# Keys of a project file

How a file is written is told in [project-file.md](project-file.md). This page lists all of its
tables and keys. It is made from the dataclasses in `design/tree.py` and the rooms' `parts.py`;
`make fix` writes it anew. A number that is left out is *missing* unless a default stands here; ±
is what is taken where you give none.

Above the first table stand `format = 1`, `name`, `date`, `note` and, if you like, `shown_in`.
"""

_COLUMNS = "| key | written as | left out | ± | what it is |\n|---|---|---|---|---|\n"


def keys_page() -> str:
    """The page, a section for each dataclass with the tables it is found in."""
    by_class: dict[type, list[_Found]] = {}
    for found in _tables(schema(Design), ""):
        assert isinstance(found.table.make, type)
        by_class.setdefault(found.table.make, []).append(found)
    return HEAD + "".join(_section(made, places) for made, places in by_class.items())


def notes(made: type) -> dict[str, str]:
    """What the `#:` comments of a dataclass say of its fields; one speaks for all below it."""
    said: dict[str, str] = {}
    comment, open_for_more = "", False
    for line in inspect.getsource(made).splitlines():
        text = line.strip()
        if text.startswith("#:"):
            more = text.removeprefix("#:").strip()
            comment = f"{comment} {more}" if open_for_more else more
            open_for_more = True
            continue
        open_for_more = False
        field = re.match(r"(\w+): ", text)
        if field is None:
            comment = ""
        elif comment:
            said[field[1]] = comment
            comment = ""
    return said


class _Found(NamedTuple):
    path: str
    table: Table
    #: True for a table that is one of several kinds.
    is_kind: bool


def _tables(node: Node, path: str, *, is_kind: bool = False) -> Iterator[_Found]:
    if isinstance(node, Table):
        yield _Found(path, node, is_kind)
        for name, part in node.parts.items():
            yield from _tables(part.node, f"{path}.{name}".lstrip("."))
    elif isinstance(node, Kinds):
        for table in node.tables.values():
            yield from _tables(table, path, is_kind=True)
    elif isinstance(node, Named):
        yield from _tables(node.thing, f"{path}.NAME")
    elif isinstance(node, Rows):
        yield from _tables(node.thing, f"{path}[]")


def _section(made: type, places: Sequence[_Found]) -> str:
    path, table, is_kind = places[0]
    said = notes(made)
    rows = [
        _row(f"{path}.{name}".lstrip("."), name, part, said.get(name, ""))
        for name, part in table.parts.items()
        if not isinstance(_single(part.node), (Table, Kinds, Named, Rows, Name))
    ]
    if not (rows or is_kind):
        return ""
    heads = ", ".join(f"`{_header(place.path)}`" for place in places) if path else "At the top"
    kinds = f' with `kind = "{kind_of(made)}"`' if is_kind else ""
    meaning = (inspect.getdoc(made) or "").split("\n\n")[0].replace("\n", " ")
    title = f"\n## {heads}{kinds}\n\n{meaning}\n\n"
    if not rows:
        return f"{title}It has tables of its own: {', '.join(table.parts)}.\n"
    return f"{title}{_COLUMNS}{''.join(rows)}"


def _single(node: Node) -> Node:
    """What a list of quantities or texts is made of; anything else is itself."""
    is_list = isinstance(node, Rows) and isinstance(node.thing, (Number, Text))
    return node.thing if is_list and isinstance(node, Rows) else node


def _header(path: str) -> str:
    return f"[[{path.removesuffix('[]')}]]" if path.endswith("[]") else f"[{path}]"


def _row(path: str, name: str, part: Part, note: str) -> str:
    node = part.node
    shape = path.replace("NAME", "*").replace("[]", ".*")
    first = f"{shape}.x" if isinstance(node, Place) else shape
    first = f"{shape}.*" if isinstance(node, Rows) else first
    first = f"{shape}.offset" if isinstance(node, Face) else first
    around = rules.within(first) if isinstance(_single(node), (Number, Place, Face)) else None
    cells = (
        f"`{name}`",
        _written(node),
        _left_out(shape, part),
        around.plus_minus if around else "",
    )
    return f"| {' | '.join(cells)} | {note} |\n"


def _written(node: Node) -> str:
    match node:
        case Number(unit):
            return kind(unit_named(unit))
        case Word(words):
            return " or ".join(f'`"{word}"`' for word in words)
        case Place():
            return "a point"
        case Text():
            return "a text"
        case Rows(thing):
            return f"{_written(thing)}, or several in a list"
        case Direction():
            return "a direction"
        case _:
            return "a face, see project-file.md"


def _left_out(shape: str, part: Part) -> str:
    default = rules.default(shape)
    if default is not None:
        return f"{default.value}: {default.why}"
    if part.default is MISSING:
        return "is needed" if isinstance(part.node, Word) else "missing"
    if part.default is None:
        return "none"
    if isinstance(part.node, Number) and isinstance(part.default, (int, float)):
        return "estimated" if isnan(part.default) else show(part.default, part.node.unit)
    return str(part.default)
