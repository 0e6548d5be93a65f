"""Which unit a number without one is read in, and what fractions may stand for.

`54.5 ±0.5 mm` and `3 in ±1/16` share their unit. A bare fraction of a length is of an inch,
because that is what a rule in fractions is divided in; nobody marks sixteenths of a millimetre.
"""

from pedalwright.core.quantity.amount import Amount, decimal, with_unit
from pedalwright.core.quantity.dimension import ANGLE, LENGTH, RATIO, TIME, Dimension
from pedalwright.core.quantity.doubt import DoubtError
from pedalwright.core.quantity.unit_table import IMPERIAL, INCH, PERCENT, Unit

_FINEST_PART_OF_AN_INCH = 128


def settled(
    nominal: Amount, within: Amount | None, wanted: Dimension, bare: Unit
) -> tuple[Amount, Amount | None]:
    """Both amounts with a unit, or a doubt."""
    if within is None:
        return _own(nominal, wanted, bare, "{}"), None
    nominal, within = _shared(nominal, within, wanted, bare)
    return (
        _own(nominal, wanted, bare, f"{{}} ±{within.text}"),
        _own(within, wanted, bare, f"{nominal.text} ±{{}}"),
    )


def _shared(
    nominal: Amount, within: Amount, wanted: Dimension, bare: Unit
) -> tuple[Amount, Amount]:
    if within.unit is PERCENT and nominal.unit is not PERCENT:
        return nominal, _share(nominal, within, wanted, bare)
    if nominal.unit is None and within.unit is None:
        if nominal.is_fraction != within.is_fraction and wanted == LENGTH:
            units = (INCH, bare)
            raise DoubtError(
                f"“{nominal.words} ±{within.words}” has one fraction and no unit.",
                *(_pair(nominal, one, within, other) for one in units for other in units),
            )
    elif nominal.unit is None:
        if within.form:
            raise DoubtError(
                f"“{nominal.words}” before the ± has no unit of its own.",
                f"{with_unit(nominal.words, bare)} ±{within.words}",
            )
        nominal = nominal._replace(unit=within.unit)
    elif within.unit is None:
        if nominal.form not in {"", "ft in", ":1"}:
            raise DoubtError(
                f"“±{within.words}” has no unit of its own.",
                f"{nominal.words} ±{with_unit(within.words, bare)}",
            )
        within = within._replace(unit=nominal.unit)
    return nominal, within


def _share(nominal: Amount, within: Amount, wanted: Dimension, bare: Unit) -> Amount:
    """`500 N ±10 %` is ±50 N. Of a ratio, or a bare number, the % may mean two things."""
    share = within.number / 100
    around = abs(nominal.number) * share
    if wanted == RATIO:
        raise DoubtError(
            f"“±{within.text}” may be a share of {nominal.text}, or be added to it.",
            f"{nominal.text} ±{decimal(around)}",
            f"{nominal.text} ±{decimal(share)}",
            f"{nominal.words} % ±{within.text}",
        )
    if nominal.unit is None:
        raise DoubtError(
            f"“{nominal.words}” before the ± has no unit of its own.",
            f"{with_unit(nominal.words, bare)} ±{within.text}",
        )
    return Amount(around, within.text, nominal.unit, "%")


def _pair(nominal: Amount, one: Unit, within: Amount, other: Unit) -> str:
    return f"{with_unit(nominal.words, one)} ±{with_unit(within.words, other)}"


def _own(amount: Amount, wanted: Dimension, bare: Unit, whole: str) -> Amount:
    """The amount in a unit; a bare number in `bare`. `whole` is the text around the amount."""
    if not amount.is_fraction:
        return amount._replace(unit=amount.unit or bare)
    amount = amount._replace(unit=amount.unit or _of_a_bare_fraction(amount, wanted, bare, whole))
    unit, parts = amount.known_unit, amount.number.denominator
    if unit.dimension == LENGTH and unit.symbol not in IMPERIAL:
        raise DoubtError(
            f"{amount.text} is a fraction of a metric unit.",
            whole.format(with_unit(amount.words, INCH)),
            whole.format(with_unit(decimal(amount.number), unit)),
        )
    if unit is INCH and (parts > _FINEST_PART_OF_AN_INCH or parts & (parts - 1)):
        rounded = round(amount.number, 4)
        raise DoubtError(
            f"No rule is divided into the parts of an inch in {amount.text}.",
            whole.format(with_unit(decimal(rounded), INCH)),
        )
    return amount


def _of_a_bare_fraction(amount: Amount, wanted: Dimension, bare: Unit, whole: str) -> Unit:
    if wanted in {RATIO, TIME, ANGLE}:
        return bare
    if wanted == LENGTH and bare.symbol not in IMPERIAL - {"in"}:
        return INCH
    texts = (whole.format(with_unit(amount.words, unit)) for unit in (INCH, bare))
    raise DoubtError(f"“{amount.words}” is a fraction without a unit.", *texts)
