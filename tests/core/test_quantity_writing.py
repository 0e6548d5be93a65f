"""What is written is read back, in the hand of the builder."""

from math import inf, nan, pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pedalwright.core.quantity import parse, show, write
from pedalwright.core.quantity.forms import COMPLETE
from pedalwright.core.quantity.unit_table import UNITS
from pedalwright.core.quantity.unit_words import unit_named

INSIDE = "mm mm2 mm3 mm4 N MPa N*mm rad kg s m/s2 m/s N/mm mm/N N*mm/rad mm/MPa mm3/MPa kg/m3 1"
COMPOSED = (
    "in2 cm2 in3 cm3 in4 cm4 lbf/in lb/in N/m kN/mm kgf/mm in/lbf mm/kN N m/deg lbf in/rad ft/s "
    "in/s2 mm/s2 kgf/cm2 N/mm2 lbf/in2 mm/bar cc/MPa in3/psi g/cm3 lb/in3 km/h"
)
NAMES = [*{unit.symbol for unit in UNITS.values()}, *COMPOSED.split(" "), "N m/deg", "lbf in/rad"]


def likes(unit: str) -> list[str]:
    """Every unit and form a quantity can be written in."""
    dimension = unit_named(unit).dimension
    forms = [form for form, counted in COMPLETE.items() if counted.dimension == dimension]
    named = [name for name in NAMES if unit_named(name, dimension).dimension == dimension]
    return [*named, *forms]


PAIRS = [(unit, like) for unit in INSIDE.split() for like in (None, *likes(unit))]

numbers = st.floats(1e-9, 1e9) | st.integers(1, 10**6).map(lambda n: n / 64 * 25.4)
signed = st.builds(lambda number, sign: number * sign, numbers, st.sampled_from([1.0, -1.0, 0.0]))


def test_every_unit_is_tried() -> None:
    tried = {like for _, like in PAIRS}
    assert {unit.symbol for unit in UNITS.values()} <= tried
    assert tried >= COMPLETE.keys()


@given(pair=st.sampled_from(PAIRS), value=signed, plus_minus=st.none() | numbers)
def test_what_is_written_is_read_back(
    pair: tuple[str, str | None], value: float, plus_minus: float | None
) -> None:
    unit, like = pair
    reading = parse(write(value, unit, like=like, plus_minus=plus_minus), unit)
    assert (reading.value, reading.plus_minus) == (value, plus_minus)


@given(pair=st.sampled_from(PAIRS), value=signed)
def test_a_file_keeps_its_hand(pair: tuple[str, str | None], value: float) -> None:
    first = parse(write(value, pair[0], like=pair[1]), pair[0])
    again = parse(write(first.value, pair[0], like=first.like), pair[0])
    assert (again.text, again.like) == (first.text, first.like)


@given(pair=st.sampled_from(PAIRS), value=signed, plus_minus=st.none() | numbers)
def test_what_is_shown_is_read_back_nearly(
    pair: tuple[str, str | None], value: float, plus_minus: float | None
) -> None:
    unit, like = pair
    reading = parse(show(value, unit, like=like, plus_minus=plus_minus), unit)
    small = unit_named(like or unit).size / unit_named(unit).size if like not in COMPLETE else 1
    assert reading.value == pytest.approx(value, rel=5.1e-4, abs=1e-12 * float(small))


@pytest.mark.parametrize("number", [19.049999999999997, 41.275, 0.1 + 0.2, 1 / 3, 1e300, 5e-300])
@pytest.mark.parametrize("like", [None, "in", "ft in", "m", "SWG", "thou"])
def test_the_last_digit_survives(number: float, like: str | None) -> None:
    assert parse(write(number, "mm", like=like), "mm").value == number


@pytest.mark.parametrize(
    ("value", "unit", "like", "written"),
    [
        (41.275, "mm", None, "41.275 mm"),
        (41.275, "mm", "in", "1 5/8 in"),
        (15.875, "mm", "in", "5/8 in"),
        (25.4, "mm", "in", "1 in"),
        (17.78, "mm", "in", "0.7 in"),
        (-41.275, "mm", "in", "-1 5/8 in"),
        (1587.5, "mm", "ft in", "5 ft 2 1/2 in"),
        (3673.475, "mm", "ft in", "12 ft 5/8 in"),
        (1600.0, "mm", "ft in", "5 ft 2.992125984251969 in"),
        (3657.6, "mm", "ft", "12 ft"),
        (2320.0, "mm", "m", "2.32 m"),
        (1.6256, "mm", "SWG", "16 SWG"),
        (1.6, "mm", "SWG", "1.6 mm"),
        (6.2, "MPa", "bar", "62 bar"),
        (450.0, "N*mm", "N m", "0.45 N m"),
        (450.0, "N*mm", None, "450 N*mm"),
        (15.5 * pi / 180, "rad", None, "15.5 deg"),
        (15.5 * pi / 180, "rad", "deg min", "15°30'"),
        (0.27, "rad", "rad", "0.27 rad"),
        (5.0, "1", ":1", "5:1"),
        (0.06, "1", "%", "6 %"),
        (0.06, "1", None, "0.06"),
        (5.0, "1", "1", "5"),
        (900.0, "mm3", None, "900 mm3"),
        (0.6 * 9.80665, "m/s2", "g", "0.6 g"),
        (0.0, "mm", "in", "0 in"),
    ],
)
def test_a_number_is_written_as_the_builder_does(
    value: float, unit: str, like: str | None, written: str
) -> None:
    assert write(value, unit, like=like) == written.replace("N*mm", "N mm")


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("54.5 ±0.5 mm", "mm"),
        ("3 ±1/16 in", "mm"),
        ("1 5/8 in", "mm"),
        ("5 ft 2 in ±1/4 in", "mm"),
        ("16 SWG ±0.1 mm", "mm"),
        ("6 % ±1 %", "1"),
        ("5:1 ±0.1", "1"),
        ("15°30' ±0.5 deg", "rad"),
        ("900 ±5 psi", "MPa"),
        ("18 lbf ft", "N*mm"),
        ("70 lbf/in", "N/mm"),
        ("0.06 in3", "mm3"),
        ("980 kg", "kg"),
    ],
)
def test_a_text_in_a_good_hand_is_written_again_as_it_was(text: str, unit: str) -> None:
    reading = parse(text, unit)
    assert write(reading.value, unit, like=reading.like, plus_minus=reading.plus_minus) == text


@pytest.mark.parametrize(
    ("value", "unit", "like", "shown"),
    [
        (4.386, "MPa", "bar", "43.86 bar"),
        (4.386, "MPa", None, "4.386 MPa"),
        (41.275, "mm", None, "41.275 mm"),
        (41.275, "mm", "in", "1 5/8 in"),
        (41.27500000000001, "mm", "in", "1 5/8 in"),
        (41.28, "mm", "in", "1.6252 in"),
        (1587.5, "mm", "ft in", "5 ft 2 1/2 in"),
        (1828.79999999, "mm", "ft in", "6 ft 0 in"),
        (1828.79, "mm", "ft in", "5 ft 11.9996 in"),
        (1.6256, "mm", "SWG", "16 SWG"),
        (1.62, "mm", "SWG", "1.62 mm"),
        (15.5 * pi / 180, "rad", None, "15.5°"),
        (15.5 * pi / 180, "rad", "deg min", "15°30'"),
        (15.505 * pi / 180, "rad", "rad", "0.2706 rad"),
        (24404.7, "N*mm", None, "24405 N·mm"),
        (24404.7, "N*mm", "lbf ft", "18 lbf·ft"),
        (983.2, "mm3", "in3", "0.06 in³"),
        (6.43, "m/s2", None, "6.43 m/s²"),
        (5.2, "1", ":1", "5.2:1"),
        (0.6789, "1", "%", "67.89 %"),
        (0.0000123, "mm", None, "0.0000123 mm"),
        (1.23e-10, "mm", None, "1.230e-10 mm"),
        (-0.0, "mm", None, "0 mm"),
        (nan, "mm", None, "no value"),
        (inf, "N", None, "no value"),
    ],
)
def test_a_number_is_shown_with_enough_digits(
    value: float, unit: str, like: str | None, shown: str
) -> None:
    assert show(value, unit, like=like) == shown


def test_digits_are_significant() -> None:
    assert show(12345.678, "N", digits=2) == "12000 N"
    assert show(12345.678, "N", digits=7) == "12345.68 N"
    assert show(0.012345, "mm", digits=2) == "0.012 mm"
    assert show(54.5, "mm", plus_minus=0.5) == "54.5 ±0.5 mm"


def test_a_form_of_another_quantity_is_a_mistake_of_the_program() -> None:
    with pytest.raises(ValueError, match="psi is no form of this quantity"):
        show(5.0, "mm", like="psi")
    with pytest.raises(ValueError, match="SWG is no form of this quantity"):
        write(5.0, "N", like="SWG")
    with pytest.raises(AssertionError, match="a missing number"):
        write(nan, "mm")


@pytest.mark.parametrize(
    "text", ["1 5/8", "5' 2\"", "16 SWG", "19,05", "3 in ±1/16", "15", ".5 thou", "5.45 cm ±1 mm"]
)
def test_what_is_said_back_means_the_same(text: str) -> None:
    reading = parse(text, "mm")
    said = reading.shown.split(" = ")[0].replace(" read as inches", " in")
    assert parse(said, "mm").value == reading.value
