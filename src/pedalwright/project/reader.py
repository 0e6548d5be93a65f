"""From the tables of a file to a tree of dataclasses, with the provenance of every number.

Nothing stops the reader: it notes every fault and goes on with nan, so that a builder who has
ten slips in his file hears of all ten.
"""

from collections.abc import Mapping, Sequence
from dataclasses import MISSING, dataclass
from functools import cached_property
from math import nan
from typing import cast

from pedalwright.core.points import Plane, Point
from pedalwright.core.quantity import is_missing
from pedalwright.project import paths, rules
from pedalwright.project.directions import direction
from pedalwright.project.entries import Entry, Trouble, entry, typed
from pedalwright.project.errors import FileFault, fault, nearest
from pedalwright.project.places import Keys, Places, places
from pedalwright.project.provenance import Provenance
from pedalwright.project.quantities import Quantity, left_out, missing, quantity
from pedalwright.project.sanity import Clash
from pedalwright.project.schema import (
    AXES,
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
    Word,
)
from pedalwright.project.syntax import quoted

#: More things than this in one table are somebody else's file.
MOST_THINGS = 10_000
LONGEST_NAME = 60
_NOWHERE = Point(nan, nan, nan)
_EXAMPLE = '["120 mm", "-20 1/2 in", "0 mm"]'
_FACE_KEYS = ("normal", "through", "offset")


@dataclass(frozen=True, slots=True)
class Spot:
    """Where the reader is in the file."""

    #: As the text is nested.
    keys: Keys = ()
    #: As people call it.
    path: tuple[str, ...] = ()
    #: As the rules call it: `*` for names.
    shape: tuple[str, ...] = ()
    #: Of the thing being read, if it has one.
    name: str = ""
    #: False below a table that is not in the file.
    known: bool = True

    def below(self, key: str) -> "Spot":
        """One step down."""
        keys, path, shape = (*self.keys, key), (*self.path, key), (*self.shape, key)
        return Spot(keys, path, shape, self.name, self.known)

    def thing(self, key: str | int) -> "Spot":
        """One step down to a thing of many; rows are counted from 1 for people."""
        name = key if isinstance(key, str) else str(key + 1)
        return Spot((*self.keys, key), (*self.path, name), (*self.shape, "*"), name)

    def inside(self, *keys: str | int) -> "Spot":
        """The same entry, further inside the text."""
        return Spot((*self.keys, *keys), self.path, self.shape, self.name)

    def absent(self) -> "Spot":
        """The same place, for what is not in the file."""
        return Spot(self.keys, self.path, self.shape, self.name, known=False)


class Reader:
    """Reads one file; gathers faults, provenance and words on the way."""

    def __init__(self, file: str, text: str) -> None:
        self.file = file
        self.text = text
        self.faults: list[FileFault] = []
        #: Of each number and direction, by path.
        self.provenance: dict[str, Provenance] = {}
        #: Each choice among words, and each kind, by path.
        self.words: dict[str, str] = {}

    def read(self, node: Node, raw: object, spot: Spot, default: object = MISSING) -> object:
        """What stands at a spot; `raw` is None where nothing does."""
        match node:
            case Number(unit):
                return self._number(unit, raw, spot, default)
            case Word(words):
                return self._word(words, raw, spot)
            case Name():
                return spot.name
            case Place():
                return self._place(raw, spot)
            case Direction():
                return self._direction(raw, spot)
            case Face():
                return self._face(raw, spot)
            case Table():
                return self._table(node, raw, spot)
            case Kinds():
                return self._kinds(node, raw, spot)
            case Named():
                return self._named(node, raw, spot, required=default is MISSING)
            case Rows():
                return self._rows(node, raw, spot)

    @cached_property
    def places(self) -> Places:
        """Where everything stands; looked for only when there is a fault to place."""
        return places(self.text)

    def complain(self, spot: Spot, trouble: Trouble) -> None:
        """Note a fault."""
        keys = (*spot.keys, trouble.inside) if trouble.inside else spot.keys
        line = self.places.line(keys)
        key = paths.join(*spot.path)
        self.faults.append(
            fault(self.file, line, key, trouble.read, trouble.accepts, trouble.offers)
        )

    def complain_of(self, clash: Clash) -> None:
        """Note a fault between numbers that were each read without trouble."""
        keys = paths.split(clash.path)
        told = self.provenance.get(clash.path)
        self.complain(
            Spot(keys=keys, path=keys),
            Trouble(told.text if told else "", clash.accepts, clash.offers),
        )

    def _number(self, unit: str, raw: object, spot: Spot, default: object) -> float:
        shape = ".".join(spot.shape)
        if raw is None:
            return self._kept(left_out(shape, unit, default), spot)
        return self._kept(quantity(entry(raw), shape, unit), spot)

    def _kept(self, found: Quantity, spot: Spot) -> float:
        self.provenance[paths.join(*spot.path)] = found.told
        for trouble in found.troubles:
            self.complain(spot, trouble)
        return found.value

    def _word(self, words: tuple[str, ...], raw: object, spot: Spot) -> str:
        path = paths.join(*spot.path)
        if isinstance(raw, str) and raw in words:
            self.words[path] = raw
            return raw
        if spot.known:
            text = typed(raw)
            accepts = f"{spot.path[-1]} is “{'” or “'.join(words)}”."
            self.complain(spot, Trouble(text, accepts, nearest(text, words)))
        return words[0]

    def _place(self, raw: object, spot: Spot) -> Point:
        if raw is None:
            return self._coordinates([None] * 3, Entry(None), spot.absent())
        said = entry(raw)
        spot = spot.inside("value") if isinstance(raw, dict) else spot
        for trouble in said.troubles:
            self.complain(spot, trouble)
        value = said.value
        parts: list[object] = ["?"] * 3
        if isinstance(value, list) and len(cast("list[object]", value)) == 3:
            parts = cast("list[object]", value)
        elif isinstance(value, list) or not is_missing(value):
            accepts = f"A point is three lengths, x rearward, y right, z up: {_EXAMPLE}."
            self.complain(spot, Trouble(typed(said.value), accepts))
        return self._coordinates(parts, said, spot)

    def _coordinates(self, parts: list[object], said: Entry, spot: Spot) -> Point:
        found: list[float] = []
        for count, (axis, part) in enumerate(zip(AXES, parts, strict=True)):
            here = spot.below(axis)
            shape = ".".join(here.shape)
            if not spot.known:
                found.append(self._kept(left_out(shape, "mm", MISSING), here))
                continue
            here = Spot((*spot.keys, count), here.path, here.shape)
            found.append(self._kept(quantity(said.about(part), shape, "mm"), here))
        return Point(*found)

    def _direction(self, raw: object, spot: Spot) -> Point:
        path = paths.join(*spot.path)
        said = entry(raw)
        self.provenance[path] = missing("1", typed(said.value), said.note)
        for trouble in said.troubles:
            self.complain(spot, trouble)
        if is_missing(said.value):
            return _NOWHERE
        found = direction(said.value)
        if isinstance(found, Trouble):
            self.complain(spot, found)
            return _NOWHERE
        self.provenance[path] = Provenance(
            tag=said.tag,
            plus_minus=None,
            note=said.note,
            text=typed(said.value),
            shown=typed(said.value),
            unit="1",
            like="",
        )
        return found

    def _face(self, raw: object, spot: Spot) -> Plane:
        said = self._keys(raw, _FACE_KEYS, spot)
        normal = self._direction(said.get("normal"), spot.below("normal"))
        if "through" in said and "offset" in said:
            accepts = "A face has a point it goes through or an offset, not both."
            self.complain(spot.below("offset"), Trouble(typed(said["offset"]), accepts))
        if "through" in said:
            point = self._place(said["through"], spot.below("through"))
            return Plane(normal=normal, offset=_offset(normal, point))
        offset = self._number("mm", said.get("offset"), spot.below("offset"), MISSING)
        return Plane(normal=normal, offset=offset)

    def _table(self, node: Table, raw: object, spot: Spot) -> object:
        known = [key for key, part in node.parts.items() if not isinstance(part.node, Name)]
        said = self._keys(raw, known, spot)
        spot = spot if isinstance(raw, dict) else spot.absent()
        return node.make(
            **{
                key: self._part(part, said.get(key), spot.below(key))
                for key, part in node.parts.items()
            }
        )

    def _part(self, part: Part, raw: object, spot: Spot) -> object:
        filled = isinstance(part.node, (Number, Name, Named))
        if raw is None and part.default is not MISSING and not filled:
            return part.default
        return self.read(part.node, raw, spot, part.default)

    def _kinds(self, node: Kinds, raw: object, spot: Spot) -> object:
        if not isinstance(raw, dict):
            first = next(iter(node.tables.values()))
            return self._table(first, raw, spot)
        said = dict(cast("Mapping[str, object]", raw))
        kind = said.pop("kind", None)
        if not (isinstance(kind, str) and kind in node.tables):
            accepts = f"This table needs kind = {' or '.join(map(quoted, node.tables))}."
            likely = max(node.tables, key=lambda k: len(said.keys() & node.tables[k].parts.keys()))
            offers = nearest(typed(kind), node.tables) or (likely,)
            self.complain(spot.below("kind"), Trouble(typed(kind), accepts, offers))
            kind = offers[0]
        self.words[paths.join(*spot.path, "kind")] = kind
        return self._table(node.tables[kind], said, spot)

    def _named(self, node: Named, raw: object, spot: Spot, *, required: bool) -> tuple[object, ...]:
        said: Mapping[str, object] = {} if raw is None else self._things(raw, spot)
        if required and not said:
            self.provenance[paths.join(*spot.path)] = missing("")
        self._look_for(said, spot)
        return tuple(
            self._table(node.thing, below, spot.thing(name))
            for name, below in said.items()
            if self._is_name(name, spot)
        )

    def _look_for(self, said: Mapping[str, object], spot: Spot) -> None:
        for name, why in rules.wanted(paths.join(*spot.shape)):
            if name not in said:
                self.provenance[paths.join(*spot.path, name)] = missing("", "", why)

    def _is_name(self, name: str, spot: Spot) -> bool:
        if name.strip() and name.isprintable() and len(name) <= LONGEST_NAME:
            return True
        accepts = f"A name is one line of 1 to {LONGEST_NAME} characters."
        self.complain(spot.thing(name), Trouble(name, accepts))
        return False

    def _rows(self, node: Rows, raw: object, spot: Spot) -> tuple[object, ...]:
        if raw is None:
            self.provenance[paths.join(*spot.path)] = missing("")
            return ()
        if not isinstance(raw, list):
            accepts = f"These are rows: begin each with [[{paths.join(*spot.path)}]]."
            self.complain(spot, Trouble(typed(raw), accepts))
            return ()
        rows = cast("list[object]", raw)
        if self._too_many(len(rows), spot):
            return ()
        return tuple(self.read(node.thing, row, spot.thing(n)) for n, row in enumerate(rows))

    def _things(self, raw: object, spot: Spot) -> Mapping[str, object]:
        if not isinstance(raw, dict):
            accepts = f"These have names: begin each with [{paths.join(*spot.path)}.NAME]."
            self.complain(spot, Trouble(typed(raw), accepts))
            return {}
        said = cast("Mapping[str, object]", raw)
        return {} if self._too_many(len(said), spot) else said

    def _too_many(self, count: int, spot: Spot) -> bool:
        if count <= MOST_THINGS:
            return False
        accepts = f"At most {MOST_THINGS} are read."
        self.complain(spot, Trouble(f"{count} of them", accepts))
        return True

    def _keys(self, raw: object, known: Sequence[str], spot: Spot) -> Mapping[str, object]:
        """The entries of a table; those nobody knows are faults."""
        if raw is None:
            return {}
        if not isinstance(raw, dict):
            path = paths.join(*spot.path)
            accepts = f"This is a table: write [{path}] and below it {', '.join(known)}."
            self.complain(spot, Trouble(typed(raw), accepts))
            return {}
        said = cast("Mapping[str, object]", raw)
        for key in said:
            if key not in known:
                accepts = f"Known here: {', '.join(known)}."
                self.complain(spot.below(key), Trouble(key, accepts, nearest(key, known)))
        return said


def _offset(normal: Point, point: Point) -> float:
    """Only the coordinates that count: a wall across the car needs no y."""
    pairs = ((normal.x, point.x), (normal.y, point.y), (normal.z, point.z))
    return float(sum(n * p for n, p in pairs if n != 0.0))
