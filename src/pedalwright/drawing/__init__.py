"""Drawing: shapes, dimensions, charts and sheets; it knows no pedals."""

from pedalwright.drawing.axis import Axis
from pedalwright.drawing.box import XY, Box, polar
from pedalwright.drawing.budget import BudgetChart, Cause
from pedalwright.drawing.charts import Level, LineChart, Series, Spot
from pedalwright.drawing.dimension import Linear, Stack
from pedalwright.drawing.hatch import Hatch
from pedalwright.drawing.leader import Leader
from pedalwright.drawing.lines import SHADES, Fill, Line, Tone
from pedalwright.drawing.rounds import Angular, CentreCross, diameter, radius
from pedalwright.drawing.shapes import Arc, Circle, Group, Item, Polyline, Text
from pedalwright.drawing.sheet import Drawing
from pedalwright.drawing.svg import svg

__all__ = [
    "SHADES",
    "XY",
    "Angular",
    "Arc",
    "Axis",
    "Box",
    "BudgetChart",
    "Cause",
    "CentreCross",
    "Circle",
    "Drawing",
    "Fill",
    "Group",
    "Hatch",
    "Item",
    "Leader",
    "Level",
    "Line",
    "LineChart",
    "Linear",
    "Polyline",
    "Series",
    "Spot",
    "Stack",
    "Text",
    "Tone",
    "diameter",
    "polar",
    "radius",
    "svg",
]
