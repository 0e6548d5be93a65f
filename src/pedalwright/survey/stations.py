"""A net of marks: what is known of each, and what was measured between them, with its scatter."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from pedalwright.core.points import REARWARD, RIGHT, UP, Point
from pedalwright.core.units import mm, rad
from pedalwright.survey.parts import NOWHERE

Axis: TypeAlias = Literal["x", "y", "z"]
AXES: tuple[Axis, ...] = ("x", "y", "z")
EXACTLY = Point(0.0, 0.0, 0.0)


@dataclass(frozen=True, kw_only=True, slots=True)
class Station:
    """A mark before the adjustment."""

    name: str
    #: nan for what nobody knows.
    at: Point = NOWHERE
    #: Standard deviations of the coordinates that are known; 0 holds one where it is.
    sigma: Point = EXACTLY
    #: Of two places that fit the tapes equally, the one further this way is meant.
    side: Point | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Distance:
    """A tape between two marks."""

    hook: str
    to: str
    length: mm
    sigma: mm

    @property
    def about(self) -> str:
        """What it is called in a sentence."""
        return f"{self.hook}–{self.to}"

    @property
    def ends(self) -> tuple[str, ...]:
        """The marks it ties."""
        return self.hook, self.to


@dataclass(frozen=True, kw_only=True, slots=True)
class Step:
    """How far a mark stands from another, or from the datum, along one axis of the car.

    Or along the level, about that way, where the car did not stand level.
    """

    mark: str
    #: Empty for the datum.
    base: str
    axis: Axis
    length: mm
    sigma: mm
    #: Along which it was read in a car that did not stand level; left out, along the axis.
    way: Point | None = None

    @property
    def about(self) -> str:
        """What it is called in a sentence."""
        way = {"x": "rearward", "y": "right", "z": "up"}[self.axis]
        return f"{self.mark} {way} of {self.base or 'the datum'}"

    @property
    def along(self) -> Point:
        """The direction it was read along."""
        return self.way or {"x": REARWARD, "y": RIGHT, "z": UP}[self.axis]

    @property
    def ends(self) -> tuple[str, ...]:
        """The marks it ties."""
        return (self.base, self.mark) if self.base else (self.mark,)


@dataclass(frozen=True, kw_only=True, slots=True)
class Slope:
    """How steeply the line from one mark to another rises."""

    foot: str
    head: str
    angle: rad
    sigma: rad
    #: Plumb upwards, in car axes.
    up: Point = UP

    @property
    def about(self) -> str:
        """What it is called in a sentence."""
        return f"rise of {self.foot}–{self.head}"

    @property
    def ends(self) -> tuple[str, ...]:
        """The marks it ties."""
        return self.foot, self.head


Sight: TypeAlias = Distance | Step | Slope
