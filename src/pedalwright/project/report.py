"""What the readers of a file gather on their way: faults, provenance, words."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import cast

from pedalwright.core.points import Point
from pedalwright.project import paths
from pedalwright.project.entries import Trouble, typed
from pedalwright.project.errors import FileFault, fault, nearest
from pedalwright.project.places import Keys, Places, places
from pedalwright.project.provenance import Provenance
from pedalwright.project.quantities import Quantity
from pedalwright.project.sanity import Clash


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a reader is in the file."""

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

    def standing(self, *keys: str | int) -> "Spot":
        """The same entry, found elsewhere in the text."""
        return Spot(keys, self.path, self.shape, self.name, self.known)

    def absent(self) -> "Spot":
        """The same place, for what is not in the file."""
        return Spot(self.keys, self.path, self.shape, self.name, known=False)


@dataclass(frozen=True, slots=True)
class AtMark:
    """Where a mark of the survey is, and how each of its coordinates is known."""

    at: Point
    told: tuple[Provenance, Provenance, Provenance]


class Report:
    """Everything noted about one file; nothing is raised until all of it is read."""

    def __init__(self, file: str, text: str) -> None:
        self.file = file
        self.text = text
        self.faults: list[FileFault] = []
        #: Of each number and direction, by path.
        self.provenance: dict[str, Provenance] = {}
        #: Marks of the survey that a point may be called by, and the coordinates that are.
        self.marks: Mapping[str, AtMark] = {}
        self.at_mark: dict[str, tuple[str, str]] = {}
        #: Each choice among words, and each kind, by path.
        self.words: dict[str, str] = {}

    @cached_property
    def places(self) -> Places:
        """Where everything stands; looked for only when there is a fault to place."""
        return places(self.text)

    def complain(self, spot: Spot, *troubles: Trouble) -> None:
        """Note what is wrong at a spot."""
        for trouble in troubles:
            keys = (*spot.keys, trouble.inside) if trouble.inside else spot.keys
            line, key = self.places.line(keys), paths.join(*spot.path)
            read, accepts, offers, _ = trouble
            self.faults.append(fault(self.file, line, key, read, accepts, offers))

    def complain_of(self, clash: Clash) -> None:
        """Note a fault between numbers that were each read without trouble."""
        keys, told = paths.split(clash.path), self.provenance.get(clash.path)
        read = told.text if told else ""
        self.complain(Spot(keys=keys, path=keys), Trouble(read, clash.accepts, clash.offers))

    def tell(self, spot: Spot, told: Provenance) -> None:
        """Note where a number comes from."""
        self.provenance[paths.join(*spot.path)] = told

    def choose(self, spot: Spot, word: str) -> None:
        """Note a choice among words."""
        self.words[paths.join(*spot.path)] = word

    def keep(self, found: Quantity, spot: Spot) -> float:
        """Note all about a number and pass on its value."""
        self.tell(spot, found.told)
        self.complain(spot, *found.troubles)
        return found.value

    def entries(self, raw: object, known: Sequence[str], spot: Spot) -> Mapping[str, object]:
        """The entries of a table; those nobody knows are faults."""
        if raw is None:
            return {}
        if not isinstance(raw, dict):
            path = paths.join(*spot.path)
            accepts = f"This is a table: write [{path}] and below it {', '.join(known)}."
            self.complain(spot, Trouble(typed(raw), accepts))
            return {}
        said = cast("Mapping[str, object]", raw)
        accepts = f"Known here: {', '.join(known)}."
        for key in (key for key in said if key not in known):
            self.complain(spot.below(key), Trouble(key, accepts, nearest(key, known)))
        return said
