"""What one entry of a file is, for a form: its name, what it means, what can be written there."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from pedalwright.core.quantity.kinds import accepts
from pedalwright.core.quantity.unit_words import unit_named
from pedalwright.design.tree import Design
from pedalwright.project import paths, rules
from pedalwright.project.keys_page import notes
from pedalwright.project.quantities import bare_unit
from pedalwright.project.schema import (
    AXES,
    Direction,
    Face,
    Kinds,
    Named,
    Node,
    Number,
    Place,
    Rows,
    Table,
    Word,
    schema,
)


@dataclass(frozen=True, kw_only=True, slots=True)
class Explained:
    """An entry in words."""

    #: What it stands under: `brake pedal`.
    table: str
    #: What it is called there: `pin radius`, `pivot x`.
    label: str
    #: What it is; empty where its name says it.
    says: str
    #: What can be written.
    accepts: str
    #: The choice there is, for an entry that is a word.
    words: tuple[str, ...] = ()
    #: What is taken where it is left out, and why.
    default: str = ""


@cache
def explained(path: str) -> Explained:
    """One entry by its path; the same path always reads the same."""
    keys = paths.split(path)
    made, field, node, shape = _found(keys)
    axis = keys[-1] if keys[-1] in AXES and len(keys) > 1 else ""
    own = keys[_depth(keys, field) :]
    table = keys[: len(keys) - len(own)]
    meaning = notes(made).get(field, "")
    if axis:
        meaning = f"{meaning} {AXIS[axis]}".strip()
    default = rules.default(shape)
    return Explained(
        table=_words(table) or "as a whole",
        label=_words(own),
        says=meaning,
        accepts=_accepts(node),
        words=node.words if isinstance(node, Word) else (),
        default=f"{default.value}: {default.why}" if default else "",
    )


#: What is measured along each axis.
AXIS = {
    "x": "Along the car, rearward from the datum.",
    "y": "Across the car, to its right from the datum.",
    "z": "Upright, up from the datum.",
}


def _found(keys: tuple[str, ...]) -> tuple[type, str, Node, str]:
    """The dataclass that declares an entry, its field there, its kind, its path for the rules."""
    node: Node = schema(Design)
    made: type = Design
    field = ""
    shape: list[str] = []
    for key in keys:
        if isinstance(node, (Named, Rows)):
            node = node.thing
            shape.append("*")
            continue
        shape.append(key)
        if isinstance(node, Kinds):
            node = next((t for t in node.tables.values() if key in t.parts), node)
        if isinstance(node, Kinds) and key == "kind":
            node, field = Word(tuple(node.tables)), "kind"
        elif isinstance(node, Table):
            assert isinstance(node.make, type)
            made, field, node = node.make, key, node.parts[key].node
        elif isinstance(node, Place):
            node = Number("mm")
        elif isinstance(node, Face):
            node = _FACE[key]
    return made, field, node, ".".join(shape)


_FACE: dict[str, Node] = {"normal": Direction(), "through": Place(), "offset": Number("mm")}


def _depth(keys: tuple[str, ...], field: str) -> int:
    """Where the entry's own name begins."""
    return max(n for n, key in enumerate(keys) if key == field)


def _accepts(node: Node) -> str:
    match node:
        case Number(unit):
            return accepts(unit_named(unit), unit_named(bare_unit(unit)))
        case Direction():
            return 'a direction such as "forward", "up 12 deg rearward"'
        case Word(words):
            return " or ".join(words)
        case _:
            return "a text"


def _words(keys: Sequence[str]) -> str:
    return " ".join(key.replace("_", " ") for key in keys)
