"""What a survey of 6 000 people says about somebody of this stature and inside leg.

ANSUR II, 2012: soldiers, barefoot, so for proportions and for their spread. Stature alone
leaves 14 to 21 mm (1 SD) on each part of the leg; the inside leg takes some of that away,
most of it below the knee. Parts of one percentile do not make a person of that percentile.
"""

from dataclasses import dataclass
from typing import Literal

import numpy as np

from pedalwright.core.units import Num, mm
from pedalwright.core.working import subject
from pedalwright.driver.formulas.body import survey_prediction, thigh_link
from pedalwright.driver.parts import Person
from pedalwright.shelf.body_lengths import body_length

Sex = Literal["male", "female"]
SEXES: tuple[Sex, Sex] = ("male", "female")
ONE, TWO = "stature", "stature and inside leg"

#: Hip joint to knee joint over hip bone to knee bump: 426 to 432 mm, the thigh of a median man as
#: others give it, over the survey's 409 mm (derived).
THIGH_LINK = 1.045


@dataclass(frozen=True, kw_only=True, slots=True)
class Prediction:
    """A body length and how far people stray from it (1 SD)."""

    value: mm
    spread: mm


def predicted(sex: Sex, length: str, stature: mm, inside_leg: mm) -> Prediction:
    """The survey's line for a length; with the inside leg where it is known (not nan)."""
    one, two = body_length(sex, length, ONE), body_length(sex, length, TWO)
    known = np.isfinite(inside_leg)

    def chosen(with_leg: float, without: float) -> Num:
        return np.where(known, with_leg, without)

    value = survey_prediction(
        chosen(two.intercept, one.intercept),
        chosen(two.per_stature, one.per_stature),
        stature,
        chosen(two.per_inside_leg, one.per_inside_leg),
        np.where(known, inside_leg, 0.0),
    )
    return Prediction(value=value, spread=chosen(two.spread, one.spread))


def leg_from_survey(person: Person) -> mm:
    """Thigh and shank together, joint to joint, between what the survey says of either sex.

    A second opinion on the shares of stature in `body`: where the two differ, measure.
    """
    men, women = (_leg(sex, person) for sex in SEXES)
    return (men + women) / 2


def widest_spread(length: str) -> float:
    """Standard deviation of people of one stature about a length, for the sex that varies more."""
    return max(body_length(sex, length, ONE).spread for sex in SEXES)


def _leg(sex: Sex, person: Person) -> mm:
    with subject(f"{sex}, thigh"):
        thigh = predicted(sex, "thigh", person.stature, person.inside_leg)
        link = thigh_link(THIGH_LINK, thigh.value)
    with subject(f"{sex}, shank"):
        return link + predicted(sex, "shank", person.stature, person.inside_leg).value
