"""What is left around one driver's legs over the strokes of his pedals.

Walls, tubes and places are laid out on axes in front of the variants: things, places, variants.
"""

from collections.abc import Sequence
from math import prod
from typing import cast

import numpy as np

from pedalwright.core.points import RIGHT, Plane, Point, at
from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import Array, Num
from pedalwright.driver.clearances import (
    INSTEP_RADIUS,
    SHIN_RADIUS,
    Shoe,
    between_segments,
    thigh_to_rim,
    toe_to_wall,
    xyz,
)
from pedalwright.driver.parts import Body, Footwell, Near, Posture
from pedalwright.driver.places import Places

#: Numbers that are laid out together, so that a large batch fits in memory.
AT_ONCE = 1_000_000
#: Upright planes along the car: what lies above the first lies right of its middle.
_LEFTWARD, _RIGHTWARD = Plane(normal=RIGHT, offset=0.0), Plane(normal=-RIGHT, offset=0.0)


@no_answer_is_nan
def around(body: Body, legs: Posture, footwell: Footwell, places: Places) -> list[Near]:
    """Stand by stand; `legs` has all places of all of them in front."""
    shoe = Shoe.of(body, legs)
    shin, *tops = _tubes(shoe, legs, footwell, places)
    left, right, *sides = _planes(shoe, footwell, places)
    tops += [shoe.to_box(box) for box in footwell.boxes]
    covers = [shoe.toe_to_cover(cover) for cover in footwell.covers]
    rows = [thigh_to_rim(legs, footwell.rim), shin, left, right]
    some = [_least(gaps) for gaps in (tops, covers, sides) if gaps]
    found = places.least(np.array([*rows, *some]))
    ahead = toe_to_wall(legs, footwell.wall)
    there = iter(range(len(rows), len(found)))
    top, cover, side = (next(there) if gaps else None for gaps in (tops, covers, sides))
    return [
        Near(
            knee_rim=found[0, i],
            shin_column=found[1, i],
            toe_wall=at(ahead, stand.rows),
            instep=None if top is None else found[top, i],
            toe_cover=None if cover is None else found[cover, i],
            shoe_side=None if side is None else found[side, i],
            shoe_left=found[2, i],
            shoe_right=-found[3, i],
        )
        for i, stand in enumerate(places.stands)
    ]


def _tubes(shoe: Shoe, legs: Posture, footwell: Footwell, places: Places) -> list[Num]:
    """Shin to column, then instep to each pivot tube."""
    tubes = (footwell.column, *footwell.pivots)
    starts = _things([tube.start for tube in tubes], places)
    ends = _things([tube.end for tube in tubes], places)
    flesh = np.array([SHIN_RADIUS, *[INSTEP_RADIUS] * len(footwell.pivots)])
    radii = _thing([tube.diameter for tube in tubes], places) / 2
    rear, fore = shoe.ridge()
    ways = [(xyz(legs.knee), xyz(legs.ankle)), *[(rear, fore)] * len(footwell.pivots)]
    found: list[Num] = []
    for some in _groups(len(tubes), places):
        a, b = (np.stack(points, axis=1) for points in zip(*ways[some], strict=True))
        gaps = between_segments(a, b, starts[:, some], ends[:, some]) - radii[some]
        found += [gap - own for gap, own in zip(_each(gaps), flesh[some], strict=True)]
    return found


def _planes(shoe: Shoe, footwell: Footwell, places: Places) -> list[Num]:
    """The shoe's edge on the left, that on the right with its sign turned, then wall by wall."""
    walls = (_LEFTWARD, _RIGHTWARD, *footwell.sides)
    normals = _things([wall.normal for wall in walls], places)
    offsets = _thing([wall.offset for wall in walls], places)
    found: list[Num] = []
    for some in _groups(len(walls), places):
        found += _each(shoe.to_planes(normals[:, some], offsets[some]))
    return found


def _groups(things: int, places: Places) -> list[slice]:
    """All things at once, or one after the other where the batch is large."""
    step = max(1, AT_ONCE // max(1, places.length * prod(places.variants)))
    return [slice(first, first + step) for first in range(0, things, step)]


def _things(points: Sequence[Point], places: Places) -> Array:
    x, y, z = [p.x for p in points], [p.y for p in points], [p.z for p in points]
    return np.array([_thing(numbers, places) for numbers in (x, y, z)])


def _thing(numbers: Sequence[Num], places: Places) -> Array:
    """Something of each thing: (things, 1, *variants)."""
    if not places.variants:
        return np.array(numbers)[:, np.newaxis]
    wide = [np.broadcast_to(number, places.variants) for number in numbers]
    return np.stack(wide)[:, np.newaxis]


def _each(things: Num) -> list[Num]:
    return list(cast("Array", things))


def _least(gaps: list[Num]) -> Num:
    """The least to any of several things."""
    nearest = gaps[0]
    for gap in gaps[1:]:
        nearest = np.minimum(nearest, gap)
    return nearest
