"""Small geometry of the flat piece: frames, lines and outlines in the plane."""

from dataclasses import dataclass
from itertools import pairwise
from math import atan2, cos, hypot, sin

from pedalwright.drawing import XY

#: Two places nearer than this are one, mm.
SAME = 1e-6


@dataclass(frozen=True, slots=True)
class Frame:
    """Where the coordinates of a face lie on the flat piece."""

    origin: XY
    #: Direction of its x, from the flat piece's +x, rad.
    angle: float

    def place(self, point: XY) -> XY:
        """A point of the face on the flat piece."""
        c, s = cos(self.angle), sin(self.angle)
        return (
            self.origin[0] + c * point[0] - s * point[1],
            self.origin[1] + s * point[0] + c * point[1],
        )

    def within(self, start: XY, end: XY) -> "Frame":
        """The frame that begins at `start` of this one and runs towards `end`."""
        turn = atan2(end[1] - start[1], end[0] - start[0])
        return Frame(self.place(start), self.angle + turn)

    def moved(self, along: float, across: float) -> "Frame":
        """The same frame begun elsewhere."""
        return Frame(self.place((along, across)), self.angle)

    def read(self, place: XY) -> XY:
        """A place on the flat piece in the face's coordinates."""
        c, s = cos(self.angle), sin(self.angle)
        x, y = place[0] - self.origin[0], place[1] - self.origin[1]
        return c * x + s * y, c * y - s * x


def edges(outline: tuple[XY, ...]) -> list[tuple[XY, XY]]:
    """The sides of an outline, the last one closing it."""
    return list(pairwise((*outline, outline[0])))


def area(outline: tuple[XY, ...]) -> float:
    """Area of an outline; positive anticlockwise."""
    return sum(ax * by - bx * ay for (ax, ay), (bx, by) in edges(outline)) / 2


def without_repeats(points: list[XY]) -> tuple[XY, ...]:
    """The outline without places that follow on themselves."""
    kept = [b for a, b in zip([points[-1], *points], points, strict=False) if apart(a, b) > SAME]
    return tuple(kept)


def straightened(outline: tuple[XY, ...]) -> tuple[XY, ...]:
    """The outline without places on a straight run."""
    before, after = (outline[-1], *outline[:-1]), (*outline[1:], outline[0])
    return tuple(
        b for a, b, c in zip(before, outline, after, strict=True) if from_segment(b, a, c) > SAME
    )


def apart(a: XY, b: XY) -> float:
    """Distance of two places."""
    return hypot(b[0] - a[0], b[1] - a[1])


def from_segment(point: XY, a: XY, b: XY) -> float:
    """Distance of a place from a straight side."""
    length = apart(a, b)
    if length < SAME:
        return apart(point, a)
    share = ((point[0] - a[0]) * (b[0] - a[0]) + (point[1] - a[1]) * (b[1] - a[1])) / length**2
    share = min(1.0, max(0.0, share))
    return apart(point, (a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])))


def from_outline(point: XY, outline: tuple[XY, ...]) -> float:
    """Distance of a place from the nearest side of an outline."""
    return min(from_segment(point, a, b) for a, b in edges(outline))


def inside(point: XY, outline: tuple[XY, ...]) -> bool:
    """Whether a place lies within an outline."""
    odd = False
    for (ax, ay), (bx, by) in edges(outline):
        if (ay > point[1]) != (by > point[1]):
            at = ax + (point[1] - ay) * (bx - ax) / (by - ay)
            odd ^= point[0] < at
    return odd


def overlap(one: tuple[XY, ...], other: tuple[XY, ...]) -> float:
    """How deep two outlines lie in each other; nought where they only touch or stay apart.

    Each side is followed in steps of a tenth of its length.
    """
    return max(
        (
            from_outline(p, host)
            for guest, host in ((one, other), (other, one))
            for a, b in edges(guest)
            for p in (between(a, b, step / 10) for step in range(10))
            if inside(p, host)
        ),
        default=0.0,
    )


def reach(place: XY, along: XY, outline: tuple[XY, ...]) -> float:
    """How far it is from a place within an outline to its rim, in a direction; nan if nowhere."""
    met = [t for a, b in edges(outline) for t in _along_to(place, along, a, b) if t > SAME]
    return min(met, default=float("nan"))


def crossing(a: XY, along: XY, b: XY, beside: XY) -> XY | None:
    """Where two lines meet, each a place and a direction; None if they run side by side."""
    turn = along[0] * beside[1] - along[1] * beside[0]
    if abs(turn) < SAME:
        return None
    t = ((b[0] - a[0]) * beside[1] - (b[1] - a[1]) * beside[0]) / turn
    return a[0] + t * along[0], a[1] + t * along[1]


def inward(place: XY, along: XY, by: float) -> XY:
    """A place moved to the left of a direction: into an outline that runs anticlockwise."""
    return place[0] - along[1] * by, place[1] + along[0] * by


def between(a: XY, b: XY, share: float) -> XY:
    """A share of the way from one place to another."""
    return a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])


def direction(a: XY, b: XY) -> XY:
    """Unit vector from one place to another."""
    length = apart(a, b)
    return (b[0] - a[0]) / length, (b[1] - a[1]) / length


def _along_to(place: XY, along: XY, a: XY, b: XY) -> list[float]:
    """How far along a ray it meets a side; nothing if it passes it by."""
    side = b[0] - a[0], b[1] - a[1]
    turn = along[0] * side[1] - along[1] * side[0]
    if abs(turn) < SAME:
        return []
    far = ((a[0] - place[0]) * side[1] - (a[1] - place[1]) * side[0]) / turn
    share = ((a[0] - place[0]) * along[1] - (a[1] - place[1]) * along[0]) / turn
    return [far] if 0.0 <= share <= 1.0 else []
