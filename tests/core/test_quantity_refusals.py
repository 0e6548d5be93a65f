"""What can be read in two ways is refused, and what may have been meant is offered."""

import pytest

from pedalwright.core.quantity import QuantityError, parse
from pedalwright.core.quantity.dimension import KINDS
from pedalwright.core.quantity.unit_table import ONE, UNITS
from pedalwright.core.quantity.unit_words import unit_named

A_LENGTH = (
    " Accepted: a length such as 54.5 mm, 1 5/8 in, 5 ft 2 in, 16 SWG; "
    "a number alone is read in mm."
)

AN_ANGLE = " Accepted: an angle such as 15.5 deg, 15°30', 0.27 rad; a number alone is read in rad."

#: (text, unit wanted) -> the whole sentence the builder sees.
SENTENCES = {
    ("1,905", "mm"): "“1,905” can be read in two ways. Did you mean 1.905 mm or 1905 mm?",
    ("1,950 lb", "kg"): (
        "“1,950” can be read in two ways. "
        "Did you mean 1.950 lb = 0.8845 kg or 1950 lb = 884.5 kg?"
    ),
    ("1.905,5", "mm"): "“1.905,5” has more than one point or comma. Did you mean 1905.5 mm?",
    ("1,905.5", "mm"): "“1,905.5” has more than one point or comma. Did you mean 1905.5 mm?",
    ("1.905.000", "mm"): "“1.905.000” has more than one point or comma. Did you mean 1905000 mm?",
    ("12,5,3", "mm"): "“12,5,3” has more than one point or comma." + A_LENGTH,
    ("12,", "mm"): "Nothing follows the comma in “12,”. Did you mean 12 mm?",
    ("16 ga", "mm"): (
        "“16 ga” does not say which gauge is meant: British (SWG), American steel (MSG), "
        "American aluminium (AWG). "
        "Did you mean 16 SWG = 1.626 mm, 16 MSG = 1.519 mm or 16 AWG = 1.291 mm?"
    ),
    ("2 gauge", "mm"): (
        "“2 gauge” does not say which gauge is meant: British (SWG), American steel (MSG), "
        "American aluminium (AWG). Did you mean 2 SWG = 7.01 mm or 2 AWG = 6.544 mm?"
    ),
    ("31 SWG", "mm"): "SWG has whole numbers from 0 to 30 here, not 31." + A_LENGTH,
    ("16.5 SWG", "mm"): "SWG has whole numbers from 0 to 30 here, not 16.5." + A_LENGTH,
    ("SWG 16", "mm"): "“SWG” stands where a number should. Did you mean 16 SWG = 1.626 mm?",
    ("4 mm 3", "mm"): "“3” is left over behind “4 mm”. Did you mean 4.3 mm?",
    ("4 mm 3", "mm3"): "“3” is left over behind “4 mm”. Did you mean 4 mm³?",
    ("5 2", "mm"): (
        "“5 2” is more than one number. Did you mean 5.2 mm, 5 ft 2 in = 1574.8 mm or 52 mm?"
    ),
    ("5 2", "N"): "“5 2” is more than one number. Did you mean 5.2 N or 52 N?",
    ("10-12 mm", "mm"): "“10-12” is more than one number. Did you mean 11 ±1 mm?",
    ("10 to 12 mm", "mm"): "“10 to 12” is more than one number. Did you mean 11 ±1 mm?",
    ("1 - 5/8", "mm"): (
        "“1 - 5/8” is more than one number. Did you mean 1 5/8 read as inches = 41.275 mm?"
    ),
    ("3 1/0", "mm"): "“1/0” divides by nothing." + A_LENGTH,
    ("1//2", "mm"): (
        "“1//2” has two strokes in a fraction. Did you mean 1/2 read as inches = 12.7 mm?"
    ),
    ("15/8 in", "mm"): (
        "“15/8” is not less than one, so a space may be missing. "
        "Did you mean 1 7/8 in = 47.625 mm or 1 5/8 in = 41.275 mm?"
    ),
    ("1 5/8 mm", "mm"): (
        "1 5/8 mm is a fraction of a metric unit. "
        "Did you mean 1 5/8 in = 41.275 mm or 1.625 mm?"
    ),
    ("1 1/3 in", "mm"): (
        "No rule is divided into the parts of an inch in 1 1/3 in. "
        "Did you mean 1.3333 in = 33.866 mm?"
    ),
    ("1/2", "N"): "“1/2” is a fraction without a unit. Did you mean 1/2 N = 0.5 N?",
    ("5' 14\"", "mm"): (
        "“5' 14\"” has a foot or more in its inches. Did you mean 6 ft 2 in = 1879.6 mm?"
    ),
    ("5' 12\"", "mm"): (
        "“5' 12\"” has a foot or more in its inches. Did you mean 6 ft 0 in = 1828.8 mm?"
    ),
    ("5.5 ft 2 in", "mm"): (
        "“5.5 ft 2 in” does not begin with a whole number of feet. "
        "Did you mean 5 ft 8 in = 1727.2 mm?"
    ),
    ("12 ft 5/8", "mm"): (
        "“12 ft 5/8” does not say whether its fraction is of a foot or an inch. "
        "Did you mean 12 ft 5/8 in = 3673.475 mm or 12 5/8 ft = 3848.1 mm?"
    ),
    ("5ft2in", "mm"): "“in” is left over behind “5ft2”. Did you mean 5 ft 2 in = 1574.8 mm?",
    ("5 ft.2 in", "mm"): (
        "The point in “5 ft.2 in” can be read in two ways. "
        "Did you mean 5 ft 0.2 in = 1529.08 mm or 5 ft 2 in = 1574.8 mm?"
    ),
    ("15d30", "rad"): (
        "“15d30” does not say what its last number counts. Did you mean 15°30' = 15.5° or 15.30°?"
    ),
    ("15°60'", "rad"): (
        "“15°60'” counts 60 or more where there are only 60 to the next." + AN_ANGLE
    ),
    ("15°30'60\"", "rad"): (
        "“15°30'60\"” counts 60 or more where there are only 60 to the next." + AN_ANGLE
    ),
    ("15°30.5'20\"", "rad"): (
        "“15°30.5'20\"” does not count whole degrees, and whole minutes before seconds." + AN_ANGLE
    ),
    ("5 N/rad*mm", "N*mm/rad"): (
        "“5 N/rad*mm” has a product behind a division. Accepted: a turning stiffness such as "
        "2e6 N mm/rad, 35 N m/deg; a number alone is read in N·mm/rad."
    ),
    ("5 ton", "kg"): "“ton” does not say which unit is meant. Did you mean 5 t = 5000 kg?",
    ("5\n6", "mm"): "A quantity stands on one line and has no hidden characters." + A_LENGTH,
    ("- 4 mm", "mm"): "“-” stands apart from its number. Did you mean -4 mm or 4 mm?",
    ("5 mil", "mm"): (
        "“mil” does not say which unit is meant. Did you mean 5 mm or 5 thou = 0.127 mm?"
    ),
    ("5 mPa", "MPa"): "“mPa” does not say which unit is meant. Did you mean 5 MPa?",
    ("1_000", "mm"): "“_” is not part of a quantity. Did you mean 1000 mm?",
    ("0x10", "mm"): "“x” is not a unit known here." + A_LENGTH,
    ("12 mm mm", "mm"): "“12 mm mm” has two units where one is expected." + A_LENGTH,
    ("mm", "mm"): "“mm” stands where a number should." + A_LENGTH,
    ("twelve", "mm"): "“twelve” stands where a number should." + A_LENGTH,
    ("?", "mm"): "“?” is a missing number." + A_LENGTH,
    # another kind of quantity
    ("50 kg", "N"): "50 kg is a mass; a force is wanted. Did you mean 50 kgf = 490.3 N?",
    ("50 lb", "N"): "50 lb is a mass; a force is wanted. Did you mean 50 lbf = 222.4 N?",
    ("50 lbf", "kg"): "50 lbf is a force; a mass is wanted. Did you mean 50 lb = 22.68 kg?",
    ("5:1", "mm"): "5:1 is a ratio or share; a length is wanted." + A_LENGTH,
    ("60:40", "mm"): "60:40 is a ratio or share; a length is wanted." + A_LENGTH,
    ("5 ft2", "mm"): (
        "5 ft2 is an area; a length is wanted. Did you mean 5 ft 2 in = 1574.8 mm?"
    ),
    ("30'", "rad"): (
        "30 ft is a length; an angle is wanted. Did you mean 30 arcmin = 0.5°?"
    ),
    ("25 N", "N*mm"): (
        "25 N is a force; a torque is wanted. Accepted: a torque such as "
        "25 N m, 18 lbf ft, 3 kgf m; a number alone is read in N·mm."
    ),
    # ratios and shares
    ("60:40", "1"): "“60:40” is not something to 1. Did you mean 1.5 or 60 % = 0.6?",
    ("1:5", "1"): "“1:5” is not something to 1. Did you mean 5:1 = 5 or 0.2?",
    ("5:0", "1"): (
        "“5:0” divides by nothing. Accepted: a ratio or share such as 5:1, 0.06, 6 %."
    ),
    # a ± with a unit of its own, or none
    ("54.5 ±1/16", "mm"): (
        "“54.5 ±1/16” has one fraction and no unit. Did you mean "
        "54.5 ±1/16 in = 1384.3 ±1.588 mm or 54.5 mm ±1/16 in = 54.5 ±1.588 mm?"
    ),
    ("54.5 mm ±1/16", "mm"): (
        "1/16 mm is a fraction of a metric unit. "
        "Did you mean 54.5 mm ±1/16 in = 54.5 ±1.588 mm or 54.5 ±0.0625 mm?"
    ),
    ("16 SWG ±0.1", "mm"): (
        "“±0.1” has no unit of its own. Did you mean 16 SWG ±0.1 mm = 1.626 ±0.1 mm?"
    ),
    ("54.5 ±5 ft 2 in", "mm"): (
        "“54.5” before the ± has no unit of its own. "
        "Did you mean 54.5 mm ±5 ft 2 in = 54.5 ±1574.8 mm?"
    ),
    ("0.36 ±10 %", "1"): (
        "“±10 %” may be a share of 0.36, or be added to it. "
        "Did you mean 0.36 ±0.036, 0.36 ±0.1 or 0.36 % ±10 % = 0.0036 ±0.1?"
    ),
    ("500 ±10 %", "N"): (
        "“500” before the ± has no unit of its own. Did you mean 500 N ±10 % = 500 ±50 N?"
    ),
}  # fmt: skip

#: Nothing can be said but no.
REFUSED = [
    *("1 950 5/8", "01 950", "1 95 000", "1  950", "5 ²", "5²", "5/8/2024", "1.5 5/8 in", "1-2-3"),
    *("--4", "+-4", "±4", "4 ±", "4 ±-1", "4 ±1 ±1", "4 +0.5 -0.2", "(5)", "5(2)", "~5", "<5"),
    *("5' -2\"", "5'2'", "5\"2'", "5'2\"3", "5 in 2 ft", "5' 2 mm", "5' 1,905\""),
    *("20 °C", "5 deg C", "M8", "5 €", "1e500", "1e-390 m", "1e", "1e+", "e3", ".", ","),
    *(
        "5 x 6",
        "5 * 6",
        "2*3 mm",
        "6 %2",
        "5 mm/m",
        "5 N m/m",
        "5 N %",
        "5 %/mm",
        "40 thous",
        "5 +6",
        "5+6 mm",
        "5\n6",
        "5\x00",
        "１２",
        "٣",
        "5 mm\u200b5",
    ),
    *(
        "5 mm^5",
        "5 mm^-1",
        "5 sq",
        "5 sq in2",
        "5 N/m s",
        "5 mm/s*s",
        "5 /mm",
        "5 1/mm",
        "5 in in",
        "5 in mm",
    ),
    *("5 mm/", "5 mm//mm", "5 kph/h", "5 inn", "5 milimetres", "9" * 81, "5:1:1", "5 to", "1/2/3"),
    *("16 SWG 2", "16 SWG mm", "1/2 SWG", "gauge 16", "No. 16", "=5", "5=", "5;6", "5|6", "5 mm,"),
]


@pytest.mark.parametrize(("typed", "sentence"), SENTENCES.items())
def test_a_doubtful_text_is_refused_in_one_sentence(typed: tuple[str, str], sentence: str) -> None:
    with pytest.raises(QuantityError) as refusal:
        parse(*typed)
    assert str(refusal.value) == sentence
    assert refusal.value.read == typed[0]
    assert sentence.startswith(refusal.value.reason)
    assert refusal.value.reason.endswith((".", "?"))


@pytest.mark.parametrize(("typed", "sentence"), SENTENCES.items())
def test_what_is_offered_can_be_read(typed: tuple[str, str], sentence: str) -> None:
    with pytest.raises(QuantityError) as refusal:
        parse(*typed)
    assert bool(refusal.value.offers) == ("Did you mean" in sentence)
    values = {parse(offer, typed[1]).value for offer in refusal.value.offers}
    pairs = {parse(offer, typed[1]).plus_minus for offer in refusal.value.offers}
    assert len(values) * len(pairs) >= len(refusal.value.offers)


@pytest.mark.parametrize("unit", ["mm", "mm2", "N", "rad", "1"])
@pytest.mark.parametrize("text", REFUSED)
def test_garbage_is_refused_whatever_is_wanted(text: str, unit: str) -> None:
    with pytest.raises(QuantityError):
        parse(text, unit)


@pytest.mark.parametrize("text", ["60:40", "1:5", "15d30'", "5 kg", "5", "5 2", "12 ft"])
def test_a_refusal_is_a_value_error_that_says_what_is_accepted(text: str) -> None:
    assert issubclass(QuantityError, ValueError)
    with pytest.raises(QuantityError) as refusal:
        parse(text + " kg", "kg/m3")
    assert refusal.value.accepts == (
        "a density such as 7850 kg/m3, 2.7 g/cm3; a number alone is read in kg/m³"
    )


@pytest.mark.parametrize("dimension", KINDS)
def test_every_text_named_as_accepted_is(dimension: tuple[int, int, int, int]) -> None:
    units = {unit.symbol: unit for unit in UNITS.values() if unit.dimension == dimension}
    _, examples = KINDS[dimension]  # type: ignore[index]
    symbol = next(iter(units), None) or examples[0].split(maxsplit=1)[1]
    if dimension == ONE.dimension:
        symbol = "1"
    assert unit_named(symbol).dimension == dimension
    for example in examples:
        assert parse(example, symbol).value > 0


def test_an_unnamed_kind_is_still_told_apart() -> None:
    with pytest.raises(QuantityError, match="5 N s is something in N·s; a force is wanted") as no:
        parse("5 N*s", "N")
    assert no.value.offers == ()
