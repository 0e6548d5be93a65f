"""Drivers on their pedals, and the places of each stroke, on one axis in front of the variants.

One leg after the other would cost ten times as much: an assessment asks for some twenty.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np

from pedalwright.core.points import Point
from pedalwright.core.units import Array, Num
from pedalwright.driver.parts import Body, Driver, Footwell, Tread


@dataclass(frozen=True, slots=True)
class Stand:
    """One driver on one pedal."""

    driver: Driver
    body: Body
    tread: Tread
    #: His hip joint on the pedal's side.
    hip: Point
    #: Where the places of the stroke lie on the axis.
    rows: slice

    @property
    def full(self) -> int:
        """Where full travel lies on the axis."""
        return int(self.rows.start) + self.tread.places.index("full")


@dataclass(frozen=True, slots=True)
class Places:
    """Every driver on every pedal, and the shape of the batch behind each place."""

    stands: tuple[Stand, ...]
    starts: tuple[int, ...]
    length: int
    variants: tuple[int, ...]

    @classmethod
    def of(
        cls, stands: Sequence[tuple[Driver, Body, Tread, Point]], floor: Num, footwell: Footwell
    ) -> "Places":
        """In that order; floor and footwell may be batched where drivers and pedals are not."""
        batched = [np.shape(number) for number in (floor, *_numbers(footwell)) if np.ndim(number)]
        variants = np.broadcast_shapes(*batched)
        for driver, body, tread, hip in stands:
            variants = np.broadcast_shapes(
                variants, _shape(driver, body, hip), np.shape(tread.pads.z)[1:]
            )
        made: list[Stand] = []
        first = 0
        for driver, body, tread, hip in stands:
            last = first + len(tread.places)
            deep = _deepened(tread, len(variants))
            made.append(Stand(driver, body, deep, hip, slice(first, last)))
            first = last
        starts = tuple(stand.rows.start for stand in made)
        return cls(tuple(made), starts, first, variants)

    def numbers(self, parts: Sequence[Num]) -> Array:
        """A number for each stand, or for each of its places, as one: (places, *variants)."""
        joined = np.empty((self.length, *self.variants))
        for stand, part in zip(self.stands, parts, strict=True):
            joined[stand.rows] = part
        return joined

    def points(self, parts: Sequence[Point]) -> Point:
        """The same for points."""
        x, y, z = [p.x for p in parts], [p.y for p in parts], [p.z for p in parts]
        return Point(self.numbers(x), self.numbers(y), self.numbers(z))

    def bodies(self) -> Body:
        """The lengths of each stand's driver."""
        bodies = [stand.body for stand in self.stands]
        return Body(
            thigh=self.numbers([body.thigh for body in bodies]),
            shank=self.numbers([body.shank for body in bodies]),
            heel_to_ball=self.numbers([body.heel_to_ball for body in bodies]),
            ankle_forward=self.numbers([body.ankle_forward for body in bodies]),
            ankle_height=self.numbers([body.ankle_height for body in bodies]),
            shoe_length=self.numbers([body.shoe_length for body in bodies]),
            shoe_width=self.numbers([body.shoe_width for body in bodies]),
        )

    def least(self, numbers: Num) -> Array:
        """The least over each stand's stroke: (things, stands, *variants)."""
        least: Array = np.minimum.reduceat(numbers, self.starts, axis=1)
        return least


def _numbers(footwell: Footwell) -> Iterator[Num]:
    """Every number of a footwell."""
    tubes, boxes = (footwell.column, *footwell.pivots), footwell.boxes
    planes = (footwell.wall, *footwell.sides, *footwell.covers)
    yield from (tube.diameter for tube in tubes)
    yield from (plane.offset for plane in planes)
    for point in (
        footwell.rim,
        *(end for tube in tubes for end in (tube.start, tube.end)),
        *(plane.normal for plane in planes),
        *(corner for box in boxes for corner in (box.low, box.high)),
    ):
        yield from (point.x, point.y, point.z)


def _shape(driver: Driver, body: Body, hip: Point) -> tuple[int, ...]:
    lengths = body.thigh + body.shank + body.heel_to_ball + body.shoe_length + body.shoe_width
    foot = body.ankle_forward + body.ankle_height
    return np.shape(hip.x + hip.y + hip.z + driver.trunk + driver.knees_out + lengths + foot)


def _deepened(tread: Tread, depth: int) -> Tread:
    """A pedal whose places stand in front of `depth` axes of variants."""

    def behind(number: Num) -> Array:
        many = np.asarray(number)
        if many.ndim > depth:
            return many
        deep = many.reshape(*many.shape, *(1,) * (1 + depth - many.ndim))
        return np.broadcast_to(deep, (len(tread.places), *(1,) * depth))

    pads = tread.pads
    if np.ndim(pads.x) > depth and np.ndim(pads.y) > depth and np.ndim(tread.faces) > depth:
        return tread
    return replace(
        tread,
        pads=Point(behind(pads.x), behind(pads.y), behind(pads.z)),
        faces=behind(tread.faces),
    )
