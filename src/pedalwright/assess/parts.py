"""What an assessment holds: for each pedal its motion and what it comes to, and the findings."""

from dataclasses import dataclass

from pedalwright import linkage
from pedalwright.brakes import BrakeResult
from pedalwright.brakes.parts import Budget, Curve
from pedalwright.clutch import ClutchResult
from pedalwright.core.checks import Finding
from pedalwright.core.faults import Fault
from pedalwright.core.points import Point
from pedalwright.core.units import mm
from pedalwright.driver import Body, Person, Seated, body_spread
from pedalwright.hydraulics import BarTilt, Strokes
from pedalwright.linkage import Clearance, Clearances, Forces, Lever, Position, Rod, Stroke
from pedalwright.structure import Strength
from pedalwright.throttle import Opening


@dataclass(frozen=True, kw_only=True, slots=True)
class BrakePedal:
    """The brake, from the foot to the road."""

    lever: Lever
    rod: Rod
    #: Rest to hard stop; axis 0 is the stations.
    stroke: Stroke
    hard_stop: Position
    front_alone: Position
    rear_alone: Position
    #: The pad's arc before the toes meet the wall.
    room: mm
    #: At the hard stop, at 500 N.
    forces: Forces
    result: BrakeResult
    strokes: Strokes
    #: None without a balance bar.
    bar: BarTilt | None
    curve: Curve
    budget: Budget
    #: The pad's arc at the hard stop with hot drums; None without a drum that was weighed.
    hot_travel: mm | None
    #: Causes of travel nobody gave numbers for.
    not_counted: tuple[str, ...]
    strength: Strength

    @property
    def locks_at(self) -> mm:
        """The pad's arc before rod and arm come into line; nan where they do not."""
        return linkage.locks_at(self.lever, self.rod)


@dataclass(frozen=True, kw_only=True, slots=True)
class ClutchPedal:
    """The clutch, from the foot to the release bearing."""

    lever: Lever
    rod: Rod
    stroke: Stroke
    #: Where the stroke ends: released, or at the wall if that comes first.
    full: Position
    room: mm
    result: ClutchResult
    strength: Strength

    @property
    def locks_at(self) -> mm:
        """The pad's arc before rod and arm come into line; nan where they do not."""
        return linkage.locks_at(self.lever, self.rod)


@dataclass(frozen=True, kw_only=True, slots=True)
class ThrottlePedal:
    """The accelerator, from the foot to the spindle."""

    lever: Lever
    #: Pad centre with the pedal at its stop.
    pad_full: Point
    result: Opening


@dataclass(frozen=True, kw_only=True, slots=True)
class Placed:
    """One driver at the three pedals."""

    name: str
    person: Person
    clutch: Seated
    brake: Seated
    throttle: Seated

    @property
    def spread(self) -> Body:
        """Uncertainty of the lengths the legs are drawn with, 1 SD."""
        return body_spread(self.person)


@dataclass(frozen=True, kw_only=True, slots=True)
class Assessment:
    """All that can be said about a design, or about a batch of them."""

    brake: BrakePedal
    clutch: ClutchPedal
    throttle: ThrottlePedal
    drivers: tuple[Placed, ...]
    clearances: Clearances
    #: Each driver's shoe on each pedal to every tube.
    shoes: tuple[Clearance, ...]
    #: Why the box could not be judged; none where it was, or where none is described.
    box_faults: tuple[Fault, ...]
    findings: tuple[Finding, ...]
