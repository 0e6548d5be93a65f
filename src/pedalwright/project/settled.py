"""What follows from the marks of a survey: tubes along them, faces through them, their outcome."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from math import isfinite

import numpy as np

from pedalwright.core.points import Plane, Point
from pedalwright.core.quantity import show
from pedalwright.core.units import Array
from pedalwright.design.tree import Design
from pedalwright.project.entries import Trouble
from pedalwright.project.errors import nearest
from pedalwright.project.provenance import Provenance
from pedalwright.project.report import Report, Spot
from pedalwright.project.sights import TWO_SIGMA
from pedalwright.project.surveyed import Surveyed
from pedalwright.survey import (
    NOWHERE,
    Face,
    Fitted,
    FittedFace,
    FittedLine,
    Line,
    Mark,
    Survey,
    fitted_face,
    fitted_line,
    weighed,
)
from pedalwright.survey.equations import array


def settled(report: Report, design: Design, found: Surveyed | None) -> Design:
    """The design with its survey whole, every ± and every trouble noted in the report."""
    survey = design.survey
    marks = _Marks.of(report, found)
    fits: list[Fitted] = []
    lines, faces = list(survey.lines), list(survey.faces)
    for i, line in enumerate(lines):
        if line.marks and marks.enough(report, _spot("lines", line.name), line.marks, 2):
            fit = fitted_line(*marks.of_names(line.marks))
            lines[i] = _along(report, line, fit)
            if len(line.marks) > 2 and isfinite(float(fit.start.x)):
                fits.append(Fitted(about=line.name, off=fit.off, sigma=marks.sigma(line.marks)))
    for i, face in enumerate(faces):
        if face.marks and marks.enough(report, _spot("faces", face.name), face.marks, 3):
            flat = _through(report, face, marks)
            if flat is None:
                continue
            faces[i] = _flat(report, face, flat)
            if isfinite(float(flat.sigma)):
                fits.append(_judged(face, flat, marks))
    whole = replace(survey, lines=tuple(lines), faces=tuple(faces))
    if found is not None:
        repeats = [one.repeats for one in found.sights]
        outcome = weighed(found.adjustment, [one for one in repeats if one is not None], fits)
        whole = replace(whole, marks=tuple(_placed(report, survey, found)), outcome=outcome)
    return replace(design, survey=whole)


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class _Marks:
    """Marks that lines and faces may be made of."""

    at: Mapping[str, Point]
    #: Of all coordinates in the order of the names.
    covariance: Array
    names: tuple[str, ...]

    @classmethod
    def of(cls, report: Report, found: Surveyed | None) -> "_Marks":
        """All marks of a file; those that were placed together have a common covariance."""
        names = tuple(report.marks)
        widths = [[t.plus_minus or 0.0 for t in report.marks[name].told] for name in names]
        covariance = np.diag((np.array(widths).reshape(-1) / TWO_SIGMA) ** 2)
        if found is not None:
            placed = [mark.name for mark in found.adjustment.marks]
            rows = [3 * names.index(name) + axis for name in placed for axis in range(3)]
            covariance[np.ix_(rows, rows)] = found.adjustment.covariance
        return cls(
            at={name: report.marks[name].at for name in names}, covariance=covariance, names=names
        )

    def enough(self, report: Report, spot: Spot, wanted: Sequence[str], least: int) -> bool:
        """Whether these are marks and enough of them; what is wrong is told."""
        good = len(set(wanted)) >= least
        if not good:
            accepts = f"{'Two' if least == 2 else 'Three'} or more different marks make it."
            report.complain(spot.below("marks"), Trouble(", ".join(wanted), accepts))
        for number, name in enumerate(wanted):
            if name not in self.at:
                accepts = f"The marks are {', '.join(self.names) or 'none so far'}."
                trouble = Trouble(name, accepts, nearest(name, self.names))
                report.complain(spot.below("marks").thing(number), trouble)
                good = False
        return good

    def of_names(self, names: Sequence[str]) -> tuple[Array, Array]:
        """Places, (marks, 3), and their covariance."""
        rows = [3 * self.names.index(name) + axis for name in names for axis in range(3)]
        places = np.array([array(self.at[name]) for name in names])
        return places, self.covariance[np.ix_(rows, rows)]

    def sigma(self, names: Sequence[str]) -> float:
        """Standard deviation of the coordinate that is known worst."""
        rows = [3 * self.names.index(name) + axis for name in names for axis in range(3)]
        return float(np.sqrt(np.max(np.diag(self.covariance)[rows])))


def _spot(table: str, name: str) -> Spot:
    keys = ("survey", table, name)
    return Spot(keys=keys, path=keys)


def _through(report: Report, face: Face, marks: _Marks) -> FittedFace | None:
    """A face through marks; nan where one of them is missing, None where they make no face."""
    spot = _spot("faces", face.name)
    if face.looks is None:
        accepts = 'Say which way it looks, to the side of the feet: looks = "rearward".'
        report.complain(spot.below("looks"), Trouble("", accepts))
        return None
    places, covariance = marks.of_names(face.marks)
    if not np.isfinite(places).all():
        nan = float("nan")
        plane = Plane(normal=Point(nan, nan, nan), offset=nan)
        return FittedFace(plane=plane, off=(nan,), sigma=nan, tilt_sigma=nan)
    fit = fitted_face(places, face.looks, covariance)
    if not isfinite(float(fit.plane.offset)):
        accepts = "These marks lie in a line; a face needs one beside it."
        report.complain(spot.below("marks"), Trouble(", ".join(face.marks), accepts))
        return None
    return fit


def _judged(face: Face, fit: FittedFace, marks: _Marks) -> Fitted:
    """What a survey's outcome says of a face."""
    return Fitted(
        about=face.name,
        off=fit.off if len(face.marks) > 3 else (),
        sigma=marks.sigma(face.marks),
        tilt=fit.tilt_sigma,
    )


def _flat(report: Report, face: Face, fit: FittedFace) -> Face:
    """A face with the plane of its marks."""
    spot = _spot("faces", face.name).below("plane")
    if isfinite(float(fit.plane.offset)):
        names, normal = ", ".join(face.marks), fit.plane.normal
        words = " ".join(f"{float(part):.4f}" for part in (normal.x, normal.y, normal.z))
        report.tell(spot.below("normal"), _from_marks(words, "1", names, None))
        offset = show(round(float(fit.plane.offset), 1), "mm")
        told = _from_marks(offset, "mm", names, TWO_SIGMA * float(fit.sigma))
        report.tell(spot.below("offset"), told)
    return replace(face, plane=fit.plane)


def _along(report: Report, line: Line, fit: FittedLine) -> Line:
    """A tube with the ends of its marks."""
    names = ", ".join(line.marks)
    ends = (("start", fit.start, fit.start_sigma), ("end", fit.end, fit.end_sigma))
    for end, at, sigma in ends:
        for axis in "xyz":
            value = float(getattr(at, axis))
            if isfinite(value):
                width = TWO_SIGMA * float(getattr(sigma, axis))
                told = _from_marks(show(round(value, 1), "mm"), "mm", names, width)
                report.tell(_spot("lines", line.name).below(end).below(axis), told)
    return replace(line, start=fit.start, end=fit.end)


def _from_marks(shown: str, unit: str, names: str, plus_minus: float | None) -> Provenance:
    return Provenance(
        tag="measured",
        plus_minus=plus_minus,
        plus_minus_why="from its marks",
        note="",
        text=names,
        shown=shown,
        unit=unit,
        like="",
    )


def _placed(report: Report, survey: Survey, found: Surveyed) -> Iterator[Mark]:
    """All marks, the declared ones first, where the survey put them."""
    declared = {mark.name for mark in survey.marks}
    others = (Mark(name=name, at=NOWHERE) for name in found.marks if name not in declared)
    for mark in (*survey.marks, *others):
        if mark.name not in found.marks:
            yield mark
            continue
        at_mark, spot = found.marks[mark.name], _spot("marks", mark.name).below("at")
        for axis, told in zip("xyz", at_mark.told, strict=True):
            report.tell(spot.below(axis), told)
        yield replace(mark, at=at_mark.at)
