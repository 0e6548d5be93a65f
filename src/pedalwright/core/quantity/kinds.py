"""Calling a quantity of the wrong kind by its name, and saying what is wanted instead."""

import re
from collections.abc import Iterator

from pedalwright.core.quantity.amount import Amount
from pedalwright.core.quantity.dimension import ANGLE, FORCE, KINDS, MASS, Dimension
from pedalwright.core.quantity.doubt import DoubtError
from pedalwright.core.quantity.tokens import Cursor
from pedalwright.core.quantity.unit_table import FOOT, INCH, WEIGHTS, Unit
from pedalwright.core.quantity.writing import pretty

_MARKS = {FOOT: "arcmin", INCH: "arcsec"}


def check_kind(cursor: Cursor, amount: Amount, wanted: Unit) -> None:
    """Doubt an amount that is not of the kind wanted: `50 kg` where a force is."""
    if amount.known_unit.dimension != wanted.dimension:
        found, meant = kind(amount.known_unit), kind(wanted)
        offers = (
            cursor.text[: amount.unit_at.start] + other + cursor.text[amount.unit_at.stop :]
            for other in _instead(amount.known_unit, wanted.dimension)
        )
        spaced = re.sub(r"(?<=[A-Za-z])(?=[0-9])", " ", cursor.text)
        raise DoubtError(f"{amount.text} is {found}; {meant} is wanted.", *offers, spaced)


def kind(unit: Unit) -> str:
    """What a unit measures: `a force`."""
    return KINDS[unit.dimension][0] if unit.dimension in KINDS else f"something in{pretty(unit)}"


def accepts(wanted: Unit, bare: Unit) -> str:
    """One line that says what can be typed."""
    examples = KINDS[wanted.dimension][1] if wanted.dimension in KINDS else (f"1 {wanted.symbol}",)
    alone = f"; a number alone is read in{pretty(bare)}" if bare.symbol else ""
    return f"{kind(wanted)} such as {', '.join(examples)}{alone}"


def _instead(found: Unit, wanted: Dimension) -> Iterator[str]:
    """Units that are easily taken for one another: mass and weight, feet and minutes."""
    for mass, weight in WEIGHTS.items():
        if found is mass and wanted == FORCE:
            yield weight.symbol
        if found is weight and wanted == MASS:
            yield mass.symbol
    if wanted == ANGLE and found in _MARKS:
        yield f" {_MARKS[found]}"
