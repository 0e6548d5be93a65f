"""What is not met leads to the question that helps."""

from fnmatch import fnmatchcase

import numpy as np
import pytest

from pedalwright.assess import assess
from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.documents.helps import HELPS, helpful, question_for
from pedalwright.documents.questions import QUESTIONS
from pedalwright.project import car_text, read

STROKE = Limit("hydraulics.stroke", "", "at most", "1", Source("", "", "ours"))
EFFORT = Limit("brakes.effort", "", "at most", "N", Source("", "", "ours"))
STOP = Limit("linkage.stop_before_wall", "", "at most", "mm", Source("", "", "ours"), "should")


def test_every_row_leads_to_a_question_that_there_is() -> None:
    assert {question for *_, question in HELPS} <= set(QUESTIONS)


def test_every_row_speaks_of_a_limit_that_there_is() -> None:
    names = ("larkfield-improved", "brackwater-fix2", "saltmarsh-improved")
    asked = {f.limit.code for name in names for f in assess(read(car_text(name)).design).findings}
    given_now_and_then = {"brakes.servo_lost", "hydraulics.residual_drag", "linkage.rod_fits"}
    given_now_and_then |= {"structure.panel_*", "structure.row*"}  # of the full tier
    for code, *_ in HELPS:
        assert code in given_now_and_then or any(fnmatchcase(one, code) for one in asked), code


def test_what_must_be_met_is_asked_about_first_and_the_worst_of_it() -> None:
    findings: list[Finding] = [
        STOP.check(300.0, 100.0, "clutch"),
        EFFORT.check(550.0, 500.0),
        STROKE.check(1.2, 2 / 3, "brake"),
        EFFORT.check(400.0, 500.0),
        STOP.check(np.nan, 100.0, "brake"),
    ]
    assert helpful(findings) == {"bore": 2, "clutch": 1, "travel": 1}
    assert list(helpful(findings)) == ["bore", "clutch", "travel"]


@pytest.mark.parametrize(("about", "question"), [("clutch", "clutch"), ("nothing", None)])
def test_what_it_is_about_decides(about: str, question: str | None) -> None:
    assert question_for(STOP.check(1.0, 2.0, about)) == question
