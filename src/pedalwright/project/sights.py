"""From tapes, offsets and rises as typed to the stations and sights of a net, with their scatter.

A ± is taken as two standard deviations: what a careful hand exceeds once in twenty readings.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from math import isfinite, isnan

import numpy as np

from pedalwright.core.points import Point
from pedalwright.core.units import Num
from pedalwright.project import paths
from pedalwright.project.provenance import Provenance
from pedalwright.project.schema import AXES
from pedalwright.survey import (
    Adjustment,
    Distance,
    Level,
    Offset,
    Repeats,
    Rise,
    Sight,
    Slope,
    Station,
    Step,
    Survey,
    Tape,
    level,
    mean_of,
)
from pedalwright.survey.stations import Axis

Told = Mapping[str, Provenance]

#: Standard deviations in a ±.
TWO_SIGMA = 2.0
#: No reading is better than this, mm and rad, whatever ± is typed beside it.
LEAST_MM, LEAST_RAD = 0.05, 0.0005


@dataclass(frozen=True, kw_only=True, slots=True)
class Taken:
    """One sight, and where its readings stand in the file."""

    sight: Sight
    #: Path of the reading, or of the list of readings.
    path: str
    #: Every reading by itself.
    readings: tuple[float, ...]
    assumed: bool

    @property
    def repeats(self) -> Repeats | None:
        """How far its readings lie apart; None for one alone or for an angle."""
        if isinstance(self.sight, Slope) or len(self.readings) < 2:
            return None
        return Repeats(
            about=self.sight.about,
            apart=max(self.readings) - min(self.readings),
            sigma=float(self.sight.sigma) * len(self.readings) ** 0.5,
        )


def taken(survey: Survey, told: Told) -> tuple[Taken, ...]:
    """Every sight of which something was read.

    Where the car's tilt is not known, neither is what plumb line, level and phone read of it.
    """
    stood = level(survey.pitch, survey.roll)
    tapes = (_tape(n, tape, survey, told) for n, tape in enumerate(survey.tapes, 1))
    if not isfinite(float(stood.up.z)):
        return tuple(one for one in tapes if one is not None)
    rises = (_rise(n, rise, told, stood.up) for n, rise in enumerate(survey.rises, 1))
    offsets = enumerate(survey.offsets, 1)
    steps = (step for n, one in offsets for step in _steps(n, one, told, stood))
    return (*(one for one in (*tapes, *rises) if one is not None), *steps)


def stations(survey: Survey, sights: tuple[Taken, ...], told: Told) -> tuple[Station, ...]:
    """The marks that sights speak of; one that was not declared is known by its name alone."""
    seen = dict.fromkeys(name for one in sights for name in one.sight.ends)
    declared = {mark.name: mark for mark in survey.marks}
    return tuple(
        Station(
            name=name,
            at=declared[name].at,
            sigma=Point(*(_coordinate_sigma(name, axis, told) for axis in AXES)),
            side=declared[name].side,
        )
        if name in declared
        else Station(name=name)
        for name in seen
    )


def turned_with(
    survey: Survey, sights: tuple[Taken, ...], found: Adjustment, told: Told
) -> tuple[Taken, ...]:
    """The same sights, each as doubtful besides as the car's tilt makes it; tapes are not.

    How much a degree moves a reading depends on where its marks are: they are placed before.
    """
    at = {mark.name: mark.at for mark in found.marks} | {"": Point(0.0, 0.0, 0.0)}

    def read(sight: Sight, pitch: float, roll: float) -> float:
        stood = level(pitch, roll)
        match sight:
            case Step():
                way = at[sight.mark] - at[sight.base]
                along = {"x": stood.rearward, "y": stood.right, "z": stood.up}[sight.axis]
                return float(way.dot(along))
            case Slope():
                way = at[sight.head] - at[sight.foot]
                return float(np.arcsin(way.unit().dot(stood.up)))
            case Distance():
                return float(sight.length)

    def doubtful(one: Taken) -> Taken:
        sight = one.sight
        if isinstance(sight, Distance) or not set(sight.ends) <= set(at):
            return one
        moved = [
            read(sight, pitch + up, roll + over) - read(sight, pitch - up, roll - over)
            for up, over in tilts
        ]
        sigma = float(np.hypot(sight.sigma, np.linalg.norm(moved) / 2.0))
        return replace(one, sight=replace(sight, sigma=sigma))

    pitch, roll = (0.0 if tilt is None else float(tilt) for tilt in (survey.pitch, survey.roll))
    tilts = ((_sigma("survey.pitch", told), 0.0), (0.0, _sigma("survey.roll", told)))
    if not np.any(tilts):
        return sights
    return tuple(doubtful(one) for one in sights)


def _coordinate_sigma(name: str, axis: str, told: Told) -> float:
    """0 for a coordinate that is held, and for one nobody gave."""
    found = told.get(paths.join("survey", "marks", name, "at", axis))
    return 0.0 if found is None else (found.plus_minus or 0.0) / TWO_SIGMA


def _tape(number: int, tape: Tape, survey: Survey, told: Told) -> Taken | None:
    path = f"survey.tapes.{number}.reading"
    readings, sigmas, assumed = _readings(tape.reading, path, told, LEAST_MM)
    mean, sigma = mean_of(readings, sigmas, survey.tape_class)
    if isnan(mean) or not tape.hook or not tape.to or tape.hook == tape.to:
        return None
    length = mean + (0.0 if tape.add is None else float(tape.add))
    sight = Distance(hook=tape.hook, to=tape.to, length=length, sigma=sigma)
    return Taken(sight=sight, path=path, readings=readings, assumed=assumed)


def _rise(number: int, rise: Rise, told: Told, up: Point) -> Taken | None:
    path = f"survey.rises.{number}.angle"
    readings, sigmas, assumed = _readings(rise.angle, path, told, LEAST_RAD)
    mean, sigma = mean_of(readings, sigmas)
    if isnan(mean) or not rise.foot or not rise.head or rise.foot == rise.head:
        return None
    sight = Slope(foot=rise.foot, head=rise.head, angle=mean, sigma=sigma, up=up)
    return Taken(sight=sight, path=path, readings=readings, assumed=assumed)


def _steps(number: int, offset: Offset, told: Told, stood: Level) -> Iterator[Taken]:
    ways: tuple[tuple[Axis, str, Point, Num | None], ...] = (
        ("x", "rearward", stood.rearward, offset.rearward),
        ("y", "right", stood.right, offset.right),
        ("z", "up", stood.up, offset.up),
    )
    for axis, way, along, length in ways:
        if length is None or isnan(length) or not offset.mark or offset.mark == offset.base:
            continue
        path = f"survey.offsets.{number}.{way}"
        sight = Step(
            mark=offset.mark,
            base=offset.base,
            axis=axis,
            length=float(length),
            sigma=max(_sigma(path, told), LEAST_MM),
            way=along,
        )
        readings = (float(length),)
        yield Taken(sight=sight, path=path, readings=readings, assumed=_is_assumed(path, told))


def _readings(
    typed: tuple[Num, ...], path: str, told: Told, least: float
) -> tuple[tuple[float, ...], tuple[float, ...], bool]:
    """Readings that are numbers, their standard deviations, and whether one is assumed."""
    known = [(float(r), f"{path}.{n}") for n, r in enumerate(typed, 1) if isfinite(float(r))]
    readings = tuple(reading for reading, _ in known)
    sigmas = tuple(max(_sigma(where, told), least) for _, where in known)
    return readings, sigmas, any(_is_assumed(where, told) for _, where in known)


def _sigma(path: str, told: Told) -> float:
    found = told.get(path)
    return 0.0 if found is None else (found.plus_minus or 0.0) / TWO_SIGMA


def _is_assumed(path: str, told: Told) -> bool:
    found = told.get(path)
    return found is not None and found.tag == "assumed"
