"""What there is to say of a project's survey, and what a sheet to fill in asks for."""

from pedalwright.documents.survey_sheet import Readings
from pedalwright.documents.survey_text import SurveyTold
from pedalwright.project import Project, car_text, read


def told(project: Project) -> SurveyTold | None:
    """The adjusted survey with the place of each reading in the file; None without one by tape."""
    found = project.surveyed
    if found is None:
        return None
    places = {one.sight.about: one.path for one in found.sights}
    return SurveyTold(survey=project.design.survey, found=found.adjustment, places=places)


def readings(project: Project) -> Readings:
    """Those of this car; for one that was never taped, those of the packaged car that was."""
    if project.surveyed is None:
        return readings(read(car_text("larkfield-tapes")))
    return Readings(survey=project.design.survey, found=project.surveyed.adjustment)
