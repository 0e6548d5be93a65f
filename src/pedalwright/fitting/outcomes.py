"""What a candidate comes to for one pedal: a few numbers out of its assessment."""

from dataclasses import dataclass

import numpy as np

from pedalwright.assess import Assessment, BrakePedal, ClutchPedal, assess
from pedalwright.core.checks import Finding
from pedalwright.core.units import N, Num, Ratio, mm, rad
from pedalwright.design import Design
from pedalwright.fitting.pedals import PedalName


@dataclass(frozen=True, kw_only=True, slots=True)
class Outcome:
    """One pedal of one design, or of a batch of them."""

    design: Design
    #: Pad radius over pin radius: what a ruler along the arm says.
    arm_ratio: Ratio
    #: At the hard stop for a brake, mean to the release for a clutch.
    ratio: Ratio
    #: Push for 6.43 m/s², or to hold the clutch released.
    effort: N
    #: Arc of the pad to the hard stop, or to the release.
    travel: mm
    #: Arc of the pad until the toes meet the wall.
    room: mm
    #: Largest over the stroke.
    rod_angle: rad
    #: Share of its strength the worst stressed part has in hand; nan if one is unjudged.
    strength_margin: Num
    #: Codes of the demands on this pedal that are not met: musts, and wishes.
    fails: tuple[str, ...]
    wishes: tuple[str, ...]


def outcome(design: Design, name: PedalName) -> Outcome:
    """Assess a design and read what concerns one pedal.

    In a batch a demand counts as not met where any variant misses it.
    """
    assessment = assess(design)
    asked = concerning(assessment, name)
    strength = [f.margin for f in asked if f.limit.code in _STRENGTH]
    missed = [f for f in asked if not np.all(f.ok)]
    part = design.brake if name == "brake" else design.clutch
    made: BrakePedal | ClutchPedal = assessment.brake if name == "brake" else assessment.clutch
    effort, travel, ratio = _comes_to(assessment, name)
    return Outcome(
        design=design,
        arm_ratio=part.pedal.pad_radius / part.pedal.pin_radius,
        ratio=ratio,
        effort=effort,
        travel=travel,
        room=made.room,
        rod_angle=np.max(made.stroke.rod_angle, axis=0),
        strength_margin=np.min(np.broadcast_arrays(*strength), axis=0),
        fails=_codes(missed, "must"),
        wishes=_codes(missed, "should"),
    )


def concerning(assessment: Assessment, name: PedalName) -> list[Finding]:
    """The findings about one pedal: its own rooms' and those that name it."""
    rooms = {"brakes", "hydraulics"} if name == "brake" else {"clutch"}
    return [f for f in assessment.findings if f.room in rooms or name in f.about.split(", ")]


def _comes_to(assessment: Assessment, name: PedalName) -> tuple[N, mm, Ratio]:
    if name == "brake":
        brake = assessment.brake
        return (
            brake.result.effort_6_43,
            brake.result.pad_travel_hard_stop,
            brake.hard_stop.ratio,
        )
    clutch = assessment.clutch.result
    return clutch.effort, clutch.travel_needed, clutch.mean_ratio


def _codes(missed: list[Finding], weight: str) -> tuple[str, ...]:
    return tuple(sorted({f.limit.code for f in missed if f.limit.weight == weight}))


#: Musts on the strength of what a hole, its place and its size change.
_STRENGTH = {
    "structure.arm_1250",
    "structure.arm_2000",
    "structure.clutch_arm_1000",
    "structure.pin_bending",
    "structure.pin_bearing",
    "structure.rod_buckling",
}
