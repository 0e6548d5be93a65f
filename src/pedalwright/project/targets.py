"""From the path of an entry to where it stands in the tables of a file."""

from collections.abc import Mapping
from typing import NamedTuple

from pedalwright.project import paths
from pedalwright.project.errors import ProjectError, fault, nearest
from pedalwright.project.places import Keys
from pedalwright.project.schema import (
    AXES,
    Direction,
    Face,
    Kinds,
    Name,
    Named,
    Node,
    Number,
    Place,
    Rows,
    Table,
    Word,
)

#: What a file says beside the design.
HEAD = ("format", "name", "date", "note", "shown_in")


class Target(NamedTuple):
    """One entry of a file."""

    path: str
    keys: Keys
    #: Which coordinate, if it is one of a point.
    axis: int | None


def target(root: Table, path: str) -> Target:
    """Find an entry by its path; rows are counted from 1 in paths and from 0 in files."""
    names = paths.split(path)
    if len(names) == 1 and names[0] in HEAD[1:]:
        return Target(path, names, None)
    node: Node = root
    keys: Keys = ()
    for name in names:
        step = _below(node, name)
        if step is None:
            accepts = f"{paths.join(*map(str, keys)) or 'A file'} has no {name}."
            raise _no_entry(path, accepts, nearest(name, _known(node)))
        if isinstance(node, Place):
            return Target(path, keys, AXES.index(name))
        keys, node = (*keys, step[0]), step[1]
    if isinstance(node, (Table, Kinds, Named, Rows, Face)):
        raise _no_entry(path, "This is a table; name one of its entries.", tuple(_known(node)))
    return Target(path, keys, None)


def _no_entry(path: str, accepts: str, offers: tuple[str, ...]) -> ProjectError:
    return ProjectError((fault("", None, path, path, accepts, offers),))


def _below(node: Node, name: str) -> tuple[str | int, Node] | None:
    """One step down, if there is one."""
    match node:
        case Named():
            return name, node.thing
        case Rows():
            return (int(name) - 1, node.thing) if name.isdecimal() and int(name) else None
        case _:
            below = _known(node).get(name)
            return None if below is None else (name, below)


def _known(node: Node) -> Mapping[str, Node]:
    match node:
        case Table():
            parts = node.parts.items()
            return {key: part.node for key, part in parts if not isinstance(part.node, Name)}
        case Kinds():
            tables = [_known(table) for table in node.tables.values()]
            kind: Node = Word(tuple(node.tables))
            return {"kind": kind, **{key: n for table in tables for key, n in table.items()}}
        case Place():
            return dict.fromkeys(AXES, Number("mm"))
        case Face():
            return {"normal": Direction(), "through": Place(), "offset": Number("mm")}
        case _:
            return {}
