"""In which order a row of rivets is set: pinned first, from the middle outward, pins last.

So the sheet's slack walks to the edge instead of standing up as a bubble between rivets.
"""

from collections.abc import Sequence
from math import hypot

from pedalwright.drawing import XY
from pedalwright.making.planning.parts import RivetStep

#: A skin pin in every so manieth hole, and in both ends.
EVERY = 4


def rivet_sequence(holes: Sequence[XY], every: int = EVERY) -> tuple[RivetStep, ...]:
    """Holes in the order they stand along the row; each is filled once."""
    middle = (
        sum(x for x, _ in holes) / len(holes),
        sum(y for _, y in holes) / len(holes),
    )
    pinned = {*range(0, len(holes), every), len(holes) - 1}

    def out(hole: int) -> tuple[float, int]:
        x, y = holes[hole]
        return round(hypot(x - middle[0], y - middle[1]), 6), hole

    free = sorted((i for i in range(len(holes)) if i not in pinned), key=out)
    run = (*free, *sorted(pinned, key=out))
    return tuple(RivetStep(hole=i, pinned=i in pinned) for i in run)


def skin_pins(count: int, every: int = EVERY) -> int:
    """Skin pins that a row of so many holes wants."""
    return len({*range(0, count, every), count - 1}) if count else 0
