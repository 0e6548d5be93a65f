"""Body lengths as a large survey of people predicts them, by sex."""

from dataclasses import dataclass
from functools import cache

from pedalwright.shelf.tables import table


@dataclass(frozen=True, kw_only=True, slots=True)
class BodyLength:
    """One regression line: a length from stature, inside leg and a reading near to it."""

    sex: str
    length: str
    #: What the line goes by, e.g. `stature, inside leg and knee height`.
    given: str
    people: float
    intercept: float
    per_stature: float
    per_inside_leg: float
    #: For the last reading of `given`, sitting knee height, buttock to knee or foot; 0 without one.
    per_reading: float
    #: Standard deviation of people about the line, mm.
    spread: float
    #: Share of the variance that the line explains.
    determination: float
    source: str
    mark: str


@cache
def body_length(sex: str, length: str, given: str) -> BodyLength:
    """The line for one sex (`male`, `female`), one length and what is known of the person."""
    wanted = (sex, length, given)
    rows: tuple[BodyLength, ...] = table(BodyLength, "body_lengths")
    return next(row for row in rows if (row.sex, row.length, row.given) == wanted)
