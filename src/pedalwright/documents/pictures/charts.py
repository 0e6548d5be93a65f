"""The charts of the dossier: levers, travel by cause, balance, opening, give by cause."""

from collections.abc import Iterator, Sequence

import numpy as np

from pedalwright.assess import Assessment
from pedalwright.brakes import DESIGN_PUSH, adhesion_limit
from pedalwright.documents.outside import Units
from pedalwright.documents.pictures.graphs import Curves, Scale, Sum
from pedalwright.drawing import BudgetChart, Cause, Drawing
from pedalwright.linkage import ROD_ANGLE_MOST
from pedalwright.structure.box.parts import PartGive
from pedalwright.structure.gives import gives

PAD_TRAVEL = Scale("pad travel", "mm")
DECELERATION = Scale("deceleration", "m/s2")


def charts(assessment: Assessment, units: Units) -> list[Drawing]:
    """Every chart, in the order a reader meets them."""
    found = (
        _ratio(assessment),
        _rod_angle(assessment),
        _force_travel(assessment),
        _travel(assessment),
        _clutch_travel(assessment),
        _balance(assessment),
        _share(assessment),
        _opening(assessment),
    )
    drawn = [chart.drawing(units) for chart in found]
    return [*drawn[:5], *_gives(assessment, units), *drawn[5:]]


def _ratio(assessment: Assessment) -> Curves:
    """Pedal ratio over the pad's travel, brake and clutch."""
    brake, clutch = assessment.brake.stroke, assessment.clutch.stroke
    return Curves(
        name="ratio",
        title="Pedal ratio over the stroke",
        description="Pedal ratio of brake and clutch from rest to the end of their strokes.",
        x=PAD_TRAVEL,
        y=Scale("pad travel over piston travel, here", "1", from_zero=False),
        lines={
            "brake": (brake.pad_travel, brake.ratio),
            "clutch": (clutch.pad_travel, clutch.ratio),
        },
    )


def _rod_angle(assessment: Assessment) -> Curves:
    """Angle of the rod to its cylinder over the pad's travel, brake and clutch."""
    brake, clutch = assessment.brake.stroke, assessment.clutch.stroke
    return Curves(
        name="rod-angle",
        title="Rod angle over the stroke",
        description="Angle of rod to cylinder for brake and clutch, with the most that is wished.",
        x=PAD_TRAVEL,
        y=Scale("rod to cylinder", "rad"),
        lines={
            "brake": (brake.pad_travel, brake.rod_angle),
            "clutch": (clutch.pad_travel, clutch.rod_angle),
        },
        limit=("most", ROD_ANGLE_MOST),
    )


def _force_travel(assessment: Assessment) -> Curves:
    """Push over pad travel, structure and hoses giving."""
    curve = assessment.brake.curve
    return Curves(
        name="force-travel",
        title="Brake: push over pad travel",
        description="Pad travel against push, from where the linings touch.",
        x=PAD_TRAVEL,
        y=Scale("push on the pad", "N"),
        lines={"push": (np.append(0.0, curve.travel), np.append(0.0, curve.push))},
        limit=("{}", DESIGN_PUSH),
    )


def _balance(assessment: Assessment) -> Curves:
    """Adhesion each axle uses over deceleration."""
    result = assessment.brake.result
    return Curves(
        name="balance",
        title="Brakes: adhesion used by each axle",
        description=(
            "The axle whose line lies higher locks first at that deceleration; a line above the "
            "rule's uses more of the road than UN R13-H, Annex 5 (to verify), allows."
        ),
        x=DECELERATION,
        y=Scale("adhesion used", "1"),
        lines={
            "front axle": (result.decelerations, result.front_utilisation),
            "rear axle": (result.decelerations, result.rear_utilisation),
            "rule's most": adhesion_limit(),
        },
    )


def _share(assessment: Assessment) -> Curves:
    """Front share of the braking force as it is, and as both axles would use the road alike."""
    result = assessment.brake.result
    return Curves(
        name="front-share",
        title="Brakes: front share, as it is and as the road would like it",
        description="Where the share lies above the ideal one the front wheels lock first.",
        x=DECELERATION,
        y=Scale("front share of the braking force", "1", from_zero=False),
        lines={
            "as it is": (result.decelerations, result.front_shares),
            "ideal": (result.decelerations, result.ideal_shares),
        },
    )


def _opening(assessment: Assessment) -> Curves:
    """Spindle opening over the accelerator's travel."""
    opening = assessment.throttle.result
    return Curves(
        name="opening",
        title="Throttle: opening over pad travel",
        description="Spindle angle against pad travel, with the angle of full opening.",
        x=PAD_TRAVEL,
        y=Scale("spindle angle", "rad"),
        lines={"spindle": (opening.pad_travel, opening.spindle_angle)},
        limit=("full opening", opening.full_opening),
    )


def _travel(assessment: Assessment) -> Sum:
    """Where the brake pad's travel goes at 500 N."""
    return Sum(
        name="brake-travel",
        title="Brake: pad travel at 500 N, by cause",
        description="The causes add up to the travel; the line is the travel there is.",
        causes=assessment.brake.budget,
        total="pad travel",
        limit=("room", assessment.brake.room),
    )


def _clutch_travel(assessment: Assessment) -> Sum:
    """Where the clutch pad's travel goes up to full release, against the travel there is."""
    result = assessment.clutch.result
    return Sum(
        name="clutch-travel",
        title="Clutch: pad travel to full release, by cause",
        description="The causes add up to the travel; the line is the travel there is.",
        causes=result.budget,
        total="pad travel",
        limit=("room", result.travel_available),
    )


def _gives(assessment: Assessment, units: Units) -> Iterator[Drawing]:
    """Who gives how much at the pad, arm, rod and every part of the box."""
    for name, pedal in (("give", assessment.brake), ("give-clutch", assessment.clutch)):
        strength = pedal.strength
        push = units.said(strength.give.push, "N")
        which = "Clutch" if pedal is assessment.clutch else "Brake"
        yield parts_chart(
            name=name,
            title=f"{which}: who gives, at {push} on the pad",
            description="How far the pad goes because each part gives; they sum to all of it.",
            parts=gives(strength),
            units=units,
        )


def parts_chart(
    *, name: str, title: str, description: str, parts: Sequence[PartGive], units: Units
) -> Drawing:
    """Bars that step up to the whole give."""
    length = Scale("", "mm")
    unit = length.shown_in(units)
    return BudgetChart(
        name=name,
        title=title,
        description=description,
        causes=tuple(Cause(one.part, *length.list(one.give, units)) for one in parts),
        total="give at the pad",
        unit=unit,
        decimals=2 if unit == "mm" else 4,
    ).drawing()
