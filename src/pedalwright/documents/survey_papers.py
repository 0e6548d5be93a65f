"""What a survey leaves on paper: plan, side view and the sheet to fill in."""

from dataclasses import dataclass

from pedalwright.documents.about import About
from pedalwright.documents.pictures.survey import VIEWS, survey_view
from pedalwright.documents.survey_sheet import survey_sheet_pdf
from pedalwright.documents.survey_text import SurveyTold, survey_text
from pedalwright.drawing import svg
from pedalwright.survey import Adjustment, Survey

#: Room for a view on a page laid across, mm.
WIDE, HIGH = 270.0, 160.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Usual:
    """The marks and readings of an ordinary footwell, for a car nobody has measured yet."""

    survey: Survey
    found: Adjustment


def survey_papers(
    about: About, told: SurveyTold | None, usual: Usual, *, paper: str = "a4"
) -> dict[str, bytes]:
    """Every paper by its file name; without a survey of its own only the usual sheet."""
    if told is None:
        return {"survey-sheet.pdf": survey_sheet_pdf(about, usual.survey, usual.found, paper=paper)}
    survey, found = told.survey, told.found
    views = {
        f"survey-{view}.svg": svg(
            survey_view(survey, found, view).fitted(WIDE, HIGH), physical=True
        )
        for view in VIEWS
    }
    return {
        "survey.txt": survey_text(about, told).encode(),
        **views,
        "survey-sheet.pdf": survey_sheet_pdf(about, survey, found, paper=paper),
    }
