"""The units a builder uses, one row each.

Factors are exact fractions, so that `1 5/8 in` is 41.275 mm to the last digit. Sources: SI
brochure (9th ed.); international inch and pound (1959), 25.4 mm and 0.45359237 kg; standard
gravity 9.80665 m/s2 (3rd CGPM, 1901).
"""

from fractions import Fraction
from math import pi
from typing import NamedTuple

from pedalwright.core.quantity import dimension as kind
from pedalwright.core.quantity.dimension import Dimension


class Unit(NamedTuple):
    """A unit: its symbol, its size in m, kg, s and rad, and the kind of quantity it measures."""

    symbol: str
    size: Fraction
    dimension: Dimension
    #: Decimals that are worth showing even where four digits would do.
    decimals: int = 0


_INCH, _POUND, _GRAVITY = Fraction("0.0254"), Fraction("0.45359237"), Fraction("9.80665")
_KGF, _LBF, _FOOT = _GRAVITY, _POUND * _GRAVITY, 12 * _INCH
_DEGREE = Fraction(pi) / 180


def _size(text: str) -> Fraction:
    return Fraction(text)


ONE = Unit("", Fraction(1), kind.RATIO)
INCH = Unit("in", _INCH, kind.LENGTH, 4)
DEGREE = Unit("deg", _DEGREE, kind.ANGLE, 2)
MM = Unit("mm", _size("1e-3"), kind.LENGTH, 3)
PERCENT = Unit("%", _size("0.01"), kind.RATIO, 1)
GRAVITY = Unit("g", _GRAVITY, kind.ACCELERATION)
POUND = Unit("lb", _POUND, kind.MASS)
KILOGRAM = Unit("kg", Fraction(1), kind.MASS)
POUND_FORCE = Unit("lbf", _LBF, kind.FORCE)
KILOGRAM_FORCE = Unit("kgf", _KGF, kind.FORCE)
GRAM = Unit("g", _size("1e-3"), kind.MASS)
FOOT = Unit("ft", _FOOT, kind.LENGTH, 3)

#: Each unit and the other names it goes by. Case is ignored; a name with a + may take an s.
_ROWS: tuple[tuple[Unit, str], ...] = (
    (Unit("um", _size("1e-6"), kind.LENGTH), "µm μm micron+ micrometre+ micrometer+"),
    (MM, "millimetre+ millimeter+"),
    (Unit("cm", _size("1e-2"), kind.LENGTH, 3), "centimetre+ centimeter+"),
    (Unit("m", Fraction(1), kind.LENGTH, 4), "metre+ meter+"),
    (Unit("km", Fraction(1000), kind.LENGTH), "kilometre+ kilometer+"),
    (Unit("thou", _INCH / 1000, kind.LENGTH, 1), ""),
    (INCH, "ins inch inches"),
    (FOOT, "foot feet"),
    (Unit("cc", _size("1e-6"), kind.VOLUME), "ccm"),
    (Unit("ml", _size("1e-6"), kind.VOLUME), "millilitre+ milliliter+"),
    (Unit("l", _size("1e-3"), kind.VOLUME), "litre+ liter+"),
    (Unit("rad", Fraction(1), kind.ANGLE), "radian+"),
    (Unit("mrad", _size("1e-3"), kind.ANGLE), "milliradian+"),
    (DEGREE, "° degs degree+"),
    (Unit("arcmin", _DEGREE / 60, kind.ANGLE), "arcminute+"),
    (Unit("arcsec", _DEGREE / 3600, kind.ANGLE), "arcsecond+"),
    (GRAM, "gram+ gramme+"),
    (KILOGRAM, "kgs kilo+ kilogram+ kilogramme+"),
    (Unit("t", Fraction(1000), kind.MASS), "tonne+"),
    (Unit("oz", _POUND / 16, kind.MASS), "ounce+"),
    (POUND, "lbs pound+"),
    (Unit("ms", _size("1e-3"), kind.TIME), "millisecond+"),
    (Unit("s", Fraction(1), kind.TIME), "sec secs second+"),
    (Unit("min", Fraction(60), kind.TIME), "mins minute+"),
    (Unit("h", Fraction(3600), kind.TIME), "hr hrs hour+"),
    (Unit("N", Fraction(1), kind.FORCE, 1), "newton+"),
    (Unit("daN", Fraction(10), kind.FORCE), "decanewton+"),
    (Unit("kN", Fraction(1000), kind.FORCE), "kilonewton+"),
    (KILOGRAM_FORCE, "kp kilopond+"),
    (POUND_FORCE, ""),
    (Unit("Pa", Fraction(1), kind.PRESSURE), "pascal+"),
    (Unit("kPa", Fraction(1000), kind.PRESSURE), "kilopascal+"),
    (Unit("MPa", _size("1e6"), kind.PRESSURE, 3), "megapascal+"),
    (Unit("GPa", _size("1e9"), kind.PRESSURE), "gigapascal+"),
    (Unit("mbar", _size("100"), kind.PRESSURE), "millibar+"),
    (Unit("bar", _size("1e5"), kind.PRESSURE, 2), "bars"),
    (Unit("psi", _LBF / _INCH**2, kind.PRESSURE, 1), "p.s.i"),
    (Unit("ksi", 1000 * _LBF / _INCH**2, kind.PRESSURE), ""),
    (Unit("N mm", _size("1e-3"), kind.TORQUE), "nmm"),
    (Unit("N m", Fraction(1), kind.TORQUE), "nm"),
    (Unit("kN m", Fraction(1000), kind.TORQUE), "knm"),
    (Unit("daN m", Fraction(10), kind.TORQUE), "danm"),
    (Unit("kgf m", _KGF, kind.TORQUE), "kgfm kgm"),
    (Unit("kgf cm", _KGF / 100, kind.TORQUE), "kgfcm kgcm"),
    (Unit("lbf ft", _LBF * _FOOT, kind.TORQUE), "lbfft lbft ftlb ftlbs ftlbf"),
    (Unit("lbf in", _LBF * _INCH, kind.TORQUE), "lbfin lbin inlb inlbs inlbf"),
    (Unit("km/h", Fraction(1000, 3600), kind.SPEED, 1), "kph kmh k.p.h"),
    (Unit("mph", 5280 * _FOOT / 3600, kind.SPEED, 1), "m.p.h"),
    (PERCENT, "percent pct"),
)

#: Lower-case name -> unit.
UNITS: dict[str, Unit] = {
    name: unit
    for unit, others in _ROWS
    for word in (unit.symbol.lower(), *others.split())
    for name in ((word[:-1], f"{word[:-1]}s") if word[-1] == "+" else (word,))
}

#: Words that mean different things to different people, and what they may mean.
DOUBTFUL = {
    "mil": ("mm", "thou"),
    "mils": ("mm", "thou"),
    "ton": ("t",),
    "tons": ("t",),
    "d": ("deg",),
}

#: Written like this they mean a thousandth or a million; in a workshop they are slips of the pen.
DOUBTFUL_CASES = {"mPa": ("MPa",), "mN": ("N", "kN"), "MN": ("N", "kN")}

#: A mass in a product or quotient that should be a force: `18 lb ft`, `2 kg/cm2`.
WEIGHTS = {POUND: POUND_FORCE, KILOGRAM: KILOGRAM_FORCE}

#: Lengths that are divided into halves, quarters, eighths.
IMPERIAL = frozenset({"in", "ft", "thou"})
