"""What a survey of 6 000 people says about somebody of this stature and inside leg.

ANSUR II, 2012: soldiers, barefoot, so for proportions and for their spread. Stature alone
leaves 14 to 21 mm (1 SD) on each part of the leg; the inside leg takes some of that away, most
of it below the knee, as does the sitting knee height. A thigh is guessed badly whatever is
measured: the bump of the hip bone is a poor mark. Parts of one percentile do not make a person
of that percentile.
"""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from typing import Literal

import numpy as np

from pedalwright.core.units import Num, mm
from pedalwright.core.working import subject
from pedalwright.driver.formulas.body import reading_prediction, survey_prediction, thigh_link
from pedalwright.driver.parts import People, Person
from pedalwright.shelf.body_lengths import BodyLength, body_length

Sex = Literal["male", "female"]
SEXES: tuple[Sex, Sex] = ("male", "female")
ONE, TWO = "stature", "stature and inside leg"
#: The reading on the person that says most of a length.
NEAREST = {
    "shank": "knee height",
    "thigh": "buttock to knee",
    "ball of foot": "foot",
    "foot width": "foot",
}

#: Hip joint to knee joint over hip bone to knee bump: 426 to 432 mm, the thigh of a median man as
#: others give it, over the survey's 409 mm (derived).
THIGH_LINK = 1.045


@dataclass(frozen=True, kw_only=True, slots=True)
class Prediction:
    """A body length and how far people stray from it (1 SD)."""

    value: mm
    spread: mm


def predicted(
    sex: Sex, length: str, stature: mm, inside_leg: mm = np.nan, reading: mm = np.nan
) -> Prediction:
    """The survey's line for a length; inside leg and nearest reading count where they are known."""
    leg, near = np.isfinite(inside_leg), np.isfinite(reading)
    one, two = body_length(sex, length, ONE), body_length(sex, length, TWO)
    a = np.where(leg, two.intercept, one.intercept)
    b_h = np.where(leg, two.per_stature, one.per_stature)
    b_c, c = np.where(leg, two.per_inside_leg, 0.0), np.where(leg, inside_leg, 0.0)
    spread = np.where(leg, two.spread, one.spread)
    if not np.any(near):
        return Prediction(value=survey_prediction(a, b_h, stature, b_c, c), spread=spread)
    three = body_length(sex, length, f"{ONE} and {NEAREST[length]}")
    four = body_length(sex, length, f"{ONE}, inside leg and {NEAREST[length]}")

    def chosen(without: Num, alone: float, with_leg: float) -> Num:
        return np.where(near, np.where(leg, with_leg, alone), without)

    value = reading_prediction(
        chosen(a, three.intercept, four.intercept),
        chosen(b_h, three.per_stature, four.per_stature),
        stature,
        chosen(b_c, 0.0, four.per_inside_leg),
        c,
        chosen(0.0, three.per_reading, four.per_reading),
        np.where(near, reading, 0.0),
    )
    return Prediction(value=value, spread=chosen(spread, three.spread, four.spread))


def expected(people: People, length: str, person: Person, reading: mm = np.nan) -> Prediction:
    """The survey's line for men, for women, or between the two with their difference as spread."""
    if people == "mixed":
        men, women = (expected(one, length, person, reading) for one in ("men", "women"))
        apart = (men.value - women.value) / 2
        spread = np.sqrt((men.spread**2 + women.spread**2) / 2 + apart**2)
        return Prediction(value=(men.value + women.value) / 2, spread=spread)
    sex: Sex = "male" if people == "men" else "female"
    with subject(f"{sex}, {length}"):
        return predicted(sex, length, person.stature, person.inside_leg, reading)


def linked(thigh: Prediction) -> Prediction:
    """A thigh between its joints, from one between the bumps of the bones."""
    return Prediction(
        value=thigh_link(THIGH_LINK, thigh.value), spread=thigh_link.rule(THIGH_LINK, thigh.spread)
    )


def leg_from_survey(person: Person) -> mm:
    """Thigh and shank together, joint to joint, between what the survey says of either sex.

    A second opinion on the shares of stature in `body`: where the two differ, measure.
    """
    known = np.isfinite(person.inside_leg)
    one, two = _leg(person.people or "mixed", ONE), _leg(person.people or "mixed", TWO)
    with subject("leg"):
        return survey_prediction(
            np.where(known, two[0], one[0]),
            np.where(known, two[1], one[1]),
            person.stature,
            np.where(known, two[2], 0.0),
            np.where(known, person.inside_leg, 0.0),
        )


@cache
def widest_spread(length: str) -> float:
    """Standard deviation of people of one stature about a length, for the sex that varies more."""
    return max(body_length(sex, length, ONE).spread for sex in SEXES)


@cache
def _leg(people: People, given: str) -> tuple[float, float, float]:
    """Intercept and slopes of the whole leg: of one sex, or in the middle between both."""
    sexes = {"men": SEXES[:1], "women": SEXES[1:], "mixed": SEXES}[people]
    rows = [(body_length(sex, "thigh", given), body_length(sex, "shank", given)) for sex in sexes]

    def mean(slope: Callable[[BodyLength], float]) -> float:
        return sum(THIGH_LINK * slope(t) + slope(s) for t, s in rows) / len(rows)

    return (
        mean(lambda row: row.intercept),
        mean(lambda row: row.per_stature),
        mean(lambda row: row.per_inside_leg),
    )
