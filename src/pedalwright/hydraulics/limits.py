"""What is asked of the cylinders."""

from collections.abc import Iterator

from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.core.units import Num

STROKE = Limit(
    "hydraulics.stroke",
    "At a hard stop the fuller circuit still has a third of its stroke in reserve.",
    "at most",
    "1",
    Source("common practice", "no source: two thirds of what is available", "trade"),
)


def check(stroke_used: Num) -> Iterator[Finding]:
    """Judge the stroke used of the fuller circuit, as a share of what it has."""
    yield STROKE.check(stroke_used, 2.0 / 3.0, "brake")
