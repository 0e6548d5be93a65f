"""The dossier: page one for the inspector, then everything that stands behind it.

Python words every sentence and formats every number; the template only lays them out. The same
inputs give the same bytes: no clock, no system fonts.
"""

import json
from collections.abc import Sequence
from importlib.resources import files
from typing import Any

from pedalwright.assess import Assessment
from pedalwright.core.checks import Finding
from pedalwright.core.typeset import typst_math, typst_substituted
from pedalwright.core.working import Step
from pedalwright.documents.about import About, Told
from pedalwright.documents.cautions import CAUTIONS, FIRST_CAUTION
from pedalwright.documents.outside import METRIC, Units
from pedalwright.documents.pictures import Picture
from pedalwright.documents.verdict import (
    Row,
    asked_by,
    by_room,
    compared,
    percent,
    state,
    verdict,
    weakest,
)
from pedalwright.documents.working_text import by_formula, merged, units_text
from pedalwright.structure import Strength
from pedalwright.structure.gives import gives

#: Formulas whose first run makes the three sums of page one: short, and together the main chain.
SUMS = ("hydraulics.line_pressure", "brakes.brake_torque", "brakes.deceleration")
#: Millimetres of bar for a margin of 1.
BAR = 14.0


def dossier_pdf(
    about: About,
    assessment: Assessment,
    steps: Sequence[Step],
    drawn: Sequence[Picture],
    *,
    paper: str = "a4",
) -> bytes:
    """The dossier as PDF."""
    import typst  # 30 ms: only when a PDF is wanted

    content = _content(about, assessment, steps, drawn) | {"paper": paper}
    template = files("pedalwright.documents").joinpath("dossier.typ").read_bytes()
    return typst.compile(
        template,
        format="pdf",
        ignore_system_fonts=True,
        timestamp=0,
        sys_inputs={"data": json.dumps(content)}
        | {picture.key: picture.svg.decode() for picture in drawn},
    )


def _content(
    about: About, assessment: Assessment, steps: Sequence[Step], drawn: Sequence[Picture]
) -> dict[str, Any]:
    findings, units = assessment.findings, about.units
    told = {
        tag: _told(about.tagged(tag), units)
        for tag in ("missing", "assumed", "default", "measured")
    }
    return told | {
        "title": about.car,
        "note": about.note,
        "date": about.date,
        "file": about.file,
        "version": about.version,
        "ok": verdict(findings).ok,
        "verdict": str(verdict(findings)),
        "weakest": _row(Row(weakest(findings)), units),
        "groups": [
            _group(room, [f for f in findings if f.room == room], units)
            for room, _ in by_room(findings)
        ],
        "counts": ", ".join(f"{len(rows)} numbers {tag}" for tag, rows in told.items() if rows)
        + ".",
        "sums": [_sum(step, units) for step in _three(steps)],
        "findings": [
            {"room": room.capitalize(), "rows": [_row(row, units) for row in rows]}
            for room, rows in by_room(findings)
        ],
        "working": _chapters(steps, units),
        "working_says": _working_says(units),
        "pictures": [_shown(p) for p in drawn if not p.about_strength],
        "strength": [_shown(p) for p in drawn if p.about_strength],
        "gives": [
            _gives("brake", assessment.brake.strength, units),
            _gives("clutch", assessment.clutch.strength, units),
        ],
        "sources": _sources(steps, findings),
        "cautions": CAUTIONS,
        "caution": FIRST_CAUTION,
    }


def _shown(picture: Picture) -> dict[str, Any]:
    return {
        "key": picture.key,
        "title": picture.title,
        "alt": picture.alt,
        "caption": picture.caption,
        "wide": picture.wide,
    }


def _gives(pedal: str, strength: Strength, units: Units) -> dict[str, Any]:
    """Who gives, one by one, and all of it."""
    rows = [(one.part, one.give) for one in gives(strength)]
    return {
        "pedal": pedal,
        "push": units.said(strength.give.push, "N"),
        "rows": [[name, units.said(give, "mm")] for name, give in rows],
        "total": units.said(strength.give.total, "mm"),
    }


def _told(numbers: Sequence[tuple[str, Told]], units: Units) -> list[dict[str, str]]:
    return [
        {
            "path": path,
            "shown": units.read_back(told.shown, told.unit),
            "spread": f"± {units.said(told.plus_minus, told.unit)}" if told.plus_minus else "",
            "note": told.note or told.plus_minus_why,
        }
        for path, told in numbers
    ]


def _row(row: Row, units: Units) -> dict[str, Any]:
    finding = row.finding
    margin = float(finding.margin) if finding.judged else 0.0
    return {
        "code": finding.limit.code,
        "asks": units.prose(finding.limit.asks),
        "state": state(finding),
        "compared": compared(finding, units),
        "about": units.prose(row.about),
        "margin": percent(finding.margin),
        "bar": max(-6.0, min(BAR, margin * BAR)),
        "source": asked_by(finding),
        "weight": finding.limit.weight,
    }


def _group(room: str, members: Sequence[Finding], units: Units) -> dict[str, Any]:
    worst = weakest(members)
    return {
        "room": room,
        "count": len(members),
        "failed": str(sum(not f.ok for f in members)),
        "asks": units.prose(worst.limit.asks),
        "compared": compared(worst, units),
        "about": units.prose(worst.about),
    }


def _three(steps: Sequence[Step]) -> list[Step]:
    first: dict[str, Step] = {}
    for step in steps:
        first.setdefault(step.formula.name, step)
    return [first[name] for name in SUMS if name in first]


def _sum(step: Step, units: Units) -> dict[str, str]:
    return {
        "meaning": step.formula.meaning,
        "subject": units.prose(step.subject),
        "formula": typst_math(step.formula),
        "numbers": _numbers(step, units),
    }


def _numbers(step: Step, units: Units) -> str:
    """The numbers in the formula, its answer, and the answer once more in the reader's units."""
    beside = units.beside(step.value, step.formula.units["return"])
    return typst_substituted(step) + (f'thick "({beside})"' if beside else "")


def _working_says(units: Units) -> str:
    """In what the working is, where that is not what the reader thinks in."""
    inside = "Angles are in radians unless marked."
    if units is METRIC:
        return inside
    return f"{inside} It is worked in mm, N and MPa; brackets say each answer in your units."


def _chapters(steps: Sequence[Step], units: Units) -> list[dict[str, Any]]:
    """Room by room, each formula once with all its runs."""
    return [
        {
            "room": room.capitalize(),
            "formulas": [_formula(runs, units) for runs in formulas.values()],
        }
        for room, formulas in by_formula(steps).items()
    ]


def _formula(runs: Sequence[Step], units: Units) -> dict[str, Any]:
    formula = runs[0].formula
    return {
        "name": formula.name,
        "formula": typst_math(formula),
        "meaning": formula.meaning,
        "units": units_text(formula),
        "source": formula.source,
        "runs": [
            {"numbers": numbers, "subject": units.prose(subject)}
            for numbers, subject in merged(runs, lambda step: _numbers(step, units))
        ],
    }


def _sources(steps: Sequence[Step], findings: Sequence[Finding]) -> list[dict[str, str]]:
    used: dict[str, dict[str, None]] = {}
    for step in steps:
        used.setdefault(step.formula.source, {})[step.formula.name] = None
    for finding in findings:
        used.setdefault(asked_by(finding), {})[finding.limit.code] = None
    return [{"name": name, "used": ", ".join(places)} for name, places in sorted(used.items())]
