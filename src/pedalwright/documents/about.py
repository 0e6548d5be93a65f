"""What a document says of the file it was made from."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol

from pedalwright import __version__
from pedalwright.documents.outside import METRIC, UNITS, Hand, Units


class Told(Protocol):
    """How the builder came by one number; `project` keeps one for each number of the file."""

    @property
    def tag(self) -> str:
        """measured, assumed, default or missing."""
        ...

    @property
    def shown(self) -> str:
        """The number as it was read, in plain words."""
        ...

    @property
    def note(self) -> str:
        """Where it comes from."""
        ...

    @property
    def plus_minus(self) -> float | None:
        """How far off it may be, in its inside unit; None where nobody can say."""
        ...

    @property
    def plus_minus_why(self) -> str:
        """Why; empty if the builder gave it."""
        ...

    @property
    def unit(self) -> str:
        """Inside unit."""
        ...

    @property
    def like(self) -> str:
        """Unit or form it was typed in; empty for what is not in the file."""
        ...


@dataclass(frozen=True, kw_only=True, slots=True)
class About:
    """The car, the attempt and the numbers that a document rests on."""

    car: str
    note: str
    #: As the builder dated the file; a document never takes the clock's date.
    date: str
    file: str
    version: str
    told: Mapping[str, Told]
    #: Those the file is written in.
    units: Units = METRIC

    def hand(self, path: str, unit: str) -> str:
        """The unit or form an entry is typed in; where it is not there yet, that of its like."""
        told = self.told.get(path)
        return (told.like if told else "") or self.units.typed(unit)

    def tagged(self, tag: str) -> list[tuple[str, Told]]:
        """Every number with this tag, by its path in the file."""
        return [(path, told) for path, told in self.told.items() if told.tag == tag]


class File(Protocol):
    """A builder's file as `project` has read it."""

    @property
    def name(self) -> str:
        """What the car is called."""
        ...

    @property
    def note(self) -> str:
        """What is said of this attempt."""
        ...

    @property
    def date(self) -> str:
        """When it was measured."""
        ...

    @property
    def path(self) -> Path | None:
        """Where the file lies; None for one that is packaged."""
        ...

    @property
    def provenance(self) -> Mapping[str, Told]:
        """How each number came to be known."""
        ...

    @property
    def shown_in(self) -> Hand:
        """The units it is to be shown in."""
        ...


def about(file: File) -> About:
    """What a document says of the file it was made from."""
    return About(
        car=file.name,
        note=file.note,
        date=file.date,
        file=file.path.name if file.path else "",
        version=__version__,
        told=file.provenance,
        units=UNITS[file.shown_in],
    )
