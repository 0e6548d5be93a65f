"""Marks from tapes: placed before the rest of the file is read, so that it may call them by name.

What contradicts itself is no fault of the file: it is a finding, with the name of the suspect.
What cannot be placed is missing. Asked about at once is only what has two answers.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import cast

from pedalwright.core.points import Point
from pedalwright.core.quantity import show
from pedalwright.project import paths
from pedalwright.project.entries import Trouble
from pedalwright.project.errors import nearest
from pedalwright.project.provenance import Provenance
from pedalwright.project.quantities import missing
from pedalwright.project.reader import read_tables
from pedalwright.project.report import AtMark, Report, Spot
from pedalwright.project.schema import schema
from pedalwright.project.sights import TWO_SIGMA, Taken, stations, taken, turned_with
from pedalwright.survey import Adjustment, Loose, Placed, Survey, TwoPlaces, adjust

#: Beside a mark that nothing ties to the car.
UNTIED = (
    "nothing says where in the car it is: hold six numbers of the net with ±0 mm, all three of one "
    "mark, two of a second, one of a third"
)


@dataclass(frozen=True, kw_only=True, slots=True)
class Surveyed:
    """A survey by tapes and what became of it."""

    adjustment: Adjustment
    sights: tuple[Taken, ...]
    #: Every mark that has coordinates or was looked for, the declared ones first.
    marks: Mapping[str, AtMark]


def surveyed(report: Report, raw: object) -> Surveyed | None:
    """Place the marks of a file's survey; None where no mark has to be placed.

    The survey is read by itself first; its own faults are told when the whole file is read.
    """
    own = Report(report.file, report.text)
    survey = cast("Survey", read_tables(own, schema(Survey), _readings_of(raw), _SURVEY))
    typed = ((mark.name, _as_typed(own, mark.name, mark.at)) for mark in survey.marks)
    declared = {name: mark for name, mark in typed if mark is not None}
    report.marks = declared
    sights = taken(survey, own.provenance)
    for trouble, spot in _slips(survey):
        report.complain(spot, trouble)
    if not sights:
        return None
    marks = stations(survey, sights, own.provenance)
    found = adjust(marks, [one.sight for one in sights])
    tilted = turned_with(survey, sights, found, own.provenance)
    if tilted != sights:
        sights, found = tilted, adjust(marks, [one.sight for one in tilted])
    for two in found.two_places:
        report.complain(_mark_spot(two.name), _which(two))
    assumed = {name for one in sights if one.assumed for name in one.sight.ends}
    placed = {mark.name: _placed(mark, declared, mark.name in assumed) for mark in found.marks}
    loose = {one.name: _loose(one, placed, declared) for one in found.loose}
    every = declared | placed | loose
    report.marks = every
    return Surveyed(adjustment=found, sights=sights, marks=every)


#: Where the survey stands in a file.
_SURVEY = Spot().below("survey")
#: What of it says where marks are.
_PLACING = ("marks", "tapes", "offsets", "rises", "tape_class", "pitch", "roll")


def _readings_of(raw: object) -> Mapping[str, object]:
    if not isinstance(raw, dict):
        return {}
    said = cast("Mapping[str, object]", raw)
    return {key: said[key] for key in _PLACING if key in said}


def _mark_spot(name: str) -> Spot:
    keys = ("survey", "marks", name)
    return Spot(keys=keys, path=keys)


def _as_typed(report: Report, name: str, at: Point) -> AtMark | None:
    """A declared mark with its coordinates; None for one that is called by another's name."""
    keys = [paths.join("survey", "marks", name, "at", axis) for axis in "xyz"]
    if any(key not in report.provenance for key in keys):
        return None
    x, y, z = (report.provenance[key] for key in keys)
    return AtMark(at, (x, y, z))


def _slips(survey: Survey) -> Iterator[tuple[Trouble, Spot]]:
    """Sights that are none, told at the entry that is wrong."""
    for number, tape in enumerate(survey.tapes):
        if tape.hook and tape.hook == tape.to:
            accepts = f"A tape has two ends; both are at {tape.hook}."
            yield Trouble(tape.to, accepts), _row("tapes", number).below("to")
    for number, rise in enumerate(survey.rises):
        if rise.foot and rise.foot == rise.head:
            accepts = f"A straight edge has two ends; both are at {rise.foot}."
            yield Trouble(rise.head, accepts), _row("rises", number).below("head")
    for number, offset in enumerate(survey.offsets):
        if offset.mark and offset.mark == offset.base:
            accepts = f"An offset is from another mark, or from the datum; both are {offset.base}."
            yield Trouble(offset.base, accepts), _row("offsets", number).below("base")
        if offset.rearward is None and offset.right is None and offset.up is None:
            accepts = "An offset is rearward, right or up; what is forward, left or down has a -."
            yield Trouble("", accepts), _row("offsets", number)


def _row(table: str, number: int) -> Spot:
    return _SURVEY.below(table).thing(number)


def _which(two: TwoPlaces) -> Trouble:
    """A mark on one side of its hooks or on the other."""
    here, there = two.here, two.there
    ways = (
        (float(here.x - there.x), "rearward", "forward"),
        (float(here.y - there.y), "right", "left"),
        (float(here.z - there.z), "up", "down"),
    )
    apart, one, other = max(ways, key=lambda way: abs(way[0]))
    first, second = (one, other) if apart > 0.0 else (other, one)
    accepts = (
        f"{two.name} fits its tapes at {_said(here)} and as well at {_said(there)}. Say which: "
        f'write side = "{first}" or side = "{second}" below [survey.marks.{two.name}], '
        "or level it from another mark."
    )
    return Trouble("", accepts, (f'side = "{first}"', f'side = "{second}"'))


def _said(at: Point) -> str:
    return f"x {float(at.x):.0f}, y {float(at.y):.0f}, z {float(at.z):.0f} mm"


def _placed(mark: Placed, declared: Mapping[str, AtMark], assumed: bool) -> AtMark:
    """A mark where its sights put it; a coordinate that was held is as it was typed."""
    typed = declared.get(mark.name)
    told: list[Provenance] = []
    for i, axis in enumerate("xyz"):
        value, sigma = float(getattr(mark.at, axis)), float(getattr(mark.sigma, axis))
        if typed is not None and sigma == 0.0:
            told.append(typed.told[i])
            continue
        told.append(
            Provenance(
                tag="assumed" if assumed else "measured",
                plus_minus=TWO_SIGMA * sigma,
                plus_minus_why=f"from {mark.sights} readings together",
                note="one of its readings is assumed" if assumed else "",
                text="" if typed is None else typed.told[i].text,
                shown=show(round(value, 1), "mm"),
                unit="mm",
                like="",
            )
        )
    return AtMark(mark.at, (told[0], told[1], told[2]))


def _loose(one: Loose, placed: Mapping[str, AtMark], declared: Mapping[str, AtMark]) -> AtMark:
    """A mark that stays missing, and why."""
    near = () if one.name in declared else nearest(one.name, placed)
    meant = f"; {near[0]} may be meant" if near else ""
    count = len(one.sights)
    why = f"{count} reading{'s' if count != 1 else ''} to marks that are known, {one.needs} needed"
    told = missing("mm", "", f"{why if placed else UNTIED}{meant}")
    nan = float("nan")
    return AtMark(Point(nan, nan, nan), (told, told, told))
