"""How to measure it: a small sketch for the numbers that are most often measured wrongly.

Sketches are no drawings of this car: lengths are those on paper, mm, and stand for nothing.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from math import atan2, pi

from pedalwright.drawing import (
    Angular,
    Box,
    CentreCross,
    Circle,
    Drawing,
    Fill,
    Hatch,
    Item,
    Leader,
    Line,
    Linear,
    Polyline,
    Tone,
)

#: The paper of a sketch, and how thick what is cut is.
PAPER, SKIN = Box(0.0, 0.0, 90.0, 50.0), 2.5
#: Places of the pedal that most sketches show.
WALL, FLOOR = 12.0, 6.0
PIVOT, PIN, PAD, SOCKET = (40.0, 42.0), (42.0, 33.0), (48.0, 12.0), (22.0, 34.0)
#: A seated driver: hip, knee, ankle, and his shoe.
HIP, KNEE, ANKLE = (74.0, 18.0), (52.0, 32.0), (34.0, 12.0)
SHOE = ((34.0, 12.0), (32.0, 6.0), (24.0, 14.0))


@dataclass(frozen=True, slots=True)
class Hint:
    """What is sketched, and how it is done."""

    says: str
    shapes: Callable[[], Iterator[Item]]


def hint(keys: Sequence[str]) -> Hint | None:
    """For an entry, by the keys of its path; None where its words say enough."""
    own = tuple(keys[:-1] if keys[-1] in {"x", "y", "z"} else keys)
    for name, found in HINTS.items():
        wanted = tuple(name.split("."))
        if any(own[at : at + len(wanted)] == wanted for at in range(len(own))):
            return found
    return None


def sketch(found: Hint, name: str) -> Drawing:
    """The sketch under a name of its own: it may stand on a page twice."""
    return Drawing(name=name, title=found.says, shapes=tuple(found.shapes()), window=PAPER)


def _wall() -> Iterator[Item]:
    out = WALL - SKIN
    edge = ((WALL, 3.0), (WALL, 48.0))
    yield Hatch((*edge, (out, 48.0), (out, 3.0)))
    yield Polyline(edge)


def _floor(low: float = FLOOR, start: float = WALL, end: float = 86.0) -> Iterator[Item]:
    edge = ((start, low), (end, low))
    yield Hatch((*edge, (end, low - SKIN), (start, low - SKIN)))
    yield Polyline(edge)


def _lever() -> Iterator[Item]:
    tone = Tone.ACCENT
    yield Polyline((PIVOT, PAD), tone=tone)
    yield Polyline(((46.5, 17.0), (49.5, 7.0)), tone=tone)
    yield Polyline((PIN, SOCKET), tone=tone)
    yield Circle(PIN, 1.2, tone=tone, fill=Fill.PAPER)
    yield Circle(PIVOT, 2.2, tone=tone, fill=Fill.PAPER)
    yield CentreCross(PIVOT, 2.2)


def _pad_radius() -> Iterator[Item]:
    yield from _lever()
    yield Linear(PIVOT, PAD, "aligned", offset=9.0, label="radius")
    yield Leader(PIVOT, "tube's middle", to=(-5.0, 3.0))
    yield Leader(PAD, "pad's middle", to=(-9.0, -5.0))


def _pin_radius() -> Iterator[Item]:
    yield from _lever()
    yield Linear(PIVOT, PIN, "aligned", offset=9.0, label="radius")
    yield Leader(PIN, "hole's middle", to=(-10.0, -9.0))


def _pad_lean() -> Iterator[Item]:
    yield from _lever()
    plumb = (PIVOT[0], 6.0)
    yield Polyline((PIVOT, plumb), line=Line.CENTRE)
    arm = atan2(PAD[1] - PIVOT[1], PAD[0] - PIVOT[0])
    yield Angular(PIVOT, -pi / 2.0, arm, radius=24.0, sides=False, label="lean")
    yield Leader((40.0, 14.0), "plumb line", to=(-6.0, 3.0))


def _pivot() -> Iterator[Item]:
    yield from _wall()
    yield from _lever()
    datum = (WALL, FLOOR)
    yield Linear(datum, PIVOT, "horizontal", offset=-3.0, base=FLOOR, label="x")
    yield Linear(datum, PIVOT, "vertical", offset=30.0, base=PIVOT[0], label="z")
    yield Leader(datum, "datum", to=(6.0, 5.0))


def _socket() -> Iterator[Item]:
    yield from _wall()
    yield from _lever()
    yield Circle(SOCKET, 1.0, fill=Fill.SOLID, tone=Tone.ACCENT)
    yield Linear((WALL, FLOOR), SOCKET, "horizontal", offset=-6.0, base=24.0, label="x")
    yield Leader(SOCKET, "bottom of the cup,\nwhere the rod's ball sits", to=(1.0, -22.0))


def _pad_offset() -> Iterator[Item]:
    tone = Tone.ACCENT
    yield Polyline(((40.0, 46.0), (40.0, 20.0), (52.0, 16.0), (52.0, 12.0)), tone=tone)
    yield Polyline(((45.0, 6.0), (59.0, 6.0), (59.0, 18.0), (45.0, 18.0)), closed=True, tone=tone)
    yield Polyline(((32.0, 44.0), (48.0, 44.0)), line=Line.CENTRE)
    yield Linear((40.0, 20.0), (52.0, 12.0), "horizontal", offset=6.0, base=20.0, label="offset")
    yield Leader((40.0, 36.0), "seen from the seat:\nplus to the right", to=(9.0, 3.0))


def _seated() -> Iterator[Item]:
    yield Polyline((HIP, KNEE, ANKLE))
    yield Polyline(SHOE, closed=True)
    for at in (HIP, KNEE, ANKLE):
        yield Circle(at, 1.5, fill=Fill.PAPER)
    yield Polyline((HIP, (84.0, 46.0)))


def _hip() -> Iterator[Item]:
    yield from _wall()
    yield from _floor()
    yield from _seated()
    yield Linear((WALL, FLOOR), HIP, "horizontal", offset=28.0, base=16.0, label="x")
    yield Linear((WALL, FLOOR), HIP, "vertical", offset=8.0, base=HIP[0], label="z")
    yield Leader(HIP, "bump of the hip", to=(-8.0, 20.0))


def _drop() -> Iterator[Item]:
    yield from _wall()
    yield from _floor(24.0, 62.0)
    tub = ((62.0, 24.0), (62.0, 10.0), (WALL, 10.0))
    yield Polyline(tub)
    yield Polyline(((36.0, 22.0), (34.0, 10.0), (24.0, 20.0)), closed=True)
    yield Linear((62.0, 24.0), (62.0, 10.0), "vertical", offset=10.0, label="drop")
    yield Leader((72.0, 24.0), "floor beside the tub", to=(-8.0, 8.0))


def _plate() -> Iterator[Item]:
    yield from _wall()
    yield from _floor(12.0)
    yield Polyline(
        ((26.0, 12.0), (60.0, 12.0), (60.0, 17.0), (26.0, 17.0)), closed=True, fill=Fill.TINT
    )
    yield Polyline(((40.0, 27.0), (38.0, 17.0), (29.0, 26.0)), closed=True)
    yield Linear((60.0, 12.0), (60.0, 17.0), "vertical", offset=8.0, label="plate")
    yield Leader((50.0, 17.0), "mats and all", to=(4.0, 9.0))


def _toes() -> Iterator[Item]:
    yield from _wall()
    yield Polyline(((60.0, 26.0), (58.0, 10.0), (30.0, 30.0)), closed=True)
    yield Circle((38.0, 24.5), 1.0, fill=Fill.SOLID)
    yield Polyline(((36.0, 20.0), (40.0, 29.0)), tone=Tone.ACCENT)
    yield Linear((WALL, 6.0), (38.0, 24.5), "horizontal", offset=-5.0, base=12.0, label="room")
    yield Leader((38.0, 24.5), "pad's middle, toes\njust off the wall", to=(6.0, 14.0))


def _cg() -> Iterator[Item]:
    yield from _floor(8.0, 6.0)
    for x in (22.0, 68.0):
        yield Circle((x, 15.0), 7.0)
        yield CentreCross((x, 15.0), 2.0)
    yield Polyline(((14.0, 22.0), (14.0, 26.0), (76.0, 26.0), (76.0, 22.0)), line=Line.THIN)
    yield CentreCross((46.0, 24.0), 3.0)
    yield Circle((46.0, 24.0), 2.0)
    yield Linear((46.0, 8.0), (46.0, 24.0), "vertical", offset=7.0, label="height")
    yield Leader((46.0, 24.0), "level, then with\none axle raised", to=(5.0, 13.0))


def _shoe_length() -> Iterator[Item]:
    yield from _floor(12.0, 8.0)
    for x in (16.0, 66.0):
        yield Polyline(((x, 12.0), (x + 6.0, 12.0), (x + 6.0, 34.0), (x, 34.0)), closed=True)
    shoe = ((22.0, 12.0), (66.0, 12.0), (66.0, 17.0), (46.0, 22.0), (38.0, 32.0), (22.0, 32.0))
    yield Polyline(shoe, closed=True, tone=Tone.ACCENT)
    yield Linear((22.0, 12.0), (66.0, 12.0), "horizontal", offset=-6.0, label="between two books")


def _inside_leg() -> Iterator[Item]:
    yield Hatch(((18.0, 2.0), (18.0, 50.0), (15.5, 50.0), (15.5, 2.0)))
    yield Polyline(((18.0, 2.0), (18.0, 50.0)))
    yield from _floor(4.0, 18.0)
    yield Polyline(((22.0, 4.0), (24.0, 34.0), (26.0, 34.0), (30.0, 4.0)))
    yield Polyline(((18.0, 34.0), (44.0, 34.0), (44.0, 37.0), (18.0, 37.0)), closed=True)
    yield Linear((44.0, 4.0), (44.0, 34.0), "vertical", offset=7.0, label="leg")
    yield Leader((40.0, 37.0), "book pressed up,\nno shoes", to=(4.0, 5.0))


def _front_wall() -> Iterator[Item]:
    yield from _wall()
    yield from _floor()
    yield Polyline(((20.0, 4.0), (20.0, 48.0)), line=Line.CENTRE)
    yield Leader((20.0, 40.0), "plumb line at the datum", to=(6.0, 3.0))
    yield Linear((WALL, 20.0), (20.0, 20.0), "horizontal", offset=6.0, label="x")
    yield Leader((WALL, 14.0), "cabin face, not the far one", to=(12.0, 4.0))


def _column() -> Iterator[Item]:
    yield from _wall()
    start, end = (WALL, 20.0), (78.0, 42.0)
    yield Polyline((start, end), line=Line.CENTRE)
    for by in (1.5, -1.5):
        yield Polyline(((start[0], start[1] + by), (end[0], end[1] + by)))
    for at, says, to in (
        (start, "start: middle where\nit meets the wall", (10.0, -9.0)),
        (end, "end: middle just\nbelow the wheel", (-6.0, -12.0)),
    ):
        yield Circle(at, 1.2, fill=Fill.SOLID)
        yield Leader(at, says, to=to)


#: By a part of the path.
HINTS = {
    "pedal.pad_radius": Hint(
        "From the middle of the pivot tube to the middle of the pad.", _pad_radius
    ),
    "pedal.pin_radius": Hint(
        "From the middle of the pivot tube to the middle of the pin's hole.", _pin_radius
    ),
    "pedal.pad_lean": Hint(
        "Hang a plumb line from the pivot: how far the pad is behind it.", _pad_lean
    ),
    "pedal.pad_offset": Hint("How far the pad stands beside the arm's own plane.", _pad_offset),
    "pedal.pivot": Hint("From the datum to the middle of the pivot tube.", _pivot),
    "rod.socket": Hint("Where the ball of the push rod sits in the piston, at rest.", _socket),
    "hip": Hint("Sit in the car, and find the bump at the top of the thigh.", _hip),
    "heel_rest.drop": Hint("From the floor beside it down to the bottom of the tub.", _drop),
    "heel_rest.plate": Hint("Everything that lies under the heel.", _plate),
    "toes_to_wall": Hint(
        "Push until the toes nearly meet the wall: wall to the middle of the pad.", _toes
    ),
    "car.cg_height": Hint("From the axle loads level and with one axle raised.", _cg),
    "person.shoe_length": Hint("The shoe between two books, on a flat floor.", _shoe_length),
    "person.inside_leg": Hint(
        "Back to the wall, a book pressed up, floor to its top edge.", _inside_leg
    ),
    "faces.front_wall": Hint(
        "Any point of the wall's cabin face, rearward from the datum.", _front_wall
    ),
    "lines.column": Hint(
        "Two points on the middle of the column, as far apart as can be.", _column
    ),
}
