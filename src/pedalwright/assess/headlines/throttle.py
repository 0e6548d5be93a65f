"""Headlines of the throttle: how far it opens, and what closes it."""

from collections.abc import Iterator

import numpy as np

from pedalwright.assess.headlines.headline import Headline
from pedalwright.throttle import Opening


def opening(result: Opening) -> Iterator[Headline]:
    """What the accelerator does at the spindle."""
    yield Headline(
        "throttle.spindle_angle",
        result.at_stop,
        "rad",
        "Turn of the spindle with the pad at its stop, were it free to turn on.",
    )
    yield Headline(
        "throttle.opening_share",
        np.minimum(result.at_stop / result.full_opening, 1.0),
        "1",
        "Share of the full opening's turn that the pedal reaches.",
    )
    yield Headline(
        "throttle.one_spring_lost",
        result.one_spring_lost,
        "N*mm",
        "Least closing torque at the spindle with any one return spring lost.",
    )
    yield Headline(
        "throttle.effort",
        result.effort,
        "N",
        "Push on the accelerator pad that holds full opening, or its stop if that comes first.",
    )
    yield Headline(
        "throttle.rod_to_lever_min",
        result.rod_to_lever,
        "rad",
        "Smallest angle between any rod and its lever over the stroke; 0 is a dead point.",
    )
    if result.unequal is not None:
        yield Headline(
            "throttle.unequal",
            result.unequal,
            "rad",
            "Largest difference of another carburettor's spindle from the first, if there is one.",
        )
    if result.rock_turn is not None:
        yield Headline(
            "throttle.rock_turn",
            result.rock_turn,
            "rad",
            "Largest turn of the spindle for 10 mm of engine movement, if its direction is given.",
        )
    if result.open_at_half is not None:
        yield Headline(
            "throttle.open_at_half",
            result.open_at_half,
            "1",
            "Open share of the bore with the pad half-way to its stop, if the bore is given.",
        )
