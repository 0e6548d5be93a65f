"""Where a share of drivers puts the seat, as a curve over the seat height."""

from dataclasses import dataclass

from pedalwright.shelf.tables import table


@dataclass(frozen=True, kw_only=True, slots=True)
class SeatCurve:
    """Hip behind ball of foot = a + b · height - c · height²; mm, from 127 to 405 mm."""

    #: Drivers in 100 who would sit further forward.
    share: float
    a: float
    b: float
    c: float
    source: str
    mark: str


def seat_curves() -> tuple[SeatCurve, ...]:
    """Every curve, front to rear."""
    return table(SeatCurve, "seat_curves")
