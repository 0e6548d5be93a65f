"""What is asked of the clutch."""

from collections.abc import Iterator

from pedalwright.clutch.parts import ClutchResult
from pedalwright.core.checks import Finding, Limit, Source

RELEASE = Limit(
    "clutch.release",
    "The clutch is fully released, give of the structure counted, before the toes meet the wall.",
    "at most",
    "mm",
    Source("geometry", "travel needed against travel there is", "ours"),
)
STROKE = Limit(
    "clutch.stroke",
    "The master piston reaches full release before it bottoms.",
    "at most",
    "mm",
    Source("part maker's data", "stroke of the cylinder", "ours"),
)
EFFORT = Limit(
    "clutch.effort",
    "The clutch can be held down in traffic.",
    "at most",
    "N",
    Source("common practice", "no source: 90 to 150 N good, 200 N tolerable", "trade"),
    "should",
)
OVER_STROKE = Limit(
    "clutch.over_stroke",
    "Pushed to the wall, the bearing does not press the cover much further than it must: "
    "else the pedal needs its own stop.",
    "at most",
    "mm",
    Source("common practice", "no source: release lift and 2 mm", "trade"),
    "should",
)
#: What the cover may be pressed beyond its release, mm.
OVER_LIFT = 2.0


def check(clutch: ClutchResult) -> Iterator[Finding]:
    """Judge the clutch."""
    yield RELEASE.check(clutch.budget.total, clutch.travel_available)
    if clutch.fluid is not None:
        yield STROKE.check(clutch.master_stroke, clutch.fluid.cylinder_stroke)
    yield EFFORT.check(clutch.effort, 200.0)
    yield OVER_STROKE.check(clutch.lift_at_wall, clutch.lift_needed + OVER_LIFT)
