"""The charts of the dossier: levers, travel by cause, balance, opening, give by cause."""

from collections.abc import Sequence
from dataclasses import fields

import numpy as np

from pedalwright.assess import Assessment
from pedalwright.brakes import DESIGN_PUSH
from pedalwright.brakes import Budget as BrakeBudget
from pedalwright.clutch import Budget as ClutchBudget
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
from pedalwright.linkage import ROD_ANGLE_MOST

TravelBudget = BrakeBudget | ClutchBudget


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


def rod_angle_chart(assessment: Assessment) -> Drawing:
    """Angle of the rod to its cylinder over the pad's travel, brake and clutch."""
    brake, clutch = assessment.brake.stroke, assessment.clutch.stroke
    return LineChart(
        name="rod-angle",
        title="Rod angle over the stroke",
        description="Angle of rod to cylinder for brake and clutch, with the most that is wished.",
        x=Axis("pad travel", "mm", include=(0.0,)),
        y=Axis("rod to cylinder", "deg", include=(0.0,)),
        series=(
            Series("brake", _list(brake.pad_travel), _list(np.rad2deg(brake.rod_angle))),
            Series(
                "clutch",
                _list(clutch.pad_travel),
                _list(np.rad2deg(clutch.rod_angle)),
                line=Line.HIDDEN,
            ),
        ),
        limits=(Level("most", float(np.rad2deg(ROD_ANGLE_MOST))),),
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
        limits=(Level(f"{DESIGN_PUSH:g} N", DESIGN_PUSH),),
    ).drawing()


def travel_chart(assessment: Assessment) -> Drawing:
    """Where the brake pad's travel goes at 500 N."""
    return _budget_chart(
        "brake-travel",
        "Brake: pad travel at 500 N, by cause",
        assessment.brake.budget,
        Level("room", float(assessment.brake.room)),
    )


def clutch_travel_chart(assessment: Assessment) -> Drawing:
    """Where the clutch pad's travel goes up to full release, against the travel there is."""
    result = assessment.clutch.result
    return _budget_chart(
        "clutch-travel",
        "Clutch: pad travel to full release, by cause",
        result.budget,
        Level("room", float(result.travel_available)),
    )


def _budget_chart(name: str, title: str, budget: TravelBudget, room: Level) -> Drawing:
    """Every cause that takes something, by its name in the house; the sum is exact."""
    causes = (field.name for field in fields(budget) if field.name != "total")
    taken = ((cause, float(getattr(budget, cause))) for cause in causes)
    return BudgetChart(
        name=name,
        title=title,
        description="The causes add up to the travel; the line is the travel there is.",
        causes=tuple(Cause(cause.replace("_", " "), size) for cause, size in taken if size != 0.0),
        total="pad travel",
        limits=(room,),
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


def share_chart(assessment: Assessment) -> Drawing:
    """Front share of the braking force as it is, and as both axles would use the road alike."""
    result = assessment.brake.result
    decelerations = _list(result.decelerations)
    return LineChart(
        name="front-share",
        title="Brakes: front share, as it is and as the road would like it",
        description="Where the share lies above the ideal one the front wheels lock first.",
        x=Axis("deceleration", "m/s²", include=(0.0,)),
        y=Axis("front share of the braking force", ""),
        series=(
            Series("as it is", decelerations, _list(result.front_shares)),
            Series("ideal", decelerations, _list(result.ideal_shares), line=Line.HIDDEN),
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
