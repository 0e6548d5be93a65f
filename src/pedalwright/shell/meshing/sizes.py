"""How long the triangles' sides should be: short at holes and in narrow places, longer further off.

One size for the whole bench, in space, so that two sheets divide the fold between them alike.
"""

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.mesh import Flags
from pedalwright.shell.meshing.features import Circle, Features, lifted
from pedalwright.shell.meshing.plane import distance, distances

#: By how much a side may be longer for each millimetre away from where it must be short.
GROWTH = 0.35
#: Least sides round a circle.
ROUND = 12
#: Round a patch or a head sides are no longer than this many thicknesses, nor than its radius.
THICKNESSES = 3.0
#: Places worked at once.
CHUNK = 4_000


@dataclass(frozen=True, slots=True)
class Sizes:
    """Wished side everywhere."""

    usual: float
    #: Where it is shorter, (sources, 3), and how short.
    sources: Array
    shortest: Array

    def __call__(self, points: Array) -> Array:
        """At some points, (points, 3)."""
        from scipy.spatial.distance import cdist

        wished = np.full(len(points), self.usual)
        for at in range(0, len(points), CHUNK):
            some = slice(at, at + CHUNK)
            far = cdist(points[some], self.sources)
            wished[some] = np.min(self.shortest + GROWTH * far, axis=1, initial=self.usual)
        return wished

    def near(self, points: Array) -> "Sizes":
        """Without the sources too far off to matter at some points."""
        low, high = points.min(axis=0), points.max(axis=0)
        beyond = np.maximum(0.0, np.maximum(low - self.sources, self.sources - high))
        matters = self.shortest + GROWTH * np.linalg.norm(beyond, axis=1) < self.usual
        return Sizes(self.usual, self.sources[matters], self.shortest[matters])


def sizes(of_sheets: Iterable[Features], usual: float) -> Sizes:
    """The size that rims, holes, rows of fasteners and narrow flanges ask for."""
    places, shortest = [np.zeros((0, 3))], [np.zeros(0)]
    for one in of_sheets:
        own = one.sheet.size or usual
        probes, gaps = _gaps(one, own)
        rims, sides = _rims(one, own)
        places += [lifted(one.sheet, probes), lifted(one.sheet, rims)]
        shortest += [gaps, sides]
        if own < usual:
            spread = _over(one, own)
            places.append(lifted(one.sheet, spread))
            shortest.append(np.full(len(spread), own))
    return Sizes(usual, np.concatenate(places), np.concatenate(shortest))


def side_of(circle: Circle, usual: float, thickness: float) -> float:
    """Side of the triangles at a round line."""
    whole = 2 * np.pi * circle.radius / ROUND
    if circle.hole:
        return min(usual, whole)
    return min(usual, max(whole, min(circle.radius, THICKNESSES * thickness)))


def around(circle: Circle, count: int) -> Array:
    """Places round a circle, (count, 2)."""
    turn = np.arange(count) * 2 * np.pi / count
    ring = np.stack([np.cos(turn), np.sin(turn)], axis=-1)
    places: Array = np.array(circle.centre) + circle.radius * ring
    return places


def _rims(one: Features, usual: float) -> tuple[Array, Array]:
    """Places round every circle, and how short sides are there."""
    places = [around(c, ROUND) for c in one.circles]
    sides = [np.full(ROUND, side_of(c, usual, one.sheet.thickness)) for c in one.circles]
    return np.concatenate([np.zeros((0, 2)), *places]), np.concatenate([np.zeros(0), *sides])


def _gaps(one: Features, usual: float) -> tuple[Array, Array]:
    """Places on every line, circle and point, and how far it is to the next that does not meet it.

    Only those where that is less than the usual side.
    """
    looked = [
        *(_beside_line(one, line, usual) for line in one.straight),
        *(_beside_circle(one, circle) for circle in one.circles),
        *(_beside_point(one, point) for point in one.points),
    ]
    probes = np.concatenate([np.zeros((0, 2)), *(places for places, _ in looked)])
    gaps = np.concatenate([np.zeros(0), *(gap for _, gap in looked)])
    return probes[gaps < usual], gaps[gaps < usual]


def _beside_line(one: Features, line: Array, usual: float) -> tuple[Array, Array]:
    places = _on(line, usual)
    others = one.straight[~_meets(one.straight, line)]
    points = one.points[distance(one.points, line[:1], line[1:]) > TOUCH]
    gap = np.minimum(_to_lines(places, others), _to_circles(places, one.circles))
    return places, np.minimum(gap, distance(places, points, points))


def _beside_circle(one: Features, circle: Circle) -> tuple[Array, Array]:
    places = around(circle, ROUND)
    others = tuple(other for other in one.circles if other != circle)
    gap = np.minimum(_to_lines(places, one.straight), _to_circles(places, others))
    return places, np.minimum(gap, distance(places, one.points, one.points))


def _beside_point(one: Features, point: Array) -> tuple[Array, Array]:
    place = point[None]
    apart = distances(place, one.straight[:, 0], one.straight[:, 1])[0] > TOUCH
    others = one.points[np.linalg.norm(one.points - point, axis=1) > TOUCH]
    gap = np.minimum(_to_lines(place, one.straight[apart]), _to_circles(place, one.circles))
    return place, np.minimum(gap, distance(place, others, others))


def _to_lines(places: Array, lines: Array) -> Array:
    return distance(places, lines[:, 0], lines[:, 1])


def _to_circles(places: Array, circles: tuple[Circle, ...]) -> Array:
    least = np.full(len(places), np.inf)
    for circle in circles:
        off = np.linalg.norm(places - np.array(circle.centre), axis=1) - circle.radius
        least = np.minimum(least, np.abs(off))
    return least


#: What is nearer than this touches, and asks for no size.
TOUCH = 1e-2


def _meets(straight: Array, line: Array) -> Flags:
    """Which lines touch a line, itself included."""
    ends = np.minimum(
        distance(straight[:, 0], line[:1], line[1:]), distance(straight[:, 1], line[:1], line[1:])
    )
    own = distances(line, straight[:, 0], straight[:, 1]).min(axis=0)
    meets: Flags = np.minimum(ends, own) < TOUCH
    return meets


def _on(line: Array, usual: float) -> Array:
    """Places along a line, half a side apart."""
    count = max(2, int(2 * np.linalg.norm(line[1] - line[0]) / usual))
    share = (np.arange(count) + 0.5) / count
    places: Array = line[0] + share[:, None] * (line[1] - line[0])
    return places


def _over(one: Features, usual: float) -> Array:
    """Places all over a sheet that is to be finer than the rest."""
    low, high = one.rim.reshape(-1, 2).min(axis=0), one.rim.reshape(-1, 2).max(axis=0)
    axes = [np.arange(low[i], high[i] + usual, 2 * usual) for i in (0, 1)]
    return np.stack(np.meshgrid(*axes), axis=-1).reshape(-1, 2)
