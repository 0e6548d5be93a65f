"""The car for the other hand: the same distances, the other sides, the other names."""

from dataclasses import replace

import pytest

from pedalwright.core.points import Point
from pedalwright.design.hands import mirrored, other_side
from pedalwright.project import car_text, cars, read
from pedalwright.survey import Mark, Offset


@pytest.mark.parametrize(
    ("name", "other"),
    [
        ("left_rail", "right_rail"),
        ("Right door post, inside", "Left door post, inside"),
        ("LH seat", "RH seat"),
        ("offside rail", "nearside rail"),
        ("bright_light", "bright_light"),
        ("rim_bottom", "rim_bottom"),
    ],
)
def test_handed_names(name: str, other: str) -> None:
    assert other_side(name) == other
    assert other_side(other) == name


@pytest.mark.parametrize("name", cars())
def test_twice_the_other_hand_is_the_same_car(name: str) -> None:
    design = read(car_text(name)).design
    assert mirrored(mirrored(design)) == design


def test_a_survey_goes_over_with_its_names_and_offsets() -> None:
    design = read(car_text("larkfield-tapes")).design
    survey = replace(
        design.survey,
        marks=(Mark(name="right_rail", at=Point(1.0, 2.0, 3.0), side=Point(0.0, 1.0, 0.0)),),
        offsets=(Offset(mark="right_rail", right=12.0, up=5.0),),
    )
    other = mirrored(replace(design, survey=survey)).survey
    assert other.marks == (
        Mark(name="left_rail", at=Point(1.0, -2.0, 3.0), side=Point(0.0, -1.0, 0.0)),
    )
    assert other.offsets == (Offset(mark="left_rail", right=-12.0, up=5.0),)
    assert other.tapes == design.survey.tapes
