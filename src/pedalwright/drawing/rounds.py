"""Dimensions of what is round or turns: radii, diameters, angles, and the cross on a centre."""

from dataclasses import dataclass
from math import cos, degrees, sin

from pedalwright.core.lengths import Written, millimetres, trimmed
from pedalwright.drawing.box import XY, polar
from pedalwright.drawing.dimension import ABOVE, ARROW, OVERSHOOT, arrow, tail
from pedalwright.drawing.leader import Leader
from pedalwright.drawing.lines import Line, Tone
from pedalwright.drawing.shapes import Arc, Item, Polyline, Text


@dataclass(frozen=True, slots=True)
class Angular:
    """The angle at `apex`, anticlockwise from the direction `start` to `end`, rad.

    The arc has `radius` in mm of the real thing. Thin lines run from the apex along both sides,
    unless `sides` is False because edges are drawn there already.
    """

    apex: XY
    start: float
    end: float
    radius: float
    sides: bool = True
    label: str = "{}°"
    decimals: int = 1
    tone: Tone = Tone.INK
    part: str = ""

    def drawn(self, scale: float) -> tuple[Item, ...]:
        """Sides, the arc with its arrows, the text upright beside its middle."""
        if not self.end > self.start:
            return ()
        span = (self.end - self.start) * self.radius * scale
        outside = tail(span) / scale / self.radius
        far = self.radius + OVERSHOOT / scale
        sides = [
            Polyline((self.apex, polar(self.apex, far, angle)), line=Line.THIN, tone=self.tone)
            for angle in (self.start, self.end)
            if self.sides
        ]
        return (
            *sides,
            Arc(
                self.apex,
                self.radius,
                self.start - outside,
                self.end + outside,
                line=Line.THIN,
                tone=self.tone,
                part=self.part,
            ),
            self._arrow(self.start, 1.0 if outside else -1.0, scale),
            self._arrow(self.end, -1.0 if outside else 1.0, scale),
            self._lettering(scale),
        )

    def _arrow(self, angle: float, turn: float, scale: float) -> Polyline:
        """An arrow that comes along the arc and ends at an angle; +1 is anticlockwise."""
        tip = polar(self.apex, self.radius, angle)
        foot = polar(self.apex, self.radius, angle - turn * ARROW / scale / self.radius)
        return arrow(tip, (tip[0] - foot[0], tip[1] - foot[1]), scale, self.tone)

    def _lettering(self, scale: float) -> Text:
        words = self.label.replace("{}", trimmed(degrees(self.end - self.start), self.decimals))
        middle = (self.start + self.end) / 2
        text = Text(self.apex, words, stand="across", tone=self.tone, part=self.part)
        half = (abs(cos(middle)) * text.width + abs(sin(middle)) * text.height) / 2
        at = polar(self.apex, self.radius + (2 * ABOVE + half) / scale, middle)
        return Text(at, words, stand="across", tone=self.tone, part=self.part)


@dataclass(frozen=True, slots=True)
class CentreCross:
    """The two centre lines of a hole or a pivot, a little longer than it is wide."""

    centre: XY
    radius: float
    part: str = ""

    def drawn(self, scale: float) -> tuple[Item, ...]:
        """A level and an upright centre line."""
        (x, y), half = self.centre, self.radius + OVERSHOOT / scale
        return (
            Polyline(((x - half, y), (x + half, y)), line=Line.CENTRE, part=self.part),
            Polyline(((x, y - half), (x, y + half)), line=Line.CENTRE, part=self.part),
        )


def radius(
    centre: XY,
    size: float,
    angle: float,
    *,
    out: float = 8.0,
    label: str = "R{}",
    written: Written = millimetres,
) -> Leader:
    """A radius: the arrow on the arc at an angle (rad), the note `out` mm on paper outside."""
    return _on_circle(centre, size, angle, out, label.replace("{}", written(size, 1)))


def diameter(
    centre: XY,
    size: float,
    angle: float,
    *,
    out: float = 8.0,
    label: str = "Ø{}",
    written: Written = millimetres,
) -> Leader:
    """A diameter: the arrow on the circle at an angle (rad), the note outside."""
    return _on_circle(centre, size / 2, angle, out, label.replace("{}", written(size, 2)))


def _on_circle(centre: XY, size: float, angle: float, out: float, text: str) -> Leader:
    tip = polar(centre, size, angle)
    return Leader(tip, text, to=(out * cos(angle), out * sin(angle)), end="arrow")
