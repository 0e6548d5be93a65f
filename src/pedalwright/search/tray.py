"""How large a foot-tub has to be for every shoe on every pedal."""

from dataclasses import dataclass

import numpy as np

from pedalwright.assess import assess
from pedalwright.assess.legs import legs
from pedalwright.core.points import RIGHT, Point
from pedalwright.design import Design
from pedalwright.driver import Seated
from pedalwright.search.changes import one

#: Back of a shoe behind its heel point, and what is left around shoes, mm (ours).
HEEL_BEHIND, AROUND = 40.0, 25.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Tray:
    """The opening in the floor, in car axes, and how deep it goes."""

    front: float
    rear: float
    left: float
    right: float
    depth: float

    @property
    def length(self) -> float:
        """Along the car."""
        return self.rear - self.front

    @property
    def width(self) -> float:
        """Across the car."""
        return self.right - self.left


def tray(design: Design, depth: float) -> Tray:
    """Around the part of every shoe that is below the floor of the car, over all strokes.

    Where the sole comes up through the floor's level the opening may end; it ends at a wall, too.
    """
    drivers = legs(design, assess(design))
    seats = [seat for one in drivers for seat in (one.clutch, one.brake, one.throttle)]
    boxes = [_below(seat, depth) for seat in seats]
    front, left = (float(np.nanmin([box[i] for box in boxes])) - AROUND for i in (0, 2))
    rear, right = (float(np.nanmax([box[i] for box in boxes])) + AROUND for i in (1, 3))
    middle = Point((front + rear) / 2, (left + right) / 2, one(design.survey.face("floor").offset))
    wall_left = middle.y - design.survey.room(middle, -RIGHT)
    wall_right = middle.y + design.survey.room(middle, RIGHT)
    return Tray(
        front=front,
        rear=rear,
        left=float(np.fmax(left, wall_left)),
        right=float(np.fmin(right, wall_right)),
        depth=depth,
    )


def _below(seat: Seated, depth: float) -> tuple[float, float, float, float]:
    """Front, rear, left and right of a shoe's part below the floor."""
    heel, toe = seat.stroke.heel, seat.stroke.toe
    rise = toe.z - heel.z
    share = np.clip((seat.heel_height + depth - heel.z) / rise, 0.0, 1.0)
    front, aside = heel.x + (toe.x - heel.x) * share, heel.y + (toe.y - heel.y) * share
    half = seat.body.shoe_width / 2
    return (
        float(np.nanmin(front)),
        float(np.nanmax(heel.x)) + HEEL_BEHIND,
        float(np.nanmin(np.minimum(heel.y, aside))) - float(half),
        float(np.nanmax(np.maximum(heel.y, aside))) + float(half),
    )
