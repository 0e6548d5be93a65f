"""What shoes add to bare feet."""

from dataclasses import dataclass
from functools import cache

from pedalwright.shelf.tables import table


@dataclass(frozen=True, kw_only=True, slots=True)
class Shoe:
    """One kind of shoe."""

    kind: str
    #: Thickness under the heel, mm.
    heel: float
    #: What it adds to the length and to the width of the foot, mm.
    longer: float
    wider: float
    source: str
    mark: str


@cache
def shoe(kind: str) -> Shoe:
    """The row for a kind of shoe."""
    rows: tuple[Shoe, ...] = table(Shoe, "shoes")
    return next(row for row in rows if row.kind == kind)
