"""An axis of a chart: what it counts, and round numbers to count by."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import ceil, floor, isfinite, log10


@dataclass(frozen=True, slots=True)
class Axis:
    """What is shown along one side of a chart; `include` are values that must be on it."""

    label: str
    unit: str
    include: tuple[float, ...] = ()
    #: About how many steps.
    steps: int = 5

    @property
    def title(self) -> str:
        """Label with unit, as in "Rod angle (deg)"."""
        return f"{self.label} ({self.unit})" if self.unit else self.label

    def ruled(self, values: Iterable[float]) -> "Ruler":
        """A ruler that holds all values."""
        finite = [float(v) for v in (*values, *self.include) if isfinite(v)] or [0.0, 1.0]
        low, high = min(finite), max(finite)
        if low == high:
            low, high = low - 0.5 * (abs(low) or 1.0), high + 0.5 * (abs(high) or 1.0)
        step = round_step((high - low) / self.steps, self.unit)
        first, last = floor(low / step + _HAIR), ceil(high / step - _HAIR)
        return Ruler(step, first, last)


@dataclass(frozen=True, slots=True)
class Ruler:
    """Marks at whole multiples of a round step."""

    step: float
    first: int
    last: int

    @property
    def low(self) -> float:
        """Value at the beginning."""
        return self.first * self.step

    @property
    def high(self) -> float:
        """Value at the end."""
        return self.last * self.step

    @property
    def marks(self) -> list[tuple[float, str]]:
        """Each mark and what is written at it, all with the same number of decimals."""
        decimals = next(n for n in range(_FINEST) if _is_whole(self.step * 10.0**n))
        places = (number * self.step for number in range(self.first, self.last + 1))
        return [(value, f"{value:.{decimals}f}") for value in places]

    def share(self, value: float) -> float:
        """How far along the axis a value lies, 0 to 1."""
        return (value - self.low) / (self.high - self.low)


def round_step(wanted: float, unit: str = "") -> float:
    """The smallest of 1, 2, 5 times a power of ten that is not below what is wanted.

    Parts of an inch are counted in halves and quarters: 1, 2.5, 5.
    """
    power = 10.0 ** floor(log10(wanted))
    second = 2.5 if unit == "in" and power < 1.0 else 2.0
    steps = (1.0, second, 5.0, 10.0)
    return next(power * n for n in steps if power * n >= wanted * (1.0 - _HAIR))


def _is_whole(number: float) -> bool:
    return abs(number - round(number)) < _HAIR * max(1.0, number)


#: Decimals of the smallest step that can be written.
_FINEST = 20
#: Rounding of floats must not add a step.
_HAIR = 1e-9
