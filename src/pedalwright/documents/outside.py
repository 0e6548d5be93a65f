"""How numbers leave the house: in the units a reader thinks in, decided here and nowhere else.

What a machine reads has fixed units (`METRIC`). What a builder reads has those his project file
is written in: `About` carries them to every page, drawing and chart.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

import numpy as np

from pedalwright.brakes.formulas import GRAVITY
from pedalwright.core.figures import figure
from pedalwright.core.lengths import Written, inches, millimetres
from pedalwright.core.quantity import QuantityError, converted, parse
from pedalwright.core.units import Num

#: `mm` is metric units throughout, `inch` inches, pounds and what goes with them.
Hand = Literal["mm", "inch"]


#: No result is better than a tenth of a thousandth: below this, four figures would say more.
INCH_DECIMALS, FINE = 4, 0.1


@dataclass(frozen=True, slots=True)
class Units:
    """The units one reader gets; angles are in degrees for all."""

    #: Inside unit to the one shown, and how many of it there are; others are shown as they are.
    factors: Mapping[str, tuple[str, float]]
    #: How a drawing writes its lengths, and what its title says of them.
    lengths: Written
    dimensions: str

    def outside(self, value: Num, unit: str) -> tuple[Num, str]:
        """A number, or many, in the unit shown, and that unit."""
        if unit == "rad":
            return np.rad2deg(value), "deg"
        if unit in self.factors:
            shown, factor = self.factors[unit]
            return value * factor, shown
        return value, unit

    def said(self, value: Num, unit: str) -> str:
        """A number with its unit, as a reader wants it."""
        amount, outer = self.outside(value, unit)
        if outer == "deg":
            return f"{float(amount):.1f}°"
        if outer == "in" and abs(float(amount)) < FINE:
            amount = np.round(amount, INCH_DECIMALS)
        return figure(amount, outer)

    def typed(self, unit: str) -> str:
        """The unit a number of this inside unit is typed in; empty for its own."""
        return self.factors[unit][0] if unit in self.factors else ""

    def beside(self, value: Num, unit: str) -> str:
        """The number anew if it is shown in another unit than inside; else nothing."""
        return figure(*self.outside(value, unit)) if unit in self.factors else ""

    def prose(self, text: str) -> str:
        """A sentence whose own figures, those of a rule, are followed by what they are here."""
        if not self.factors:
            return text
        return _FIGURE.sub(self._followed, text)

    def read_back(self, text: str, unit: str) -> str:
        """A number as it was read, with what it is here where that is something else."""
        try:
            value = parse(text, unit).value
        except (QuantityError, ValueError):
            return text  # it says both already, or is no number
        beside = self.beside(value, unit) if value else ""
        return f"{text} = {beside}" if beside else text

    def _followed(self, found: re.Match[str]) -> str:
        """To three figures: a rule's own number is round. No brackets within brackets."""
        amount, outer = self.outside(float(found[1]), found[2].replace("²", "2"))
        here = figure(float(f"{float(amount):.3g}"), outer)
        before = found.string[: found.start()]
        inside = before.count("(") > before.count(")")
        return f"{found[0]}, {here}" if inside else f"{found[0]} ({here})"


_FIGURE = re.compile(r"\b(\d+(?:\.\d+)?) (mm|N|MPa|m/s2|m/s²|km/h|kg|K)(?![\w²/·])")

METRIC = Units({}, millimetres, "dimensions in mm")

INCH = Units(
    {
        unit: (shown, float(converted(1.0, unit, shown)))
        for unit, shown in {
            "mm": "in",
            "mm2": "in2",
            "mm3": "in3",
            "mm4": "in4",
            "N": "lbf",
            "MPa": "psi",
            "N*mm": "lbf*in",
            "N/mm": "lbf/in",
            "mm/N": "in/lbf",
            "N*mm/rad": "lbf*in/rad",
            "mm3/MPa": "in3/psi",
            "mm/MPa": "in/psi",
            "kg": "lb",
            "km/h": "mph",
        }.items()
    }
    # In shares of gravity, as the limits say it; and a rise of temperature, there is no other.
    | {"m/s2": ("g", 1.0 / GRAVITY), "K": ("°F", 1.8)},
    inches,
    "dimensions in inches",
)

UNITS: Mapping[Hand, Units] = {"mm": METRIC, "inch": INCH}


def outside(value: Num, unit: str) -> tuple[Num, str]:
    """A number for a machine: in fixed units, angles in degrees."""
    return METRIC.outside(value, unit)
