"""The sheet to take into the car: which marks, what to hook the tape on, room for two readings.

Python words every sentence; the template lays them out. The same survey gives the same bytes.
"""

import json
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass, replace
from importlib.resources import files
from typing import Any

from pedalwright.documents.about import About
from pedalwright.documents.cautions import CAUTIONS
from pedalwright.documents.pictures.survey import VIEWS, View, survey_view
from pedalwright.drawing import Drawing, svg
from pedalwright.survey import Adjustment, Offset, Survey

#: Rows left empty in each table, for what nobody thought of.
SPARE = 3
#: Height of the plan and of the side view on their page, by paper, and the width of both, mm.
HEIGHTS = {"a4": {"plan": 138.0, "side": 80.0}, "us-letter": {"plan": 126.0, "side": 74.0}}
WIDTH = 180.0
SCALES = (2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 15, 20, 30, 50)
#: Of the cautions, those that count with a tape in the hand: the first, and the jack.
FOOT = (CAUTIONS[0], CAUTIONS[7])


@dataclass(frozen=True, kw_only=True, slots=True)
class Readings:
    """The marks and readings a sheet asks for: this car's, or those of an ordinary footwell."""

    survey: Survey
    found: Adjustment


def survey_sheet_pdf(about: About, readings: Readings, *, paper: str = "a4") -> bytes:
    """The sheet that asks for every reading of a survey anew, with empty rows for more."""
    import typst  # 30 ms: only when a PDF is wanted

    survey, found = readings.survey, readings.found
    name = "us-letter" if paper.lower() == "letter" else "a4"
    room = HEIGHTS[name]
    drawn = {view: _picture(survey, found, view, room[view]) for view in VIEWS}
    content = _content(about, survey, found) | {
        "paper": name,
        "pictures": [
            {"key": view, "title": title, "alt": alt, "high": room[view]}
            for view, (title, alt, _) in drawn.items()
        ],
    }
    return typst.compile(
        _file("survey_sheet.typ").encode(),
        format="pdf",
        ignore_system_fonts=True,
        timestamp=0,
        sys_inputs={"data": json.dumps(content)} | {v: s for v, (_, _, s) in drawn.items()},
    )


def _file(name: str) -> str:
    return files("pedalwright.documents").joinpath(name).read_text(encoding="utf-8")


def _picture(survey: Survey, found: Adjustment, view: View, height: float) -> tuple[str, str, str]:
    drawing = _filling(survey_view(survey, found, view), WIDTH, height)
    title = f"{drawing.title}, {drawing.scale_text}"
    return title, drawing.description, svg(drawing, physical=True).decode()


def _filling(drawing: Drawing, width: float, height: float) -> Drawing:
    """The drawing as large as it fits; nobody takes a length off it, so any scale will do."""
    for reduced in SCALES:
        sized = replace(drawing, scale=1.0 / reduced)
        window = sized.laid_out().window
        if window.width <= width * reduced and window.height <= height * reduced:
            return sized
    return replace(drawing, scale=1.0 / SCALES[-1])


def _content(about: About, survey: Survey, found: Adjustment) -> dict[str, Any]:
    empty = {"hook": "", "to": "", "mark": "", "base": "", "way": "", "foot": "", "head": ""}
    return {
        "car": about.car,
        "foot": f"{about.file}, {about.date}; pedalwright {about.version}",
        "cautions": FOOT,
        "words": tomllib.loads(_file("survey_sheet.toml")),
        "datum": list(_datum(survey, found)),
        "marks": [*_marks(survey), *[{"name": "", "about": ""}] * SPARE],
        "tapes": [
            *({"hook": _said(tape.hook), "to": _said(tape.to)} for tape in survey.tapes),
            *[empty] * SPARE,
        ],
        "offsets": [row for one in survey.offsets for row in _offset(one)] + [empty] * SPARE,
        "rises": [
            *({"foot": _said(one.foot), "head": _said(one.head)} for one in survey.rises),
            empty,
        ],
        "sizes": [*(_said(line.name) for line in survey.lines), *[""] * SPARE],
    }


def _datum(survey: Survey, found: Adjustment) -> Iterator[str]:
    """What each axis is counted from, and which marks hold it."""
    yield "x is counted rearward, y to the car's right, z up, from the datum scribed on the car."
    said = {mark.name: mark.about for mark in survey.marks}
    for mark in found.marks:
        at, sigma = mark.at, mark.sigma
        known = [
            f"{axis} {float(value):.0f} mm"
            for axis, value, width in zip(
                "xyz", (at.x, at.y, at.z), (sigma.x, sigma.y, sigma.z), strict=True
            )
            if width == 0.0
        ]
        if known:
            words = f"{mark.name}, {said.get(mark.name) or 'a mark'}: {', '.join(known)}."
            yield f"{words} Scribe it with care: everything hangs on it."


def _marks(survey: Survey) -> Iterator[dict[str, str]]:
    """Every mark that is read, the declared ones first."""
    said = {mark.name: mark.about for mark in survey.marks}
    read = [name for tape in survey.tapes for name in (tape.hook, tape.to)]
    read += [one.mark for one in survey.offsets]
    read += [name for one in survey.rises for name in (one.foot, one.head)]
    for name in dict.fromkeys([*said, *read]):
        yield {"name": _said(name), "about": said.get(name, "")}


def _offset(one: Offset) -> Iterator[dict[str, str]]:
    ways = (
        (one.rearward, "rearward / forward"),
        (one.right, "right / left"),
        (one.up, "up / down"),
    )
    for length, words in ways:
        if length is not None:
            base = one.base or "the datum"
            yield {"mark": _said(one.mark), "base": _said(base), "way": words}


def _said(name: str) -> str:
    return name.replace("_", " ")
