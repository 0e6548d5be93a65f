"""Project: the project file, read into a survey and a design with the origin of each number."""

from pedalwright.project.cars import attempts, car_text, cars, new_file
from pedalwright.project.compare import Difference, diff
from pedalwright.project.doubts import doubts
from pedalwright.project.edits import Change
from pedalwright.project.errors import (
    AlreadyThereError,
    ChangedMeanwhileError,
    FileFault,
    FileTroubleError,
    ProjectError,
)
from pedalwright.project.projects import Project, changed, edit, read
from pedalwright.project.provenance import Provenance
from pedalwright.project.saving import save
from pedalwright.project.spread import plus_minus_tree
from pedalwright.project.trial import chosen, measured, tried

__all__ = [
    "AlreadyThereError",
    "Change",
    "ChangedMeanwhileError",
    "Difference",
    "FileFault",
    "FileTroubleError",
    "Project",
    "ProjectError",
    "Provenance",
    "attempts",
    "car_text",
    "cars",
    "changed",
    "chosen",
    "diff",
    "doubts",
    "edit",
    "measured",
    "new_file",
    "plus_minus_tree",
    "read",
    "save",
    "tried",
]
