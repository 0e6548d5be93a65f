"""What a survey leaves on paper: plan, side view and the sheet to fill in."""

from pedalwright.documents.about import About
from pedalwright.documents.pictures.survey import VIEWS, survey_view
from pedalwright.documents.survey_sheet import Readings, survey_sheet_pdf
from pedalwright.documents.survey_text import SurveyTold, survey_text
from pedalwright.drawing import svg

#: Room for a view on a page laid across, mm.
WIDE, HIGH = 270.0, 160.0


def survey_papers(
    about: About, told: SurveyTold | None, readings: Readings, *, paper: str = "a4"
) -> dict[str, bytes]:
    """Every paper by its file name; without a survey by tape only the sheet to fill in."""
    sheet = {"survey-sheet.pdf": survey_sheet_pdf(about, readings, paper=paper)}
    if told is None:
        return sheet
    views = {
        f"survey-{view}.svg": svg(
            survey_view(told.survey, told.found, view).fitted(WIDE, HIGH), physical=True
        )
        for view in VIEWS
    }
    return {"survey.txt": survey_text(about, told).encode()} | views | sheet
