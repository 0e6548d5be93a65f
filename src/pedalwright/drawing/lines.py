"""The lines of a drawing: what a line means decides how it looks.

Kinds after ISO 128-2, thick to thin 2 : 1. Lengths of dashes are multiples of the thin line
as there, only the dot is one line width long so that a screen shows it. All in mm on paper,
whatever the scale of the drawing.
"""

from enum import StrEnum

THICK = 0.5
FINE = 0.25


class Line(StrEnum):
    """What a line means."""

    #: Continuous, thick: an edge one sees.
    VISIBLE = "visible"
    #: Continuous, thin: dimensions, leaders, hatching.
    THIN = "thin"
    #: Dashed, thin: an edge behind something.
    HIDDEN = "hidden"
    #: Long dash and dot, thin: an axis, a plane of symmetry, a path of a point.
    CENTRE = "centre"
    #: Long dash and two dots, thin: a moving part in its other position, a part next door.
    OTHER_POSITION = "other-position"
    #: Continuous, very thin and pale: the grid of a chart.
    GRID = "grid"
    #: No line: the shape is only a filled area.
    NONE = "none"

    @property
    def width(self) -> float:
        """Width on paper, mm."""
        return {Line.VISIBLE: THICK, Line.GRID: 0.13, Line.NONE: 0.0}.get(self, FINE)

    @property
    def dashes(self) -> tuple[float, ...]:
        """Lengths of dash and gap in turn on paper, mm; empty for a continuous line."""
        dash, long, gap, dot = 12 * FINE, 24 * FINE, 3 * FINE, FINE
        return {
            Line.HIDDEN: (dash, gap),
            Line.CENTRE: (long, gap, dot, gap),
            Line.OTHER_POSITION: (long, gap, dot, gap, dot, gap),
        }.get(self, ())


class Tone(StrEnum):
    """How loud a shape speaks. Tones never carry the meaning alone: print is black and white."""

    INK = "ink"
    QUIET = "quiet"
    ACCENT = "accent"


class Fill(StrEnum):
    """What an area is filled with."""

    NONE = "none"
    #: The colour of the paper: hides what was drawn before.
    PAPER = "paper"
    #: The colour of the line.
    SOLID = "solid"
    #: A pale shade.
    TINT = "tint"
    #: Five steps from little to much, each darker than the one before, so that print shows them.
    SHADE_1 = "shade-1"
    SHADE_2 = "shade-2"
    SHADE_3 = "shade-3"
    SHADE_4 = "shade-4"
    SHADE_5 = "shade-5"


#: Little to much.
SHADES = (Fill.SHADE_1, Fill.SHADE_2, Fill.SHADE_3, Fill.SHADE_4, Fill.SHADE_5)
