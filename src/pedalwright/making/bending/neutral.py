"""Where the neutral line lies: by the builder's own strip, else by standard or table."""

import numpy as np

from pedalwright.making.bending.formulas import (
    din_neutral,
    din_share,
    strip_deduction,
    strip_doubt,
    strip_share,
)
from pedalwright.making.bending.parts import Neutral, TestStrip
from pedalwright.shelf.bends import neutral_lines

#: What standard and tables may be out: trials and tools differ by a fifth of the thickness.
BY_BOOK = 0.1


def neutral_of_strip(strip: TestStrip) -> Neutral:
    """Two legs of a bent strip give the line for this sheet on this tool.

    It holds for the strip's own radius and thickness; another radius wants another strip.
    """
    deduction = strip_deduction(strip.length, strip.leg_one, strip.leg_two)
    return Neutral(
        share=float(strip_share(deduction, strip.angle, strip.radius, strip.thickness)),
        plus_minus=float(strip_doubt(strip.plus_minus, strip.angle, strip.thickness)),
        way="test strip",
        source="the builder's own test strip",
    )


def neutral_by_din(radius: float, thickness: float) -> Neutral:
    """By the German standard for folded steel sheet; alloy comes near it."""
    return Neutral(
        share=float(din_neutral(din_share(radius, thickness))),
        plus_minus=BY_BOOK,
        way="DIN 6935",
        source="DIN 6935, share of the thickness from its radius",
    )


def neutral_by_table(metal: str, radius: float, thickness: float) -> Neutral:
    """The printed value nearest to this radius and thickness, for a kind of metal."""
    rows = neutral_lines(metal)
    assert rows, f"no neutral lines for {metal!r}"
    row = min(
        rows,
        key=lambda r: (
            abs(np.log(r.thickness / thickness)),
            abs(np.log(r.radius / radius)),
        ),
    )
    return Neutral(share=row.share, plus_minus=BY_BOOK, way="table", source=row.source)
