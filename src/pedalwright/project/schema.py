"""The shape of a project file, read from the dataclasses of the design.

The tree is the schema: a field is declared once, in the `parts.py` of its room, and its hint
says how it stands in the file.

    mm, MPa, rad ...                a quantity: "54.5 mm", "15 deg"
    Literal["hanging", "floor"]     one of the words
    str                             a text of the builder's own: a mark's name, a remark
    Point                           three lengths, or the name of a mark; a direction where the
                                    name says so
    Plane                           { normal = ..., through = [...] } or normal and offset
    a dataclass                     a table
    Disc | Drum                     a table with kind = "disc" or kind = "drum"
    tuple[Line, ...]                tables by name, [survey.lines.column]; rows [[...]] if
                                    the thing has no name
    tuple[mm, ...]                  one quantity or several in a list
    Cylinder | None                 the same, and None where the file has none

A field that is marked as worked out is none of the file's; it keeps its default when the file is
read and is filled in afterwards.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass
from functools import cache
from re import sub
from types import NoneType, UnionType
from typing import Annotated, Literal, TypeAlias, Union, get_args, get_origin, get_type_hints

from pedalwright.core.batch import WORKED_OUT
from pedalwright.core.points import Plane, Point

AXES = ("x", "y", "z")
#: Fields of a Point that are ways to look, not places.
_WAYS = {"direction", "looks", "side"}


@dataclass(frozen=True, slots=True)
class Number:
    """A quantity, in this unit inside."""

    unit: str


@dataclass(frozen=True, slots=True)
class Word:
    """One of some words."""

    words: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Text:
    """A text of the builder's own."""


@dataclass(frozen=True, slots=True)
class Name:
    """What a thing is called; it stands in the header of its table."""


@dataclass(frozen=True, slots=True)
class Place:
    """A point in car axes."""


@dataclass(frozen=True, slots=True)
class Direction:
    """A direction in car axes; of length 1 inside."""


@dataclass(frozen=True, slots=True)
class Face:
    """A flat face: its direction, and a point it goes through or its offset."""


@dataclass(frozen=True, slots=True)
class Part:
    """One field of a table."""

    node: "Node"
    #: MISSING where the dataclass has none.
    default: object


@dataclass(frozen=True, slots=True)
class Table:
    """A dataclass."""

    make: Callable[..., object]
    parts: Mapping[str, Part]


@dataclass(frozen=True, slots=True)
class Kinds:
    """One of several dataclasses; the file says which by `kind`."""

    tables: Mapping[str, Table]


@dataclass(frozen=True, slots=True)
class Named:
    """Any number of things that have names."""

    thing: Table


@dataclass(frozen=True, slots=True)
class Rows:
    """Any number of things without names, in order."""

    thing: "Node"


Node: TypeAlias = (
    Number | Word | Text | Name | Place | Direction | Face | Table | Kinds | Named | Rows
)


@cache
def schema(made: type) -> Table:
    """The file's shape for a tree of frozen dataclasses."""
    return _table(made, named=False)


def leaves(node: Node, path: tuple[str, ...] = ()) -> Iterator[tuple[str, Node]]:
    """Every entry a file can have, with `*` for a name or a row's number."""
    match node:
        case Table():
            for name, part in node.parts.items():
                yield from leaves(part.node, (*path, name))
        case Kinds():
            for table in node.tables.values():
                yield from leaves(table, path)
        case Named() | Rows():
            yield from leaves(node.thing, (*path, "*"))
        case Place():
            yield from ((".".join((*path, axis)), Number("mm")) for axis in AXES)
        case Face():
            yield ".".join((*path, "normal")), Direction()
            yield ".".join((*path, "offset")), Number("mm")
            yield from leaves(Place(), (*path, "through"))
        case Name():
            return
        case Number() | Word() | Text() | Direction():
            yield ".".join(path), node


def kind_of(made: object) -> str:
    """How a file calls a dataclass, or one made from it: SlaveCylinder is a `slave-cylinder`."""
    name = (made if isinstance(made, type) else type(made)).__name__
    return sub(r"(?<=[a-z0-9])(?=[A-Z])", "-", name).lower()


def _node(field: str, hint: object) -> Node:
    origin, inner = get_origin(hint), get_args(hint)
    if origin is Annotated:
        return Number(str(inner[1]))
    if origin is Literal:
        return Word(tuple(str(word) for word in inner))
    if origin in {Union, UnionType}:
        made = [one for one in inner if one is not NoneType]
        if len(made) == 1:
            return _node(field, made[0])
        return Kinds({kind_of(one): _table(one, named=False) for one in made})
    if origin is tuple:
        thing = inner[0]
        if isinstance(thing, type) and "name" in _hints(thing):
            return Named(_table(thing, named=True))
        return Rows(_node(field, thing))
    if hint is Point:
        return Direction() if field in _WAYS or field.endswith("axis") else Place()
    if hint is str:
        return Text()
    if hint is Plane:
        return Face()
    assert isinstance(hint, type), f"no way to read {field}: {hint} from a file"
    return _table(hint, named=False)


def _table(made: type, *, named: bool) -> Table:
    assert is_dataclass(made), f"no way to read {made} from a file"
    hints = _hints(made)
    return Table(
        made,
        {
            field.name: Part(
                Name() if named and field.name == "name" else _node(field.name, hints[field.name]),
                field.default,
            )
            for field in fields(made)
            if not field.metadata.get(WORKED_OUT)
        },
    )


def _hints(made: type) -> dict[str, object]:
    return get_type_hints(made, include_extras=True)
