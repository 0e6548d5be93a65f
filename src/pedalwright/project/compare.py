"""What differs between two projects, entry by entry."""

from collections.abc import Iterator
from typing import NamedTuple

from pedalwright.project.projects import Project
from pedalwright.project.provenance import Provenance


class Difference(NamedTuple):
    """One entry that reads differently; a text is empty where there is nothing."""

    path: str
    old: str
    new: str


def diff(old: Project, new: Project) -> tuple[Difference, ...]:
    """Every entry that differs, in the order of the design, as typed."""
    before, after = dict(_texts(old)), dict(_texts(new))
    return tuple(
        Difference(path, before.get(path, ""), after.get(path, ""))
        for path in dict.fromkeys((*after, *before))
        if before.get(path) != after.get(path)
    )


def _texts(project: Project) -> Iterator[tuple[str, str]]:
    yield from (("name", project.name), ("date", project.date), ("note", project.note))
    yield from project.words.items()
    yield from ((path, _text(told)) for path, told in project.provenance.items())


def _text(told: Provenance) -> str:
    if told.tag == "measured":
        return told.text
    return f"{told.text or told.shown} ({told.tag})" if told.tag != "missing" else "missing"
