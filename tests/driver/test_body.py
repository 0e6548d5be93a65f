"""A reading replaces a guess, one length at a time, and narrows what is not known."""

from dataclasses import fields, replace

import numpy as np
import pytest

from pedalwright.core.points import Point
from pedalwright.core.working import working
from pedalwright.driver import (
    Body,
    Person,
    body,
    body_spread,
    check_body,
    knee_sensitivity,
    knee_spread,
    leg_from_survey,
)
from pedalwright.driver.body import TAPE
from pedalwright.driver.legs import heel_on_floor

GUESSED = Person(stature=1680)
LENGTHS = [field.name for field in fields(Body)]


@pytest.mark.parametrize("length", LENGTHS)
def test_a_reading_replaces_its_guess_and_no_other(length: str) -> None:
    read = body(replace(GUESSED, **{length: 123.0}))
    for name in LENGTHS:
        expected = 123.0 if name == length else float(getattr(body(GUESSED), name))
        assert float(getattr(read, name)) == expected


@pytest.mark.parametrize("length", LENGTHS)
def test_a_reading_is_as_good_as_the_tape(length: str) -> None:
    assert float(getattr(body_spread(replace(GUESSED, **{length: 123.0})), length)) == TAPE
    assert float(getattr(body_spread(GUESSED), length)) != TAPE


def test_guesses_of_the_basis() -> None:
    """Shares of stature and the 25 mm of a heel, multiplied on paper for 1680 mm."""
    found = body(GUESSED)
    assert float(found.thigh) == pytest.approx(411.6)
    assert float(found.shank) == pytest.approx(413.28)
    assert float(found.heel_to_ball) == pytest.approx(194.88)
    assert float(found.ankle_forward) == pytest.approx(42.0)
    assert float(found.ankle_height) == pytest.approx(90.52)


def test_the_working_shows_only_the_guesses_that_were_needed() -> None:
    with working() as sheet:
        body(replace(GUESSED, thigh=400.0))
    names = {step.formula.name for step in sheet}
    assert "driver.thigh_from_stature" not in names
    assert "driver.shank_from_stature" in names


def test_a_batch_may_mix_people_who_were_measured_with_others() -> None:
    mixed = body(replace(GUESSED, thigh=np.array([np.nan, 400.0])))
    assert mixed.thigh == pytest.approx(np.array([411.6, 400.0]))


def test_nobody_without_a_stature_is_guessed() -> None:
    assert np.isnan(body(Person(stature=np.nan)).thigh)


def test_the_survey_doubts_shares_of_stature_for_short_legs() -> None:
    """Added up by hand for 1680 and 760 mm.

    Men 1.045 x 372.26 + 380.02 = 769.03, women 1.045 x 380.11 + 391.78 = 789.00; the middle
    is 779.0, where shares of stature say 824.9.
    """
    short_legs = replace(GUESSED, inside_leg=760.0)
    assert float(leg_from_survey(short_legs)) == pytest.approx(779.0, abs=0.1)
    (finding,) = check_body(short_legs, body(short_legs), "D1")
    assert float(finding.value) == pytest.approx(824.88 - 779.0, abs=0.1)
    assert not finding.ok


def test_a_measured_leg_settles_the_doubt() -> None:
    measured = replace(GUESSED, inside_leg=760.0, thigh=392.0, shank=385.0)
    (finding,) = check_body(measured, body(measured), "D1")
    assert finding.ok


def test_an_unmeasured_leg_leaves_the_knee_several_degrees_open() -> None:
    """Against a population drawn at random: the slopes must predict its scatter."""
    rng = np.random.default_rng(7)
    lengths, spread = body(GUESSED), body_spread(GUESSED)
    n = 20_000
    people = replace(
        lengths,
        thigh=lengths.thigh + spread.thigh * rng.standard_normal(n),
        shank=lengths.shank + spread.shank * rng.standard_normal(n),
    )
    ball, hip = Point(190.0, 0.0, 87.0), Point(1000.0, 0.0, 120.0)
    scatter = np.std(heel_on_floor(people, hip, 0.4, ball, -70.0).knee_angle)
    slopes = knee_sensitivity(lengths, heel_on_floor(lengths, hip, 0.4, ball, -70.0))
    assert float(knee_spread(slopes, spread)) == pytest.approx(float(scatter), rel=0.05)
    assert np.rad2deg(scatter) > 3.0
