"""Wherever pint reads a text correctly, we read the same."""

import re

import pint
import pytest

from pedalwright.core.quantity import parse
from pedalwright.core.quantity.unit_table import UNITS

registry = pint.UnitRegistry()

PINT_NAMES = {
    "%": "percent",
    "deg": "degree",
    "t": "metric_ton",
    "h": "hour",
    "l": "liter",
    "oz": "ounce",
    "g": "gram",
    "arcmin": "arcminute",
    "arcsec": "arcsecond",
    "kgf": "kilogram_force",
    "lbf": "pound_force",
    "um": "micrometer",
    "km/h": "kilometer/hour",
}
SYMBOLS = sorted({unit.symbol for unit in UNITS.values()})
WANTED = {
    "[length]": "mm",
    "[length]**3": "mm3",
    "[mass]": "kg",
    "[time]": "s",
    "[mass]*[length]/[time]**2": "N",
    "[mass]/[length]/[time]**2": "MPa",
    "[mass]*[length]**2/[time]**2": "N*mm",
    "[length]/[time]": "m/s",
    "[]": "1",
}


def in_pint(symbol: str) -> pint.Unit:
    words = (PINT_NAMES.get(word, word) for word in re.split(r"(\W)", symbol.replace(" ", "*")))
    return registry.Unit(PINT_NAMES.get(symbol) or "".join(words))


@pytest.mark.parametrize("symbol", SYMBOLS)
def test_every_unit_has_the_size_pint_gives_it(symbol: str) -> None:
    unit = in_pint(symbol)
    wanted = next(ours for kind, ours in WANTED.items() if unit.is_compatible_with(pint_of(kind)))
    if symbol in {"deg", "rad", "mrad", "arcmin", "arcsec"}:
        wanted = "rad"
    theirs = registry.Quantity(7.25, unit).to(pint_of_ours(wanted)).magnitude
    assert parse(f"7.25 {symbol}", wanted).value == pytest.approx(theirs, rel=1e-12)


def pint_of(kind: str) -> pint.Unit:
    sizes = kind.replace("[length]", "m").replace("[mass]", "kg").replace("[time]", "s")
    return registry.Unit(sizes.replace("[]", "dimensionless"))


def pint_of_ours(unit: str) -> pint.Unit:
    return registry.Unit(
        "dimensionless" if unit == "1" else re.sub(r"(?<=[ms])(\d)", r"**\1", unit)
    )


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        *(("54.5 mm", "mm"), ("0.75 in", "mm"), ("12 ft", "mm"), ("2.32 m", "mm")),
        *(("1.35 in**2", "mm2"), ("0.06 in**3", "mm3"), ("900 mm**3", "mm3"), ("35 cc", "mm3")),
        *(("90 lbf", "N"), ("50 kgf", "N"), ("900 psi", "MPa"), ("62 bar", "MPa")),
        *(("25 N*m", "N*mm"), ("18 lbf*ft", "N*mm"), ("3 kgf*m", "N*mm"), ("25 N m", "N*mm")),
        *(("980 kg", "kg"), ("1950 lb", "kg"), ("170 km/h", "m/s"), ("60 mph", "m/s")),
        *(("6.43 m/s**2", "m/s2"), ("70 lbf/in", "N/mm"), ("2.7 g/cm**3", "kg/m3")),
        *(("15.5 deg", "rad"), ("0.27 rad", "rad"), ("35 N*m/deg", "N*mm/rad"), ("6 %", "1")),
        *(("1e3 mm", "mm"), ("-4 mm", "mm"), ("+5 mm", "mm"), ("2e-3 mm/N", "mm/N")),
    ],
)
def test_whole_texts_that_pint_reads_mean_the_same(text: str, unit: str) -> None:
    ours = re.sub(r"(?<=[ms])(\d)", r"**\1", unit)
    theirs = registry.Quantity(text).to("dimensionless" if unit == "1" else ours).magnitude
    assert parse(text, unit).value == pytest.approx(float(theirs), rel=1e-12)
