"""Numbers back into text: `show` for people, `write` for a file."""

from collections.abc import Callable
from decimal import ROUND_HALF_UP, Context, Decimal
from fractions import Fraction
from math import isfinite

from pedalwright.core.quantity.forms import COMPLETE, Same, in_form, unit_beside_form, unit_of_form
from pedalwright.core.quantity.unit_table import DEGREE, PERCENT, Unit
from pedalwright.core.quantity.unit_words import unit_named

#: Numbers this close, as a share, are shown alike: 1.625000000001 in is 1 5/8 in.
_SAME_TO_THE_EYE = 1e-9

_SIGNIFICANT = 4
_MOST_DIGITS = 15
_RAISED = str.maketrans("234", "²³⁴")


def show(
    value: float,
    unit: str,
    *,
    like: str | None = None,
    digits: int | None = None,
    plus_minus: float | None = None,
) -> str:
    """A number for people: `41.275 mm`, `43.86 bar`, `1 5/8 in`, `15.5°`, `54.5 ±0.5 mm`.

    `unit` is the unit of `value`, `like` the one to show: any unit of its kind, or one of the
    forms `ft in`, `deg min`, `:1`, `SWG`, `MSG`, `AWG`. An angle is shown in degrees unless
    told otherwise. Inches are shown in fractions down to 1/64 where those are exact. A sheet
    that is not of the gauge is shown in mm.

    Without `digits` (significant ones) there are four, and in some units more, down to what
    can be measured: mm to three decimals, inches to four.
    """
    if not isfinite(value):
        return "no value"

    def to_the_eye(number: float, form: str, target: Unit) -> str | None:
        return _shown(number, form, unit_named(unit), target, digits)

    return _text(value, unit, like, plus_minus, to_the_eye, pretty)


def write(
    value: float, unit: str, *, like: str | None = None, plus_minus: float | None = None
) -> str:
    """A number for a file, which `parse` reads back as the same number.

    `like` as in `show`: give the `like` of the reading that is replaced, and the file keeps
    the hand of its builder.
    """
    assert isfinite(value), "a missing number is left out of a file, not written"

    def to_the_digit(number: float, form: str, target: Unit) -> str | None:
        return _exact(number, form, unit_named(unit), target)

    return _text(value, unit, like, plus_minus, to_the_digit, lambda u: f" {u.symbol}".rstrip())


def home(unit: str) -> str:
    """The unit a quantity is shown in unless told otherwise: degrees for rad, else its own."""
    return "deg" if unit == "rad" else unit


def pretty(unit: Unit) -> str:
    """What is set behind a number: ` N·mm`, ` m/s²`, `°`; nothing behind a pure number."""
    symbol = unit.symbol.translate(_RAISED).replace(" ", "·")
    return "°" if unit is DEGREE else f" {symbol}".rstrip()


def _text(
    value: float,
    unit: str,
    like: str | None,
    plus_minus: float | None,
    number: Callable[[float, str, Unit], str | None],
    behind: Callable[[Unit], str],
) -> str:
    """A quantity and its ±, from a way to write one number and a way to write a unit."""
    form = like or home(unit)
    target = unit_of_form(form, unit_named(unit).dimension)
    text = number(value, form, target)
    if text is None:
        return _text(value, unit, "mm", plus_minus, number, behind)
    whole = text if form in COMPLETE else text + behind(target)
    if plus_minus is None:
        return whole
    assert plus_minus >= 0, "a ± is not negative"
    beside = unit_beside_form(form, target)
    around = number(plus_minus, beside.symbol, beside)
    shared = form not in COMPLETE and target is not PERCENT
    return f"{text if shared else whole} ±{around}{behind(beside)}"


def _shown(value: float, form: str, wanted: Unit, target: Unit, digits: int | None) -> str | None:
    number = abs(Fraction(value) * wanted.size / target.size)
    near = number * Fraction(_SAME_TO_THE_EYE)
    decimal = _rounded(number, target, digits)
    text = in_form(form, number, decimal, lambda other: abs(other - number) <= near)
    return f"-{text}" if text is not None and value < 0 else text


def _exact(value: float, form: str, wanted: Unit, target: Unit) -> str | None:
    scale, size = target.size / wanted.size, abs(value)
    number = Fraction(size) / scale

    def same(other: Fraction) -> bool:
        return float(other * scale) == size

    text = in_form(form, number, _shortest(number, same), same)
    return f"-{text}" if text is not None and value < 0 else text


def _shortest(number: Fraction, same: Same) -> str:
    """The fewest digits, from twelve on, that are still the same number."""
    for precision in (12, 15, 17, 20):
        context = Context(prec=precision)
        rounded = context.divide(Decimal(number.numerator), Decimal(number.denominator))
        if same(Fraction(rounded)):
            break
    plain = not number or -7 < rounded.adjusted() < _MOST_DIGITS
    return _trimmed(f"{rounded:f}") if plain else f"{rounded.normalize():e}"


def _rounded(number: Fraction, unit: Unit, digits: int | None) -> str:
    """A number to some significant digits; without a wish, to what is worth reading."""
    if not number:
        return "0"
    value = Context(prec=12).divide(Decimal(number.numerator), Decimal(number.denominator))
    first = value.adjusted()
    if not -7 < first < _MOST_DIGITS:
        return f"{value:.{(digits or _SIGNIFICANT) - 1}e}"
    places = max(unit.decimals, _SIGNIFICANT - 1 - first) if digits is None else digits - 1 - first
    return _trimmed(f"{value.quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP):f}")


def _trimmed(number: str) -> str:
    return number.rstrip("0").rstrip(".") if "." in number else number
