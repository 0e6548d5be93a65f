"""A project file as read: the design, and how the builder came by each of its numbers."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import cast

from pedalwright.design.tree import Design
from pedalwright.project import files, paths
from pedalwright.project.edits import NewValue, edited
from pedalwright.project.entries import Trouble, typed
from pedalwright.project.errors import FileFault, ProjectError, fault
from pedalwright.project.hand import Hand, hand_of
from pedalwright.project.provenance import Provenance
from pedalwright.project.quantities import missing
from pedalwright.project.reader import read_tables
from pedalwright.project.report import Report, Spot
from pedalwright.project.sanity import clashes, explained, forgotten
from pedalwright.project.schema import schema
from pedalwright.project.settled import settled
from pedalwright.project.surveyed import Surveyed, surveyed
from pedalwright.project.syntax import decoded, parsed
from pedalwright.project.targets import HEAD, target

#: The only format there is so far. A change of the file's shape makes it 2, and brings the
#: function that turns the text of a file of 1 into one of 2.
FORMAT = 1


@dataclass(frozen=True, kw_only=True, slots=True)
class Project:
    """One car, one attempt, as it stands in its file."""

    design: Design
    name: str
    #: As the builder dated it.
    date: str
    note: str
    #: The units of what is shown: as the file says, else those most of its lengths are in.
    shown_in: Hand
    #: Of each number and direction, by its path, in the order of the design.
    provenance: Mapping[str, Provenance]
    #: Each choice among words, by its path: hinge, kind.
    words: Mapping[str, str]
    #: What became of a survey by tapes; None without one.
    surveyed: Surveyed | None
    #: Each coordinate that is that of a mark, by its path: the mark's name and the axis.
    at_mark: Mapping[str, tuple[str, str]]
    text: str
    path: Path | None


def read(source: Path | str) -> Project:
    """Read a project from a file, or from its text; raises `ProjectError` with every fault.

    A number that is not there is missing, which is no fault: it is nan in the design and
    listed in the provenance.
    """
    if isinstance(source, Path):
        return _read(decoded(files.read_bytes(source), source.name), source.name, source)
    return _read(source, "project", None)


def changed(project: Project, changes: Mapping[str, NewValue]) -> Project:
    """The project with other values, read from its changed text; no file is touched."""
    text = project.text
    for path, new in changes.items():
        text = edited(text, target(schema(Design), path), new)
    return _read(text, project.path.name if project.path else "project", project.path)


def edit(project: Project | Path, changes: Mapping[str, NewValue]) -> Project:
    """Change entries of a project's file: `{"brake.pedal.pin_radius": "55 mm"}`.

    Everything else in the file stays as it is, comments and order too. The old file stays
    beside it as `NAME.toml.1.bak`, `.2.bak` and so on. Nothing is written if a new value
    cannot be read, or if the file was saved by somebody else since the project was read.
    """
    before = read(project) if isinstance(project, Path) else project
    assert before.path is not None, "a project read from a text has no file to change"
    after = changed(before, changes)
    if after.text != before.text:
        files.replace(before.path, before.text.encode(), after.text.encode())
    return after


def _read(text: str, file: str, path: Path | None) -> Project:
    found = parsed(text, file)
    if found.tables is None:
        raise ProjectError(found.faults)
    report = Report(file, found.text)
    faults = [*found.faults, *_format_faults(found.tables.get("format"), report)]
    name, date, note, hand = (_head(key, found.tables.get(key), report) for key in HEAD[1:])
    tables = {key: below for key, below in found.tables.items() if key not in HEAD}
    found_marks = surveyed(report, tables.get("survey"))
    design = cast("Design", read_tables(report, schema(Design), tables))
    design = settled(report, design, found_marks)
    for entry, why in forgotten(design):
        keys = paths.split(entry)
        report.tell(Spot(keys=keys, path=keys), missing("", "", why))
    for clash in clashes(design):
        report.complain_of(clash)
    shown_in = hand_of(hand, report)
    silent = {known.line for known in faults if known.line is not None}
    faults += [explained(f, design) for f in report.faults if f.line not in silent]
    if faults:
        in_order = sorted(faults, key=lambda f: f.line or 0)
        raise ProjectError(tuple(in_order))
    return Project(
        design=design,
        name=name or Path(file).stem,
        date=date,
        note=note,
        shown_in=shown_in,
        provenance=report.provenance,
        words=report.words,
        surveyed=found_marks,
        at_mark=report.at_mark,
        text=text,
        path=path,
    )


def _format_faults(written: object, report: Report) -> tuple[FileFault, ...]:
    """A newer file is refused before anything else in it is judged."""
    if written == FORMAT and not isinstance(written, bool):
        return ()
    file, line, text = report.file, report.places.line(("format",)), typed(written)
    if isinstance(written, int) and not isinstance(written, bool) and written > FORMAT:
        accepts = (
            f"This pedalwright reads format {FORMAT}; the file was made by a newer one, "
            "and is left as it is."
        )
        raise ProjectError((fault(file, line, "format", text, accepts),))
    accepts = f"A project file says its format at the top: format = {FORMAT}."
    return (fault(file, line, "format", text, accepts, (f"format = {FORMAT}",)),)


def _head(key: str, raw: object, report: Report) -> str:
    if isinstance(raw, (dict, list)):
        report.complain(Spot().below(key), Trouble(typed(cast("object", raw)), "A text."))
        return ""
    return typed(raw)
