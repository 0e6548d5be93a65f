"""Several carburettors on one pedal: whether they open alike, and how much each lets through."""

import numpy as np

from pedalwright.core.units import Ratio, rad
from pedalwright.throttle.formulas import (
    open_share_with_shaft,
    plate_angle,
    plate_width,
    shaft_in_bore,
    shaft_on_plate,
)
from pedalwright.throttle.parts import Barrel, Follower
from pedalwright.throttle.stages import fitted


def follower_angle(
    follower: Follower, cross_shaft: rad, spindle: rad, middles: tuple[rad, rad]
) -> rad:
    """Turn of a further spindle from rest, for those of the cross-shaft and the first spindle.

    `middles` are the turns of these two with the pedal at mid-travel, where a square rod is
    square.
    """
    from_shaft = follower.driven_from == "cross-shaft"
    driving, middle = (cross_shaft, middles[0]) if from_shaft else (spindle, middles[1])
    return fitted(follower.stage, middle).turned(driving).angle


def unequal(spindle: rad, followers: tuple[rad, ...], full_opening: rad) -> rad | None:
    """Largest difference from the first spindle over the stroke; each stops at full opening."""
    if not followers:
        return None
    first = np.minimum(spindle, full_opening)
    apart = [np.abs(np.minimum(other, full_opening) - first) for other in followers]
    largest: rad = np.max(np.stack(np.broadcast_arrays(*apart)), axis=(0, 1))
    return largest


def open_share(barrel: Barrel, opened: rad) -> Ratio:
    """Open share of the bore past plate and shaft, the spindle opened by so much.

    Once the shaft hides the plate, turned however far, the share stays.
    """
    shaft = barrel.shaft / barrel.bore
    width = plate_width(plate_angle(barrel.closed, opened), barrel.closed)
    covered = np.maximum(width, shaft)
    return open_share_with_shaft(shaft_in_bore(shaft), shaft_on_plate(shaft, covered))
