"""The footwell as measured: marks from tapes, plumb and level; lines, faces and obstacles."""

from pedalwright.survey.adjustment import (
    Adjustment,
    Checked,
    Loose,
    Placed,
    Suspicion,
    TwoPlaces,
)
from pedalwright.survey.ellipses import ellipse
from pedalwright.survey.fits import (
    FittedFace,
    FittedLine,
    face_through,
    fitted_face,
    fitted_line,
    line_along,
)
from pedalwright.survey.level import Level, level
from pedalwright.survey.limits import check
from pedalwright.survey.outcome import Outcome
from pedalwright.survey.parts import NOWHERE, Face, Line, Mark, Obstacle, Offset, Rise, Survey, Tape
from pedalwright.survey.readings import mean_of
from pedalwright.survey.solve import adjust
from pedalwright.survey.stations import Distance, Sight, Slope, Station, Step
from pedalwright.survey.weigh import Fitted, Repeats, least_checked, weighed, worst_sigma

__all__ = [
    "NOWHERE",
    "Adjustment",
    "Checked",
    "Distance",
    "Face",
    "Fitted",
    "FittedFace",
    "FittedLine",
    "Level",
    "Line",
    "Loose",
    "Mark",
    "Obstacle",
    "Offset",
    "Outcome",
    "Placed",
    "Repeats",
    "Rise",
    "Sight",
    "Slope",
    "Station",
    "Step",
    "Survey",
    "Suspicion",
    "Tape",
    "TwoPlaces",
    "adjust",
    "check",
    "ellipse",
    "face_through",
    "fitted_face",
    "fitted_line",
    "least_checked",
    "level",
    "line_along",
    "mean_of",
    "weighed",
    "worst_sigma",
]
