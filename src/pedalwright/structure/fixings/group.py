"""Who takes how much of a load: a group of points, alike and on something stiff.

In the plane of the sheet every point takes its share and turns about the middle of the group. Out
of it a part is drawn off evenly, and tips over its own toe: the further a point is from there, the
harder it is pulled. A push onto the sheet pulls nothing.
"""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.points import UP, Point
from pedalwright.core.units import Array, N, Nmm, Num, mm
from pedalwright.structure.fixings.parts import Load
from pedalwright.structure.formulas.joints import fastener_pull
from pedalwright.structure.groups import in_plane


@dataclass(frozen=True, slots=True)
class Frame:
    """The plane of a sheet: two directions in it and the one out of it, all of length 1."""

    along: Point
    across: Point
    out: Point

    @classmethod
    def of(cls, axis: Point) -> "Frame":
        """Any two directions square to the axis."""
        out = axis.unit()
        steep = np.abs(out.dot(UP)) > 0.9
        near = Point(0.0, np.where(steep, 1.0, 0.0), np.where(steep, 0.0, 1.0))
        along = near.cross(out).unit()
        return cls(along, out.cross(along), out)

    def seen(self, point: Point) -> tuple[Num, Num, Num]:
        """A point or a force along the three directions."""
        return point.dot(self.along), point.dot(self.across), point.dot(self.out)


@dataclass(frozen=True, slots=True)
class Pulled:
    """Pull and shear of every point, (points,) or (points, variants)."""

    pull: N
    shear: N


def shared(holes: tuple[Point, ...], axis: Point, toe: mm, load: Load) -> Pulled:
    """What each hole's fastener takes of a load."""
    frame = Frame.of(axis)
    x, y, z = stacked([frame.seen(hole) for hole in holes])
    across, up, out = frame.seen(load.force)
    at_x, at_y, at_z = frame.seen(load.at)
    high = at_z - np.mean(z, axis=0)
    alone = len(holes) == 1  # a part turns about it until something else holds it
    shear = np.hypot(across, up)[None] if alone else _sheared(x, y, (across, up), (at_x, at_y))
    even = np.maximum(out, 0.0) / len(holes)
    over_x = _tipped(x, tipping(out, at_x - np.mean(x, axis=0), across, high), toe)
    over_y = _tipped(y, tipping(out, at_y - np.mean(y, axis=0), up, high), toe)
    return Pulled(pull=even + over_x + over_y, shear=shear)


def _sheared(x: Array, y: Array, force: tuple[N, N], at: tuple[mm, mm]) -> N:
    return in_plane(x, y, force=force, at=at).size


def tipping(out: N, beside: mm, sideways: N, high: mm) -> Nmm:
    """Moment that lifts the far side: a pull that stands beside the middle, less a push up high."""
    return out * beside - sideways * high


def stacked(places: list[tuple[Num, Num, Num]]) -> tuple[Array, Array, Array]:
    """Places as one row for each direction, (places,) or (places, variants)."""
    x, y, z = (np.stack(np.broadcast_arrays(*row)) for row in zip(*places, strict=True))
    return x, y, z


def _tipped(line: Array, moment: Nmm, toe: mm) -> N:
    """Pull of each point when a part tips over its toe: in proportion to the distance from it."""
    near: mm = np.min(line, axis=0) - toe
    far: mm = np.max(line, axis=0) + toe
    arms: Array = np.abs(line - np.where(np.asarray(moment) >= 0.0, near, far))
    return fastener_pull(np.abs(moment), arms, np.sum(arms**2, axis=0))
