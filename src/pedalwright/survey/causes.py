"""What may have happened to a reading that the others contradict."""

from collections.abc import Iterator
from itertools import pairwise

import numpy as np

from pedalwright.core.units import Array
from pedalwright.survey.equations import value_of
from pedalwright.survey.net import Net
from pedalwright.survey.stations import Distance, Slope, Step

#: A guess may be this many standard deviations beside what the other readings say.
NEAR = 2.0
INCH = 25.4
#: Whole lengths by which tapes and rules are misread, mm.
SLIPS = (
    (100.0, "100 mm"),
    (10.0, "10 mm"),
    (INCH, "an inch"),
    (50.0, "50 mm"),
    (12 * INCH, "a foot"),
)


def cause(net: Net, at: Array, row: int, expected: float, sigma: float) -> str:
    """The likeliest slip that would turn what was expected into what was read, in a few words."""
    near = [
        (abs(there - expected), words)
        for there, words in _guesses(net, at, row, expected)
        if abs(there - expected) < NEAR * sigma
    ]
    return min(near)[1] if near else ""


def _guesses(net: Net, at: Array, row: int, expected: float) -> Iterator[tuple[float, str]]:
    """What would have been right, and the slip that made of it what was read."""
    sight = net.sights[row]
    read = value_of(sight)
    if isinstance(sight, Slope):
        yield -read, "foot and head swapped"
        return
    if isinstance(sight, Step):
        sides = {"x": "front and rear", "y": "left and right", "z": "above and below"}
        yield -read, f"{sides[sight.axis]} swapped"
    if isinstance(sight, Distance):
        yield from _other_hooks(net, at, sight, read, expected)
    for turned in _digits_turned(read):
        yield turned, f"digits swapped: {turned:g}"
    for length, words in SLIPS:
        yield read + length, f"{words} too few"
        yield read - length, f"{words} too many"


def _other_hooks(
    net: Net, at: Array, sight: Distance, read: float, expected: float
) -> Iterator[tuple[float, str]]:
    """What the tape would read from another mark: if that was read, it hung on the wrong one."""
    names = [station.name for station in net.stations]
    end = at[names.index(sight.to)]
    lengths = np.sqrt(np.sum((at - end) ** 2, axis=1))
    for name, length in zip(names, lengths.tolist(), strict=True):
        if name not in sight.ends:
            yield expected + (read - length), f"hooked on {name}"


def _digits_turned(read: float) -> Iterator[float]:
    """The same whole millimetres with two neighbouring digits swapped."""
    whole = f"{abs(read):.0f}"
    for i, (one, other) in enumerate(pairwise(whole)):
        if one != other:
            turned = float(whole[:i] + other + one + whole[i + 2 :])
            yield float(np.copysign(turned, read))
