"""From the tables of a file to a tree of dataclasses, with the provenance of every number.

Nothing stops the reader: it notes every fault and goes on with nan, so that a builder who has
ten slips in his file hears of all ten.
"""

from collections.abc import Mapping
from dataclasses import MISSING
from typing import cast

from pedalwright.project import paths, rules
from pedalwright.project.entries import Trouble, entry, typed
from pedalwright.project.errors import nearest
from pedalwright.project.geometry import read_direction, read_face, read_place
from pedalwright.project.quantities import left_out, missing, quantity
from pedalwright.project.report import Report, Spot
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
)
from pedalwright.project.syntax import quoted

#: More things than this in one table are somebody else's file.
MOST_THINGS = 10_000
LONGEST_NAME = 60
LONGEST_TEXT = 200


def read_tables(
    report: Report, node: Table, tables: Mapping[str, object], spot: Spot | None = None
) -> object:
    """The whole tree, or the one below a spot; what is wrong in the file is in the report."""
    return _Reader(report).table(node, tables, spot or Spot())


class _Reader:
    """Walks over a schema and a file side by side."""

    def __init__(self, report: Report) -> None:
        self.report = report

    def part(self, part: Part, raw: object, spot: Spot) -> object:
        """One field of a table; `raw` is None where the file has nothing."""
        filled = isinstance(part.node, (Number, Name, Named)) and part.default is not None
        if raw is None and part.default is not MISSING and not filled:
            return part.default
        match part.node:
            case Number(unit):
                return self.number(unit, raw, spot, part.default)
            case Named():
                return self.named(part.node, raw, spot, required=part.default is MISSING)
            case Rows():
                return self.rows(part.node, raw, spot)
            case _:
                return self.node(part.node, raw, spot)

    def node(self, node: Node, raw: object, spot: Spot) -> object:
        """What can stand alone or in a row."""
        match node:
            case Table():
                return self.table(node, raw, spot)
            case Kinds():
                return self.kinds(node, raw, spot)
            case Place():
                return read_place(self.report, raw, spot)
            case Direction():
                return read_direction(self.report, raw, spot)
            case Face():
                return read_face(self.report, raw, spot)
            case Word(words):
                return self.word(words, raw, spot)
            case Number(unit):
                return self.number(unit, raw, spot, None)
            case Text():
                return self.text(raw, spot)
            case Name():
                return spot.name
            case Named() | Rows():
                raise AssertionError(f"no rows of {node}")

    def number(self, unit: str, raw: object, spot: Spot, default: object) -> float:
        shape = ".".join(spot.shape)
        if raw is None:
            return self.report.keep(left_out(shape, unit, default), spot)
        return self.report.keep(quantity(entry(raw), shape, unit), spot)

    def word(self, words: tuple[str, ...], raw: object, spot: Spot) -> str:
        if isinstance(raw, str) and raw in words:
            self.report.choose(spot, raw)
            return raw
        if spot.known:
            text = typed(raw)
            accepts = f"{spot.path[-1]} is “{'” or “'.join(words)}”."
            self.report.complain(spot, Trouble(text, accepts, nearest(text, words)))
        return words[0]

    def text(self, raw: object, spot: Spot) -> str:
        if isinstance(raw, str) and raw.strip() and raw.isprintable() and len(raw) <= LONGEST_TEXT:
            self.report.choose(spot, raw)
            return raw
        if spot.known:
            accepts = f"{spot.path[-1]} is a text of 1 to {LONGEST_TEXT} characters."
            self.report.complain(spot, Trouble(typed(raw), accepts))
        return ""

    def table(self, node: Table, raw: object, spot: Spot) -> object:
        known = [key for key, part in node.parts.items() if not isinstance(part.node, Name)]
        said = self.report.entries(raw, known, spot)
        spot = spot if isinstance(raw, dict) else spot.absent()
        parts = node.parts.items()
        return node.make(**{k: self.part(part, said.get(k), spot.below(k)) for k, part in parts})

    def kinds(self, node: Kinds, raw: object, spot: Spot) -> object:
        if not isinstance(raw, dict):
            return self.table(next(iter(node.tables.values())), raw, spot)
        said = dict(cast("Mapping[str, object]", raw))
        kind = said.pop("kind", None)
        if not (isinstance(kind, str) and kind in node.tables):
            accepts = f"This table needs kind = {' or '.join(map(quoted, node.tables))}."
            likely = max(node.tables, key=lambda k: len(said.keys() & node.tables[k].parts.keys()))
            offers = nearest(typed(kind), node.tables) or (likely,)
            self.report.complain(spot.below("kind"), Trouble(typed(kind), accepts, offers))
            kind = offers[0]
        self.report.choose(spot.below("kind"), kind)
        return self.table(node.tables[kind], said, spot)

    def named(self, node: Named, raw: object, spot: Spot, *, required: bool) -> tuple[object, ...]:
        said = self.things(raw, spot)
        if required and not said:
            self.report.tell(spot, missing(""))
        for name, why in rules.wanted(".".join(spot.shape)):
            if name not in said:
                self.report.tell(spot.below(name), missing("", "", why))
        named = [name for name in said if self.is_name(name, spot)]
        return tuple(self.table(node.thing, said[name], spot.thing(name)) for name in named)

    def things(self, raw: object, spot: Spot) -> Mapping[str, object]:
        if raw is None:
            return {}
        if not isinstance(raw, dict):
            accepts = f"These have names: begin each with [{paths.join(*spot.path)}.NAME]."
            self.report.complain(spot, Trouble(typed(raw), accepts))
            return {}
        said = cast("Mapping[str, object]", raw)
        return {} if self.are_too_many(len(said), spot) else said

    def rows(self, node: Rows, raw: object, spot: Spot) -> tuple[object, ...]:
        if raw is None:
            self.report.tell(spot, missing(""))
            return ()
        if isinstance(node.thing, (Number, Text)) and not isinstance(raw, list):
            return (self.node(node.thing, raw, spot.thing(0).standing(*spot.keys)),)
        if not isinstance(raw, list):
            accepts = f"These are rows: begin each with [[{paths.join(*spot.path)}]]."
            self.report.complain(spot, Trouble(typed(raw), accepts))
            return ()
        rows = cast("list[object]", raw)
        if self.are_too_many(len(rows), spot):
            return ()
        return tuple(self.node(node.thing, row, spot.thing(n)) for n, row in enumerate(rows))

    def is_name(self, name: str, spot: Spot) -> bool:
        if name.strip() and name.isprintable() and len(name) <= LONGEST_NAME:
            return True
        accepts = f"A name is one line of 1 to {LONGEST_NAME} characters."
        self.report.complain(spot.thing(name), Trouble(name, accepts))
        return False

    def are_too_many(self, count: int, spot: Spot) -> bool:
        if count > MOST_THINGS:
            accepts = f"At most {MOST_THINGS} are read."
            self.report.complain(spot, Trouble(f"{count} of them", accepts))
        return count > MOST_THINGS
