"""A number and its unit, as written."""

from fractions import Fraction
from typing import NamedTuple

from pedalwright.core.quantity.unit_table import Unit


class Amount(NamedTuple):
    """What the grammar found in a text."""

    number: Fraction
    #: The number in plain words: `1 5/8`. With its unit where it has a form of its own.
    words: str
    #: None for a bare number.
    unit: Unit | None
    #: Empty, or a form of its own: `ft in`, `deg min`, `:1`, `SWG`.
    form: str = ""
    is_fraction: bool = False
    #: Where the unit stands in the text.
    unit_at: slice = slice(0, 0)

    @property
    def known_unit(self) -> Unit:
        """The unit, of an amount that is no longer bare."""
        assert self.unit is not None, f"{self.words} is still bare"
        return self.unit

    @property
    def text(self) -> str:
        """Number and unit in plain words: `1 5/8 in`."""
        return self.words if self.form or not self.unit else with_unit(self.words, self.unit)


def with_unit(words: str, unit: Unit) -> str:
    """A number and a unit: `1 5/8 in`; a pure number stays alone."""
    return f"{words} {unit.symbol}".rstrip()


def decimal(value: Fraction) -> str:
    """A number in twelve digits, for offers."""
    return f"{float(value):.12g}"
