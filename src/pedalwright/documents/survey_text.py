"""A survey by tapes, told: what contradicts itself, where the marks are, what was read."""

import textwrap
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np

from pedalwright.core.points import Point
from pedalwright.core.units import Num
from pedalwright.documents.about import About
from pedalwright.documents.cautions import FIRST_CAUTION
from pedalwright.documents.outside import METRIC
from pedalwright.survey import (
    Adjustment,
    Checked,
    Face,
    Line,
    Slope,
    Survey,
    Suspicion,
    least_checked,
    worst_sigma,
)

WIDTH = 100
#: Readings that are listed, the farthest out first.
SHOWN = 20
#: Standard deviations in a ±.
TWO_SIGMA = 2.0


@dataclass(frozen=True, kw_only=True, slots=True)
class SurveyTold:
    """What a document says of a survey."""

    survey: Survey
    found: Adjustment
    #: Where the reading of each sight stands in the file, by the sight's name.
    places: Mapping[str, str]


def survey_text(about: About, told: SurveyTold) -> str:
    """The whole survey: suspects first, then marks, then readings."""
    return "\n".join(line.rstrip() for line in _lines(about, told)) + "\n"


def no_survey_text(about: About) -> str:
    """What to say of a file whose marks all have coordinates."""
    words = (
        "Every mark of this file has coordinates, so there is nothing to adjust. Type tapes, "
        "offsets and rises below [survey], as docs/project-file.md shows, or print a sheet to fill "
        f"in: pedalwright survey {about.file} -o FOLDER."
    )
    return f"{about.car}   ({about.file})\n" + "\n".join(textwrap.wrap(words, WIDTH)) + "\n"


def survey_data(about: About, told: SurveyTold) -> dict[str, Any]:
    """The same as numbers in mm and degrees, texts and null.

    Any, because JSON has no closer type.
    """
    found = told.found
    return {
        "pedalwright": about.version,
        "car": about.car,
        "spare": found.freedom,
        "scatter": _number(found.unit_weight),
        "scatter_bound": _number(found.unit_weight_bound),
        "marks": [
            {
                "name": mark.name,
                "at": _numbers(mark.at),
                "plus_minus": [TWO_SIGMA * float(s) for s in _xyz(mark.sigma)],
                "worst": TWO_SIGMA * worst_sigma(mark),
                "dilution": _number(mark.dilution),
                "checked": least_checked(found, mark),
                "held": mark.held,
            }
            for mark in found.marks
        ],
        "readings": [
            {
                "sight": one.sight.about,
                "path": told.places.get(one.sight.about, ""),
                "read": _read(one),
                "residual": _outer(one, one.residual),
                "normalised": _number(one.normalised),
                "redundancy": _number(one.redundancy),
                "set_aside": one.set_aside,
            }
            for one in found.sights
        ],
        "suspicions": [
            {
                "mark": suspicion.mark,
                "likely": list(suspicion.likely),
                "certain": suspicion.certain,
                "size": suspicion.size,
                "bound": suspicion.bound,
                "cause": suspicion.cause,
                "paths": [told.places.get(name, "") for name in suspicion.likely],
            }
            for suspicion in found.suspicions
        ],
        "loose": [{"name": one.name, "sights": list(one.sights)} for one in found.loose],
    }


def suspicion_text(about: About, suspicion: Suspicion, places: Mapping[str, str]) -> str:
    """One contradiction in plain sentences."""
    units = about.units
    out = units.said(suspicion.size, "mm")
    among = _and(suspicion.among)
    if not suspicion.certain:
        rest = " or another" if suspicion.likely[6:] else ""
        likely = _and(suspicion.likely[:6], "or") + rest
        fifth = f"; measure {suspicion.mark} from one more mark" if suspicion.mark else ""
        return (
            f"{among} cannot all be right, by {out}, and they do not say which is wrong: {likely} "
            f"would explain it{fifth}."
        )
    (name,) = suspicion.likely
    read, meant = (units.said(value, suspicion.unit) for value in _rounded(suspicion))
    cause = f" {suspicion.cause[0].upper()}{suspicion.cause[1:]}?" if suspicion.cause else ""
    where = f": {places[name]}" if name in places else ""
    return (
        f"{among} cannot all be right, by {out}. Most likely it is {name}, which reads {read}; the "
        f"others say {meant}.{cause} It is set aside until it is mended{where}."
    )


def _lines(about: About, told: SurveyTold) -> Iterator[str]:
    found = told.found
    yield f"{about.car}   ({about.file}, {about.date}; pedalwright {about.version})"
    yield from textwrap.wrap(_summary(found), WIDTH)
    yield ""
    yield from textwrap.wrap(_datum(told), WIDTH)
    if found.suspicions:
        yield ""
        yield "THESE CANNOT ALL BE RIGHT"
        for number, suspicion in enumerate(found.suspicions, 1):
            text = suspicion_text(about, suspicion, told.places)
            yield from _told(f"  {number}. ", text)
    if found.loose:
        yield ""
        yield "NOT PLACED YET"
        for one in found.loose:
            has = _and(one.sights) or "nothing"
            needs = f"it needs {one.needs} readings to marks that are placed, and one to check them"
            yield from _told("  ", f"{one.name} has {has}; {needs}.")
    yield ""
    yield from _marks(about, told)
    yield ""
    yield from _fits(about, told.survey)
    yield from _readings(about, told)
    yield ""
    yield from textwrap.wrap(FIRST_CAUTION, WIDTH)


def _summary(found: Adjustment) -> str:
    placed = sum(not mark.held for mark in found.marks)
    marks = f"{placed} mark{'' if placed == 1 else 's'}"
    words = f"{len(found.sights)} readings place {marks}; {found.freedom} are to spare."
    if found.freedom <= 0:
        return words + " So nothing checks them: read more."
    scatter = f"{found.unit_weight:.2f} of what their ± makes expected"
    if found.unit_weight <= found.unit_weight_bound:
        return f"{words} What is left of them scatters {scatter}: as it should."
    return f"{words} They scatter {scatter}, {found.unit_weight_bound:.2f} at most by chance."


def _datum(told: SurveyTold) -> str:
    held = [
        (mark.name, [axis for axis, s in zip("xyz", _xyz(mark.sigma), strict=True) if s == 0.0])
        for mark in told.found.marks
    ]
    marks = [f"{name} ({', '.join(axes)})" for name, axes in held if axes]
    count = sum(len(axes) for _, axes in held)
    what = {6: "just what fixes a net in a car"}.get(
        count, "more than the six that fix a net, all taken as exact" if count > 6 else "too few"
    )
    datum = f"The datum holds {count} numbers, {what}: {', '.join(marks)}."
    return datum + _stood(told.survey)


def _stood(survey: Survey) -> str:
    """How the car stood, where it was not level."""
    tilts = ((survey.pitch, "rearward"), (survey.roll, "to the right"))
    told = tuple(f"{METRIC.said(tilt, 'rad')} {way}" for tilt, way in tilts if tilt)
    if not told:
        return ""
    rises = f" The car rose {_and(told)} while it was measured"
    return f"{rises}: plumb line, level and phone are turned by that."


def _marks(about: About, told: SurveyTold) -> Iterator[str]:
    units = about.units
    unit = units.outside(0.0, "mm")[1]
    yield (
        f"  {'MARK, ' + unit:<14}{'x':>9}{'y':>9}{'z':>9}{'±':>7}{'crossing':>10}{'checked':>9}"
        f"{'readings':>10}"
    )
    said = {mark.name: mark.about for mark in told.survey.marks}
    doubted = {s.mark for s in told.found.suspicions}
    for mark in told.found.marks:
        numbers = "".join(f"{_length(about, value):>9}" for value in _xyz(mark.at))
        if mark.held:
            yield f"  {mark.name:<14}{numbers}{'held':>7}{'':>29}  {_short(said, mark.name)}"
            continue
        around = _length(about, TWO_SIGMA * worst_sigma(mark))
        checked = f"{least_checked(told.found, mark):.0%}".replace("%", " %")
        tail = f"{around:>7}{float(mark.dilution):>10.1f}{checked:>9}{mark.sights:>10}"
        ring = "○ " if mark.name in doubted else "  "
        yield f"{ring}{mark.name:<14}{numbers}{tail}  {_short(said, mark.name)}"
    yield "  ± where it is known worst, 19 times of 20; crossing: mm out for each its readings are;"
    yield "  checked: the share of a slip that would show; ○ takes part in a contradiction."


def _fits(about: About, survey: Survey) -> Iterator[str]:
    """Faces and tubes through marks, and how well the marks agree that they are one."""
    outcome = survey.outcome
    things: tuple[Face | Line, ...] = (*survey.faces, *survey.lines)
    if outcome is None or not any(thing.marks for thing in things):
        return
    off = {row.about: float(row.value) for row in outcome.straightness}
    tilt = {row.about: float(row.value) for row in outcome.tilts}
    yield "  FACES AND TUBES"
    for thing in things:
        if thing.marks:
            name = thing.name.replace("_", " ")
            said = f"  {name:<16}through {', '.join(thing.marks)}"
            if thing.name in off:
                said += f"; farthest off {about.units.said(round(off[thing.name], 2), 'mm')}"
            if thing.name in tilt:
                said += f"; tilt known to {about.units.said(tilt[thing.name], 'rad')}"
            yield from textwrap.wrap(said, WIDTH, initial_indent="  ", subsequent_indent=" " * 20)
    yield ""


def _short(said: Mapping[str, str], name: str) -> str:
    """What a mark is, as far as the line reaches."""
    return textwrap.shorten(said.get(name, ""), WIDTH - 81, placeholder=" …")


def _readings(about: About, told: SurveyTold) -> Iterator[str]:
    """The farthest out first; those set aside before all."""
    ordered = sorted(
        told.found.sights,
        key=lambda one: (not one.set_aside, -_known(one.normalised)),
    )
    head = f"READINGS, {'all' if len(ordered) <= SHOWN else 'the'} {min(SHOWN, len(ordered))} "
    yield f"  {head + 'FARTHEST OUT':<40}{'read':>12}{'out by':>10}{'by chance':>11}"
    for one in ordered[:SHOWN]:
        out, chance = _outer(one, one.residual), _by_chance(one)
        unit = "deg" if isinstance(one.sight, Slope) else "mm"
        figures = (
            _said(about, _read(one), unit),
            _said(about, -out, unit),
            _said(about, chance, unit),
        )
        aside = "  set aside" if one.set_aside else ""
        row = f"{figures[0]:>12}{figures[1]:>10}{figures[2]:>11}{aside}"
        yield f"  {one.sight.about:<40}{row}"


def _by_chance(one: Checked) -> float:
    """Up to here a residual is chance, once in a thousand times."""
    normalised = _known(one.normalised)
    if normalised == 0.0:
        return float("nan")
    return 3.29 * abs(_outer(one, one.residual)) / normalised


def _known(value: Num) -> float:
    return float(value) if np.isfinite(value) else 0.0


def _read(one: Checked) -> float:
    sight = one.sight
    return float(np.rad2deg(sight.angle)) if isinstance(sight, Slope) else float(sight.length)


def _outer(one: Checked, value: float) -> float:
    return float(np.rad2deg(value)) if isinstance(one.sight, Slope) else value


def _rounded(suspicion: Suspicion) -> tuple[float, float]:
    """Read and expected, as fine as a tape is read."""
    if suspicion.unit == "rad":
        return suspicion.read, suspicion.expected
    return round(suspicion.read, 1), round(suspicion.expected, 1)


def _said(about: About, value: float, unit: str) -> str:
    if not np.isfinite(value):
        return "-"
    return f"{value:.1f}°" if unit == "deg" else _length(about, value)


def _length(about: About, value: Num) -> str:
    amount, unit = about.units.outside(value, "mm")
    decimals = 1 if unit == "mm" else 3
    return f"{round(float(amount), decimals) + 0.0:.{decimals}f}"  # nought has no sign


def _and(names: tuple[str, ...], word: str = "and") -> str:
    *first, last = names or ("",)
    return f"{', '.join(first)} {word} {last}" if first else last


def _told(lead: str, text: str) -> list[str]:
    return textwrap.wrap(text, WIDTH, initial_indent=lead, subsequent_indent=" " * len(lead))


def _xyz(point: Point) -> tuple[Num, Num, Num]:
    return point.x, point.y, point.z


def _numbers(point: Point) -> list[float]:
    return [float(value) for value in _xyz(point)]


def _number(value: Num) -> float | None:
    number = float(value)
    return number if np.isfinite(number) else None
