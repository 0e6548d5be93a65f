"""What a drawing shows of one pedal, be it brake or clutch."""

from dataclasses import dataclass
from typing import Literal

from pedalwright.assess import Assessment
from pedalwright.design import BrakeDesign, ClutchDesign, Design
from pedalwright.driver import Seated
from pedalwright.linkage import Lever, Position

Which = Literal["brake", "clutch"]
PEDALS: tuple[Which, ...] = ("brake", "clutch")


@dataclass(frozen=True, kw_only=True, slots=True)
class Shown:
    """A pedal with its parts, its lever at rest, where it ends, and who has his foot on it."""

    which: Which
    part: BrakeDesign | ClutchDesign
    lever: Lever
    #: Hard stop of the brake, end of the clutch's stroke.
    full: Position
    seats: tuple[tuple[str, Seated], ...]


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
