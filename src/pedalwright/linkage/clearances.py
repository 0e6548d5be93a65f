"""What is left between moving pedals and the car around them, over the whole stroke.

Arms and pads are boxes: an arm is a straight flat bar from its pivot to the height of its pad,
a pad a plate across its end, with a face of its own. The joggle of an arm is not drawn: it
belongs between the two.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import prod
from typing import TypeVar, cast

import numpy as np

from pedalwright.core.batch import over
from pedalwright.core.points import RIGHT, Point
from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import Array, Num, mm, rad
from pedalwright.linkage.boxes import Box, level_box, separation
from pedalwright.linkage.circles import turned
from pedalwright.linkage.parts import Lever, Pedal
from pedalwright.survey.parts import Face, Line, Obstacle

T = TypeVar("T")

#: Positions of the stroke at which a pedal is looked at.
LOOKS = 3
#: Pedals that stay further apart than this, seen from ahead, are not looked at more closely.
CLOSE = 10.0
#: A shoe's fore part and its rounded tip: from and to, as shares of its length from the heel,
#: and how much of its width it has there. Its height over the sole (ours: from three trainers).
SHOE_PARTS = ((0.45, 0.85, 1.0), (0.85, 1.0, 0.6))
SHOE_HEIGHT = 60.0
#: Shoes times variants that are laid out together, so that a large batch fits in memory.
AT_ONCE = 100_000
#: An accelerator's arm, across the car and along the push (ours: it carries next to nothing).
ACCELERATOR_ARM = (6.0, 20.0)


@dataclass(frozen=True, kw_only=True, slots=True)
class Moving:
    """A pedal, how stout its arm is, and how far it turns."""

    name: str
    lever: Lever
    pedal: Pedal
    #: Across the car, and in the direction of the push.
    arm_thickness: mm
    arm_depth: mm
    full_angle: rad


@dataclass(frozen=True, kw_only=True, slots=True)
class Clearance:
    """Least distance of one pedal to one thing, over the stroke."""

    pedal: str
    thing: str
    distance: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Shoe:
    """A shoe on a pad, at the places of the stroke; they stand in front of the variants."""

    about: str
    heel: Point
    toe: Point
    #: Level, square to the sole, towards the car's right.
    across: Point
    width: mm

    @property
    def places(self) -> int:
        """How many places there are."""
        return len(cast("Array", self.heel.x))


@dataclass(frozen=True, kw_only=True, slots=True)
class Clearances:
    """Everything an arm or a pad could touch."""

    lines: tuple[Clearance, ...]
    faces: tuple[Clearance, ...]
    obstacles: tuple[Clearance, ...]
    #: Pedal to pedal, wherever either of the two is.
    pedals: tuple[Clearance, ...]


@no_answer_is_nan
def clearances(
    moving: Sequence[Moving],
    lines: Sequence[Line],
    faces: Sequence[Face],
    obstacles: Sequence[Obstacle] = (),
) -> Clearances:
    """Every pedal against everything measured, and each pedal against the next in the row.

    All is laid out on axes in front of the variants: things, arm or pad, looks, pedals.
    """
    variants = np.broadcast_shapes(
        *_shapes((tuple(moving), tuple(lines), tuple(faces), tuple(obstacles)))
    )
    bars = _spread([_bar(one) for one in moving], (-1, *variants), variants)
    boxes = _boxes(bars, np.linspace(0.0, bars.full_angle, LOOKS))
    return Clearances(
        lines=_to_lines(moving, boxes, lines, variants),
        faces=_to_faces(moving, boxes, bars.lever.pivot, faces, variants),
        obstacles=_to_obstacles(moving, boxes, obstacles, variants),
        pedals=_to_next(moving, boxes),
    )


@no_answer_is_nan
def shoe_clearances(shoes: Sequence[Shoe], lines: Sequence[Line]) -> tuple[Clearance, ...]:
    """Each shoe to every tube, the least over its stroke."""
    if not lines or not shoes:
        return ()
    behind = [np.shape(shoe.heel.x)[1:] for shoe in shoes]
    widths = [np.shape(shoe.width) for shoe in shoes]
    variants = np.broadcast_shapes(*behind, *widths, *_shapes(tuple(lines)))
    tubes = _spread([_tube(line) for line in lines], (-1, 1, 1, *variants), variants)
    some = max(1, AT_ONCE // prod(variants))
    least: list[Array] = []
    for shoe_group in _groups(shoes, some):
        starts = np.cumsum([0, *(shoe.places for shoe in shoe_group[:-1])])
        gaps = _soles(shoe_group, variants).to_segment(tubes.start, tubes.end) - tubes.diameter / 2
        least.append(np.minimum.reduceat(np.min(gaps, axis=1), starts, axis=1))
    names = tuple(shoe.about for shoe in shoes)
    return _each(names, lines, np.concatenate(least, axis=1))


def _groups(shoes: Sequence[Shoe], places: int) -> Iterator[Sequence[Shoe]]:
    """Shoes in a row, of as many places as fit in memory together."""
    first = taken = 0
    for i, shoe in enumerate(shoes):
        if i > first and taken + shoe.places > places:
            yield shoes[first:i]
            first, taken = i, 0
        taken += shoe.places
    yield shoes[first:]


def _soles(shoes: Sequence[Shoe], variants: tuple[int, ...]) -> Box:
    """Fore part and tip of every shoe at every place: axes parts, places, variants."""
    length = sum(shoe.places for shoe in shoes)

    def joined(numbers: Sequence[Num]) -> Array:
        row = np.empty((length, *variants))
        first = 0
        for shoe, number in zip(shoes, numbers, strict=True):
            row[first : first + shoe.places] = number
            first += shoe.places
        return row

    def points(found: Sequence[Point]) -> Point:
        x, y, z = [p.x for p in found], [p.y for p in found], [p.z for p in found]
        return Point(joined(x), joined(y), joined(z))

    heel, across = points([s.heel for s in shoes]), points([s.across for s in shoes])
    sole = points([s.toe for s in shoes]) - heel
    size = sole.length()
    along = sole * (1.0 / size)
    up = across.cross(along)
    shape = (-1, *(1,) * np.ndim(size))
    begins, ends, share = (np.reshape(row, shape) for row in zip(*SHOE_PARTS, strict=True))
    return Box(
        middle=heel + sole * ((begins + ends) / 2) + up * (SHOE_HEIGHT / 2),
        along=along,
        through=up,
        across=across,
        half_along=size * ((ends - begins) / 2),
        half_through=SHOE_HEIGHT / 2,
        half_across=joined([shoe.width for shoe in shoes]) * (share / 2),
    )


@dataclass(frozen=True, kw_only=True, slots=True)
class _Bar:
    """What of a pedal is a number."""

    lever: Lever
    pad_radius: mm
    pad_width: mm
    pad_height: mm
    pad_thickness: mm
    pad_face: rad
    arm_thickness: mm
    arm_depth: mm
    full_angle: rad


def _bar(one: Moving) -> _Bar:
    return _Bar(
        lever=one.lever,
        pad_radius=one.pedal.pad_radius,
        pad_width=one.pedal.pad_width,
        pad_height=one.pedal.pad_height,
        pad_thickness=one.pedal.pad_thickness,
        pad_face=one.pedal.pad_face,
        arm_thickness=one.arm_thickness,
        arm_depth=one.arm_depth,
        full_angle=one.full_angle,
    )


def _boxes(bars: _Bar, angle: rad) -> Box:
    """Arms and pads, turned: axes arm or pad, looks, pedals, variants."""
    lever = bars.lever
    pad = turned(lever, lever.pad, angle)
    across = lever.axis
    span = pad - lever.pivot - across * across.dot(pad - lever.pivot)
    along = span * (1.0 / bars.pad_radius)
    along = _both(along, along.turned(across, bars.pad_face))
    return Box(
        middle=_both(lever.pivot + span * 0.5, pad),
        along=along,
        through=across.cross(along),
        across=across,
        half_along=np.stack([bars.pad_radius, bars.pad_height])[:, None] / 2,
        half_through=np.stack([bars.arm_depth, bars.pad_thickness])[:, None] / 2,
        half_across=np.stack([bars.arm_thickness, bars.pad_width])[:, None] / 2,
    )


def _both(arm: Point, pad: Point) -> Point:
    """Arm and pad as one, on an axis in front."""
    return Point(np.stack([arm.x, pad.x]), np.stack([arm.y, pad.y]), np.stack([arm.z, pad.z]))


def _to_lines(
    moving: Sequence[Moving], boxes: Box, lines: Sequence[Line], variants: tuple[int, ...]
) -> tuple[Clearance, ...]:
    if not lines:
        return ()
    tubes = _in_front([_tube(line) for line in lines], variants)
    least: Array = np.min(
        boxes.to_segment(tubes.start, tubes.end) - tubes.diameter / 2, axis=(1, 2)
    )
    return _each(_names(moving), lines, least)


@dataclass(frozen=True, kw_only=True, slots=True)
class _Tube:
    start: Point
    end: Point
    diameter: mm


def _tube(line: Line) -> _Tube:
    return _Tube(start=line.start, end=line.end, diameter=line.diameter)


def _to_faces(
    moving: Sequence[Moving],
    boxes: Box,
    pivot: Point,
    faces: Sequence[Face],
    variants: tuple[int, ...],
) -> tuple[Clearance, ...]:
    """A face that the pivot stands behind is one the arm passes through, and is not counted."""
    if not faces:
        return ()
    planes = _in_front([face.plane for face in faces], variants)
    heights: Num = np.min(boxes.above(planes), axis=(1, 2))
    behind = np.asarray(planes.height(pivot))[:, 0, 0] < 0.0
    return _each(_names(moving), faces, np.where(behind, np.inf, heights))


def _to_obstacles(
    moving: Sequence[Moving], boxes: Box, obstacles: Sequence[Obstacle], variants: tuple[int, ...]
) -> tuple[Clearance, ...]:
    if not obstacles:
        return ()
    things = _in_front([level_box(thing.low, thing.high) for thing in obstacles], variants)
    gaps: Array = np.min(separation(boxes, things), axis=(1, 2))
    return _each(_names(moving), obstacles, gaps)


def _each(
    movers: Sequence[str], things: Sequence[Line | Face | Obstacle], distances: Array
) -> tuple[Clearance, ...]:
    """Things in front, movers behind."""
    return tuple(
        Clearance(pedal=mover, thing=thing.name, distance=distance)
        for thing, row in zip(things, distances, strict=True)
        for mover, distance in zip(movers, row, strict=True)
    )


def _names(moving: Sequence[Moving]) -> tuple[str, ...]:
    return tuple(one.name for one in moving)


def _to_next(moving: Sequence[Moving], boxes: Box) -> tuple[Clearance, ...]:
    """Each pedal and its neighbour, wherever each of the two is in its own stroke.

    Seen from ahead first: pedals that stay apart there never meet. Only where they come close
    are all their positions tried against each other.
    """
    side, half = RIGHT.dot(boxes.middle), boxes.reach(RIGHT)
    left, right = np.min(side - half, axis=(0, 1)), np.max(side + half, axis=(0, 1))
    apart = np.maximum(left[1:] - right[:-1], left[:-1] - right[1:])
    if np.any(apart < CLOSE):
        apart = np.where(apart < CLOSE, _in_space(boxes), apart)
    pairs = zip(moving[:-1], moving[1:], apart, strict=True)
    return tuple(Clearance(pedal=a.name, thing=b.name, distance=gap) for a, b, gap in pairs)


def _in_space(boxes: Box) -> Num:
    """Every position of a pedal against every one of the next."""
    shape = np.shape(boxes.middle.x)

    def first(number: Num) -> Num:
        return np.broadcast_to(number, shape)[:, :, None, None, :-1]

    def second(number: Num) -> Num:
        return np.broadcast_to(number, shape)[None, None, :, :, 1:]

    gaps: Num = np.min(separation(over(first, boxes), over(second, boxes)), axis=(0, 1, 2, 3))
    return gaps


def _in_front(things: Sequence[T], variants: tuple[int, ...]) -> T:
    """Several things as one, on an axis in front of arm or pad, looks and pedals."""
    return _spread(things, (-1, 1, 1, 1, *variants), variants)


def _spread(things: Sequence[T], shape: tuple[int, ...], variants: tuple[int, ...]) -> T:
    """Several things as one: each number spread over the batch, then laid out in `shape`."""

    def together(*numbers: Num) -> Array:
        if not variants:  # ten times quicker, and what the page asks for at every move
            return np.array(numbers, dtype=np.float64).reshape(shape)
        rows = np.stack([np.broadcast_to(number, variants) for number in numbers])
        return rows.reshape(shape)

    many: T = over(together, *things)
    return many


def _shapes(tree: object) -> Iterator[tuple[int, ...]]:
    """The shape of every batched number in a tree."""
    if isinstance(tree, np.ndarray):
        yield np.shape(cast("Array", tree))
    elif isinstance(tree, tuple):
        for item in cast("tuple[object, ...]", tree):
            yield from _shapes(item)
    else:  # every part of the house has slots
        for name in getattr(tree, "__slots__", ()):
            yield from _shapes(getattr(tree, name))
