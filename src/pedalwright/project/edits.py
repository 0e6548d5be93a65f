"""Changing entries of a file's text: nothing but those entries changes, not a space elsewhere.

A value is cut out of the text where `places` found it and the new one is put in. An entry that
is not there yet is written behind the others of its table. What comes out is read again, and
nothing but the wanted entries may differ from what went in.
"""

import tomllib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple, TypeAlias, cast

from pedalwright.project import paths
from pedalwright.project.errors import ProjectError, fault
from pedalwright.project.places import Keys, Places, places
from pedalwright.project.provenance import Tag
from pedalwright.project.syntax import quoted
from pedalwright.project.targets import Target


@dataclass(frozen=True, kw_only=True, slots=True)
class Change:
    """A new value, and all that is said about it."""

    #: One text, or three for a point.
    value: str | Sequence[str]
    tag: Tag = "measured"
    note: str = ""
    plus_minus: str = ""

    def written(self) -> str:
        """As an entry of a file; plainly, where there is nothing to say."""
        tag: str = "" if self.tag == "measured" else self.tag
        said = (("tag", tag), ("note", self.note), ("plus_minus", self.plus_minus))
        beside = [f"{key} = {quoted(text)}" for key, text in said if text]
        value = _written(self.value)
        return f"{{ {', '.join([f'value = {value}', *beside])} }}" if beside else value


#: A text alone leaves what was said about the number as it is.
NewValue: TypeAlias = str | Sequence[str] | Change


def edited(text: str, target: Target, new: NewValue) -> str:
    """The text with one entry changed."""
    mark, body = ("\ufeff", text[1:]) if text.startswith("\ufeff") else ("", text)
    found = places(body)
    target = target._replace(keys=_alone(found, target.keys))
    start, end, put = _splice(found, target, new)
    changed = body[:start] + put + body[end:]
    _check(body, changed, target)
    return mark + changed


def _alone(found: Places, entry: Keys) -> Keys:
    """An entry of a list; the whole where there is one value and no list: `reading = "512"`."""
    around = found.values.get(entry[:-1])
    is_first = entry[-1:] == (0,) and entry not in found.values
    if is_first and around is not None and found.text[around.start] != "[":
        return entry[:-1]
    return entry


class _Splice(NamedTuple):
    start: int
    end: int
    put: str


def _splice(found: Places, target: Target, new: NewValue) -> _Splice:
    entry, axis = target.keys, target.axis
    whole = found.values.get(entry)
    if whole is None and (*entry, "value") not in found.values:
        return _inserted(found, entry, _new_entry(new, axis))
    if isinstance(new, Change) and whole is not None and axis is None:
        return _Splice(*whole, new.written())
    value: Keys = (*entry, "value") if (*entry, "value") in found.values else entry
    if axis is None:
        return _Splice(*found.values[value], _plain(new))
    item: Keys = (*value, axis)
    if item not in found.values:
        return _Splice(*found.values[value], _point(new, axis))
    if isinstance(new, Change):
        return _Splice(*found.values[item], new.written())
    item = (*item, "value") if (*item, "value") in found.values else item
    return _Splice(*found.values[item], _plain(new))


def _new_entry(new: NewValue, axis: int | None) -> str:
    if axis is not None:
        return _point(new, axis)
    return new.written() if isinstance(new, Change) else _written(new)


def _plain(new: NewValue) -> str:
    return _written(new.value if isinstance(new, Change) else new)


def _point(new: NewValue, axis: int) -> str:
    """A point of which one coordinate is known."""
    parts = ['"?"'] * 3
    parts[axis] = _new_entry(new, None)
    return f"[{', '.join(parts)}]"


def _written(value: str | Sequence[str]) -> str:
    if isinstance(value, str):
        return quoted(value)
    return f"[{', '.join(map(quoted, value))}]"


def _inserted(found: Places, entry: Keys, put: str) -> _Splice:
    """A new entry: in the table's braces, beside its dotted fellows, or below its header."""
    table = entry[:-1]
    around = next(
        (entry[:n] for n in range(len(table), 0, -1) if _is_inline(found, entry[:n])), None
    )
    if around is not None:
        return _in_braces(found, around, f"{_dotted(entry[len(around) :])} = {put}")
    header = next(entry[:n] for n in range(len(table), -1, -1) if entry[:n] in found.sections)
    fellows = [p for keys, p in found.values.items() if keys[: len(table)] == table]
    line = f"{_dotted(entry[len(header) :])} = {put}"
    if header == table:
        return _on_a_line(found, found.sections[header].end, line)
    if fellows:
        return _on_a_line(found, max(place.end for place in fellows), line)
    below = found.sections[header].end if header else len(found.text)
    return _on_a_line(found, below, f"\n[{_dotted(table)}]\n{_dotted(entry[-1:])} = {put}")


def _is_inline(found: Places, keys: Keys) -> bool:
    place = found.values.get(keys)
    return place is not None and found.text[place.start] == "{"


def _in_braces(found: Places, around: Keys, put: str) -> _Splice:
    place = found.values[around]
    inner = found.text[place.start + 1 : place.end - 1]
    if not inner.strip():
        return _Splice(place.start + 1, place.end - 1, f" {put} ")
    end = place.start + 1 + len(inner.rstrip())
    return _Splice(end, end, f", {put}")


def _on_a_line(found: Places, behind: int, lines: str) -> _Splice:
    """Whole lines below the one on which something ends, indented like it."""
    text = found.text
    newline = "\r\n" if "\r\n" in text else "\n"
    start = text.rfind("\n", 0, behind) + 1
    line = text[start:behind]
    indent = line[: len(line) - len(line.lstrip())]
    put = newline.join(indent + part if part else "" for part in lines.split("\n")) + newline
    if start == behind:
        return _Splice(behind, behind, put)
    end = text.find("\n", behind)
    if end < 0:
        return _Splice(len(text), len(text), newline + put)
    return _Splice(end + 1, end + 1, put)


def _dotted(keys: Keys) -> str:
    assert not any(isinstance(key, int) for key in keys), "a row is added before its entries"
    return paths.join(*map(str, keys))


def _check(before: str, after: str, target: Target) -> None:
    """Whatever else a text was, only the wanted entry may read differently now."""
    try:
        new = dict(_leaves(tomllib.loads(after)))
    except tomllib.TOMLDecodeError as error:
        accepts = "This entry cannot be added by program; write it into the file by hand."
        raise ProjectError((fault("", None, target.path, "", accepts),)) from error
    old = dict(_leaves(tomllib.loads(before)))
    size = len(target.keys)
    strays = [
        keys
        for keys in old.keys() | new.keys()
        if keys[:size] != target.keys and repr(old.get(keys)) != repr(new.get(keys))
    ]
    assert not strays, f"a change of {target.path} would have changed {strays}"


def _leaves(raw: object, keys: Keys = ()) -> Iterator[tuple[Keys, object]]:
    if isinstance(raw, dict):
        for key, below in cast("Mapping[str, object]", raw).items():
            yield from _leaves(below, (*keys, key))
    elif isinstance(raw, list):
        for count, below in enumerate(cast("list[object]", raw)):
            yield from _leaves(below, (*keys, count))
    else:
        yield keys, raw
