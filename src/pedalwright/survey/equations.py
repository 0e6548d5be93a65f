"""The sights of a net as functions of all coordinates, and how they change with them.

Every sight looks along the way from one mark to another; what it reads of that way is its length,
its part along one direction, or its rise.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from pedalwright.core.points import Point
from pedalwright.core.units import Array
from pedalwright.survey.formulas import rise_angle, tape_length
from pedalwright.survey.stations import Distance, Sight, Slope, Station, Step

Integers = NDArray[np.int_]
Truths = NDArray[np.bool_]

TAPE, STEP, SLOPE = 0, 1, 2
#: The datum, as a mark behind the last one, at the origin.
DATUM = -1


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Equations:
    """The sights of a net; marks are numbers. Every array is (sights,) but `along`."""

    kind: Integers
    first: Integers
    last: Integers
    #: Direction along which a step is read, plumb upwards for a slope; (sights, 3).
    along: Array
    measured: Array
    sigma: Array

    def predicted(self, at: Array) -> Array:
        """What each sight would read with the marks at (marks, 3)."""
        return readings(self.kind, self.along, self._ways(at))

    def slopes_at(self, at: Array) -> Array:
        """How each sight changes with each coordinate: (sights, 3 marks)."""
        sights, marks = self.measured.size, at.shape[0]
        change = self.changes_at(at)
        out = np.zeros((sights, marks + 1, 3))
        rows = np.arange(sights)
        out[rows, self.last] = change
        out[rows, self.first] -= change
        return out[:, :marks].reshape(sights, 3 * marks)

    def changes_at(self, at: Array) -> Array:
        """How each sight changes with its far end; with its near end the other way: (sights, 3)."""
        return changes(self.kind, self.along, self._ways(at))

    def taken(self, rows: Integers | Truths) -> "Equations":
        """Only some of the sights."""
        return replace(
            self,
            kind=self.kind[rows],
            first=self.first[rows],
            last=self.last[rows],
            along=self.along[rows],
            measured=self.measured[rows],
            sigma=self.sigma[rows],
        )

    def _ways(self, at: Array) -> Array:
        there = with_datum(at)
        ways: Array = there[self.last] - there[self.first]
        return ways


def equations(stations: Sequence[Station], sights: Sequence[Sight]) -> Equations:
    """Number the marks."""
    number = {station.name: i for i, station in enumerate(stations)}
    number[""] = DATUM
    table = np.array([_numbers(sight, number) for sight in sights], dtype=np.int_).reshape(-1, 3)
    return Equations(
        kind=table[:, 0],
        first=table[:, 1],
        last=table[:, 2],
        along=np.array([_along(sight) for sight in sights]).reshape(-1, 3),
        measured=np.array([value_of(sight) for sight in sights], dtype=np.float64),
        sigma=np.array([sight.sigma for sight in sights], dtype=np.float64),
    )


def held(stations: Sequence[Station]) -> Truths:
    """Which coordinates are held where they are: (marks, 3)."""
    at = np.array([array(station.at) for station in stations]).reshape(-1, 3)
    sigma = np.array([array(station.sigma) for station in stations]).reshape(-1, 3)
    fixed: Truths = np.isfinite(at) & (sigma == 0.0)
    return fixed


def readings(kind: Integers, along: Array, ways: Array) -> Array:
    """What is read of each way, (sights, 3)."""
    x, y, z = ways.T
    read: Array = np.asarray(tape_length.rule(x, y, z))
    steps = kind == STEP
    if steps.any():
        read = np.where(steps, np.sum(ways * along, axis=1), read)
    slopes = kind == SLOPE
    if slopes.any():
        up, level = _up_and_level(along, ways)
        read = np.where(slopes, rise_angle.rule(level, 0.0, up), read)
    return read


def changes(kind: Integers, along: Array, ways: Array) -> Array:
    """How that changes with the far end of each way, (sights, 3)."""
    x, y, z = ways.T
    length = np.maximum(tape_length.rule(x, y, z), _TINY)
    change: Array = ways / length[:, None]
    steps = kind == STEP
    if steps.any():
        change = np.where(steps[:, None], along, change)
    slopes = kind == SLOPE
    if slopes.any():
        up, level = _up_and_level(along, ways)
        square, level = length[:, None] ** 2, np.maximum(level, _TINY)[:, None]
        turning = (along * square - up[:, None] * ways) / (level * square)
        change = np.where(slopes[:, None], turning, change)
    return change


def _up_and_level(along: Array, ways: Array) -> tuple[Array, Array]:
    """How far each way goes up, and how far along the level."""
    up: Array = np.sum(ways * along, axis=1)
    level: Array = np.linalg.norm(ways - up[:, None] * along, axis=1)
    return up, level


def with_datum(at: Array) -> Array:
    """The places of marks, and behind them the datum's."""
    return np.vstack([at, np.zeros((1, 3))])


def numbers(truths: Truths | np.bool_) -> list[int]:
    """Where an array is true."""
    return [int(i) for i in np.flatnonzero(truths)]


def value_of(sight: Sight) -> float:
    """What was read."""
    return float(sight.angle if isinstance(sight, Slope) else sight.length)


def array(point: Point) -> Array:
    """A point as three numbers."""
    return np.array([point.x, point.y, point.z], dtype=np.float64)


def point(numbers: Array) -> Point:
    """Three numbers as a point."""
    x, y, z = numbers.tolist()
    return Point(x, y, z)


#: A way of no length has no direction.
_TINY = 1e-9


def _numbers(sight: Sight, number: dict[str, int]) -> tuple[int, int, int]:
    match sight:
        case Distance():
            return TAPE, number[sight.hook], number[sight.to]
        case Step():
            return STEP, number[sight.base], number[sight.mark]
        case Slope():
            return SLOPE, number[sight.foot], number[sight.head]


def _along(sight: Sight) -> Array:
    match sight:
        case Distance():
            return np.zeros(3)
        case Step():
            return array(sight.along)
        case Slope():
            return array(sight.up)
