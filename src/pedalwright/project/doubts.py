"""Every number of a project that may be off, with all that would move with it.

A reading of a survey moves the marks of its net by the gain of the adjustment, and they move what
is called by their name, the tubes along them and the faces through them.
"""

from collections.abc import Callable, Iterator
from functools import partial
from typing import TypeAlias

import numpy as np

from pedalwright.core.doubts import Doubt, Move
from pedalwright.core.points import Point
from pedalwright.core.units import Array
from pedalwright.project import paths
from pedalwright.project.projects import Project
from pedalwright.project.provenance import Provenance
from pedalwright.project.schema import AXES
from pedalwright.project.sights import TWO_SIGMA
from pedalwright.project.surveyed import Surveyed
from pedalwright.survey import Sight, Slope, Step, Survey, face_through, line_along
from pedalwright.survey.equations import array
from pedalwright.survey.fits import NUDGE

#: Movements below this are none, mm.
STILL = 1e-6
#: Tables of a survey whose numbers are readings.
_READINGS = ("survey.tapes.", "survey.offsets.", "survey.rises.")


def doubts(project: Project) -> tuple[Doubt, ...]:
    """Numbers with a ±, in the order of the file, the survey's readings last."""
    found = project.surveyed
    own = [*_numbers(project, found)]
    return (*own, *_of_readings(project, found)) if found is not None else tuple(own)


def _numbers(project: Project, found: Surveyed | None) -> Iterator[Doubt]:
    """Those that stand in the design as they stand in the file."""
    derived = _derived(project.design.survey, found)
    for path, told in project.provenance.items():
        if not told.plus_minus or told.tag == "missing" or path in project.at_mark:
            continue
        if path.startswith(_READINGS) or any(path.startswith(start) for start in derived):
            continue
        moves = _moves(project, path, told.plus_minus)
        if moves:
            yield _doubt(path, path, told, moves)


def _derived(survey: Survey, found: Surveyed | None) -> tuple[str, ...]:
    """Where numbers begin that follow from marks."""
    names = () if found is None else tuple(mark.name for mark in found.adjustment.marks)
    return (
        *(paths.join("survey", "marks", name, "at") + "." for name in names),
        *(
            paths.join("survey", "lines", line.name, end) + "."
            for line in survey.lines
            if line.marks
            for end in ("start", "end")
        ),
        *(paths.join("survey", "faces", f.name, "plane") + "." for f in survey.faces if f.marks),
    )


def _moves(project: Project, path: str, by: float) -> tuple[Move, ...]:
    """A number of the file as one of the design: a face's point moves its offset."""
    keys = paths.split(path)
    if keys[:2] == ("survey", "faces") and "through" in keys:
        return _through(project.design.survey, keys[2], keys[-1], by)
    if any("." in key for key in keys):
        return ()  # a name with a full stop in it has no path in a design
    return (Move(path=path, by=by),)


def _through(survey: Survey, name: str, axis: str, by: float) -> tuple[Move, ...]:
    face = next((face for face in survey.faces if face.name == name), None)
    along = 0.0 if face is None else float(getattr(face.plane.normal, axis))
    if along == 0.0:
        return ()
    return (Move(path=f"survey.faces.{name}.plane.offset", by=along * by),)


def _doubt(path: str, name: str, told: Provenance, moves: tuple[Move, ...]) -> Doubt:
    assert told.tag != "missing", f"{path} has no value to doubt"
    return Doubt(
        path=path,
        name=name,
        plus_minus=told.plus_minus or 0.0,
        unit=told.unit,
        tag=told.tag,
        why=told.note if told.tag != "measured" and told.note else told.plus_minus_why,
        moves=moves,
    )


def _of_readings(project: Project, found: Surveyed) -> Iterator[Doubt]:
    """Each reading of the survey, and all that moves when it is out by its ±."""
    places = {one.sight.about: one for one in found.sights}
    following = _following(project, found)
    paths_, rates = [path for path, _ in following], np.array([rate for _, rate in following])
    moved = rates.reshape(len(paths_), -1) @ found.adjustment.gain  # (numbers, readings) for 1 mm
    for row, checked in enumerate(found.adjustment.sights):
        sight, taken = checked.sight, places.get(checked.sight.about)
        if checked.set_aside:
            continue
        width = TWO_SIGMA * float(sight.sigma)
        shifts: list[float] = (moved[:, row] * width).tolist()
        moves = [Move(path=p, by=by) for p, by in zip(paths_, shifts, strict=True) if by]
        yield Doubt(
            path=_path(sight) if taken is None else taken.path,
            name=sight.about,
            plus_minus=width,
            unit="rad" if isinstance(sight, Slope) else "mm",
            tag="assumed" if taken is not None and taken.assumed else "measured",
            why="one reading of the survey",
            moves=tuple(move for move in moves if abs(float(move.by)) > STILL),
        )


def _path(sight: Sight) -> str:
    """Of a coordinate that was given with a ±."""
    assert isinstance(sight, Step), f"{sight.about} is no coordinate"
    return paths.join("survey", "marks", sight.mark, "at", sight.axis)


#: A number of the design, and how it goes with each coordinate of the net's marks.
_Row: TypeAlias = tuple[str, Array]


def _following(project: Project, found: Surveyed) -> list[_Row]:
    """Every number of the design that goes with the marks of the net."""
    names = [mark.name for mark in found.adjustment.marks]
    survey = project.design.survey
    rows: list[_Row] = [
        (f"survey.marks.{name}.at.{axis}", _unit(names, name, axis))
        for name in names
        for axis in AXES
    ]
    for path, (name, axis) in project.at_mark.items():
        if name in names:
            unit = _unit(names, name, axis)
            rows += [(m.path, unit * float(m.by)) for m in _moves(project, path, 1.0)]
    for line in survey.lines:
        if line.marks and set(line.marks) <= set(names):
            start = f"survey.lines.{line.name}"
            keys = [f"{start}.{end}.{axis}" for end in ("start", "end") for axis in AXES]
            rows += _rates(found, names, line.marks, keys, _ends)
    for face in survey.faces:
        if face.marks and set(face.marks) <= set(names) and face.looks is not None:
            start = f"survey.faces.{face.name}.plane"
            keys = [*(f"{start}.normal.{axis}" for axis in AXES), f"{start}.offset"]
            rows += _rates(found, names, face.marks, keys, partial(_plane, looks=face.looks))
    return rows


def _unit(names: list[str], name: str, axis: str) -> Array:
    """One coordinate of one mark."""
    unit = np.zeros(3 * len(names))
    unit[3 * names.index(name) + AXES.index(axis)] = 1.0
    return unit


def _rates(
    found: Surveyed,
    names: list[str],
    marks: tuple[str, ...],
    keys: list[str],
    worked: Callable[[Array], Array],
) -> list[_Row]:
    """How numbers worked out from some marks go with each of their coordinates."""
    at = {mark.name: array(mark.at) for mark in found.adjustment.marks}
    places = np.array([at[name] for name in marks])
    table = np.zeros((len(keys), 3 * len(names)))
    for i, name in enumerate(marks):
        for axis in range(3):
            step = np.zeros_like(places)
            step[i, axis] = NUDGE
            rate = (worked(places + step) - worked(places - step)) / (2.0 * NUDGE)
            table[:, 3 * names.index(name) + axis] = rate
    return list(zip(keys, table, strict=True))


def _ends(marks: Array) -> Array:
    start, end = line_along(marks)
    return np.concatenate([array(start), array(end)])


def _plane(marks: Array, looks: Point) -> Array:
    plane = face_through(marks, looks)
    return np.append(array(plane.normal), plane.offset)
