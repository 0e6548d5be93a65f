"""The charts of the dossier: ratio, force and travel, balance, opening, give by cause."""

from collections.abc import Sequence

import numpy as np

from pedalwright.assess import Assessment
from pedalwright.core.units import Num
from pedalwright.drawing import (
    Axis,
    BudgetChart,
    Cause,
    Drawing,
    Level,
    Line,
    LineChart,
    Series,
)


def ratio_chart(assessment: Assessment) -> Drawing:
    """Pedal ratio over the pad's travel, brake and clutch."""
    brake, clutch = assessment.brake.stroke, assessment.clutch.stroke
    return LineChart(
        name="ratio",
        title="Pedal ratio over the stroke",
        description="Pedal ratio of brake and clutch from rest to the end of their strokes.",
        x=Axis("pad travel", "mm", include=(0.0,)),
        y=Axis("pad travel over piston travel, here", ""),
        series=(
            Series("brake", _list(brake.pad_travel), _list(brake.ratio)),
            Series("clutch", _list(clutch.pad_travel), _list(clutch.ratio), line=Line.HIDDEN),
        ),
    ).drawing()


def force_travel_chart(assessment: Assessment) -> Drawing:
    """Push over pad travel, structure and hoses giving."""
    curve = assessment.brake.curve
    return LineChart(
        name="force-travel",
        title="Brake: push over pad travel",
        description="Pad travel against push, from where the linings touch.",
        x=Axis("pad travel", "mm", include=(0.0,)),
        y=Axis("push on the pad", "N", include=(0.0,)),
        series=(Series("push", [0.0, *_list(curve.travel)], [0.0, *_list(curve.push)]),),
        limits=(Level("500 N", 500.0),),
    ).drawing()


def travel_chart(assessment: Assessment) -> Drawing:
    """Where the brake pad's travel goes at 500 N."""
    budget = assessment.brake.budget
    return BudgetChart(
        name="brake-travel",
        title="Brake: pad travel at 500 N, by cause",
        description="Dead stroke, lift of the pads, hoses and the structure's give, adding up.",
        causes=(
            Cause("dead stroke", float(budget.dead_stroke)),
            Cause("front lift", float(budget.front_lift)),
            Cause("rear lift", float(budget.rear_lift)),
            Cause("hoses", float(budget.hoses)),
            Cause("structure", float(budget.structure)),
        ),
        total="pad travel",
    ).drawing()


def balance_chart(assessment: Assessment) -> Drawing:
    """Adhesion each axle uses over deceleration."""
    result = assessment.brake.result
    decelerations = _list(result.decelerations)
    return LineChart(
        name="balance",
        title="Brakes: adhesion used by each axle",
        description="The axle whose line lies higher locks first at that deceleration.",
        x=Axis("deceleration", "m/s²", include=(0.0,)),
        y=Axis("adhesion used", "", include=(0.0,)),
        series=(
            Series("front axle", decelerations, _list(result.front_utilisation)),
            Series("rear axle", decelerations, _list(result.rear_utilisation), line=Line.HIDDEN),
        ),
    ).drawing()


def opening_chart(assessment: Assessment) -> Drawing:
    """Spindle opening over the accelerator's travel."""
    opening = assessment.throttle.result
    return LineChart(
        name="opening",
        title="Throttle: opening over pad travel",
        description="Spindle angle against pad travel, with the angle of full opening.",
        x=Axis("pad travel", "mm", include=(0.0,)),
        y=Axis("spindle angle", "deg", include=(0.0,)),
        series=(
            Series("spindle", _list(opening.pad_travel), _list(np.rad2deg(opening.spindle_angle))),
        ),
        limits=(Level("full opening", float(np.rad2deg(opening.full_opening))),),
    ).drawing()


def give_chart(assessment: Assessment) -> Drawing:
    """Who gives how much at the brake pad."""
    give = assessment.brake.strength.give
    return BudgetChart(
        name="give",
        title="Brake: give at the pad at 500 N, by cause",
        description="Elastic movement of the pad by the part that gives, adding up.",
        causes=(
            Cause("arm, bending", float(give.arm_bending)),
            Cause("arm, shear", float(give.arm_shear)),
            Cause("arm, twist", float(give.arm_twist)),
            Cause("push rod", float(give.push_rod)),
            Cause("cylinder's mount", float(give.cylinder_mount)),
            Cause("pivot's mount", float(give.pivot_mount)),
        ),
        total="give",
        decimals=2,
    ).drawing()


def _list(values: Num) -> Sequence[float]:
    return [float(value) for value in np.atleast_1d(values)]
