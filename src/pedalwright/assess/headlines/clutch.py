"""Headlines of the clutch: travel, effort, its stop."""

from collections.abc import Iterator

from pedalwright.assess.headlines.headline import Headline
from pedalwright.clutch import ClutchResult


def releasing(result: ClutchResult) -> Iterator[Headline]:
    """What it takes to release."""
    yield Headline(
        "clutch.travel_needed",
        result.travel_needed,
        "mm",
        "Arc of the pad from rest to full release, every loss counted, the structure rigid.",
    )
    yield Headline(
        "clutch.travel_available",
        result.travel_available,
        "mm",
        "Arc of the pad from rest until the toes meet the wall.",
    )
    yield Headline(
        "clutch.effort", result.effort, "N", "Push on the pad that holds the clutch released."
    )
    yield Headline(
        "clutch.master_stroke",
        result.master_stroke,
        "mm",
        "Travel of the master piston to full release, dead stroke included.",
    )
    yield Headline(
        "clutch.lift_reached",
        result.lift_reached,
        "mm",
        "Bearing lift that the travel there is can give, at most the lift wanted.",
    )
    yield Headline(
        "clutch.travel_at_6_to_1",
        result.travel_at_six,
        "mm",
        "Pad travel that a pedal of the trade's usual 6 to 1 would need here.",
    )
    yield Headline(
        "clutch.effort_peak",
        result.effort_peak,
        "N",
        "Largest push on the pad on the way to full release.",
    )
    yield Headline(
        "clutch.spare",
        result.spare,
        "mm",
        "Arc of the pad left between full release, give of the structure counted, and the wall.",
    )
    yield Headline(
        "clutch.stop_from",
        result.window.released,
        "mm",
        "Arc of the pad at which a stop may stand at the earliest: released, give counted.",
    )
    yield Headline(
        "clutch.stop_to",
        result.window.over_stroke,
        "mm",
        "Arc of the pad at which a stop must stand at the latest, to spare the cover.",
    )
    if result.bite is not None:
        yield Headline(
            "clutch.bite",
            result.bite,
            "mm",
            "Arc of the pad at which the plate begins to bite, give counted; if a bite is given.",
        )
