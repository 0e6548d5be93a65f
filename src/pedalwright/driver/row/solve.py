"""The row of pads across the footwell: gaps between pads, walls and shoes, and steps.

Everything is counted from the clutch's side, so a car for the other hand gives the same answers.
"""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.points import Point, at
from pedalwright.core.units import Num, mm
from pedalwright.driver.parts import Row, Seated, Spacing, Tread
from pedalwright.driver.push import HARDEST


@dataclass(frozen=True, kw_only=True, slots=True)
class Steps:
    """How much nearer to the driver the brake pad stands than the accelerator, along the car."""

    rest: mm
    #: The accelerator pressed as for cruising, the brake at rest.
    cruising: mm
    #: The brake under the hardest push, the accelerator at rest.
    braking: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Beside:
    """The least that is left beside a driver's shoes, wherever in their strokes the pedals are."""

    #: Between a shoe on the clutch and one on the brake; negative: they overlap.
    shoes: mm
    #: Between a shoe on either of the two and the other one's pad.
    brake_clutch: mm
    accelerator_brake: mm
    #: Shoe to the wall beside it.
    clutch_wall: mm
    accelerator_wall: mm


def spacing(row: Row) -> Spacing:
    """Gaps between the pads and to the walls, across the car."""
    return Spacing(
        accelerator_brake=row.accelerator.left - row.brake.right,
        brake_clutch=row.brake.left - row.clutch.right,
        clutch_wall=row.clutch.left - row.left_wall,
        brake_left_wall=row.brake.left - row.left_wall,
        brake_right_wall=row.right_wall - row.brake.right,
    )


def steps(brake: Tread, accelerator: Tread, cruising: Point) -> Steps:
    """From the pads' places; `cruising` is that of the accelerator at a steady speed."""
    still, hardest = at(brake.pads.x, 0), at(brake.pads.x, brake.places.index(HARDEST))
    up = at(accelerator.pads.x, 0)
    return Steps(rest=still - up, cruising=still - cruising.x, braking=hardest - up)


def beside(row: Row, clutch: Seated, brake: Seated, accelerator: Seated, hand: float) -> Beside:
    """What the shoes leave of a row; `hand` is 1 where the clutch is on the car's left, else -1."""
    clutch_edges, brake_edges, last_edges = (
        _edges(seat, hand) for seat in (clutch, brake, accelerator)
    )
    return Beside(
        shoes=brake_edges[0] - clutch_edges[1],
        brake_clutch=np.minimum(
            brake_edges[0] - row.clutch.right, row.brake.left - clutch_edges[1]
        ),
        accelerator_brake=np.minimum(
            row.accelerator.left - brake_edges[1], last_edges[0] - row.brake.right
        ),
        clutch_wall=_wall(clutch),
        accelerator_wall=_wall(accelerator),
    )


def _edges(seat: Seated, hand: float) -> tuple[Num, Num]:
    """Both edges of all the room a shoe takes, from the clutch's side."""
    left, right = seat.near.shoe_left, seat.near.shoe_right
    return (left, right) if hand > 0.0 else (-right, -left)


def _wall(seat: Seated) -> Num:
    side = seat.near.shoe_side
    return np.nan if side is None else side
