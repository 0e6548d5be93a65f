"""Body lengths as a large survey of people predicts them, by sex."""

from dataclasses import dataclass

from pedalwright.shelf.tables import table


@dataclass(frozen=True, kw_only=True, slots=True)
class BodyLength:
    """One regression line: length = intercept + per_stature · stature + per_inside_leg · leg."""

    sex: str
    length: str
    #: `stature`, or `stature and inside leg`.
    given: str
    people: float
    intercept: float
    per_stature: float
    per_inside_leg: float
    #: Standard deviation of people about the line, mm.
    spread: float
    #: Share of the variance that the line explains.
    determination: float
    source: str
    mark: str


def body_length(sex: str, length: str, given: str) -> BodyLength:
    """The line for one sex (`male`, `female`), one length and what is known of the person."""
    wanted = (sex, length, given)
    rows: tuple[BodyLength, ...] = table(BodyLength, "body_lengths")
    return next(row for row in rows if (row.sex, row.length, row.given) == wanted)
