"""What a drawing shows of one pedal, be it brake or clutch."""

from dataclasses import dataclass
from typing import Literal

from pedalwright.assess import Assessment
from pedalwright.core.points import Point
from pedalwright.design import BrakeDesign, ClutchDesign, Design
from pedalwright.documents.pictures.places import seen
from pedalwright.drawing import XY
from pedalwright.driver import Seated
from pedalwright.linkage import Lever, Position, Relay, Relayed

Which = Literal["brake", "clutch"]
PEDALS: tuple[Which, ...] = ("brake", "clutch")


@dataclass(frozen=True, slots=True)
class Chain:
    """What stands between the pedal's pin and the cylinder."""

    #: Each from end to end, the one at the pedal first.
    rods: tuple[tuple[XY, XY], ...]
    #: Pin, tube and pin of a relay lever, if there is one.
    relay: tuple[XY, XY, XY] | None


@dataclass(frozen=True, kw_only=True, slots=True)
class Shown:
    """A pedal with its parts, its lever at rest, where it ends, and who has his foot on it."""

    which: Which
    part: BrakeDesign | ClutchDesign
    lever: Lever
    #: Hard stop of the brake, end of the clutch's stroke.
    full: Position
    seats: tuple[tuple[str, Seated], ...]

    @property
    def at_rest(self) -> Chain:
        """Rods and relay lever with the foot off."""
        rod = self.part.rod
        return _chain(self.lever.pin, rod.socket, rod.relay, rod.relay)

    @property
    def pressed(self) -> Chain:
        """The same at the end of the stroke."""
        return _chain(self.full.pin, self.full.socket, self.full.relay, self.part.rod.relay)


def shown(design: Design, assessment: Assessment, which: Which) -> Shown:
    """One pedal of an assessed design."""
    if which == "brake":
        return Shown(
            which=which,
            part=design.brake,
            lever=assessment.brake.lever,
            full=assessment.brake.hard_stop,
            seats=tuple((placed.name, placed.brake) for placed in assessment.drivers),
        )
    return Shown(
        which=which,
        part=design.clutch,
        lever=assessment.clutch.lever,
        full=assessment.clutch.full,
        seats=tuple((placed.name, placed.clutch) for placed in assessment.drivers),
    )


def _chain(pin: Point, socket: Point, pins: Relay | Relayed | None, relay: Relay | None) -> Chain:
    if pins is None or relay is None:
        return Chain(((seen(pin), seen(socket)),), None)
    driven, driving = seen(pins.driven_pin), seen(pins.driving_pin)
    rods = ((seen(pin), driven), (driving, seen(socket)))
    return Chain(rods, (driven, seen(relay.pivot), driving))
