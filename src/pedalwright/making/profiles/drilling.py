"""The drill card: each hole with its drills, where it stands, how true it must be."""

from collections.abc import Iterator
from dataclasses import dataclass

from pedalwright.drawing import XY, Box
from pedalwright.making.profiles.parts import Bore, Profile
from pedalwright.making.profiles.shape import polygon
from pedalwright.shelf.tolerances import general_tolerance

#: Skin pins hold in holes of 1/8 in, so a rivet's hole begins as one.
SKIN_PIN = 3.2
#: What a hand drill starts without a pilot, and with one.
STRAIGHT, WITH_PILOT = 4.0, 8.0
#: What a reamer takes out.
REAMING = 0.3
#: The largest drill of a common set; beyond it a step drill, hole saw or punch.
LARGEST = 13.0
#: A pin's hole off by half a millimetre changes the ratio by a hundredth.
PIN_TOLERANCE = 0.2


@dataclass(frozen=True, kw_only=True, slots=True)
class DrillRow:
    """One line of the card."""

    bore: Bore
    #: Drills in order, the last one to size; a reamer after it where the hole is reamed.
    drills: tuple[float, ...]
    finish: str
    #: From the left and the lower edge of the part as it is drawn; for an arm, from its pivot.
    from_left: float
    from_below: float
    #: What `from_left` and `from_below` are measured from.
    edges: str
    #: Either way, on both.
    tolerance: float


def drill_card(profile: Profile) -> tuple[DrillRow, ...]:
    """Every hole of a part, from its edges, or from the pivot where its ends are round."""
    return tuple(_rows(profile))


def drills(bore: Bore) -> tuple[float, ...]:
    """Pilot first; a thick drill wanders without one."""
    last = bore.diameter - REAMING if bore.reamed else bore.diameter
    last = min(last, LARGEST)
    if last <= STRAIGHT:
        return (last,)
    if last <= WITH_PILOT:
        return (SKIN_PIN, last)
    return (SKIN_PIN, 6.0, last)


def finish(bore: Bore) -> str:
    """How it comes to size after the last drill."""
    if bore.diameter > LARGEST:
        return f"open to {bore.diameter:.4g} with a step drill, hole saw or file"
    return f"ream {bore.diameter:.4g}" if bore.reamed else "deburr both sides"


def _rows(profile: Profile) -> Iterator[DrillRow]:
    rounded = any(corner.bulge for corner in profile.outline)
    box = Box.around(polygon(profile.outline))
    assert box is not None, "an outline has places"
    pivot = profile.bores[0].centre if profile.bores else (0.0, 0.0)
    start: XY = pivot if rounded else (box.left, box.bottom)
    edges = f"from the middle of {profile.bores[0].name}" if rounded else "from left and lower edge"
    for bore in profile.bores:
        x, y = bore.centre[0] - start[0], bore.centre[1] - start[1]
        yield DrillRow(
            bore=bore,
            drills=drills(bore),
            finish=finish(bore),
            from_left=x,
            from_below=y,
            edges=edges,
            tolerance=_tolerance(bore, max(abs(x), abs(y))),
        )


def _tolerance(bore: Bore, length: float) -> float:
    """A pin's hole decides a ratio; others are as good as the general tolerance."""
    if bore.reamed:
        return PIN_TOLERANCE
    row = general_tolerance(length)
    return row.medium if row is not None else 0.1 if length < 1.0 else 1.2
