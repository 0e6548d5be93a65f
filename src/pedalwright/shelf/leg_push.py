"""How hard a braced leg can push, by the angle of its knee, as a share of the most it can."""

from dataclasses import dataclass
from functools import cache

from pedalwright.shelf.tables import table


@dataclass(frozen=True, kw_only=True, slots=True)
class LegPush:
    """One point of the curve; straight between."""

    #: Angle at the knee, degrees; 180 is a straight leg.
    knee_deg: float
    share: float
    source: str
    mark: str


@cache
def leg_push() -> tuple[LegPush, ...]:
    """The curve, from the most bent knee on."""
    rows: tuple[LegPush, ...] = table(LegPush, "leg_push")
    return rows
