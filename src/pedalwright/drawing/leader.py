"""A note with a line to what it speaks of."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import cos, sin
from typing import Literal

from pedalwright.drawing.box import XY, Box
from pedalwright.drawing.dimension import ABOVE, GAP, arrow
from pedalwright.drawing.lines import Fill, Line, Tone
from pedalwright.drawing.shapes import SMALL, Circle, Item, Polyline, Text, extent


@dataclass(frozen=True, slots=True)
class Leader:
    """A note with a thin line to what it speaks of.

    `to` is the way from the tip to the note, mm on paper. The note may have several lines; it
    stands on a short shelf and may be pushed along its leader to where there is room.
    """

    tip: XY
    text: str
    to: XY = (8.0, 8.0)
    end: Literal["arrow", "dot", "none"] = "dot"
    height: float = SMALL
    tone: Tone = Tone.INK
    part: str = ""

    def drawn(self, scale: float) -> tuple[Item, ...]:
        """The note, under it the line with its shelf, which its tails may touch, and the end."""
        elbow = self._elbow(scale)
        width = max(text.width for text in self._note(scale)) + GAP
        shelf = (elbow[0] + self._hand * width / scale, elbow[1])
        line = Polyline((self.tip, elbow, shelf), line=Line.THIN, tone=self.tone, part=self.part)
        return (*self._note(scale), line, *self._end(scale))

    def moved(self, factor: float, turn: float) -> "Leader":
        """The note farther out along its leader, which may turn a little about the tip (rad)."""
        x, y = factor * self.to[0], factor * self.to[1]
        return replace(self, to=(x * cos(turn) - y * sin(turn), x * sin(turn) + y * cos(turn)))

    def room(self, scale: float) -> Box | None:
        """The box its note needs."""
        return extent(self._note(scale), scale)

    @property
    def _hand(self) -> float:
        return 1.0 if self.to[0] >= 0.0 else -1.0

    def _elbow(self, scale: float) -> XY:
        return self.tip[0] + self.to[0] / scale, self.tip[1] + self.to[1] / scale

    def _note(self, scale: float) -> list[Text]:
        x, y = self._elbow(scale)
        lines = self.text.split("\n")
        return [
            Text(
                (
                    x + self._hand * GAP / 2 / scale,
                    y + (ABOVE + (len(lines) - 1 - i) * 1.7 * self.height) / scale,
                ),
                line,
                height=self.height,
                align="start" if self._hand > 0.0 else "end",
                tone=self.tone,
                part=self.part,
            )
            for i, line in enumerate(lines)
        ]

    def _end(self, scale: float) -> Iterator[Item]:
        if self.end == "arrow":
            yield arrow(self.tip, (-self.to[0], -self.to[1]), scale, self.tone)
        if self.end == "dot":
            yield Circle(self.tip, 0.6 / scale, fill=Fill.SOLID, line=Line.NONE, tone=self.tone)
