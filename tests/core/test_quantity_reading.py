"""What a builder types is read in the one way it can be meant."""

from math import pi

import pytest

from pedalwright.core.quantity import QuantityError, Reading, is_missing, parse

INCH = 25.4
LBF = 0.45359237 * 9.80665

LENGTHS = {
    # fractions of an inch
    "1 5/8": 1.625 * INCH,
    '1-5/8"': 1.625 * INCH,
    "1⅝": 1.625 * INCH,
    "1 ⅝": 1.625 * INCH,
    "1⅝ in": 1.625 * INCH,
    "1–5/8 in": 1.625 * INCH,
    "5/8 in": 0.625 * INCH,
    "5⁄8 in": 0.625 * INCH,
    '3/4"': 0.75 * INCH,
    "3/4''": 0.75 * INCH,
    "3/4”": 0.75 * INCH,
    "3/4″": 0.75 * INCH,
    "⅝": 0.625 * INCH,
    "1 1/2 in": 1.5 * INCH,
    "-1 1/2 in": -1.5 * INCH,
    "1 1/2 ft": 18 * INCH,
    # feet and inches
    "5' 2 1/2\"": 62.5 * INCH,
    "5′ 2½″": 62.5 * INCH,
    "5'-2 1/2\"": 62.5 * INCH,
    "5' - 2\"": 62 * INCH,
    "5 ft 2": 62 * INCH,
    "5 ft 2 in": 62 * INCH,
    "5 feet 2 inches": 62 * INCH,
    "5 ft. 2 in.": 62 * INCH,
    "5FT 2IN": 62 * INCH,
    "5'2\"": 62 * INCH,
    "5’2”": 62 * INCH,
    "5'2": 62 * INCH,
    "5' 2.25\"": 62.25 * INCH,
    "-5' 2\"": -62 * INCH,
    "12 ft": 144 * INCH,
    "12'": 144 * INCH,
    "5' 11 63/64\"": (71 + 63 / 64) * INCH,
    "12 ft 5/8 in": 144.625 * INCH,
    "12 ft 0 5/8": 144.625 * INCH,
    # decimals
    ".75 in": 0.75 * INCH,
    "40 thou": 0.04 * INCH,
    "54.5": 54.5,
    "54.5mm": 54.5,
    "54.5 MM": 54.5,
    "54.5 mm.": 54.5,
    "54.5\u2009mm": 54.5,
    "54.5\u00a0mm": 54.5,
    "54.5\u202fmm": 54.5,
    "  54.5 mm\n": 54.5,
    "19,05": 19.05,
    "19,05 mm": 19.05,
    ",75": 0.75,
    "0,905": 0.905,
    "1950,5": 1950.5,
    "12.": 12.0,
    "+5": 5.0,
    "-4 mm": -4.0,
    "−4 mm": -4.0,
    "–4 mm": -4.0,
    "1e3 mm": 1000.0,
    "1.5E-3 m": 1.5,
    "2.32 m": 2320.0,
    "232 cm": 2320.0,
    "250 µm": 0.25,
    "250 μm": 0.25,
    "1 950": 1950.0,
    "12 500,5 mm": 12500.5,
    "1 234 567 mm": 1234567.0,
    "0": 0.0,
    # sheets
    "16 SWG": 1.6256,
    "16swg": 1.6256,
    "16 s.w.g.": 1.6256,
    "16 MSG": 0.0598 * INCH,
    "16 AWG": 1.2908,
    "16 B&S": 1.2908,
}

OTHERS = {
    ("90 lbf", "N"): 90 * LBF,
    ("50 kgf", "N"): 490.3325,
    ("9 kN", "N"): 9000.0,
    ("12 daN", "N"): 120.0,
    ("900 psi", "MPa"): 900 * LBF / INCH**2,
    ("900 PSI", "MPa"): 900 * LBF / INCH**2,
    ("62 bar", "MPa"): 6.2,
    ("5 mpa", "MPa"): 5.0,
    ("2 kgf/cm²", "MPa"): 0.196133,
    ("2 kg/cm2", "MPa"): 0.196133,
    ("290 N/mm2", "MPa"): 290.0,
    ("18 lbf ft", "N*mm"): 18 * LBF * 12 * INCH,
    ("18 lb ft", "N*mm"): 18 * LBF * 12 * INCH,
    ("18 ft-lb", "N*mm"): 18 * LBF * 12 * INCH,
    ("18 ft·lbf", "N*mm"): 18 * LBF * 12 * INCH,
    ("18 lbft", "N*mm"): 18 * LBF * 12 * INCH,
    ("25 Nm", "N*mm"): 25000.0,
    ("25 N·m", "N*mm"): 25000.0,
    ("25 N.m", "N*mm"): 25000.0,
    ("25 nm", "N*mm"): 25000.0,
    ("0.45 N m", "N*mm"): 450.0,
    ("3 kgf m", "N*mm"): 3 * 9806.65,
    ("15d30'", "rad"): 15.5 * pi / 180,
    ("15°30'", "rad"): 15.5 * pi / 180,
    ("15° 30′", "rad"): 15.5 * pi / 180,
    ("15 deg 30 min", "rad"): 15.5 * pi / 180,
    ("15°30'18\"", "rad"): 15.505 * pi / 180,
    ("-15°30'", "rad"): -15.5 * pi / 180,
    ("15.5 deg", "rad"): 15.5 * pi / 180,
    ("15.5°", "rad"): 15.5 * pi / 180,
    ("15,5 degrees", "rad"): 15.5 * pi / 180,
    ("30 arcmin", "rad"): 0.5 * pi / 180,
    ("0.27 rad", "rad"): 0.27,
    ("980 kg", "kg"): 980.0,
    ("1950 lb", "kg"): 1950 * 0.45359237,
    ("1 950 lbs", "kg"): 1950 * 0.45359237,
    ("1.2 t", "kg"): 1200.0,
    ("500 g", "kg"): 0.5,
    ("1.35 in2", "mm2"): 1.35 * INCH**2,
    ("1.35 sq in", "mm2"): 1.35 * INCH**2,
    ("1.35 sq. in.", "mm2"): 1.35 * INCH**2,
    ("1.35 in^2", "mm2"): 1.35 * INCH**2,
    ("5 cm²", "mm2"): 500.0,
    ("0.06 in3", "mm3"): 0.06 * INCH**3,
    ("0.06 cu in", "mm3"): 0.06 * INCH**3,
    ("900 mm3", "mm3"): 900.0,
    ("900 mm³", "mm3"): 900.0,
    ("900 mm**3", "mm3"): 900.0,
    ("35 cc", "mm3"): 35000.0,
    ("35 cm3", "mm3"): 35000.0,
    ("0.5 litres", "mm3"): 5e5,
    ("1200 mm⁴", "mm4"): 1200.0,
    ("170 km/h", "m/s"): 170 / 3.6,
    ("170 kph", "m/s"): 170 / 3.6,
    ("60 mph", "m/s"): 26.8224,
    ("6.43 m/s²", "m/s2"): 6.43,
    ("6.43 m/s/s", "m/s2"): 6.43,
    ("0.6 g", "m/s2"): 0.6 * 9.80665,
    ("250 ms", "s"): 0.25,
    ("70 lbf/in", "N/mm"): 70 * LBF / INCH,
    ("70 lb/in", "N/mm"): 70 * LBF / INCH,
    ("35 N m/deg", "N*mm/rad"): 35000 * 180 / pi,
    ("2 mm/kN", "mm/N"): 0.002,
    ("2.7 g/cm3", "kg/m3"): 2700.0,
    ("5:1", "1"): 5.0,
    ("4.75 : 1", "1"): 4.75,
    ("5 to 1", "1"): 5.0,
    ("6 %", "1"): 0.06,
    ("6%", "1"): 0.06,
    ("0.06", "1"): 0.06,
    ("2/3", "1"): 2 / 3,
}


@pytest.mark.parametrize(("text", "value"), LENGTHS.items())
def test_a_length_is_read(text: str, value: float) -> None:
    reading = parse(text, "mm")
    accuracy = 1e-3 if "AWG" in text or "B&S" in text else 1e-12  # printed to four decimals
    assert reading.value == pytest.approx(value, rel=accuracy)
    assert (reading.unit, reading.text, reading.plus_minus) == ("mm", text, None)


@pytest.mark.parametrize(("typed", "value"), OTHERS.items())
def test_every_kind_of_quantity_is_read(typed: tuple[str, str], value: float) -> None:
    assert parse(*typed).value == pytest.approx(value, rel=1e-12)


def test_a_workshop_fraction_is_exact() -> None:
    assert parse("1 5/8 in", "mm").value == 41.275
    assert parse("13/16 in", "mm").value == 20.6375


@pytest.mark.parametrize(
    ("text", "unit", "value", "plus_minus"),
    [
        ("54.5 ±0.5 mm", "mm", 54.5, 0.5),
        ("54.5 mm ±0.5 mm", "mm", 54.5, 0.5),
        ("54.5 mm ± 0.5", "mm", 54.5, 0.5),
        ("54.5 +/- 0.5 mm", "mm", 54.5, 0.5),
        ("54.5 +-0.5", "mm", 54.5, 0.5),
        ("5.45 cm ±0.5 mm", "mm", 54.5, 0.5),
        ("3 in ± 1/16", "mm", 76.2, 1.5875),
        ("3 ± 1/16 in", "mm", 76.2, 1.5875),
        ("1 5/8 ± 1/16", "mm", 41.275, 1.5875),
        ('5\' 2" ± 1/4"', "mm", 62 * INCH, 0.25 * INCH),
        ("5 ft 2 in ± 1/4", "mm", 62 * INCH, 0.25 * INCH),
        ("16 SWG ±0.1 mm", "mm", 1.6256, 0.1),
        ("-3 ±0.5", "mm", -3.0, 0.5),
        ("500 N ± 10 %", "N", 500.0, 50.0),
        ("-40 mm ± 10 %", "mm", -40.0, 4.0),
        ("6 % ± 1 %", "1", 0.06, 0.01),
        ("5:1 ±0.1", "1", 5.0, 0.1),
        ("15.5° ±0.5°", "rad", 15.5 * pi / 180, 0.5 * pi / 180),
        ("0.36 ±0.06", "1", 0.36, 0.06),
    ],
)
def test_a_tolerance_is_read(text: str, unit: str, value: float, plus_minus: float) -> None:
    reading = parse(text, unit)
    assert reading.value == pytest.approx(value, rel=1e-12)
    assert reading.plus_minus == pytest.approx(plus_minus, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "unit", "bare", "value"),
    [
        ("92", "mm", "in", 92 * INCH),
        (92, "mm", "in", 92 * INCH),
        (92.5, "mm", None, 92.5),
        (1e-05, "mm", None, 1e-05),
        (-4, "mm", None, -4.0),
        ("92 ±0.5", "mm", "in", 92 * INCH),
        ("92 mm", "mm", "in", 92.0),
        ("1 5/8", "mm", "in", 1.625 * INCH),
        ("1 5/8", "mm", "cm", 1.625 * INCH),
        ("15", "rad", "deg", 15 * pi / 180),
        ("15 1/2", "rad", "deg", 15.5 * pi / 180),
        ("60", "1", "%", 0.6),
        ("0.6", "m/s2", "g", 0.6 * 9.80665),
        ("18", "N*mm", "lb ft", 18 * LBF * 12 * INCH),
    ],
)
def test_a_bare_number_is_in_the_unit_named(
    text: str | float, unit: str, bare: str | None, value: float
) -> None:
    assert parse(text, unit, bare=bare).value == pytest.approx(value, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "unit", "shown", "like"),
    [
        ("1 5/8", "mm", "1 5/8 read as inches = 41.275 mm", "in"),
        ("1 5/8 ±1/16", "mm", "1 5/8 ±1/16 read as inches = 41.275 ±1.588 mm", "in"),
        ('1-5/8"', "mm", "1 5/8 in = 41.275 mm", "in"),
        ("5'2\"", "mm", "5 ft 2 in = 1574.8 mm", "ft in"),
        ("12'", "mm", "12 ft = 3657.6 mm", "ft"),
        ("19,05", "mm", "19.05 mm", "mm"),
        ("2.32 m", "mm", "2.32 m = 2320 mm", "m"),
        ("1e3", "mm", "1e3 mm = 1000 mm", "mm"),
        ("16swg", "mm", "16 SWG = 1.626 mm", "SWG"),
        ("0.8 ±.05 in", "mm", "0.8 ±0.05 in = 20.32 ±1.27 mm", "in"),
        ("5.45 cm ±0.5 mm", "mm", "5.45 cm ±0.5 mm = 54.5 ±0.5 mm", "cm"),
        ("50 kgf", "N", "50 kgf = 490.3 N", "kgf"),
        ("500 N ±10 %", "N", "500 N ±10 % = 500 ±50 N", "N"),
        ("900 psi", "MPa", "900 psi = 6.205 MPa", "psi"),
        ("18 lb ft", "N*mm", "18 lbf·ft = 24405 N·mm", "lbf ft"),
        ("0.06 cu in", "mm3", "0.06 in³ = 983.2 mm³", "in3"),
        ("15d30'", "rad", "15°30' = 15.5°", "deg min"),
        ("15.5 deg", "rad", "15.5°", "deg"),
        ("0.27 rad", "rad", "0.27 rad = 15.47°", "rad"),
        ("5 to 1", "1", "5:1 = 5", ":1"),
        ("6%", "1", "6 % = 0.06", "%"),
        ("6 % ±1 %", "1", "6 % ±1 % = 0.06 ±0.01", "%"),
        ("0.06", "1", "0.06", "1"),
    ],
)
def test_a_reading_is_said_back(text: str, unit: str, shown: str, like: str) -> None:
    reading = parse(text, unit)
    assert (reading.shown, reading.like) == (shown, like)


def test_inches_are_not_explained_where_bare_numbers_are_inches() -> None:
    assert parse("1 5/8", "mm", bare="in").shown == "1 5/8 in = 41.275 mm"


@pytest.mark.parametrize(
    "nothing",
    [
        *(None, "", "  ", "?", "???", "unknown", "Missing", "-", "–", "n/a", "N/A", "tbd", "..."),
        *("#REF!", "#N/A", "#DIV/0!", "#VALUE!", "nan", "NaN", "inf", "-inf", "∞", "null"),
        *(float("nan"), float("inf"), float("-inf")),
    ],
)
def test_nothing_is_missing_and_never_zero(nothing: object) -> None:
    assert is_missing(nothing)
    if isinstance(nothing, str | float):
        with pytest.raises(QuantityError, match="is a missing number"):
            parse(nothing, "mm")


@pytest.mark.parametrize("something", ["0", 0, 0.0, "54.5", "mm", "twelve", "1 5/8", True, "nil"])
def test_something_is_not_missing(something: object) -> None:
    assert not is_missing(something)


@pytest.mark.parametrize("number", [True, 10**400, -(10**30)])
def test_what_is_no_measure_is_refused(number: int) -> None:
    with pytest.raises(QuantityError):
        parse(number, "mm")


@pytest.mark.parametrize("unit", ["furlong", "mm 5", "5 mm", "in mm", "mil", "", "?"])
def test_an_unknown_unit_asked_for_is_no_fault_of_the_text(unit: str) -> None:
    with pytest.raises(ValueError, match="is not a unit") as mistake:
        parse("5", "mm", bare=unit or "-")
    assert not isinstance(mistake.value, QuantityError)


def test_a_reading_cannot_be_changed() -> None:
    reading = parse("5", "mm")
    assert isinstance(reading, Reading)
    with pytest.raises(AttributeError):
        reading.value = 6.0  # type: ignore[misc]
