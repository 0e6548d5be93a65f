"""The ± of every number, as a tree of the design's shape, for drawing cars as hands build them."""

from dataclasses import fields, is_dataclass
from typing import cast

from pedalwright.core.batch import WORKED_OUT, over
from pedalwright.core.points import Plane, Point
from pedalwright.design.tree import Design
from pedalwright.project import paths
from pedalwright.project.projects import Project
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
    Text,
    Word,
    kind_of,
    schema,
)


def plus_minus_tree(project: Project) -> Design:
    """Half widths in the inside units; 0 where none is known, and for directions and words."""
    return cast("Design", _around(project, schema(Design), project.design, ()))


def _around(project: Project, node: Node, value: object, path: tuple[str, ...]) -> object:
    if value is None:
        return None
    match node:
        case Number():
            return _half_width(project, path)
        case Place():
            return Point(*(_half_width(project, (*path, axis)) for axis in AXES))
        case Direction():
            return Point(0.0, 0.0, 0.0)
        case Face():
            return _face(project, cast("Plane", value), path)
        case Table():
            return _table(project, node, value, path)
        case Kinds():
            return _table(project, node.tables[kind_of(value)], value, path)
        case Named():
            things = cast("tuple[object, ...]", value)
            return tuple(
                _table(project, node.thing, thing, (*path, str(getattr(thing, "name"))))  # noqa: B009 - any thing that has a name
                for thing in things
            )
        case Rows():
            rows = cast("tuple[object, ...]", value)
            return tuple(
                _around(project, node.thing, row, (*path, str(count)))
                for count, row in enumerate(rows, 1)
            )
        case Word() | Text() | Name():
            return value


def _table(project: Project, node: Table, value: object, path: tuple[str, ...]) -> object:
    parts = {
        key: _around(project, part.node, getattr(value, key), (*path, key))
        for key, part in node.parts.items()
    }
    return node.make(**parts, **_nothing(value))


def _nothing(value: object) -> dict[str, object]:
    """What was worked out and stands in no file has no ± of its own."""
    own = fields(value) if is_dataclass(value) else ()
    made = {f.name: getattr(value, f.name) for f in own if WORKED_OUT in f.metadata}
    return {name: None if one is None else over(_no_width, one) for name, one in made.items()}


def _no_width(_: float) -> float:
    return 0.0


def _face(project: Project, face: Plane, path: tuple[str, ...]) -> Plane:
    """Through a point, the offset is as good as the coordinates that make it."""
    normal = (face.normal.x, face.normal.y, face.normal.z)
    by_axis = zip(normal, AXES, strict=True)
    through = sum(
        abs(float(n)) * _half_width(project, (*path, "through", axis)) for n, axis in by_axis if n
    )
    own = _half_width(project, (*path, "offset"))
    return Plane(normal=Point(0.0, 0.0, 0.0), offset=through + own)


def _half_width(project: Project, path: tuple[str, ...]) -> float:
    told = project.provenance.get(paths.join(*path))
    return told.plus_minus or 0.0 if told is not None else 0.0
