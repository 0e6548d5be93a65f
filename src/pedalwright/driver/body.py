"""From the person to the lengths a posture is drawn with."""

from collections.abc import Callable
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from pedalwright.core.units import Num, mm
from pedalwright.driver.formulas.body import (
    ankle_forward_from_stature,
    ankle_height_from_stature,
    heel_to_ball_from_stature,
    shank_from_stature,
    shod,
    shoe_length_from_stature,
    shoe_width_from_stature,
    thigh_from_stature,
)
from pedalwright.driver.parts import Body, Person
from pedalwright.driver.population import (
    THIGH_LINK,
    Prediction,
    expected,
    linked,
    widest_spread,
)
from pedalwright.shelf.shoes import shoe

Length: TypeAlias = Callable[[], mm]
Known: TypeAlias = np.bool_ | NDArray[np.bool_]

#: What a tape reading between two joints is good to, 1 SD (ours).
TAPE = 5.0
#: Ankle joint ahead of the heel point, if guessed: 1 SD (ours; nobody measures it).
ANKLE_FORWARD_SPREAD = 10.0
#: Between the joints of left and right hip (from memory; nobody can measure it with a tape).
HIP_JOINTS_APART = 170.0


def body(person: Person) -> Body:
    """Each length as measured or, failing that, as guessed.

    Whoever says whose survey, or takes a reading that says more of a length than stature does,
    gets the survey's line for it; else it is a plain share of the stature.
    """
    h, worn = person.stature, shoe(person.shoe)
    return Body(
        thigh=_read_or_guess(
            person.thigh,
            _asked(person, person.buttock_knee),
            lambda: _thigh(person).value,
            lambda: thigh_from_stature(h),
        ),
        shank=_read_or_guess(
            person.shank,
            _asked(person, person.knee_height),
            lambda: _shank(person).value,
            lambda: shank_from_stature(h),
        ),
        heel_to_ball=_read_or_guess(
            person.heel_to_ball,
            _asked(person, person.foot_length),
            lambda: _ball(person).value,
            lambda: heel_to_ball_from_stature(h),
        ),
        ankle_forward=_read_or(person.ankle_forward, lambda: ankle_forward_from_stature(h)),
        ankle_height=_read_or_guess(
            person.ankle_height,
            _asked(person, np.nan),
            lambda: shod(_survey(person, "ankle height").value, worn.heel),
            lambda: ankle_height_from_stature(h, worn.heel),
        ),
        shoe_length=_read_or_guess(
            person.shoe_length,
            _asked(person, person.foot_length),
            lambda: shod(_bare(person, person.foot_length, "foot"), worn.longer),
            lambda: shoe_length_from_stature(h, worn.longer),
        ),
        shoe_width=_read_or_guess(
            person.shoe_width,
            _asked(person, person.foot_width),
            lambda: shod(_bare(person, person.foot_width, "foot width"), worn.wider),
            lambda: shoe_width_from_stature(h, worn.wider),
        ),
    )


def body_spread(person: Person) -> Body:
    """Uncertainty of each length, 1 SD: of a tape reading, or of people about what was guessed.

    For shares of the stature the latter is the residual of the survey on stature, for the sex in
    which it is wider. For the thigh the survey's landmarks say 21 mm; flesh under the hip joint
    makes it no better.
    """
    foot, wide = widest_spread("foot"), widest_spread("foot width")
    return Body(
        thigh=_read_or_guess(
            person.thigh * 0.0 + TAPE,
            _asked(person, person.buttock_knee),
            lambda: _thigh(person).spread,
            lambda: widest_spread("thigh"),
        ),
        shank=_read_or_guess(
            person.shank * 0.0 + TAPE,
            _asked(person, person.knee_height),
            lambda: _shank(person).spread,
            lambda: widest_spread("shank"),
        ),
        heel_to_ball=_read_or_guess(
            person.heel_to_ball * 0.0 + TAPE,
            _asked(person, person.foot_length),
            lambda: _ball(person).spread,
            lambda: widest_spread("ball of foot"),
        ),
        ankle_forward=_tape_or(person.ankle_forward, ANKLE_FORWARD_SPREAD),
        ankle_height=_tape_or(person.ankle_height, widest_spread("ankle height")),
        shoe_length=_tape_or(person.shoe_length, _tape_or(person.foot_length, foot)),
        shoe_width=_tape_or(person.shoe_width, _tape_or(person.foot_width, wide)),
    )


def body_doubt(person: Person) -> Num | None:
    """How far the strangest reading is from what people of this stature have, in SD.

    None where nothing was measured but stature and inside leg.
    """
    worst: Num | None = None
    for length, reading in (
        ("thigh", person.thigh / THIGH_LINK),
        ("shank", person.shank),
        ("knee height sitting", person.knee_height),
        ("buttock to knee", person.buttock_knee),
        ("foot", person.foot_length),
        ("foot width", person.foot_width),
    ):
        if np.any(np.isfinite(reading)):
            usual = _survey(person, length)
            off = np.abs(reading - usual.value) / np.hypot(usual.spread, TAPE)
            worst = off if worst is None else np.fmax(worst, off)
    return worst


def _thigh(person: Person) -> Prediction:
    return linked(_survey(person, "thigh", person.buttock_knee))


def _shank(person: Person) -> Prediction:
    return _survey(person, "shank", person.knee_height)


def _ball(person: Person) -> Prediction:
    return _survey(person, "ball of foot", person.foot_length)


def _survey(person: Person, length: str, reading: mm = np.nan) -> Prediction:
    return expected(person.people or "mixed", length, person, reading)


def _bare(person: Person, reading: mm, length: str) -> mm:
    """A bare foot as measured, else as the survey says."""
    return _read_or(reading, lambda: _survey(person, length).value)


def _asked(person: Person, reading: mm) -> Known:
    """Where the survey's line is wanted rather than a share of the stature."""
    return np.isfinite(reading) if person.people is None else np.True_


def _read_or_guess(reading: mm, surveyed: Known, survey: Length, share: Length) -> mm:
    """The reading where there is one; a guess enters the working only if somebody needs it."""
    if surveyed.all():
        return _read_or(reading, survey)
    if not surveyed.any():
        return _read_or(reading, share)
    return _read_or(reading, lambda: np.where(surveyed, survey(), share()))


def _read_or(reading: mm, guess: Length) -> mm:
    read = np.isfinite(reading)
    if read.all():
        return reading
    return guess() if not read.any() else np.where(read, reading, guess())


def _tape_or(reading: mm, of_people: mm) -> mm:
    return np.where(np.isfinite(reading), TAPE, of_people)[()]
