"""Forces on a drawing: arrows as long as the force is large, and the way it takes through metal."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import dist, hypot
from typing import Literal

from pedalwright.drawing import XY, Circle, Fill, Item, Leader, Line, Polyline, Text, Tone

#: An arrow's head and half its width, the width of the way of a force, mm on paper.
HEAD, HALF, BAND = 2.6, 0.9, 1.3
#: Words this far beside a shaft, mm on paper, if it rises less than this.
BESIDE, LEVEL = 1.3, 0.15
_STANDS: tuple[Literal["on", "under"], ...] = ("on", "under")
#: Dashes of a way that is open, mm on paper.
DASH, GAP = 3.5, 2.2


@dataclass(frozen=True, slots=True)
class Arrow:
    """A force that acts where its tip is; `force` is its way and length in mm of the drawing."""

    tip: XY
    force: XY
    says: str
    #: From its tail to what it says, mm on paper.
    to: XY = (3.0, 3.0)
    tone: Tone = Tone.INK
    part: str = "force"

    @property
    def tail(self) -> XY:
        """Where it begins."""
        return self.tip[0] - self.force[0], self.tip[1] - self.force[1]

    def drawn(self, scale: float) -> tuple[Item, ...]:
        """Shaft, head and what it says; nothing of a force that is nothing or not known."""
        length = hypot(*self.force)
        if not length > 0.0:
            return ()
        x, y = self.force[0] / length, self.force[1] / length
        head = min(HEAD / scale, 0.6 * length)
        half = head * HALF / HEAD
        neck = (self.tip[0] - x * head, self.tip[1] - y * head)
        sides = tuple((neck[0] - way * y * half, neck[1] + way * x * half) for way in (1.0, -1.0))
        return (
            Polyline((self.tail, self.tip), tone=self.tone, part=self.part, title=self.says),
            Polyline(
                (self.tip, *sides), closed=True, fill=Fill.SOLID, line=Line.NONE, tone=self.tone,
                part=f"{self.part}-head",
            ),
            *self._words(length, scale),
        )  # fmt: skip

    def _words(self, length: float, scale: float) -> Iterator[Item]:
        """What it says: on both sides of a shaft that is long enough, else from its tail."""
        lines = self.says.split("\n")
        middle = (self.tip[0] - self.force[0] / 2.0, self.tip[1] - self.force[1] / 2.0)
        texts = [
            Text((middle[0], middle[1] + up / scale), line, stand=stand, tone=self.tone)
            for line, up, stand in zip(lines, (BESIDE, -BESIDE), _STANDS, strict=False)
        ]
        level = abs(self.force[1]) < LEVEL * length
        if level and len(lines) == 2 and all(t.width + HEAD < length * scale for t in texts):
            yield from texts
        else:
            yield Leader(self.tail, self.says, to=self.to, end="none", tone=self.tone)


@dataclass(frozen=True, slots=True)
class Way:
    """The way of a force through the metal, as a broad band; broken where no metal carries it."""

    places: tuple[XY, ...]
    broken: bool = False
    tone: Tone = Tone.ACCENT
    part: str = "way"
    title: str = ""

    def drawn(self, scale: float) -> tuple[Item, ...]:
        """Straight bands with round corners, or dashes."""
        half = BAND / 2.0 / scale
        ends = list(pairwise(self.places))
        if self.broken:
            ends = [dash for start, end in ends for dash in _dashes(start, end, scale)]
        bands = [self._band(start, end, half) for start, end in ends if dist(start, end) > 0.0]
        corners = () if self.broken else self.places
        return (
            *bands,
            *(
                Circle(at, half, line=Line.NONE, fill=Fill.SOLID, tone=self.tone, part=self.part)
                for at in corners
            ),
        )

    def _band(self, start: XY, end: XY, half: float) -> Item:
        length = dist(start, end)
        x, y = (end[0] - start[0]) / length * half, (end[1] - start[1]) / length * half
        outline = (
            (start[0] - y, start[1] + x),
            (start[0] + y, start[1] - x),
            (end[0] + y, end[1] - x),
            (end[0] - y, end[1] + x),
        )
        return Polyline(
            outline, closed=True, line=Line.NONE, fill=Fill.SOLID, tone=self.tone, part=self.part,
            title=self.title,
        )  # fmt: skip


def _dashes(start: XY, end: XY, scale: float) -> Iterator[tuple[XY, XY]]:
    """From either end a dash, and gaps between."""
    length = dist(start, end)
    if not length > 0.0:
        return
    count = max(1, round((length * scale + GAP) / (DASH + GAP)))
    gap = GAP / scale
    dash = max(length - (count - 1) * gap, 0.2 * length) / count
    for number in range(count):
        first = number * (dash + gap) / length
        last = min(1.0, first + dash / length)
        yield tuple(
            (start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1]))
            for share in (first, last)
        )  # type: ignore[misc]


@dataclass(frozen=True, slots=True)
class Rows:
    """A small table of words, its upper left corner at a place; columns in mm on paper."""

    at: XY
    rows: tuple[tuple[str, ...], ...]
    columns: tuple[float, ...]
    #: From row to row, mm on paper.
    pitch: float = 4.0

    def drawn(self, scale: float) -> tuple[Item, ...]:
        """The head over a line, then row under row."""
        words = [
            Text(
                (
                    self.at[0] + along / scale,
                    self.at[1] - (number * self.pitch + (0.8 if number else 0.0)) / scale,
                ),
                cell,
                align="start",
                stand="under",
                tone=Tone.INK if number else Tone.QUIET,
                part="table",
            )
            for number, row in enumerate(self.rows)
            for along, cell in zip(self.columns, row, strict=True)
        ]
        under = self.at[1] - 3.6 / scale
        wide = max(text.at[0] + text.width / scale for text in words)
        return (*words, Polyline(((self.at[0], under), (wide, under)), line=Line.THIN))
