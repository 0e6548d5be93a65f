"""What the program brings along beside a project file: defaults, ± by kind, plausible ranges.

All of it stands in `defaults.toml` and `plausible.toml`, each row with its reason. A path in
them is the path of an entry with `*` for names, and may be a pattern: `*.bore` is every bore.
The first row that fits counts.
"""

import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fnmatch import fnmatchcase
from functools import cache
from importlib.resources import files
from typing import TypeVar

from pedalwright.core.quantity import Reading, parse


@dataclass(frozen=True, slots=True)
class Default:
    """A number that is used when the builder gives none."""

    paths: tuple[str, ...]
    #: As somebody would type it.
    value: str
    why: str


@dataclass(frozen=True, slots=True)
class Within:
    """How well such a number is known when the builder does not say."""

    paths: tuple[str, ...]
    plus_minus: str
    why: str

    def of(self, reading: Reading) -> float:
        """The half width that goes with a number, inside."""
        share = self.plus_minus.endswith("%") and reading.unit != "1"
        if share:
            return abs(reading.value) * parse(self.plus_minus, "1").value
        return parse(self.plus_minus, reading.unit).value


@dataclass(frozen=True, slots=True)
class Wanted:
    """A thing that findings look for by its name, and so is missing where it is not given."""

    path: str
    why: str


@dataclass(frozen=True, slots=True)
class Range:
    """What such a number can be on a car; outside of it a unit or a digit has slipped."""

    paths: tuple[str, ...]
    low: str
    high: str

    def bounds(self, unit: str) -> tuple[float, float]:
        """Both ends, inside."""
        return parse(self.low, unit).value, parse(self.high, unit).value


@cache
def default(path: str) -> Default | None:
    """The packaged default for an entry, if it has one."""
    return _first(defaults(), path)


@cache
def within(path: str) -> Within | None:
    """The ± that goes with an entry's kind, if there is one."""
    return _first(withins(), path)


@cache
def plausible(path: str, unit: str) -> tuple[float, float] | None:
    """Both ends of what an entry can be, inside."""
    found = _first(ranges(), path)
    return found.bounds(unit) if found else None


@cache
def defaults() -> tuple[Default, ...]:
    """Every packaged default."""
    rows = _rows("defaults.toml", "default")
    return tuple(Default(_paths(r), str(r["value"]), str(r["why"])) for r in rows)


@cache
def withins() -> tuple[Within, ...]:
    """Every ± by kind."""
    rows = _rows("defaults.toml", "plus_minus")
    return tuple(Within(_paths(r), str(r["value"]), str(r["why"])) for r in rows)


@cache
def wanted(path: str) -> tuple[tuple[str, str], ...]:
    """Names of things that are looked for in a table, each with the reason."""
    parts = [(row.path.rpartition("."), row.why) for row in all_wanted()]
    return tuple((name, why) for (table, _, name), why in parts if table == path)


@cache
def all_wanted() -> tuple[Wanted, ...]:
    """Everything that is looked for by its name."""
    rows = _rows("defaults.toml", "wanted")
    return tuple(Wanted(str(r["path"]), str(r["why"])) for r in rows)


@cache
def ranges() -> tuple[Range, ...]:
    """Every plausible range."""
    rows = _rows("plausible.toml", "range")
    return tuple(Range(_paths(r), str(r["low"]), str(r["high"])) for r in rows)


@cache
def slips(unit: str) -> tuple[str, ...]:
    """Units that are taken for one another where this one is used inside, likeliest first."""
    table: Mapping[str, Sequence[str]] = tomllib.loads(_text("plausible.toml"))["slips"]
    return tuple(table.get(unit, ()))


Row = TypeVar("Row", Default, Within, Range)


def _first(rows: Sequence[Row], path: str) -> Row | None:
    return next((r for r in rows if any(_fits(path, p) for p in r.paths)), None)


def _fits(path: str, pattern: str) -> bool:
    """True where a path has the pattern; `*.bore` is read without compiling an expression."""
    if pattern.startswith("*") and not {"*", "?", "["} & set(pattern[1:]):
        return path.endswith(pattern[1:])
    return path == pattern or fnmatchcase(path, pattern)


def _rows(file: str, table: str) -> list[dict[str, object]]:
    found: list[dict[str, object]] = tomllib.loads(_text(file))[table]
    return found


def _text(file: str) -> str:
    return files("pedalwright.project").joinpath(file).read_text(encoding="utf-8")


def _paths(row: Mapping[str, object]) -> tuple[str, ...]:
    return tuple(str(row["paths"]).split())
