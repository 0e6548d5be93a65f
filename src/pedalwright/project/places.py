"""Where each value stands in a TOML text: a fault has its line, an edit touches nothing else.

The scanner walks over text that `tomllib` has already read without complaint, so it only has
to tell keys, strings, brackets and comments apart.
"""

import re
import tomllib
from collections.abc import Mapping
from typing import NamedTuple, TypeAlias

#: Keys from the top of the file down; items of an array are counted from 0.
Keys: TypeAlias = tuple[str | int, ...]


class Place(NamedTuple):
    """A value in the text: from the first character to behind the last."""

    start: int
    end: int


class Section(NamedTuple):
    """A table under a header of its own."""

    #: Where the header's line starts.
    start: int
    #: Behind its last entry, or behind the header if it has none.
    end: int


class Places(NamedTuple):
    """Every value and every headed table of a text."""

    text: str
    values: Mapping[Keys, Place]
    sections: Mapping[Keys, Section]

    def line(self, keys: Keys) -> int | None:
        """Line of an entry, or of the nearest table around it; counted from 1."""
        for length in range(len(keys), 0, -1):
            found = self._start(keys[:length])
            if found is not None:
                return self.text.count("\n", 0, found) + 1
        return None

    def _start(self, keys: Keys) -> int | None:
        """Where an entry starts, or the first of those that make a dotted table."""
        found = self.values.get(keys) or self.sections.get(keys)
        if found is not None:
            return found.start
        size = len(keys)
        inner = (*self.sections.items(), *self.values.items())
        return min((place[0] for at, place in inner if at[:size] == keys), default=None)


def places(text: str) -> Places:
    """Find every value of a text that `tomllib` can read."""
    return _Scanner(text).scan()


_BLANK = re.compile(r"(?:[ \t\r\n]|\#[^\n]*)*")
_KEY = re.compile(r"""[ \t]*(?:"(?:[^"\\]|\\.)*"|'[^']*'|[A-Za-z0-9_-]+)[ \t]*""")
_STRING = re.compile(
    r'''"""(?:[^\\]|\\.)*?"{3,5}|\'\'\'.*?\'{3,5}|"(?:[^"\\]|\\.)*"|\'[^\']*\'''', re.DOTALL
)
_BARE = re.compile(r"[^,\]}#\r\n]+")


class _Scanner:
    """A finger that moves through the text once."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.values: dict[Keys, Place] = {}
        self.sections: dict[Keys, Section] = {(): Section(0, 0)}
        self.last_row: dict[Keys, int] = {}

    def scan(self) -> Places:
        table: Keys = ()
        self.skip_blank()
        while self.at < len(self.text):
            if self.text[self.at] == "[":
                table = self.header()
            else:
                self.entry(table)
                self.sections[table] = self.sections[table]._replace(end=self.at)
            self.skip_blank()
        return Places(self.text, self.values, self.sections)

    def skip_blank(self) -> None:
        blank = _BLANK.match(self.text, self.at)
        assert blank is not None
        self.at = blank.end()

    def header(self) -> Keys:
        """`[a.b]`, or `[[a.b]]` for one more row; a row's own tables belong to the last one."""
        start = self.at
        brackets = 2 if self.text.startswith("[[", start) else 1
        self.at += brackets
        names = self.key()
        self.at += brackets
        table: Keys = ()
        for count, name in enumerate(names, 1):
            table = (*table, name)
            if brackets == 2 and count == len(names):
                self.last_row[table] = self.last_row.get(table, -1) + 1
            if table in self.last_row:
                table = (*table, self.last_row[table])
        self.sections[table] = Section(start, self.at)
        return table

    def key(self) -> tuple[str, ...]:
        names: list[str] = []
        while not names or self.text[self.at] == ".":
            self.at += bool(names)
            name = _KEY.match(self.text, self.at)
            assert name is not None, f"no key at {self.at}"
            self.at = name.end()
            names.append(_unquoted(name[0].strip()))
        return tuple(names)

    def entry(self, table: Keys) -> None:
        keys: Keys = (*table, *self.key())
        self.at += 1
        self.skip_blank()
        self.value(keys)

    def value(self, keys: Keys) -> None:
        start, first = self.at, self.text[self.at]
        if first in "[{":
            self.inside("]" if first == "[" else "}", keys)
        else:
            found = (_STRING if first in "\"'" else _BARE).match(self.text, start)
            assert found is not None, f"no value at {start}"
            self.at = start + len(found[0].rstrip())
        self.values[keys] = Place(start, self.at)

    def inside(self, closing: str, keys: Keys) -> None:
        self.at += 1
        self.skip_blank()
        count = 0
        while self.text[self.at] != closing:
            if closing == "]":
                self.value((*keys, count))
            else:
                self.entry(keys)
            count += 1
            self.skip_blank()
            self.at += self.text[self.at] == ","
            self.skip_blank()
        self.at += 1


def _unquoted(name: str) -> str:
    return str(tomllib.loads(f"x = {name}")["x"]) if name[0] in "\"'" else name
