"""A part of the box written into a project's text, and what it takes the place of taken out of it.

What is taken out stays in the file as a comment: nothing that a builder wrote is lost by a press
of a button.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import cast

from pedalwright.core.points import Point
from pedalwright.core.quantity import write
from pedalwright.design.tree import Design
from pedalwright.panels.parts import Box
from pedalwright.project import paths
from pedalwright.project.edits import edited
from pedalwright.project.projects import Project, changed
from pedalwright.project.quantities import bare_unit
from pedalwright.project.schema import (
    Kinds,
    Name,
    Named,
    Node,
    Number,
    Place,
    Table,
    kind_of,
    schema,
)
from pedalwright.project.syntax import quoted
from pedalwright.project.targets import target


def built_in(
    project: Project,
    kind: str,
    part: object,
    *,
    instead_of: Sequence[str],
    changes: Mapping[str, str],
) -> Project:
    """The project with one more part of the box (`kind` as in `box.cheeks`); no file is touched.

    `changes` are words elsewhere that go with it, such as what hangs on it.
    """
    text = project.text
    for path, new in changes.items():
        text = edited(text, target(schema(Design), path), new)
    for table in instead_of:
        text = _commented_out(text, table)
    name = str(getattr(part, "name"))  # noqa: B009 - any part of a box has one
    head = f"[{paths.join('box', kind, name)}]"
    lines = "\n".join(_entries(_of(kind), part))
    text = f"{text.rstrip()}\n\n# Built in from the page.\n"
    return changed(replace(project, text=f"{text}{head}\n{lines}\n"), {})


def tables_of(box: Box, names: Sequence[str]) -> list[str]:
    """The tables of parts by their names."""
    return [
        paths.join("box", kind, part.name)
        for kind in Box.__dataclass_fields__
        for part in getattr(box, kind)
        if part.name in names
    ]


def _of(kind: str) -> Table:
    box = schema(Design).parts["box"].node
    assert isinstance(box, Table)
    named = box.parts[kind].node
    assert isinstance(named, Named)
    return named.thing


def _entries(table: Table, thing: object) -> Iterator[str]:
    for key, below in table.parts.items():
        value: object = getattr(thing, key)
        if value is not None and value != "" and not isinstance(below.node, Name):
            yield f"{key} = {_written(below.node, value)}"


def _written(node: Node, value: object) -> str:
    """As a builder would write it; a size of the part itself is picked, and says so."""
    match node:
        case Number():
            return _picked(_number(node, cast("float", value)))
        case Place():
            point = cast("Point", value)
            axes = (float(point.x), float(point.y), float(point.z))
            return _picked(f"[{', '.join(_number(Number('mm'), at) for at in axes)}]")
        case Kinds():
            parts = node.tables[kind_of(value)].parts.items()
            told = {key: getattr(value, key) for key, _ in parts}
            own = [
                f"{key} = {_number(part.node, told[key])}"
                if isinstance(part.node, Number)
                else f"{key} = {quoted(str(told[key]))}"
                for key, part in parts
                if told[key] is not None
            ]
            return f"{{ {', '.join([f'kind = {quoted(kind_of(value))}', *own])} }}"
        case _:
            return quoted(str(value))


def _number(node: Number, value: float) -> str:
    fine = round(value, 1) if node.unit == "mm" else value
    return quoted(write(fine, node.unit, like=bare_unit(node.unit)))


def _picked(value: str) -> str:
    return f'{{ value = {value}, tag = "assumed" }}'


def _commented_out(text: str, table: str) -> str:
    """Its lines, and those of the tables below it, each behind a #."""
    own = re.compile(rf"\s*\[{re.escape(table)}(\..*)?\]\s*(#.*)?$")
    lines: list[str] = []
    within = False
    for line in text.split("\n"):
        if line.lstrip().startswith("["):
            within = own.match(line) is not None
        lines.append(f"# {line}" if within and line.strip() and line.lstrip()[0] != "#" else line)
    return "\n".join(lines)
