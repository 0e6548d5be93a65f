"""Where the neutral line of a panel's bends lies: by the builder's own strip, else by the books."""

from collections.abc import Callable

from pedalwright.making.bending import (
    Neutral,
    TestStrip,
    neutral_by_din,
    neutral_by_table,
    neutral_of_strip,
)
from pedalwright.panels.made import Panel
from pedalwright.shelf.stock import BentStrip, Stock

#: Sheets whose thicknesses differ by less are the same, mm.
SAME = 0.06


def neutral_line(panel: Panel, stock: Stock) -> Callable[[float], Neutral]:
    """The line for an inside radius.

    Steel goes by the German standard, other metals by the table of their kind.
    """
    own = strips_of(panel, stock)

    def line(radius: float) -> Neutral:
        if own:
            nearest = min(own, key=lambda strip: abs(strip.radius - radius))
            return neutral_of_strip(nearest)
        if panel.metal.steel:
            return neutral_by_din(radius, panel.thickness)
        return neutral_by_table("aluminium", radius, panel.thickness)

    return line


def strips_of(panel: Panel, stock: Stock) -> list[TestStrip]:
    """The strips that were bent from the same sheet as a panel."""
    return [
        _strip(strip)
        for strip in stock.strips
        if strip.metal == panel.metal.name and abs(float(strip.thickness) - panel.thickness) < SAME
    ]


def _strip(strip: BentStrip) -> TestStrip:
    return TestStrip(
        length=float(strip.length),
        leg_one=float(strip.leg_one),
        leg_two=float(strip.leg_two),
        thickness=float(strip.thickness),
        radius=float(strip.radius),
        angle=float(strip.angle),
    )
