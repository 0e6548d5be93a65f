"""Cutting sheets: rectangles packed on the sheets there are, and how far from best that may be.

Parts are put one by one, in one pass where they leave the narrowest strip beside them, in the next
as far left as they go; free room is kept as the largest rectangles that still hold nothing. The
order of the parts decides, so a few hundred orders are tried, always the same ones. The best of
them is not proved best, so it is told beside what area alone forbids.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

import numpy as np

from pedalwright.making.cutting.formulas import least_sheets
from pedalwright.making.cutting.parts import CutSheet, Part, Placed, Proof, SheetPlan, Stock

#: Orders of the parts that are tried.
TRIES = 240
#: Sizes that differ by less are equal, mm.
EQUAL = 1e-6


@dataclass(frozen=True, slots=True)
class _Room:
    """A free rectangle."""

    x: float
    y: float
    along: float
    across: float

    def holds(self, other: "_Room") -> bool:
        return (
            self.x <= other.x + EQUAL
            and self.y <= other.y + EQUAL
            and other.x + other.along <= self.x + self.along + EQUAL
            and other.y + other.across <= self.y + self.across + EQUAL
        )

    def without(self, x: float, y: float, along: float, across: float) -> Iterator["_Room"]:
        """The largest rectangles that are left of it beside something put there."""
        right, top = self.x + self.along, self.y + self.across
        if x >= right - EQUAL or x + along <= self.x + EQUAL:
            yield self
            return
        if y >= top - EQUAL or y + across <= self.y + EQUAL:
            yield self
            return
        if x > self.x + EQUAL:
            yield _Room(self.x, self.y, x - self.x, self.across)
        if x + along < right - EQUAL:
            yield _Room(x + along, self.y, right - x - along, self.across)
        if y > self.y + EQUAL:
            yield _Room(self.x, self.y, self.along, y - self.y)
        if y + across < top - EQUAL:
            yield _Room(self.x, y + across, self.along, top - y - across)


@dataclass(slots=True)
class _Filling:
    """A sheet while it is being filled; room and parts include the gap on their far sides."""

    stock: Stock
    free: list[_Room]
    parts: list[Placed]


@dataclass(frozen=True, slots=True)
class _Job:
    stock: tuple[Stock, ...]
    gap: float
    margin: float

    def opened(self, stock: Stock) -> _Filling:
        edge = 2 * self.margin - self.gap
        room = _Room(self.margin, self.margin, stock.length - edge, stock.width - edge)
        return _Filling(stock, [room], [])


@dataclass(frozen=True, slots=True)
class _Try:
    sheets: list[_Filling]
    missing: list[Part]

    @property
    def worth(self) -> tuple[float, ...]:
        """Smaller is better: leave nothing out, buy little, use little, keep what is left whole."""
        bought = sum(s.stock.length * s.stock.width for s in self.sheets if s.stock.bought)
        used = sum(s.stock.length * s.stock.width for s in self.sheets)
        last = self.sheets[-1] if self.sheets else None
        return (
            sum(part.length * part.width for part in self.missing),
            bought,
            used,
            max((p.x + p.along for p in last.parts), default=0.0) if last else 0.0,
        )


def cut_sheets(
    parts: Sequence[Part],
    stock: Sequence[Stock],
    *,
    gap: float,
    margin: float,
    tries: int = TRIES,
) -> SheetPlan:
    """Cut all parts, `gap` between two and `margin` from the sheet's edge.

    One's own sheets come first, small before large, then those to buy.
    """
    job = _Job(tuple(sorted(stock, key=_small_and_own_first)), gap, margin)
    each = [replace(part, count=1) for part in parts for _ in range(part.count)]
    passes = (
        _packed(job, order, rule)
        for order in _orders(each, tries // len(_RULES))
        for rule in _RULES
    )
    found = min(passes, key=lambda one: one.worth)
    return _plan(job, found)


def _small_and_own_first(stock: Stock) -> tuple[bool, float]:
    return stock.bought, stock.length * stock.width


def _orders(parts: list[Part], tries: int) -> Iterator[list[Part]]:
    """By area, longest side, shortest side, girth; then the same, shuffled a little."""
    keys: tuple[Callable[[Part], float], ...] = (
        lambda p: p.length * p.width,
        lambda p: max(p.length, p.width),
        lambda p: min(p.length, p.width),
        lambda p: p.length + p.width,
    )
    sorted_by = [sorted(parts, key=key, reverse=True) for key in keys]
    yield from sorted_by
    rng = np.random.default_rng(1)
    for i in range(tries - len(sorted_by)):
        base = sorted_by[i % len(sorted_by)]
        places = np.arange(len(base)) + rng.uniform(0.0, 0.25 * len(base) + 1.0, len(base))
        yield [base[j] for j in np.argsort(places)]


def _packed(job: _Job, order: Sequence[Part], rule: "_Rule") -> _Try:
    counts = [np.inf if s.count is None else s.count for s in job.stock]
    sheets: list[_Filling] = []
    missing: list[Part] = []
    for part in order:
        if any(_put(job, sheet, part, rule) for sheet in sheets):
            continue
        for i, stock in enumerate(job.stock):
            if counts[i] > 0:
                fresh = job.opened(stock)
                if _put(job, fresh, part, rule):
                    sheets.append(fresh)
                    counts[i] -= 1
                    break
        else:
            missing.append(part)
    return _Try(sheets, missing)


def _put(job: _Job, sheet: _Filling, part: Part, rule: "_Rule") -> bool:
    """Put a part on a sheet if it fits, where the rule likes it best."""
    best: tuple[tuple[float, ...], Placed] | None = None
    for turned in _ways_to_lie(part):
        lies = Placed(part=part, x=0.0, y=0.0, turned=turned)
        along, across = lies.along + job.gap, lies.across + job.gap
        for room in sheet.free:
            spare = room.along - along, room.across - across
            if min(spare) < -EQUAL:
                continue
            worth = rule(room, lies.along, lies.across, spare)
            if best is None or worth < best[0]:
                best = worth, replace(lies, x=room.x, y=room.y)
    if best is None:
        return False
    put = best[1]
    taken = put.x, put.y, put.along + job.gap, put.across + job.gap
    rooms = [left for room in sheet.free for left in room.without(*taken)]
    sheet.free = [
        room
        for i, room in enumerate(rooms)
        if not any(
            other.holds(room) and (j < i or not room.holds(other))
            for j, other in enumerate(rooms)
            if j != i
        )
    ]
    sheet.parts.append(put)
    return True


def _narrowest(
    room: _Room, along: float, across: float, spare: tuple[float, float]
) -> tuple[float, ...]:
    """Leave the narrowest strip beside it."""
    return min(spare), max(spare), room.x + along, room.y + across


def _leftmost(
    room: _Room, along: float, across: float, spare: tuple[float, float]
) -> tuple[float, ...]:
    """As far left as it goes, then as low."""
    return room.x + along, room.y + across, *spare


_Rule: TypeAlias = Callable[[_Room, float, float, tuple[float, float]], tuple[float, ...]]
_RULES: tuple[_Rule, ...] = (_narrowest, _leftmost)


def _ways_to_lie(part: Part) -> tuple[bool, ...]:
    """Sheets are rolled along their length: a part with its grain along lies along."""
    if part.grain == "along":
        return (False,)
    if part.grain == "across":
        return (True,)
    return (False, True) if abs(part.length - part.width) > EQUAL else (False,)


def _plan(job: _Job, found: _Try) -> SheetPlan:
    sheets = tuple(CutSheet(stock=s.stock, parts=tuple(s.parts)) for s in found.sheets)
    own = sum(s.length * s.width * (s.count or 0) for s in job.stock if not s.bought and s.count)
    placed = float(sum(p.part.length * p.part.width for s in sheets for p in s.parts))
    largest = max((s.length * s.width for s in job.stock if s.bought), default=np.nan)
    bought = float(sum(1 for sheet in sheets if sheet.stock.bought))
    bound = float(least_sheets(placed, float(own), largest)) if bought else 0.0
    used = float(sum(s.stock.length * s.stock.width for s in sheets))
    return SheetPlan(
        sheets=sheets,
        gap=job.gap,
        margin=job.margin,
        missing=tuple(found.missing),
        bought=Proof(cost=bought, bound=bound),
        area=Proof(cost=used, bound=placed),
    )
