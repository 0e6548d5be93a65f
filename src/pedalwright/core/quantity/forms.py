"""Forms of writing that are more than a decimal and a unit: `1 5/8 in`, `5 ft 2 in`, `16 SWG`."""

from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction

from pedalwright.core.quantity.dimension import Dimension
from pedalwright.core.quantity.gauges import GAUGES
from pedalwright.core.quantity.unit_table import DEGREE, INCH, MM, ONE, Unit
from pedalwright.core.quantity.unit_words import unit_named

#: Forms that carry their unit within them, and the unit their number is counted in.
COMPLETE = {"ft in": INCH, "deg min": DEGREE, ":1": ONE, **dict.fromkeys(GAUGES, INCH)}

_FINEST_PART_OF_AN_INCH = 64

#: Beyond this a compound is no longer written by hand.
_LONGEST_BY_HAND = 10**9

#: Says whether another number would do for the one to be written.
Same = Callable[[Fraction], bool]


def unit_of_form(form: str, dimension: Dimension) -> Unit:
    """The unit a form counts in."""
    unit = COMPLETE.get(form) or unit_named(form, dimension)
    if unit.dimension != dimension:
        raise ValueError(f"{form} is no form of this quantity")
    return unit


def unit_beside_form(form: str, unit: Unit) -> Unit:
    """The unit a ± is written in beside a form: a sheet's gauge has none, so mm."""
    return MM if form in GAUGES else unit


def in_form(form: str, number: Fraction, decimal: str, same: Same) -> str | None:
    """A number, not negative, in a form; `decimal` is the same number in plain digits.

    None where the form has no such number: a thickness that is not of the gauge.
    """
    if form in GAUGES:
        gauge = GAUGES[form]
        sheets = (n for n, inches in gauge.inches.items() if same(inches))
        return next((f"{n} {gauge.name}" for n in sheets), None)
    if form == ":1":
        return f"{decimal}:1"
    handy = "e" not in decimal and number < _LONGEST_BY_HAND
    if form == "deg min":
        return _degrees_and_minutes(number, decimal, same) if handy else f"{decimal} deg"
    if form == "ft in":
        return _feet_and_inches(number, decimal, same) if handy else f"{decimal} in"
    nearest = _sixty_fourths(number)
    return mixed(nearest) if form == "in" and handy and same(nearest) else decimal


def _sixty_fourths(inches: Fraction) -> Fraction:
    return Fraction(round(inches * _FINEST_PART_OF_AN_INCH), _FINEST_PART_OF_AN_INCH)


def mixed(number: Fraction) -> str:
    """A number as a workshop fraction: `1 5/8`, `5/8`, `2`."""
    whole, rest = divmod(number, 1)
    return f"{whole} {rest}" if whole and rest else str(rest or whole)


def _feet_and_inches(number: Fraction, decimal: str, same: Same) -> str:
    nearest = _sixty_fourths(number)
    if same(nearest):
        return f"{nearest // 12} ft {mixed(nearest % 12)} in"
    feet, inches = divmod(Decimal(decimal), 12)
    return f"{feet:f} ft {inches:f} in"


def _degrees_and_minutes(number: Fraction, decimal: str, same: Same) -> str:
    minutes = round(number * 60)
    if same(Fraction(minutes, 60)):
        return f"{minutes // 60}°{minutes % 60}'"
    degrees, part = divmod(Decimal(decimal), 1)
    return f"{degrees:f}°{part * 60:f}'"
