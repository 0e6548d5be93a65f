"""The entries of a stage as a form: each number as typed, as read, its tag and its ±."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from pedalwright.app.stages import OVERVIEW, Stage, stage_of
from pedalwright.core.quantity import show
from pedalwright.documents.outside import Units
from pedalwright.project import Project, Provenance
from pedalwright.project.explain import Explained, explained


@dataclass(frozen=True, slots=True)
class Standing:
    """How one entry stands in the file."""

    #: As typed; empty for what is not in the file.
    text: str
    #: As it was read, in words, and in the units of the file where that is something else.
    shown: str
    tag: str
    #: With its unit; empty where nobody can say.
    plus_minus: str
    plus_minus_why: str
    note: str


@dataclass(frozen=True, slots=True)
class Field:
    """One entry of the form."""

    path: str
    explained: Explained
    standing: Standing

    @property
    def id(self) -> str:
        """Its name on the page."""
        return "field-" + "".join(c if c.isalnum() or c in "._-" else "_" for c in self.path)


@dataclass(frozen=True, slots=True)
class Group:
    """The fields of one table."""

    title: str
    fields: tuple[Field, ...]
    missing: int


def groups(project: Project, stage: Stage, units: Units) -> list[Group]:
    """The form of a stage, table by table in the order of the file.

    Where one looks at all of them it is what is missing, then what is only assumed.
    """
    if stage is OVERVIEW:
        unsure = [
            path
            for tag in ("missing", "assumed")
            for path, told in project.provenance.items()
            if told.tag == tag
        ]
        fields = some(project, unsure, units)
    else:
        paths = [path for path in _in_order(project) if stage_of(path) is stage]
        fields = some(project, paths, units)
    return [
        _group(title, tuple(members))
        for title, members in groupby(fields, key=lambda field: field.explained.table)
    ]


def some(project: Project, paths: Sequence[str], units: Units) -> list[Field]:
    """Those entries that can be typed here, as fields."""
    return [
        Field(path, explained(path), standing(project, path, units))
        for path in paths
        if stage_of(path) is not None
    ]


def standing(project: Project, path: str, units: Units) -> Standing:
    """How one entry stands: a number, a direction, or a choice among words."""
    if path in project.words:
        return Standing(project.words[path], "", "", "", "", "")
    return _standing(project.provenance[path], units)


def _in_order(project: Project) -> Iterator[str]:
    """Numbers as they stand in the design; a word goes before the first number of its table."""
    waiting = list(project.words)
    for path in project.provenance:
        for word in [w for w in waiting if path.startswith(f"{w.rpartition('.')[0]}.")]:
            waiting.remove(word)
            yield word
        yield path
    yield from waiting


def _standing(told: Provenance, units: Units) -> Standing:
    around = "" if told.plus_minus is None else show(told.plus_minus, told.unit, like=told.like)
    shown = units.read_back(told.shown, told.unit) if told.unit else told.shown
    return Standing(
        text=told.text,
        shown=shown,
        tag=told.tag,
        plus_minus=around,
        plus_minus_why=told.plus_minus_why,
        note=told.note,
    )


def _group(title: str, fields: tuple[Field, ...]) -> Group:
    return Group(title, fields, sum(field.standing.tag == "missing" for field in fields))
