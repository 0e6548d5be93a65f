"""The grammar of units: `mm`, `in2`, `sq in`, `N m`, `lbf ft`, `kgf/cm2`, `N*mm/rad`.

unit    = factor { "/" factor | product factor }       products come before divisions
factor  = [ "sq" | "cu" ] word [ power ] [ "." ]
product = " " | "*" | "." | "-"                        all but "*" only for a torque
power   = "2" | "3" | "4" directly behind the word, or "²", "^2", "**2"
"""

from fractions import Fraction
from functools import lru_cache

from pedalwright.core.quantity.dimension import ACCELERATION, FORCE, LENGTH, MASS, RATIO, Dimension
from pedalwright.core.quantity.doubt import DoubtError
from pedalwright.core.quantity.tokens import Cursor, Token
from pedalwright.core.quantity.unit_table import (
    DOUBTFUL,
    DOUBTFUL_CASES,
    FOOT,
    GRAM,
    GRAVITY,
    INCH,
    ONE,
    UNITS,
    WEIGHTS,
    Unit,
)

_PREFIXES = {"sq": 2, "square": 2, "cu": 3, "cubic": 3}
_RAISED = {"²": 2, "³": 3, "⁴": 4}

#: A unit raised to a power, e.g. (s, -2).
Factor = tuple[Unit, int]


def read_unit(cursor: Cursor, wanted: Dimension | None) -> Unit | None:
    """The unit under the finger, or None where no unit begins.

    `wanted` settles `g` (gram or gravity) and `lb` in `lb ft` (pound or pound-force).
    """
    if cursor.next.kind in {"foot", "inch"}:
        return FOOT if cursor.take().kind == "foot" else INCH
    if cursor.next.kind != "word":
        return None
    factors = [_factor(cursor)]
    while True:
        if cursor.follows("slash", "word"):
            cursor.take()
            unit, power = _factor(cursor)
            factors.append((unit, -power))
        elif product := _product(cursor):
            if any(power < 0 for _, power in factors):
                raise DoubtError(f"“{cursor.text}” has a product behind a division.")
            factors.append(_factor(cursor))
            if product.kind != "times" and not _is_torque(factors):
                raise DoubtError(f"“{cursor.text}” has two units where one is expected.")
        else:
            return _composed(tuple(factors), wanted)


@lru_cache(maxsize=256)
def unit_named(name: str, wanted: Dimension | None = None) -> Unit:
    """The unit of a name the program uses itself, such as `N*mm/rad` or `1`."""
    if name in {"1", ""}:
        return ONE
    try:
        cursor = Cursor(name)
        unit = read_unit(cursor, wanted)
    except DoubtError as doubt:
        raise ValueError(f"{name} is not a unit: {doubt.reason}") from None
    if unit is None or cursor.next.kind != "end":
        raise ValueError(f"{name} is not a unit")
    return unit


def _factor(cursor: Cursor) -> Factor:
    word = cursor.take()
    prefix = _PREFIXES.get(word.text.lower())
    if prefix is not None:
        if cursor.next.kind == "dot":
            cursor.take()
        if cursor.next.kind != "word":
            raise DoubtError(f"“{word.text}” is not followed by a unit.")
        word = cursor.take()
    unit = _word(cursor, word)
    power = _power(cursor)
    if prefix is not None and power is not None:
        raise DoubtError(f"“{cursor.text}” raises a unit to a power twice.")
    cursor.skip_full_stop()
    return unit, power or prefix or 1


def _word(cursor: Cursor, word: Token) -> Unit:
    doubtful = DOUBTFUL_CASES.get(word.text) or DOUBTFUL.get(word.text.lower())
    if doubtful:
        offers = (cursor.instead(word, word, unit) for unit in doubtful)
        raise DoubtError(f"“{word.text}” does not say which unit is meant.", *offers)
    unit = UNITS.get(word.text) or UNITS.get(word.text.lower())
    if unit is None:
        raise DoubtError(f"“{word.text}” is not a unit known here.")
    return unit


def _power(cursor: Cursor) -> int | None:
    piece = cursor.next
    if piece.spaced:
        return None
    if piece.kind == "power":
        cursor.take()
        return _RAISED.get(piece.text) or int(piece.text[-1])
    if piece.kind == "number" and piece.text in {"2", "3", "4"}:
        return int(cursor.take().text)
    return None


def _product(cursor: Cursor) -> Token | None:
    """The sign of a product before another unit; a space counts as one."""
    sign = cursor.next
    if sign.kind == "word":
        return sign if sign.spaced else None
    if cursor.follows("times", "word"):
        return cursor.take()
    close = not sign.spaced and not cursor.ahead().spaced
    if close and sign.text in {".", "-"} and cursor.ahead().kind == "word":
        return cursor.take()
    return None


def _is_torque(factors: list[Factor]) -> bool:
    """Force and length, each once, in either order; a mass may stand for its weight."""
    kinds = [unit.dimension for unit, power in factors if power == 1]
    heavy = [kind for kind in kinds if kind in {FORCE, MASS}]
    return len(factors) == len(kinds) == 2 and len(heavy) == 1 and LENGTH in kinds


def _composed(factors: tuple[Factor, ...], wanted: Dimension | None) -> Unit:
    if len(factors) == 1 and factors[0][1] == 1:
        unit = factors[0][0]
        return GRAVITY if unit is GRAM and wanted == ACCELERATION else unit
    unit = _multiplied(factors)
    if len(factors) > 1 and wanted not in {None, unit.dimension}:
        as_forces = _multiplied(tuple((WEIGHTS.get(unit, unit), power) for unit, power in factors))
        return as_forces if as_forces.dimension == wanted else unit
    return unit


@lru_cache(maxsize=512)
def _multiplied(factors: tuple[Factor, ...]) -> Unit:
    if {unit.dimension for unit, power in factors if power > 0} & {
        unit.dimension for unit, power in factors if power < 0
    }:
        raise DoubtError("A unit divided by another of its kind is no unit here.")
    size, dimension, above, below = Fraction(1), ONE.dimension, "", ""
    for unit, power in factors:
        indivisible = unit.dimension == RATIO or "/" in unit.symbol
        if indivisible or (" " in unit.symbol and power not in {1, -1}):
            raise DoubtError(f"{unit.symbol} cannot be part of another unit.")
        size *= unit.size**power
        dimension = dimension.times(unit.dimension, power)
        raised = f"{abs(power)}" if abs(power) > 1 else ""
        if power > 0:
            above += f" {unit.symbol}{raised}"
        else:
            below += f"/{unit.symbol.replace(' ', '')}{raised}"
    return Unit(above.strip() + below, size, dimension)
