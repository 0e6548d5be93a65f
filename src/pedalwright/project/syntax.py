"""From the bytes of a file to its tables, or to sentences about what stops it being TOML."""

import json
import re
import tomllib
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from pedalwright.project.errors import FileFault, ProjectError, fault

#: Far beyond any car; a file this long is something else.
MOST_CHARACTERS = 2_000_000
_MOST_FAULTS = 20
_AT = re.compile(r"(.*) \(at (?:line (\d+), column \d+|end of document)\)", re.DOTALL)
_ENTRY = re.compile(r"\s*(?P<key>[\w.\"' -]+?)\s*=\s*(?P<value>.*?)\s*(?:#[^\"']*)?")

#: What `tomllib` says, and what a builder can do about it.
_SENTENCES = (
    ("Cannot overwrite a value", "This entry stands in the file twice. Keep one."),
    ("Duplicate inline table key", "This entry stands in the file twice. Keep one."),
    ("Cannot declare", "This table stands in the file twice. Put its entries together."),
    ("Cannot mutate", "This table was closed before. Put its entries together."),
    ("Unclosed array", "A list ends with ]."),
    ("Unclosed inline table", "An entry in braces ends with }."),
    ("Unterminated string", "A text ends with a quote."),
    ("Illegal character", "A text ends with a quote on the same line."),
    ("Unescaped", "Put a text with \\ between single quotes: '...'."),
    ("Expected '=' after a key", 'An entry is key = "value", a table is [name].'),
    ("Invalid initial character for a key", 'An entry is key = "value", a table is [name].'),
    ("Expected ']", "The name of a table stands between [ and ]."),
)
_OTHERWISE = 'An entry is key = "value", with the value between quotes.'


class Parsed(NamedTuple):
    """What could be read, and what could not."""

    #: The text that was read in the end, line for line the same as the file.
    text: str
    #: None where reading had to stop.
    tables: Mapping[str, object] | None
    faults: tuple[FileFault, ...]


def decoded(data: bytes, file: str) -> str:
    """The text of a file, line ends and byte order mark as they are."""
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        read = f"the bytes {data[error.start : error.start + 8].hex(' ')}"
        accepts = "A project file is plain text in UTF-8."
        raise ProjectError((fault(file, line, "", read, accepts),)) from error
    if "\0" in text:
        line = text.count("\n", 0, text.index("\0")) + 1
        accepts = "A project file is plain text; this is something else."
        raise ProjectError((fault(file, line, "", "a zero byte", accepts),))
    return text


def parsed(text: str, file: str) -> Parsed:
    """Read TOML. A line that is none is told and passed over, so that the next is heard too."""
    if len(text) > MOST_CHARACTERS:
        accepts = f"A project file has at most {MOST_CHARACTERS} characters."
        return Parsed(text, None, (fault(file, None, "", f"{len(text)} characters", accepts),))
    faults: dict[int, FileFault] = {}
    lines = text.removeprefix("\ufeff").split("\n")
    while True:
        text = "\n".join(lines)
        try:
            return Parsed(text, tomllib.loads(text), tuple(faults.values()))
        except tomllib.TOMLDecodeError as error:
            at, said = _told(str(error), lines)
        except (ValueError, RecursionError):
            accepts = "Numbers have few digits, and lists do not nest."
            odd = fault(file, None, "", "a number or a list beyond all measure", accepts)
            return Parsed(text, None, (*faults.values(), odd))
        line = lines[at].rstrip("\r")
        entry = _ENTRY.fullmatch(line)
        again = at in faults
        is_last = not any(later.strip() for later in lines[at + 1 :])
        faults.setdefault(at, _fault(file, at + 1, line, entry, said, is_last=is_last))
        if entry is None or not line.strip() or len(faults) == _MOST_FAULTS:
            return Parsed(text, None, tuple(faults.values()))
        lines[at] = "" if again else f'{entry["key"]} = "?"'


def quoted(text: str) -> str:
    """A text as TOML, in the quotes that need no escapes if there are some."""
    if text.isprintable() and not ('"' in text or "\\" in text):
        return f'"{text}"'
    if text.isprintable() and "'" not in text:
        return f"'{text}'"
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")


def _told(message: str, lines: Sequence[str]) -> tuple[int, str]:
    """Line, counted from 0, and what `tomllib` says of it."""
    found = _AT.fullmatch(message)
    if found is not None and found[2]:
        return int(found[2]) - 1, found[1]
    last = max((n for n, line in enumerate(lines) if line.strip()), default=0)
    return last, found[1] if found else message


def _fault(
    file: str, line: int, read: str, entry: "re.Match[str] | None", said: str, *, is_last: bool
) -> FileFault:
    accepts = next((text for start, text in _SENTENCES if said.startswith(start)), _OTHERWISE)
    accepts += " The file may be cut short here." if is_last else ""
    offers: tuple[str, ...] = ()
    if entry is not None and entry["value"] and "twice" not in accepts:
        value = entry["value"]
        inner = value[1:] if value[0] == '"' else value
        inner = inner[:-1] if value[0] == '"' == value[-1] and len(value) > 1 else inner
        if value[0] not in "[{'":
            offers = (f"{entry['key']} = {quoted(inner)}",)
    return fault(file, line, "", read.strip(), accepts, offers)
