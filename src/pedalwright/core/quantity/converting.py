"""Numbers from one unit into another, for what is drawn or tabulated without its unit."""

from functools import lru_cache

from pedalwright.core.quantity.unit_words import unit_named
from pedalwright.core.units import Num


def converted(value: Num, unit: str, to: str) -> Num:
    """A number, or many, in another unit of its kind: `converted(25.4, "mm", "in")` is 1."""
    return value * _factor(unit, to)


@lru_cache(maxsize=256)
def _factor(unit: str, to: str) -> float:
    given = unit_named(unit)
    wanted = unit_named(to, given.dimension)
    assert wanted.dimension == given.dimension, f"{unit} and {to} measure different things"
    return float(given.size / wanted.size)
