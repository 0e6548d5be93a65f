"""The grammar of quantities: a number with its unit, and the forms that have no plain unit.

    quantity = [ sign ] amount [ "±" amount ]
    amount   = number [ unit ]              54.5 mm     1 5/8     25 N m
             | feet | degrees               5' 2 1/2"   15°30'
             | number ( ":" | "to" ) "1"    5:1
             | whole gauge                  16 SWG

Everything else is refused, above all whatever is left over behind an amount.
"""

import re

from pedalwright.core.quantity.amount import Amount, decimal
from pedalwright.core.quantity.compounds import read_degrees, read_feet
from pedalwright.core.quantity.dimension import RATIO, Dimension
from pedalwright.core.quantity.doubt import DoubtError
from pedalwright.core.quantity.gauges import GAUGES, SHEETS, SOME_GAUGE
from pedalwright.core.quantity.numerals import Numeral, read_numeral
from pedalwright.core.quantity.tokens import Cursor, Token
from pedalwright.core.quantity.unit_table import INCH, ONE
from pedalwright.core.quantity.unit_words import read_unit


def read_amounts(cursor: Cursor, wanted: Dimension) -> tuple[Amount, Amount | None]:
    """The quantity a text consists of, and its ± if there is one."""
    negative = _negative(cursor)
    nominal, within = _amount(cursor, wanted), None
    if cursor.next.kind == "within":
        cursor.take()
        within = _amount(cursor, wanted)
    if cursor.next.kind != "end":
        raise _left_over(cursor)
    if negative:
        nominal = nominal._replace(number=-nominal.number, words=f"-{nominal.words}")
    return nominal, within


def _negative(cursor: Cursor) -> bool:
    sign = cursor.next
    if sign.kind != "sign":
        return False
    cursor.take()
    if cursor.next.spaced and cursor.next.kind != "end":
        without = cursor.text[cursor.next.start :]
        raise DoubtError(
            f"“{sign.text}” stands apart from its number.", sign.text + without, without
        )
    return sign.text == "-"


def _amount(cursor: Cursor, wanted: Dimension) -> Amount:
    first = cursor.next
    if first.kind not in {"number", "vulgar"}:
        raise _no_number(cursor)
    numeral = read_numeral(cursor)
    behind = cursor.next
    if behind.kind == "colon" or behind.text.lower() == "to":
        return _ratio(cursor, first, numeral, wanted)
    if behind.text == "-" and cursor.ahead().kind in {"number", "vulgar"}:
        cursor.take()
        raise _between(cursor, first, numeral, read_numeral(cursor))
    if behind.text.upper() in GAUGES:
        return _gauge(cursor, numeral)
    if behind.text.lower() in SOME_GAUGE:
        raise _which_gauge(cursor, first, numeral)
    compound = read_feet(cursor, first, numeral) or read_degrees(cursor, first, numeral)
    if compound is not None:
        return compound
    unit = read_unit(cursor, wanted)
    where = slice(behind.start, cursor.behind.end)
    return Amount(numeral.value, numeral.words, unit, "", numeral.is_fraction, where)


def _ratio(cursor: Cursor, first: Token, numeral: Numeral, wanted: Dimension) -> Amount:
    separator = cursor.take()
    if cursor.next.kind != "number":
        raise DoubtError(f"Nothing that can be read follows “{separator.text}”.")
    other = read_numeral(cursor)
    if separator.kind == "word" and cursor.ahead(0).kind == "word":
        raise _between(cursor, first, numeral, other)
    written = cursor.written(first, cursor.behind)
    if other.value == 0:
        raise DoubtError(f"“{written}” divides by nothing.")
    if other.words == "1" or wanted != RATIO:
        words = f"{numeral.words}:{other.words}"
        return Amount(numeral.value / other.value, words, ONE, ":1")
    texts = [f"{other.words}:1"] if numeral.value == 1 else []
    texts.append(decimal(numeral.value / other.value))
    if numeral.value + other.value == 100:
        texts.append(f"{numeral.words} %")
    offers = (cursor.instead(first, cursor.behind, text) for text in texts)
    raise DoubtError(f"“{written}” is not something to 1.", *offers)


def _between(cursor: Cursor, first: Token, low: Numeral, high: Numeral) -> DoubtError:
    """`10-12 mm` is two numbers; their middle with a ± may be meant, or `1 - 5/8` is 1 5/8."""
    text = ""
    if low.value < high.value:
        middle, half = (low.value + high.value) / 2, (high.value - low.value) / 2
        text = f"{decimal(middle)} ±{decimal(half)}"
    elif high.is_fraction and low.is_whole:
        text = f"{low.words} {high.words}"
    offers = [cursor.instead(first, cursor.behind, text)] if text else []
    written = cursor.written(first, cursor.behind)
    return DoubtError(f"“{written}” is more than one number.", *offers)


def _gauge(cursor: Cursor, numeral: Numeral) -> Amount:
    gauge = GAUGES[cursor.take().text.upper()]
    cursor.skip_full_stop()
    inches = gauge.inches.get(int(numeral.words)) if numeral.is_whole else None
    if inches is None:
        raise DoubtError(
            f"{gauge.name} has whole numbers from {min(gauge.inches)} to {max(gauge.inches)} here, "
            f"not {numeral.words}."
        )
    return Amount(inches, f"{int(numeral.words)} {gauge.name}", INCH, gauge.name)


def _which_gauge(cursor: Cursor, first: Token, numeral: Numeral) -> DoubtError:
    last = cursor.take()
    texts = [f"{numeral.words} {gauge.name}" for gauge in SHEETS]
    meant = ", ".join(f"{gauge.meant} ({gauge.name})" for gauge in SHEETS)
    offers = [cursor.instead(first, last, text) for text in texts]
    written = cursor.written(first, last)
    return DoubtError(f"“{written}” does not say which gauge is meant: {meant}.", *offers)


def _no_number(cursor: Cursor) -> DoubtError:
    piece, behind = cursor.next, cursor.ahead()
    if piece.kind == "end":
        return DoubtError(f"“{cursor.text}” ends where a number should stand.")
    swapped = f"{behind.text} {piece.text}"
    offers = [swapped] if cursor.follows("word", "number") else []
    return DoubtError(f"“{piece.text}” stands where a number should.", *offers)


def _left_over(cursor: Cursor) -> DoubtError:
    rest = cursor.text[cursor.next.start :]
    read = cursor.text[: cursor.next.start].strip()
    offers = [re.sub(r"(?<=[A-Za-z])(?=[0-9])", " ", cursor.text)]
    if [piece.kind for piece in cursor.pieces] == ["number", "word", "number", "end"]:
        number, unit, more = (piece.text for piece in cursor.pieces[:3])
        offers += [f"{number}.{more} {unit}", f"{number} {unit}{more}"]
    return DoubtError(f"“{rest}” is left over behind “{read}”.", *offers)
