"""Charts of results in inside units, drawn in the units of whoever looks at them."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields

import numpy as np

from pedalwright.brakes import Budget as BrakeBudget
from pedalwright.clutch import Budget as ClutchBudget
from pedalwright.core.figures import unit_text
from pedalwright.core.units import Num
from pedalwright.documents.outside import Units
from pedalwright.drawing import Axis, BudgetChart, Cause, Drawing, Level, Line, LineChart, Series

Causes = BrakeBudget | ClutchBudget
#: What a limit is called, {} standing for its value, and the value.
Limit = tuple[str, Num]


@dataclass(frozen=True, slots=True)
class Scale:
    """What is counted along one side of a chart, in its inside unit."""

    label: str
    unit: str
    from_zero: bool = True

    def axis(self, units: Units) -> Axis:
        """The axis as a reader sees it."""
        include = (0.0,) if self.from_zero else ()
        return Axis(self.label, self.shown_in(units), include=include)

    def shown_in(self, units: Units) -> str:
        """The unit a reader sees."""
        return unit_text(units.outside(0.0, self.unit)[1])

    def list(self, values: Num, units: Units) -> Sequence[float]:
        """Values as a reader sees them."""
        shown, _ = units.outside(values, self.unit)
        return [float(value) for value in np.atleast_1d(shown)]

    def levels(self, limit: Limit | None, units: Units) -> tuple[Level, ...]:
        """A limit across the chart, if there is one."""
        if limit is None:
            return ()
        name, value = limit
        written = name.replace("{}", units.said(value, self.unit))
        return (Level(written, *self.list(value, units)),)


@dataclass(frozen=True, kw_only=True, slots=True)
class Curves:
    """Up to three lines over a common axis, each of its own kind, and a limit across."""

    name: str
    title: str
    description: str
    x: Scale
    y: Scale
    lines: Mapping[str, tuple[Num, Num]]
    limit: Limit | None = None

    def drawing(self, units: Units) -> Drawing:
        """The chart for a reader."""
        kinds = zip(self.lines.items(), (Line.VISIBLE, Line.HIDDEN, Line.CENTRE), strict=False)
        return LineChart(
            name=self.name,
            title=units.prose(self.title),
            description=self.description,
            x=self.x.axis(units),
            y=self.y.axis(units),
            series=tuple(
                Series(line, self.x.list(xs, units), self.y.list(ys, units), line=kind)
                for (line, (xs, ys)), kind in kinds
            ),
            limits=self.y.levels(self.limit, units),
        ).drawing()


@dataclass(frozen=True, kw_only=True, slots=True)
class Sum:
    """Every cause that takes some of a length, by its name in the house; the sum is exact."""

    name: str
    title: str
    description: str
    causes: Causes
    total: str
    #: Of a millimetre; of an inch two more.
    decimals: int = 1
    limit: Limit | None = None

    def drawing(self, units: Units) -> Drawing:
        """The chart for a reader."""
        length = Scale("", "mm")
        unit = length.shown_in(units)
        names = [field.name for field in fields(self.causes)]
        taken = {
            name.replace("_", " "): float(getattr(self.causes, name))
            for name in names
            if name not in {"push", "total"}
        }
        return BudgetChart(
            name=self.name,
            title=units.prose(self.title),
            description=self.description,
            causes=tuple(
                Cause(name, *length.list(size, units))
                for name, size in taken.items()
                if size != 0.0
            ),
            total=self.total,
            unit=unit,
            decimals=self.decimals if unit == "mm" else self.decimals + 2,
            limits=length.levels(self.limit, units),
        ).drawing()
