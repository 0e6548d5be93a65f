"""The charts of the dossier: levers, travel by cause, balance, opening, give by cause."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields

import numpy as np

from pedalwright.assess import Assessment
from pedalwright.brakes import DESIGN_PUSH, adhesion_limit
from pedalwright.brakes import Budget as BrakeBudget
from pedalwright.clutch import Budget as ClutchBudget
from pedalwright.core.figures import unit_text
from pedalwright.core.units import Num
from pedalwright.documents.outside import outside
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
from pedalwright.structure import Give

Causes = BrakeBudget | ClutchBudget | Give


@dataclass(frozen=True, slots=True)
class Scale:
    """What is counted along one side of a chart, in its inside unit."""

    label: str
    unit: str
    from_zero: bool = True

    @property
    def axis(self) -> Axis:
        """The axis as a reader sees it."""
        _, unit = outside(0.0, self.unit)
        return Axis(self.label, unit_text(unit), include=(0.0,) if self.from_zero else ())

    def list(self, values: Num) -> Sequence[float]:
        """Values as a reader sees them."""
        shown, _ = outside(values, self.unit)
        return [float(value) for value in np.atleast_1d(shown)]


PAD_TRAVEL = Scale("pad travel", "mm")
DECELERATION = Scale("deceleration", "m/s2")


def ratio_chart(assessment: Assessment) -> Drawing:
    """Pedal ratio over the pad's travel, brake and clutch."""
    brake, clutch = assessment.brake.stroke, assessment.clutch.stroke
    return _lines(
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


def rod_angle_chart(assessment: Assessment) -> Drawing:
    """Angle of the rod to its cylinder over the pad's travel, brake and clutch."""
    brake, clutch = assessment.brake.stroke, assessment.clutch.stroke
    return _lines(
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


def force_travel_chart(assessment: Assessment) -> Drawing:
    """Push over pad travel, structure and hoses giving."""
    curve = assessment.brake.curve
    return _lines(
        name="force-travel",
        title="Brake: push over pad travel",
        description="Pad travel against push, from where the linings touch.",
        x=PAD_TRAVEL,
        y=Scale("push on the pad", "N"),
        lines={"push": (np.append(0.0, curve.travel), np.append(0.0, curve.push))},
        limit=(f"{DESIGN_PUSH:g} N", DESIGN_PUSH),
    )


def balance_chart(assessment: Assessment) -> Drawing:
    """Adhesion each axle uses over deceleration."""
    result = assessment.brake.result
    return _lines(
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


def share_chart(assessment: Assessment) -> Drawing:
    """Front share of the braking force as it is, and as both axles would use the road alike."""
    result = assessment.brake.result
    return _lines(
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


def opening_chart(assessment: Assessment) -> Drawing:
    """Spindle opening over the accelerator's travel."""
    opening = assessment.throttle.result
    return _lines(
        name="opening",
        title="Throttle: opening over pad travel",
        description="Spindle angle against pad travel, with the angle of full opening.",
        x=PAD_TRAVEL,
        y=Scale("spindle angle", "rad"),
        lines={"spindle": (opening.pad_travel, opening.spindle_angle)},
        limit=("full opening", opening.full_opening),
    )


def travel_chart(assessment: Assessment) -> Drawing:
    """Where the brake pad's travel goes at 500 N."""
    return _budget(
        name="brake-travel",
        title="Brake: pad travel at 500 N, by cause",
        description="The causes add up to the travel; the line is the travel there is.",
        causes=assessment.brake.budget,
        total="pad travel",
        limit=("room", assessment.brake.room),
    )


def clutch_travel_chart(assessment: Assessment) -> Drawing:
    """Where the clutch pad's travel goes up to full release, against the travel there is."""
    result = assessment.clutch.result
    return _budget(
        name="clutch-travel",
        title="Clutch: pad travel to full release, by cause",
        description="The causes add up to the travel; the line is the travel there is.",
        causes=result.budget,
        total="pad travel",
        limit=("room", result.travel_available),
    )


def give_chart(assessment: Assessment) -> Drawing:
    """Who gives how much at the brake pad."""
    return _budget(
        name="give",
        title="Brake: give at the pad at 500 N, by cause",
        description="Elastic movement of the pad by the part that gives, adding up.",
        causes=assessment.brake.strength.give,
        total="give",
        decimals=2,
    )


def _lines(
    *,
    name: str,
    title: str,
    description: str,
    x: Scale,
    y: Scale,
    lines: Mapping[str, tuple[Num, Num]],
    limit: tuple[str, Num] | None = None,
) -> Drawing:
    """Up to three lines over a common axis, each of its own kind, and a limit across."""
    kinds = zip(lines.items(), (Line.VISIBLE, Line.HIDDEN, Line.CENTRE), strict=False)
    return LineChart(
        name=name,
        title=title,
        description=description,
        x=x.axis,
        y=y.axis,
        series=tuple(
            Series(line, x.list(xs), y.list(ys), line=kind) for (line, (xs, ys)), kind in kinds
        ),
        limits=() if limit is None else (Level(limit[0], *y.list(limit[1])),),
    ).drawing()


def _budget(
    *,
    name: str,
    title: str,
    description: str,
    causes: Causes,
    total: str,
    decimals: int = 1,
    limit: tuple[str, Num] | None = None,
) -> Drawing:
    """Every cause that takes something, by its name in the house; the sum is exact."""
    names = (field.name for field in fields(causes) if field.name not in {"push", "total"})
    taken = ((cause, float(getattr(causes, cause))) for cause in names)
    return BudgetChart(
        name=name,
        title=title,
        description=description,
        causes=tuple(Cause(cause.replace("_", " "), size) for cause, size in taken if size != 0.0),
        total=total,
        decimals=decimals,
        limits=() if limit is None else (Level(limit[0], float(limit[1])),),
    ).drawing()
