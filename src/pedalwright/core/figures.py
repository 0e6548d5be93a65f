"""Numbers and units as the working and the drawings show them."""

import re
from math import floor, log10

import numpy as np

from pedalwright.core.notation import raised
from pedalwright.core.units import Num

#: A space inside a number, narrow and never broken at the end of a line.
THIN = "\N{NARROW NO-BREAK SPACE}"


def figure(value: Num, unit: str) -> str:
    """A number with its unit, to four significant figures.

    Whole digits are kept below ten million, so that a sum can be checked by hand. An angle is
    given in degrees too. Of many numbers the smallest and the largest are shown. What is not a
    number reads "no value".
    """
    numbers = np.asarray(value, dtype=np.float64)
    if numbers.ndim == 0:
        return _with_unit(_joined(float(numbers)), unit, float(numbers))
    finite = numbers[np.isfinite(numbers)]
    if not finite.size:
        return f"no value ({numbers.size} tried)"
    ends = dict.fromkeys(_joined(float(end)) for end in (finite.min(), finite.max()))
    return f"{_with_unit(' … '.join(ends), unit)} ({numbers.size} values)"


def digits(value: float) -> tuple[str, int]:
    """Four significant figures as (digits, power of ten); the power is 0 where it can be."""
    if not np.isfinite(value):
        return ("no value", 0) if np.isnan(value) else ("∞" if value > 0 else "-∞", 0)
    size = abs(value)
    if size and not 1e-4 <= size < 1e7:
        mantissa, exponent = f"{value:.3e}".split("e")
        return _trimmed(mantissa), int(exponent)
    decimals = max(0, 3 - floor(log10(size))) if size else 0
    return grouped(_trimmed(f"{value:.{decimals}f}")), 0


def grouped(number: str) -> str:
    """Whole digits in groups of three, from five digits on: 107 100."""
    whole, point, rest = number.partition(".")
    if len(whole.lstrip("-")) > 4:
        whole = f"{int(whole):,}".replace(",", THIN)
    return whole + point + rest


def unit_text(unit: str) -> str:
    """A unit as the trade reads it: `N*mm` becomes N·mm, `m/s2` m/s², `1` nothing."""
    if unit == "1":
        return ""
    exponent = re.compile(r"(?<=[A-Za-zµ])(?:\^|\*\*)?(-?\d+)")
    return exponent.sub(lambda match: raised(match[1]), unit).replace("*", "·")


def _trimmed(number: str) -> str:
    trimmed = number.rstrip("0").rstrip(".") if "." in number else number
    return "0" if trimmed == "-0" else trimmed


def _joined(value: float) -> str:
    mantissa, exponent = digits(value)
    return f"{mantissa}·10{raised(str(exponent))}" if exponent else mantissa


def _with_unit(text: str, unit: str, angle: float | None = None) -> str:
    if text == "no value":
        return text
    degrees = f" ({_joined(np.degrees(angle))}°)" if unit == "rad" and angle is not None else ""
    return f"{text} {unit_text(unit)}".rstrip() + degrees
