"""From readings as typed to sights with a scatter."""

from collections.abc import Sequence

import numpy as np

from pedalwright.core.units import mm
from pedalwright.survey.formulas import mean_sigma, permitted_error

#: Constant and growth by the metre of what a tape of each class may be out, mm (2014/32/EU).
TAPES = {"I": (0.1, 0.1), "II": (0.3, 0.2), "III": (0.6, 0.4)}


def tape_error(tape: str, length: mm) -> mm:
    """What a tape of a class may be out over a length."""
    constant, by_metre = TAPES[tape]
    return permitted_error.rule(constant, by_metre, np.ceil(length / 1000.0))


def mean_of(
    readings: Sequence[float], sigmas: Sequence[float], tape: str | None = None
) -> tuple[float, float]:
    """The mean of repeated readings and its standard deviation; nan readings are left out."""
    known = [(r, s) for r, s in zip(readings, sigmas, strict=True) if np.isfinite(r)]
    if not known:
        return np.nan, np.nan
    mean = float(np.mean([reading for reading, _ in known]))
    usual = float(np.sqrt(np.mean([sigma**2 for _, sigma in known])))
    most = tape_error(tape, abs(mean)) if tape is not None else 0.0
    return mean, float(mean_sigma.rule(usual, float(len(known)), most))
