"""An entry of a file: a value, and what the builder says about it.

Both of these are entries; a value written plainly was measured.

    pin_radius = "54.5 ±0.5 mm"
    cg_height = { value = "470 mm", tag = "assumed", note = "sister car", plus_minus = "20 mm" }
"""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import NamedTuple, cast

from pedalwright.project.errors import nearest
from pedalwright.project.provenance import Tag

#: What stands in an entry that says more than its value.
ENTRY_KEYS = ("value", "tag", "note", "plus_minus")
#: What a builder can call a number. `missing` is not a tag: write "?" for the value.
TAGS: tuple[Tag, ...] = ("measured", "assumed", "default")


class Trouble(NamedTuple):
    """What is wrong with an entry; the reader of the file adds where it stands."""

    read: str
    accepts: str
    offers: tuple[str, ...] = ()
    #: Key within the entry, such as `tag`; empty for the value itself.
    inside: str = ""


@dataclass(frozen=True, slots=True)
class Entry:
    """A value and what was said about it; a value written plainly was measured."""

    value: object
    tag: Tag = "measured"
    note: str = ""
    plus_minus: object = None
    troubles: tuple[Trouble, ...] = ()

    def about(self, value: object) -> "Entry":
        """The same said about one coordinate; a coordinate may say something of its own."""
        if isinstance(value, dict):
            return entry(cast("object", value))
        return Entry(value, self.tag, self.note, self.plus_minus)


def entry(raw: object) -> Entry:
    """Take an entry apart."""
    if not isinstance(raw, dict):
        return Entry(raw)
    said = cast("Mapping[str, object]", raw)
    troubles = [
        Trouble(key, f"An entry has {', '.join(ENTRY_KEYS)}.", nearest(key, ENTRY_KEYS), key)
        for key in said
        if key not in ENTRY_KEYS
    ]
    tag: Tag = "measured"
    if "tag" in said and said["tag"] in TAGS:
        tag = said["tag"]
    elif "tag" in said:
        text = typed(said["tag"])
        accepts = f"A tag is {', '.join(TAGS)}; what nobody knows has the value “?”."
        troubles.append(Trouble(text, accepts, nearest(text, TAGS), "tag"))
    note = said.get("note", "")
    if not isinstance(note, str):
        troubles.append(Trouble(typed(note), "A note is a text.", (), "note"))
        note = ""
    return Entry(said.get("value"), tag, note, said.get("plus_minus"), tuple(troubles))


def typed(raw: object) -> str:
    """What somebody typed, as one line."""
    if raw is None:
        return ""
    return raw if isinstance(raw, str) else json.dumps(raw, ensure_ascii=False, default=str)
