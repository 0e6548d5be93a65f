"""What a drawing shows of one pedal, be it brake or clutch."""

from dataclasses import dataclass
from math import isfinite
from typing import Literal

from pedalwright.assess import Assessment
from pedalwright.assess.slides import foremost, place_of
from pedalwright.assess.stroke import PedalName
from pedalwright.core.points import Point
from pedalwright.design import BrakeDesign, ClutchDesign, Design
from pedalwright.documents.pictures.places import seen
from pedalwright.drawing import XY
from pedalwright.driver import Seated
from pedalwright.linkage import Lever, Position, Relay, Relayed, Rod

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
    rod: Rod
    #: Hard stop of the brake, end of the clutch's stroke.
    full: Position
    seats: tuple[tuple[str, Seated], ...]
    #: What the arm and pad come nearest to over the stroke, and the room left; the tightest first.
    near: tuple[tuple[str, float], ...]
    #: How far aft of the foremost place each driver has a box that slides.
    aft: tuple[tuple[str, float], ...]

    @property
    def at_rest(self) -> Chain:
        """Rods and relay lever with the foot off."""
        rod = self.rod
        return chain(self.lever.pin, rod.socket, rod.relay, rod.relay)

    @property
    def pressed(self) -> Chain:
        """The same at the end of the stroke."""
        return chain(self.full.pin, self.full.socket, self.full.relay, self.rod.relay)


def shown(design: Design, assessment: Assessment, which: Which) -> Shown:
    """One pedal of an assessed design, a box that slides in its foremost place."""
    ahead = foremost(design)
    places = ((driver.name, float(place_of(design, driver) - ahead)) for driver in design.drivers)
    aft = tuple((name, place) for name, place in places if place > 0.0)
    if which == "brake":
        return Shown(
            which=which,
            part=design.brake,
            lever=assessment.brake.lever,
            rod=assessment.brake.rod,
            full=assessment.brake.hard_stop,
            seats=tuple((placed.name, placed.brake) for placed in assessment.drivers),
            near=near(assessment, which),
            aft=aft,
        )
    return Shown(
        which=which,
        part=design.clutch,
        lever=assessment.clutch.lever,
        rod=assessment.clutch.rod,
        full=assessment.clutch.full,
        seats=tuple((placed.name, placed.clutch) for placed in assessment.drivers),
        near=near(assessment, which),
        aft=aft,
    )


def near(assessment: Assessment, which: PedalName) -> tuple[tuple[str, float], ...]:
    """Tubes, faces, obstacles and pedals around one pedal, with the least room left to each."""
    found = assessment.clearances
    around = (
        *((c.thing, c.distance) for c in (*found.lines, *found.faces) if c.pedal == which),
        *((c.thing, c.distance) for c in found.obstacles if c.pedal == which),
        *((c.thing, c.distance) for c in found.pedals if c.pedal == which),
        *((c.pedal, c.distance) for c in found.pedals if c.thing == which),
    )
    left = ((thing.replace("_", " "), float(room)) for thing, room in around)
    return tuple(sorted((entry for entry in left if isfinite(entry[1])), key=lambda e: e[1]))


def chain(pin: Point, socket: Point, pins: Relay | Relayed | None, relay: Relay | None) -> Chain:
    """Rods from the pin, by way of a relay lever where there is one, to the socket."""
    if pins is None or relay is None:
        return Chain(((seen(pin), seen(socket)),), None)
    driven, driving = seen(pins.driven_pin), seen(pins.driving_pin)
    rods = ((seen(pin), driven), (driving, seen(socket)))
    return Chain(rods, (driven, seen(relay.pivot), driving))
