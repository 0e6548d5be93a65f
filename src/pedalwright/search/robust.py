"""What hand work does to a design: many cars built within the ± of its numbers, all assessed.

Every number is drawn evenly within its own ±, each by itself. What a demand rests on is read from
how its margin goes with each number: the square of their correlation is the share of the margin's
spread that the number explains, as far as straight lines go.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, fields, is_dataclass
from typing import cast

import numpy as np

from pedalwright.assess import assess
from pedalwright.core.batch import spread
from pedalwright.core.checks import Finding
from pedalwright.core.units import Array, Num, Ratio
from pedalwright.design import Design

#: Cars that are built, and the seed they are drawn from, so that the answer can be repeated.
CARS, SEED = 4000, 1
#: Shares of the cars between which a value is said to lie.
LOW, HIGH = 0.05, 0.95
#: Share of a margin's spread from which on a number is named (ours).
NAMED = 0.05


@dataclass(frozen=True, kw_only=True, slots=True)
class Rest:
    """A number that a margin rests on: its path in the file, and its share of the spread."""

    path: str
    share: Ratio


@dataclass(frozen=True, kw_only=True, slots=True)
class Held:
    """One demand over all the cars."""

    #: On the car as it is written down.
    nominal: Finding
    #: Share of the cars that meet it, and the value that 5 and 95 in 100 stay below.
    met: Ratio
    low: Num
    high: Num
    #: Weightiest first.
    rests_on: tuple[Rest, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Robustness:
    """A population of cars."""

    cars: int
    #: Share of the cars that meet everything that must be met.
    all_musts: Ratio
    #: The least often met first.
    held: tuple[Held, ...]
    #: Numbers by how many demands they turn: shares of the misses that each explains, summed.
    matters: tuple[Rest, ...]


def robustness(design: Design, plus_minus: Design, cars: int = CARS) -> Robustness:
    """Build so many cars within `plus_minus`, a tree of the design's shape, and assess them."""
    built = spread(design, plus_minus, cars, np.random.default_rng(SEED))
    nominal, found = assess(design).findings, assess(built).findings
    numbers = _Numbers.of(plus_minus, built, cars)
    held = [
        _held(one, many, numbers, cars)
        for one, many in zip(nominal, found, strict=True)
        if bool(one.judged)
    ]
    return Robustness(
        cars=cars,
        all_musts=_all_musts(found, cars),
        held=tuple(sorted(held, key=lambda each: each.met)),
        matters=_matters(held),
    )


def _all_musts(found: Sequence[Finding], cars: int) -> Ratio:
    """Share of the cars that meet everything that must be met."""
    met = np.ones(cars, dtype=np.bool_)
    for finding in found:
        if finding.limit.weight == "must":
            met &= np.asarray(finding.ok)
    return float(np.mean(met))


@dataclass(frozen=True, slots=True)
class _Numbers:
    """Every number that is not certain, drawn for every car and made comparable."""

    paths: tuple[str, ...]
    #: (numbers, cars), each row with mean 0 and length 1.
    drawn: Array

    @classmethod
    def of(cls, plus_minus: Design, built: Design, cars: int) -> "_Numbers":
        found = list(_uncertain(plus_minus, built, ()))
        rows = np.array([row for _, row in found]).reshape(len(found), cars)
        return cls(tuple(path for path, _ in found), _unit_rows(rows))

    def behind(self, margins: Array) -> tuple[Rest, ...]:
        """The numbers that a row of margins follows."""
        (margin,) = _unit_rows(margins[np.newaxis])
        shares = (self.drawn @ margin) ** 2
        named = [Rest(path=p, share=float(s)) for p, s in zip(self.paths, shares, strict=True)]
        named.sort(key=lambda rest: -float(rest.share))
        return tuple(rest for rest in named if float(rest.share) > NAMED)


def _unit_rows(rows: Array) -> Array:
    """Rows less their mean, over their length; a row that never changes becomes 0."""
    level = rows - np.mean(rows, axis=1, keepdims=True)
    length = np.sqrt(np.sum(level**2, axis=1, keepdims=True))
    unit: Array = level / np.where(length > 0.0, length, 1.0)
    return unit


def _held(one: Finding, many: Finding, numbers: _Numbers, cars: int) -> Held:
    value: Array = np.broadcast_to(many.value, cars)
    margin: Array = np.broadcast_to(many.margin, cars)
    judged = np.isfinite(margin)
    low, high = np.nanquantile(value, (LOW, HIGH)) if judged.any() else (np.nan, np.nan)
    return Held(
        nominal=one,
        met=float(np.mean(np.broadcast_to(many.ok, cars))),
        low=float(low),
        high=float(high),
        rests_on=numbers.behind(margin) if judged.all() else (),
    )


def _matters(held: list[Held]) -> tuple[Rest, ...]:
    """Each number's share of every demand that some cars meet and some do not."""
    weight: dict[str, float] = {}
    for each in held:
        turns = float(each.met) * (1.0 - float(each.met))
        for rest in each.rests_on:
            weight[rest.path] = weight.get(rest.path, 0.0) + turns * float(rest.share)
    total = sum(weight.values())
    ordered = sorted(weight.items(), key=lambda entry: -entry[1])
    return tuple(Rest(path=path, share=size / total) for path, size in ordered if size > 0.0)


def _uncertain(
    plus_minus: object, built: object, path: tuple[str, ...]
) -> Iterator[tuple[str, Array]]:
    """Every number with a ±, by its path in the file; (cars,)."""
    if isinstance(built, np.ndarray):
        if cast("float", plus_minus) > 0.0:
            yield ".".join(path), cast("Array", built)
    elif isinstance(built, tuple):
        widths, things = cast("tuple[object, ...]", plus_minus), cast("tuple[object, ...]", built)
        for place, (width, thing) in enumerate(zip(widths, things, strict=True), start=1):
            name = str(getattr(thing, "name", place))
            yield from _uncertain(width, thing, (*path, name))
    elif is_dataclass(built):
        for field in fields(built):
            width, thing = getattr(plus_minus, field.name), getattr(built, field.name)
            yield from _uncertain(width, thing, (*path, field.name))
