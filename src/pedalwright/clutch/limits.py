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
STOP_WINDOW = Limit(
    "clutch.stop_window",
    "Between full release, give counted, and over-stroke there is room to set a stop.",
    "at least",
    "mm",
    Source("geometry", "one end less the other; 3 mm to set and lock a nut in", "ours"),
    "should",
)
STOP_SPARES_COVER = Limit(
    "clutch.stop_spares_cover",
    "The pedal meets its stop before the bearing presses the cover further than it may.",
    "at most",
    "mm",
    Source("common practice", "no source: release lift and 2 mm, or as given", "trade"),
    "should",
)
#: Most push that is tolerable in traffic, N; see the source of EFFORT.
TOLERABLE_EFFORT = 200.0
#: What the cover may be pressed beyond its release where nobody said, mm.
OVER_LIFT = 2.0
#: Least pad travel in which a stop can be set.
SETTABLE = 3.0


def check(clutch: ClutchResult) -> Iterator[Finding]:
    """Judge the clutch."""
    yield RELEASE.check(clutch.budget.total, clutch.travel_available)
    if clutch.fluid is not None:
        yield STROKE.check(clutch.master_stroke, clutch.fluid.cylinder_stroke)
    yield EFFORT.check(clutch.effort_peak, TOLERABLE_EFFORT)
    if clutch.stop is None:
        yield OVER_STROKE.check(clutch.lift_at_wall, clutch.lift_needed + clutch.over_lift)
    else:
        yield STOP_SPARES_COVER.check(clutch.stop, clutch.window.over_stroke)
    yield STOP_WINDOW.check(clutch.window.width, SETTABLE)
