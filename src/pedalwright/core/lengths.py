"""How a drawing writes lengths: in millimetres, or in inches."""

from collections.abc import Callable
from fractions import Fraction
from math import isfinite
from typing import TypeAlias

#: From a length in mm, and the decimals of a millimetre worth writing, to what is written.
Written: TypeAlias = Callable[[float, int], str]

MM_PER_INCH = 25.4
#: A rule is divided so finely; what is no whole number of these is written in decimals.
PARTS = 64
#: Decimals of an inch worth writing.
THOUSANDTHS = 3
MARK = "″"
#: What stands for a length nobody gave.
UNKNOWN = "?"


def millimetres(length: float, decimals: int) -> str:
    """Without zeros that say nothing: 54.5, 272."""
    return trimmed(length, decimals) if isfinite(length) else UNKNOWN


def inches(length: float, decimals: int) -> str:
    """A workshop fraction where the length is one, 1 3/4″, else decimals: 8.297″.

    An inch needs two decimals more than a millimetre to be as fine; three are enough.
    """
    if not isfinite(length):
        return UNKNOWN
    amount = length / MM_PER_INCH
    parts = round(amount * PARTS)
    if abs(amount * PARTS - parts) > _HAIR:
        return f"{trimmed(amount, min(decimals + 2, THOUSANDTHS))}{MARK}"
    whole, rest = divmod(abs(Fraction(parts, PARTS)), 1)
    sign = "-" if parts < 0 else ""
    return sign + (f"{whole} {rest}" if whole and rest else str(rest or whole)) + MARK


def trimmed(amount: float, decimals: int) -> str:
    """A number with at most so many decimals."""
    text = f"{amount:.{decimals}f}"
    return text.rstrip("0").rstrip(".") if decimals else text


#: Rounding of floats is no deviation.
_HAIR = 1e-6
