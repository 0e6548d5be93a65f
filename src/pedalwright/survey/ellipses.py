"""Error ellipses: where a mark lies with a given probability, seen from one side."""

from typing import NamedTuple

import numpy as np

from pedalwright.core.units import Array, Ratio, mm, rad
from pedalwright.survey.formulas import ellipse_factor, ellipse_turn, semi_major, semi_minor


class Ellipse(NamedTuple):
    """Half axes, and the direction of the longer one from the first axis of the view."""

    long: mm
    short: mm
    turn: rad


def ellipse(covariance: Array, probability: Ratio) -> Ellipse:
    """The ellipse that holds a mark with a probability; `covariance` is (2, 2)."""
    xx, yy, xy = covariance[0, 0], covariance[1, 1], covariance[0, 1]
    factor = ellipse_factor.rule(probability)
    short = np.nan_to_num(semi_minor.rule(xx, yy, xy))  # what is lost in the arithmetic is nought
    return Ellipse(
        long=factor * semi_major.rule(xx, yy, xy),
        short=factor * short,
        turn=ellipse_turn.rule(xx, yy, xy),
    )
