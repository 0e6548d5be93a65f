"""What a page sends, taken apart; whatever else it is, it is refused with a sentence."""

import json
from collections.abc import Mapping
from math import isfinite
from typing import Any, cast

from starlette.requests import Request

from pedalwright.core.faults import Fault, InputError
from pedalwright.documents.pictures.handles import Handle
from pedalwright.project import Change
from pedalwright.project.provenance import Tag

#: What a builder can say of a number.
TAGS: tuple[Tag, ...] = ("measured", "assumed", "default")
#: Entries changed at once; more is no form.
MOST_CHANGES = 200
#: Millimetres; nothing on a car is farther from its datum.
FARTHEST = 100_000.0


async def body(request: Request) -> Mapping[str, object]:
    """What was sent, as a table."""
    try:
        sent: object = json.loads(await request.body())
    except (ValueError, RecursionError) as error:
        raise refused("what was sent", "no JSON", "A table, as JSON.") from error
    if not isinstance(sent, dict):
        raise refused("what was sent", type(sent).__name__, "A table, as JSON.")
    return cast("Mapping[str, object]", sent)


def text(sent: Mapping[str, object], key: str, longest: int = 500) -> str:
    """A short text; empty where there is none."""
    found = sent.get(key, "")
    if not isinstance(found, str) or len(found) > longest:
        raise refused(key, str(found), f"A text of at most {longest} characters.")
    return found


def number(sent: Mapping[str, object], key: str) -> float:
    """A place on the drawing, or a way along it, mm."""
    found = sent.get(key)
    if isinstance(found, bool) or not isinstance(found, (int, float)):
        raise refused(key, str(found), "A number of millimetres.")
    if not isfinite(found) or abs(found) > FARTHEST:
        raise refused(key, str(found), f"At most {FARTHEST:g} mm from the datum.")
    return float(found)


def looking(sent: Mapping[str, object]) -> Mapping[str, str]:
    """What the tab looks at."""
    found = sent.get("view", {})
    if not isinstance(found, dict):
        raise refused("view", str(found), "A table.")
    return {str(k): str(v) for k, v in cast("dict[str, object]", found).items()}


def handle_of(sent: Mapping[str, object], known: list[Handle]) -> Handle:
    """The handle that was taken hold of."""
    name = text(sent, "handle")
    found = next((handle for handle in known if handle.name == name), None)
    if found is None:
        names = ", ".join(handle.name for handle in known)
        raise refused("handle", name, f"One of {names}.")
    return found


def changes(sent: Mapping[str, object]) -> dict[str, str | Change]:
    """Entries to change; what says more than a value says all of it."""
    found = sent.get("changes")
    entries = cast("dict[str, object]", found) if isinstance(found, dict) else {}
    if not 0 < len(entries) <= MOST_CHANGES:
        raise refused("changes", f"{len(entries)} of them", f"From 1 to {MOST_CHANGES} entries.")
    return {path: _change(path, new) for path, new in entries.items()}


def refused(where: str, read: str, accepts: str) -> InputError:
    """What cannot be done with what was sent."""
    return InputError((Fault(where=where, read=read[:80], accepts=accepts),))


def _change(path: str, new: object) -> str | Change:
    if isinstance(new, str):
        return _plain(path, new)
    if not isinstance(new, dict):
        raise refused(path, str(new), "A text, or a table with value, tag, note, plus_minus.")
    said = cast("dict[str, Any]", new)
    tag = said.get("tag", "measured")
    if tag not in TAGS:
        raise refused(path, str(tag), f"A tag is {', '.join(TAGS)}.")
    return Change(
        value=_plain(path, text(said, "value")),
        tag=tag,
        note=_plain(path, text(said, "note")),
        plus_minus=_plain(path, text(said, "plus_minus", 80)),
    )


def _plain(path: str, new: str) -> str:
    if len(new) > 500 or not all(c.isprintable() for c in new):
        raise refused(path, new, "One line of text.")
    return new.strip()
