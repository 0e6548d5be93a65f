"""The grammar of feet with inches and of degrees with minutes.

feet    = whole feet [ "-" ] number [ inches ]        5' 2 1/2"    5 ft 2    5'-2"
degrees = whole degrees number minutes [ number seconds ]     15°30'     15d30'
"""

from fractions import Fraction
from typing import NamedTuple

from pedalwright.core.quantity.amount import Amount, decimal
from pedalwright.core.quantity.doubt import DoubtError
from pedalwright.core.quantity.numerals import Numeral, read_numeral
from pedalwright.core.quantity.tokens import Cursor, Token
from pedalwright.core.quantity.unit_table import DEGREE, FOOT, INCH, UNITS

_DEGREE_WORDS = frozenset({"°", "d", "deg", "degs", "degree", "degrees"})
_MINUTE_WORDS = frozenset({"min", "mins", "minutes", "arcmin"})
_SECOND_WORDS = frozenset({"sec", "secs", "seconds", "arcsec"})


class _Span(NamedTuple):
    """The pieces of the text a compound was read from, for messages and offers."""

    cursor: Cursor
    first: Token
    last: Token

    def doubt(self, complaint: str, *texts: str) -> DoubtError:
        offers = (self.cursor.instead(self.first, self.last, text) for text in texts)
        return DoubtError(f"“{self.cursor.written(self.first, self.last)}” {complaint}", *offers)


def read_feet(cursor: Cursor, first: Token, feet: Numeral) -> Amount | None:
    """Feet and inches, or None where only feet are written; the unit is under the finger."""
    if cursor.next.kind != "foot" and UNITS.get(cursor.next.text.lower()) is not FOOT:
        return None
    start = cursor.place
    mark = cursor.take()
    if mark.kind == "word":
        cursor.skip_full_stop()
    if cursor.next.text == "-" and cursor.next.spaced == cursor.ahead().spaced:
        cursor.take()
    area = mark.kind == "word" and not cursor.next.spaced
    if cursor.next.kind not in {"number", "vulgar"} or area:
        cursor.back_to(start)
        return None
    inches = read_numeral(cursor)
    last = cursor.behind
    marked = cursor.next.kind == "inch" or UNITS.get(cursor.next.text.lower()) is INCH
    if marked:
        last = cursor.take()
        if last.kind == "word":
            cursor.skip_full_stop()
    span = _Span(cursor, first, last)
    _check_inches(span, feet, inches, marked)
    number = 12 * feet.value + inches.value
    words = f"{feet.words} ft {inches.words} in"
    return Amount(number, words, INCH, "ft in", inches.is_fraction)


def _check_inches(span: _Span, feet: Numeral, inches: Numeral, marked: bool) -> None:
    whole, rest = divmod(12 * feet.value + inches.value, 12)
    carried = f"{whole} ft {decimal(rest)} in"
    if not (span.first.text == feet.words and feet.is_whole):
        raise span.doubt("does not begin with a whole number of feet.", carried)
    if inches.value >= 12:
        raise span.doubt("has a foot or more in its inches.", carried)
    if inches.is_fraction and " " not in inches.words and not marked:
        texts = (f"{feet.words} ft {inches.words} in", f"{feet.words} {inches.words} ft")
        raise span.doubt("does not say whether its fraction is of a foot or an inch.", *texts)


def read_degrees(cursor: Cursor, first: Token, degrees: Numeral) -> Amount | None:
    """Degrees and minutes, or None where only degrees are written."""
    if cursor.next.text.lower() not in _DEGREE_WORDS or cursor.ahead().kind != "number":
        return None
    cursor.take()
    minutes = read_numeral(cursor)
    minutes_marked = _marked(cursor, "foot", _MINUTE_WORDS)
    seconds, seconds_marked = None, True
    if minutes_marked and cursor.next.kind == "number":
        seconds = read_numeral(cursor)
        seconds_marked = _marked(cursor, "inch", _SECOND_WORDS)
    span = _Span(cursor, first, cursor.behind)
    if not (minutes_marked and seconds_marked):
        texts = () if seconds else (f"{degrees.words}°{minutes.words}'", _joined(degrees, minutes))
        raise span.doubt("does not say what its last number counts.", *texts)
    whole = first.text == degrees.words and degrees.is_whole
    if not whole or (seconds and not minutes.is_whole) or (seconds or minutes).is_fraction:
        raise span.doubt("does not count whole degrees, and whole minutes before seconds.")
    small = Fraction(0) if seconds is None else seconds.value
    if minutes.value >= 60 or small >= 60:
        raise span.doubt("counts 60 or more where there are only 60 to the next.")
    words = f"{degrees.words}°{minutes.words}'" + (f'{seconds.words}"' if seconds else "")
    return Amount(degrees.value + minutes.value / 60 + small / 3600, words, DEGREE, "deg min")


def _marked(cursor: Cursor, mark: str, words: frozenset[str]) -> bool:
    """Pass over the mark of minutes or seconds, if it is there."""
    found = cursor.next.kind == mark or cursor.next.text.lower() in words
    if found:
        cursor.take()
    return found


def _joined(degrees: Numeral, minutes: Numeral) -> str:
    return f"{degrees.words}.{minutes.words} deg"
