"""What a length without a tolerance of its own may be out."""

from dataclasses import dataclass

from pedalwright.shelf.tables import table


@dataclass(frozen=True, kw_only=True, slots=True)
class GeneralTolerance:
    """Either way, by length, mm."""

    #: Lengths the row holds for: more than `over`, up to and with `up_to`.
    over: float
    up_to: float
    fine: float
    medium: float
    coarse: float
    source: str
    mark: str


def general_tolerances() -> tuple[GeneralTolerance, ...]:
    """Every row, short to long."""
    return table(GeneralTolerance, "general_tolerances")


def general_tolerance(length: float) -> GeneralTolerance | None:
    """The row of a length; None beyond the table."""
    return next((row for row in general_tolerances() if row.over < length <= row.up_to), None)
