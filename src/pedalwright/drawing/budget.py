"""Budget chart: parts that add up to a total.

One bar for each cause, each beginning where the last ended, so that the eye sees the parts and
the sum at once.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import accumulate
from math import isfinite

from pedalwright.drawing.axis import Axis, Ruler
from pedalwright.drawing.box import Box
from pedalwright.drawing.charts import LETTERS, Level
from pedalwright.drawing.lines import Fill, Line, Tone
from pedalwright.drawing.shapes import Item, Polyline, Text
from pedalwright.drawing.sheet import Drawing

#: Distance of two bars and height of one, mm.
PITCH, BAR = 5.4, 3.2


@dataclass(frozen=True, slots=True)
class Cause:
    """A part of the total."""

    name: str
    amount: float


@dataclass(frozen=True, slots=True, kw_only=True)
class BudgetChart:
    """Bars that step up to a total; `limits` are upright lines over all of it."""

    name: str
    title: str
    description: str = ""
    causes: tuple[Cause, ...]
    #: What the sum is called.
    total: str
    unit: str = "mm"
    decimals: int = 1
    limits: tuple[Level, ...] = ()
    width: float = 90.0

    def drawing(self) -> Drawing:
        """The chart as a drawing; a cause that is nan has its name but no bar, nor has the sum."""
        ends = [0.0, *accumulate(cause.amount for cause in self.causes)]
        limits = [limit.value for limit in self.limits]
        across = Axis("", self.unit, include=(0.0,)).ruled([*ends, *limits])
        rows = [
            *self._steps(ends, across),
            *self._row(len(self.causes), self.total, 0.0, ends[-1], across, Fill.SOLID),
        ]
        bars = [item for item in rows if not isinstance(item, Text)]
        amounts = [item for item in rows if isinstance(item, Text)]
        shapes = (*self._ruler(across), *bars, *self._limits(across), *amounts)
        return Drawing(
            name=self.name, title=self.title, description=self.description, shapes=shapes
        )

    def _place(self, value: float, across: Ruler) -> float:
        return across.share(value) * self.width

    @property
    def _foot(self) -> float:
        return -(len(self.causes) + 0.5) * PITCH

    def _ruler(self, across: Ruler) -> Iterator[Item]:
        for value, text in across.marks:
            x = self._place(value, across)
            line = Line.THIN if value == 0.0 else Line.GRID
            yield Polyline(((x, self._foot), (x, PITCH / 2)), line=line)
            yield Text((x, self._foot - 1.2), text, height=LETTERS, stand="under")
        at = (self.width + 4.0, self._foot - 1.2)
        yield Text(at, self.unit, height=LETTERS, align="start", stand="under")

    def _steps(self, ends: list[float], across: Ruler) -> Iterator[Item]:
        for i, cause in enumerate(self.causes):
            yield from self._row(i, cause.name, ends[i], ends[i + 1], across, Fill.TINT)
            x = self._place(ends[i + 1], across)
            below = -(i + 1) * PITCH
            yield Polyline(((x, below + PITCH - BAR / 2), (x, below + BAR / 2)), line=Line.THIN)

    def _row(
        self, i: int, name: str, begin: float, end: float, across: Ruler, fill: Fill
    ) -> Iterator[Item]:
        """The name left, the bar, the amount right of it."""
        y = -i * PITCH
        yield Text((-2.0, y), name, height=LETTERS, align="end", stand="across")
        amount = f"{end - begin:.{self.decimals}f}" if isfinite(end - begin) else "no value"
        left, right = sorted((self._place(begin, across), self._place(end, across)))
        bar = Box(left, y - BAR / 2, right, y + BAR / 2).corners
        tone = Tone.ACCENT if fill is Fill.SOLID else Tone.INK
        yield Polyline(bar, closed=True, fill=fill, line=Line.THIN, tone=tone, title=name)
        at = (right + 1.5 if isfinite(right) else 1.5, y)
        yield Text(at, amount, height=LETTERS, align="start", stand="across")

    def _limits(self, across: Ruler) -> Iterator[Item]:
        for limit in self.limits:
            if isfinite(limit.value):
                x = self._place(limit.value, across)
                ends = ((x, self._foot), (x, PITCH / 2))
                yield Polyline(ends, line=Line.CENTRE, tone=Tone.ACCENT, part="limit")
                at = (x, PITCH / 2 + 1.2)
                yield Text(at, limit.name, height=LETTERS, tone=Tone.ACCENT)
