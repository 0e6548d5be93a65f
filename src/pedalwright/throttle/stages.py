"""One stage of the chain as it was set up: a rod between two levers, or a cable on quadrants.

A square rod is a ball rod whose points follow from two radii and a length, so both kinds of rod
have one solver.
"""

from dataclasses import dataclass, replace
from typing import TypeAlias

import numpy as np

from pedalwright.core.points import RIGHT, Point
from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import rad
from pedalwright.throttle.formulas import cable_turn, cable_turn_needed, turn_from_rest
from pedalwright.throttle.parts import BallRod, Cable, SquareRod, Stage, Turn
from pedalwright.throttle.rods import Linked


@no_answer_is_nan
def turned(stage: Stage, angle: rad, middle: rad) -> Turn:
    """What a stage makes of its driving lever's turn from rest.

    `angle` may be (stations,) or (stations, variants); `middle` is the driving lever's turn at
    the pedal's mid-travel, where a square rod is square.
    """
    return fitted(stage, middle).turned(angle)


@no_answer_is_nan
def turned_back(stage: Stage, angle: rad, middle: rad) -> rad:
    """The turn of the driving lever that turns the driven one by `angle`; nan if none does."""
    return fitted(stage, middle).turned_back(angle)


def placed(stage: SquareRod) -> BallRod:
    """A square rod at mid-travel, in a plane: rod level, both levers below it and upright."""
    drop = stage.driving_radius - stage.driven_radius
    return BallRod(
        driving_pivot=Point(0.0, 0.0, 0.0),
        driving_axis=RIGHT,
        driving_pin=Point(0.0, 0.0, stage.driving_radius),
        driven_pivot=Point(stage.rod_length, 0.0, drop),
        driven_axis=RIGHT,
        driven_pin=Point(stage.rod_length, 0.0, stage.driving_radius),
    )


@dataclass(frozen=True, slots=True)
class FittedSquare:
    """A rod fitted at the pedal's mid-travel, and how far its levers stand from rest there."""

    linked: Linked
    driving_middle: rad
    driven_middle: rad

    def turned(self, angle: rad) -> Turn:
        """Turn of the driven lever from rest, for the driving one's."""
        turn = self.linked.turned(angle - self.driving_middle)
        return Turn(
            angle=turn_from_rest(self.driven_middle, turn.angle),
            gearing=turn.gearing,
            rod_to_lever=turn.rod_to_lever,
        )

    def turned_back(self, angle: rad) -> rad:
        """Turn of the driving lever from rest, for the driven one's."""
        return self.linked.turned_back(angle - self.driven_middle) + self.driving_middle

    def moved(self, way: Point) -> "FittedSquare":
        """The same, with the driven axis carried along a way after the rod was fitted."""
        return replace(self, linked=self.linked.moved(way))


@dataclass(frozen=True, slots=True)
class FittedCable:
    """A cable; it takes up its slack before it turns anything."""

    cable: Cable

    def turned(self, angle: rad) -> Turn:
        """Turn of the driven quadrant from rest, for the driving one's."""
        cable = self.cable
        gearing = cable.driving_radius / cable.driven_radius + 0.0 * angle
        return Turn(
            angle=cable_turn(cable.driving_radius, angle, cable.slack, cable.driven_radius),
            gearing=gearing,
            rod_to_lever=np.pi / 2 + 0.0 * gearing,
        )

    def turned_back(self, angle: rad) -> rad:
        """Turn of the driving quadrant from rest, for the driven one's."""
        cable = self.cable
        return cable_turn_needed(cable.driven_radius, angle, cable.slack, cable.driving_radius)


Fitted: TypeAlias = Linked | FittedSquare | FittedCable


def fitted(stage: Stage, middle: rad) -> Fitted:
    """The stage as it was set up: a ball rod at rest, a square rod at the pedal's mid-travel."""
    if isinstance(stage, Cable):
        return FittedCable(stage)
    if isinstance(stage, BallRod):
        return Linked.by(stage)
    linked = Linked.by(placed(stage))
    return FittedSquare(linked, middle, -linked.turned(-middle).angle)
