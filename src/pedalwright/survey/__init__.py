"""The footwell as measured: marks from tapes, plumb and level; lines, faces and obstacles."""

from pedalwright.survey.adjustment import (
    Adjustment,
    Checked,
    Loose,
    Placed,
    Suspicion,
    TwoPlaces,
)
from pedalwright.survey.fits import FittedFace, FittedLine, fitted_face, fitted_line
from pedalwright.survey.parts import Face, Line, Mark, Obstacle, Survey
from pedalwright.survey.solve import adjust
from pedalwright.survey.stations import Distance, Sight, Slope, Station, Step

__all__ = [
    "Adjustment",
    "Checked",
    "Distance",
    "Face",
    "FittedFace",
    "FittedLine",
    "Line",
    "Loose",
    "Mark",
    "Obstacle",
    "Placed",
    "Sight",
    "Slope",
    "Station",
    "Step",
    "Survey",
    "Suspicion",
    "TwoPlaces",
    "adjust",
    "fitted_face",
    "fitted_line",
]
