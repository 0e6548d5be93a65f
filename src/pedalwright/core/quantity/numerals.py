"""The grammar of numbers: `54.5`, `19,05`, `1 950`, `5/8`, `1 5/8`, `1-5/8`, `1⅝`, `2e6`.

    number   = whole "/" whole                       a proper fraction
             | whole (" " | "-") fraction            a mixed number; a hyphen without spaces
             | digits { " " three digits }           thousands in groups, no leading zero
             | decimal                               one point or one comma

`1,905` may be 1.905 or 1905, so it is refused; `19,05` and `0,905` can only be decimals.
"""

import re
from fractions import Fraction
from typing import NamedTuple

from pedalwright.core.quantity.doubt import DoubtError
from pedalwright.core.quantity.tokens import VULGAR, Cursor, Token

_THOUSANDS = re.compile(r"[1-9][0-9]{0,2}(,[0-9]{3})+")
_THOUSANDS_BOTH_WAYS = re.compile(
    r"[1-9][0-9]{0,2}(?:(?:,[0-9]{3})+\.[0-9]+|(?:\.[0-9]{3})+,[0-9]+|(?:\.[0-9]{3}){2,})"
)
_LARGEST_EXPONENT = 400


class Numeral(NamedTuple):
    """A number without sign or unit."""

    value: Fraction
    #: As a careful hand would write it: a point, no grouping, a space before a fraction.
    words: str
    is_fraction: bool = False

    @property
    def is_whole(self) -> bool:
        """True for plain digits."""
        return self.words.isdigit()


def read_numeral(cursor: Cursor) -> Numeral:
    """The number under the finger."""
    first = cursor.take()
    if first.kind == "vulgar":
        numeral = _vulgar(first)
    elif cursor.next.kind == "slash":
        numeral = _fraction(cursor, first)
    elif _fraction_follows(cursor):
        numeral = _mixed(cursor, first)
    elif cursor.next.kind == "number":
        numeral = _grouped(cursor, first)
    else:
        numeral = _decimal(cursor, first)
    if cursor.next.kind in {"number", "vulgar"}:
        raise _two_numbers(cursor, first)
    return numeral


def _fraction_follows(cursor: Cursor) -> bool:
    """True before ` 5/8`, `-5/8` and `⅝`. A hyphen with a space would be a minus."""
    hyphen = cursor.next.text == "-"
    if hyphen and (cursor.next.spaced or cursor.ahead().spaced):
        return False
    first, second = cursor.ahead(int(hyphen)), cursor.ahead(int(hyphen) + 1)
    return first.kind == "vulgar" or (first.kind == "number" and second.kind == "slash")


def _mixed(cursor: Cursor, whole: Token) -> Numeral:
    if cursor.next.kind == "sign":
        cursor.take()
    first = cursor.take()
    part = _vulgar(first) if first.kind == "vulgar" else _fraction(cursor, first)
    if not whole.is_whole:
        raise DoubtError(f"“{whole.text}” before a fraction is not a whole number.")
    return Numeral(int(whole.text) + part.value, f"{int(whole.text)} {part.words}", True)


def _vulgar(token: Token) -> Numeral:
    above, below = VULGAR[token.text]
    return Numeral(Fraction(above, below), f"{above}/{below}", True)


def _fraction(cursor: Cursor, numerator: Token) -> Numeral:
    cursor.take()
    if cursor.next.kind == "slash" and cursor.ahead().is_whole:
        once = cursor.instead(numerator, cursor.ahead(), f"{numerator.text}/{cursor.ahead().text}")
        raise DoubtError(f"“{cursor.text}” has two strokes in a fraction.", once)
    denominator = cursor.next
    if denominator.kind != "number":
        raise DoubtError(f"Nothing that can be read follows the stroke in “{cursor.text}”.")
    written = cursor.written(numerator, cursor.take())
    if not (numerator.is_whole and denominator.is_whole):
        raise DoubtError(f"“{written}” is not a fraction of whole numbers.")
    above, below = int(numerator.text), int(denominator.text)
    if below == 0:
        raise DoubtError(f"“{written}” divides by nothing.")
    if not 0 < above < below:
        raise _improper(cursor, numerator, denominator)
    return Numeral(Fraction(above, below), f"{above}/{below}", True)


def _improper(cursor: Cursor, numerator: Token, denominator: Token) -> DoubtError:
    """`15/8` is 1 7/8, or a 1 5/8 that lost its space."""
    whole, rest = divmod(int(numerator.text), int(denominator.text))
    texts = [f"{whole} {rest}/{denominator.text}" if rest else str(whole)]
    texts += [
        f"{numerator.text[:cut]} {numerator.text[cut:]}/{denominator.text}"
        for cut in range(1, len(numerator.text))
    ]
    offers = (cursor.instead(numerator, denominator, text) for text in texts)
    written = cursor.written(numerator, denominator)
    return DoubtError(f"“{written}” is not less than one, so a space may be missing.", *offers)


def _grouped(cursor: Cursor, first: Token) -> Numeral:
    """Thousands such as `1 950` and `12 500,5`; one space before each group of three digits."""
    groups, start = [first], cursor.place
    while cursor.next.kind == "number" and cursor.next.start == groups[-1].end + 1:
        groups.append(cursor.take())
    heads, last = groups[1:-1], groups[-1]
    tail = re.fullmatch(r"([0-9]{3})(?:[.,]([0-9]+))?", last.text)
    leads = first.is_whole and len(first.text) <= 3 and first.text[0] != "0"
    inner = all(group.is_whole and len(group.text) == 3 for group in heads)
    if len(groups) == 1 or not (leads and inner and tail):
        cursor.back_to(start)
        raise _two_numbers(cursor, first)
    words = "".join(group.text for group in groups[:-1]) + tail[1]
    words += f".{tail[2]}" if tail[2] else ""
    return Numeral(Fraction(words), words)


def _decimal(cursor: Cursor, token: Token) -> Numeral:
    mantissa, _, exponent = token.text.lower().partition("e")
    points, commas = mantissa.count("."), mantissa.count(",")
    if points + commas > 1:
        raise _too_many_separators(cursor, token, mantissa)
    if _THOUSANDS.fullmatch(mantissa):
        texts = (mantissa.replace(",", "."), mantissa.replace(",", ""))
        offers = (cursor.instead(token, token, text) for text in texts)
        raise DoubtError(f"“{token.text}” can be read in two ways.", *offers)
    if commas and mantissa[-1] == ",":
        raise DoubtError(
            f"Nothing follows the comma in “{token.text}”.",
            cursor.instead(token, token, mantissa[:-1]),
        )
    if exponent and abs(int(exponent)) > _LARGEST_EXPONENT:
        raise DoubtError(f"“{token.text}” is out of all proportion.")
    words = mantissa.replace(",", ".").rstrip(".")
    value = _exact(words)
    if exponent:
        value *= Fraction(10) ** int(exponent)
        words += f"e{int(exponent)}"
    return Numeral(value, f"0{words}" if words[0] == "." else words)


def _exact(decimal: str) -> Fraction:
    whole, _, part = decimal.partition(".")
    return Fraction(int(whole + part), 10 ** len(part)) if part else Fraction(int(whole))


def _too_many_separators(cursor: Cursor, token: Token, mantissa: str) -> DoubtError:
    texts: list[str] = []
    if _THOUSANDS.fullmatch(mantissa):
        texts = [mantissa.replace(",", "")]
    elif _THOUSANDS_BOTH_WAYS.fullmatch(mantissa):
        both = "," in mantissa and "." in mantissa
        whole, part = re.split(r"[.,](?=[0-9]+$)", mantissa) if both else (mantissa, "")
        texts = [re.sub(r"[.,]", "", whole) + (f".{part}" if part else "")]
    offers = (cursor.instead(token, token, text) for text in texts)
    return DoubtError(f"“{token.text}” has more than one point or comma.", *offers)


def _two_numbers(cursor: Cursor, first: Token) -> DoubtError:
    """`5 2` may be 5.2, 5 ft 2 in, or 52."""
    last = first
    while cursor.next.kind in {"number", "vulgar"}:
        last = cursor.take()
    between = cursor.pieces[cursor.pieces.index(first) + 1 : cursor.pieces.index(last) + 1]
    offers: list[str] = []
    if first.is_whole and len(between) == 1 and last.is_whole:
        one, two = first.text, last.text
        texts = (f"{one}.{two}", f"{one} ft {two} in", f"{one}{two}")
        offers = [cursor.instead(first, last, text) for text in texts]
    return DoubtError(f"“{cursor.written(first, last)}” is more than one number.", *offers)
