"""From the person to the lengths a posture is drawn with."""

import numpy as np

from pedalwright.core.units import Num, mm
from pedalwright.core.working import Formula
from pedalwright.driver.formulas.body import (
    ankle_forward_from_stature,
    ankle_height_from_stature,
    heel_to_ball_from_stature,
    shank_from_stature,
    shoe_length_from_stature,
    shoe_width_from_stature,
    thigh_from_stature,
)
from pedalwright.driver.parts import Body, Person
from pedalwright.driver.population import widest_spread

#: Heel of a driving shoe (common practice, no source).
SHOE_HEEL = 25.0
#: What a driving shoe adds to the length and to the width of a foot (common practice, no source).
SHOE_LONGER, SHOE_WIDER = 20.0, 10.0
#: What a tape reading between two joints is good to, 1 SD (ours).
TAPE = 5.0
#: Ankle joint ahead of the heel point, if guessed: 1 SD (ours; nobody measures it).
ANKLE_FORWARD_SPREAD = 10.0


def body(person: Person) -> Body:
    """Each length as measured or, failing that, as guessed from the stature."""
    h = person.stature
    return Body(
        thigh=_read_or_guess(person.thigh, thigh_from_stature, h),
        shank=_read_or_guess(person.shank, shank_from_stature, h),
        heel_to_ball=_read_or_guess(person.heel_to_ball, heel_to_ball_from_stature, h),
        ankle_forward=_read_or_guess(person.ankle_forward, ankle_forward_from_stature, h),
        ankle_height=_read_or_guess(person.ankle_height, ankle_height_from_stature, h, SHOE_HEEL),
        shoe_length=_read_or_guess(person.shoe_length, shoe_length_from_stature, h, SHOE_LONGER),
        shoe_width=_read_or_guess(person.shoe_width, shoe_width_from_stature, h, SHOE_WIDER),
    )


def body_spread(person: Person) -> Body:
    """Uncertainty of each length, 1 SD: of a tape reading, or of people of one stature.

    The latter is the residual of the ANSUR II survey, for the sex in which it is wider. For
    the thigh the survey's landmarks say 21 mm; flesh under the hip joint makes it no better.
    """
    foot = widest_spread("foot")
    return Body(
        thigh=_spread(person.thigh, widest_spread("thigh")),
        shank=_spread(person.shank, widest_spread("shank")),
        heel_to_ball=_spread(person.heel_to_ball, widest_spread("ball of foot")),
        ankle_forward=_spread(person.ankle_forward, ANKLE_FORWARD_SPREAD),
        ankle_height=_spread(person.ankle_height, widest_spread("ankle height")),
        shoe_length=_spread(person.shoe_length, foot),
        shoe_width=_spread(person.shoe_width, widest_spread("foot width")),
    )


def _read_or_guess(reading: mm, guess: Formula[...], *given: Num) -> mm:
    """The reading where there is one; a guess enters the working only if somebody needs it."""
    read = np.isfinite(reading)
    guessed = guess.rule(*given) if np.all(read) else guess(*given)
    return np.where(read, reading, guessed)[()]


def _spread(reading: mm, of_people: float) -> mm:
    return np.where(np.isfinite(reading), TAPE, of_people)
