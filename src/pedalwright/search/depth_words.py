"""Depths of the heels in words: of the floor, of tub and packing, and of what is left below."""

import numpy as np

from pedalwright.core.answers import Sentence, sentence
from pedalwright.search.scan import Stretch
from pedalwright.search.tray import AROUND, Tray

#: Depths tried: heels so far below the floor of the car, or on packing above it; mm.
DEPTHS = np.arange(-60.0, 151.0)
#: Least that should be left under a tub on the road (common practice, no source).
LEAST_CLEARANCE = 100.0


def depth_words(depth: float, a: str) -> Sentence:
    """A depth, e.g. `a drop of 55 mm`."""
    if depth == 0.0:
        return sentence(f"{a} level floor")
    if depth > 0.0:
        return sentence(f"{a} drop of {{}}", (depth, "mm"))
    return sentence(f"{a} heel plate of {{}}", (-depth, "mm"))


def range_words(stretch: Stretch) -> Sentence:
    """What fits; an end of what was tried is no bound."""
    low, high = stretch.low, stretch.high
    if low == high:
        return depth_words(low, "a")
    if low == DEPTHS[0]:
        return depth_words(high, "at most a" if high >= 0.0 else "at least a")
    if high == DEPTHS[-1]:
        return depth_words(low, "at least a")
    if high < 0.0:
        return sentence("a heel plate of {} to {}", (-high, "mm"), (-low, "mm"))
    if low < 0.0:
        return sentence(
            "anything from a heel plate of {} to a drop of {}", (-low, "mm"), (high, "mm")
        )
    return sentence("a drop of {} to {}", (low, "mm"), (high, "mm"))


def named(depth: float) -> str:
    """The name of a row."""
    if depth == 0.0:
        return "level with the floor"
    return f"{depth:.4g} down" if depth > 0.0 else f"{-depth:.4g} up"


def tray_words(opening: Tray) -> Sentence:
    """The size of a tub."""
    return sentence(
        "The tub's opening: x {} to {}, y {} to {}: {} long, {} wide, {} deep, with {} around "
        "every shoe.",
        (opening.front, "mm"),
        (opening.rear, "mm"),
        (opening.left, "mm"),
        (opening.right, "mm"),
        (opening.length, "mm"),
        (opening.width, "mm"),
        (opening.depth, "mm"),
        (AROUND, "mm"),
    )


def left_words(ground: float, drop: float) -> Sentence:
    """What a tub leaves above the ground."""
    if np.isnan(ground):
        return sentence(
            "What is left above the ground is not known: measure from the floor down, the car on "
            "its wheels, and enter the ground as a face of that name."
        )
    left = (ground - drop, "mm")
    if ground - drop < LEAST_CLEARANCE:
        return sentence(
            "Only {} is left above the ground; {} is common.", left, (LEAST_CLEARANCE, "mm")
        )
    return sentence("{} is left above the ground, less the sheet.", left)
