"""Points, directions and faces of a file."""

from dataclasses import replace
from math import nan
from typing import cast

from pedalwright.core.points import Plane, Point
from pedalwright.core.quantity import is_missing
from pedalwright.project import paths
from pedalwright.project.directions import direction
from pedalwright.project.entries import Entry, Trouble, entry, typed
from pedalwright.project.errors import nearest
from pedalwright.project.provenance import Provenance
from pedalwright.project.quantities import left_out, missing, quantity
from pedalwright.project.report import Report, Spot
from pedalwright.project.schema import AXES

FACE_KEYS = ("normal", "through", "offset")
_EXAMPLE = '["120 mm", "-20 1/2 in", "0 mm"]'
_NOWHERE = Point(nan, nan, nan)


def read_place(report: Report, raw: object, spot: Spot) -> Point:
    """A point: three lengths, all of one entry or each of its own; or the name of a mark."""
    if raw is None:
        return Point(*(_left_out(report, spot.below(axis)) for axis in AXES))
    if isinstance(raw, str) and not is_missing(raw):
        return _at_mark(report, raw, spot)
    said = entry(raw)
    report.complain(spot, *said.troubles)
    keys = (*spot.keys, "value") if isinstance(raw, dict) else spot.keys
    parts = _three(said)
    if parts is None:
        accepts = f"A point is three lengths, x rearward, y right, z up: {_EXAMPLE}."
        report.complain(spot, Trouble(typed(said.value), accepts))
        return _NOWHERE
    coordinates: list[float] = []
    for count, (axis, part) in enumerate(zip(AXES, parts, strict=True)):
        here = spot.below(axis).standing(*keys, count)
        found = quantity(said.about(part), ".".join(here.shape), "mm")
        coordinates.append(report.keep(found, here))
    return Point(*coordinates)


def read_direction(report: Report, raw: object, spot: Spot) -> Point:
    """A direction of length 1."""
    said = entry(raw)
    text = typed(said.value)
    report.complain(spot, *said.troubles)
    found = _NOWHERE if is_missing(said.value) else direction(said.value)
    if isinstance(found, Trouble):
        report.complain(spot, found)
        found = _NOWHERE
    told = Provenance(
        tag=said.tag, plus_minus=None, note=said.note, text=text, shown=text, unit="1", like=""
    )
    report.tell(spot, missing("1", text, said.note) if found is _NOWHERE else told)
    return found


def read_face(report: Report, raw: object, spot: Spot) -> Plane:
    """A flat face: the way it looks, and a point on it or its offset."""
    said = report.entries(raw, FACE_KEYS, spot)
    normal = read_direction(report, said.get("normal"), spot.below("normal"))
    if "through" not in said:
        return Plane(normal=normal, offset=_offset(report, said.get("offset"), spot))
    if "offset" in said:
        accepts = "A face has a point it goes through or an offset, not both."
        report.complain(spot.below("offset"), Trouble(typed(said["offset"]), accepts))
    point = read_place(report, said["through"], spot.below("through"))
    return Plane(normal=normal, offset=_along(normal, point))


def _at_mark(report: Report, name: str, spot: Spot) -> Point:
    """Where a mark of the survey is."""
    mark = report.marks.get(name)
    if mark is None:
        known = f"; the marks are {', '.join(report.marks)}" if report.marks else ""
        accepts = f"A point is three lengths, {_EXAMPLE}, or the name of a mark{known}."
        report.complain(spot, Trouble(name, accepts, nearest(name, report.marks)))
        return _NOWHERE
    for axis, told in zip(AXES, mark.told, strict=True):
        report.tell(spot.below(axis), replace(told, text=name))
        report.at_mark[paths.join(*spot.path, axis)] = (name, axis)
    return mark.at


def _three(said: Entry) -> list[object] | None:
    """The three parts of a point; None for something that is no point."""
    if isinstance(said.value, list):
        parts = cast("list[object]", said.value)
        return parts if len(parts) == len(AXES) else None
    unknown: list[object] = ["?"] * len(AXES)
    return unknown if is_missing(said.value) else None


def _offset(report: Report, raw: object, spot: Spot) -> float:
    here = spot.below("offset")
    if raw is None:
        return _left_out(report, here)
    return report.keep(quantity(entry(raw), ".".join(here.shape), "mm"), here)


def _left_out(report: Report, spot: Spot) -> float:
    return report.keep(left_out(".".join(spot.shape), "mm", None), spot)


def _along(normal: Point, point: Point) -> float:
    """Only the coordinates that count: a wall across the car needs no y."""
    pairs = ((normal.x, point.x), (normal.y, point.y), (normal.z, point.z))
    return float(sum(n * p for n, p in pairs if n != 0.0))
