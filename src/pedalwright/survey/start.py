"""A first place for every mark, one after the other, from those that are placed already.

A mark that may be on either side of its hooks waits until nothing else can be placed; then all
that is placed is fitted together, so that its sights decide as well as they can.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.survey.around import around
from pedalwright.survey.equations import Equations, Integers, Truths, array, equations, held
from pedalwright.survey.first import First, first
from pedalwright.survey.fit import fitted
from pedalwright.survey.stations import Sight, Station

#: How well marks are fitted together before more are placed from them, mm.
ROUGHLY = 0.5


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Start:
    """Where the marks may be before they are adjusted."""

    #: (marks, 3); nan for a mark whose sights do not place it.
    at: Array
    #: Sights that cannot be right beside the others; the first solution does without them.
    gross: tuple[int, ...]


def start(stations: Sequence[Station], sights: Sequence[Sight]) -> Start:
    """Place one mark after the other, each time the one with most sights to marks placed."""
    return _Starting(stations, sights).done()


class _Starting:
    """A net that is being placed."""

    def __init__(self, stations: Sequence[Station], sights: Sequence[Sight]) -> None:
        self.eq: Equations = equations(stations, sights)
        self.free: Truths = ~held(stations)
        at = np.array([array(station.at) for station in stations]).reshape(-1, 3)
        self.at: Array = np.where(self.free, np.nan, at)
        self.stations = stations
        #: The datum stands behind the last mark.
        self.placed: Truths = np.append(~np.any(self.free, axis=1), True)
        self.gross: list[int] = []

    def done(self) -> Start:
        doubtful: dict[int, First] = {}
        while not self.placed.all():
            mark, found = self.clearest(doubtful)
            if found is None and doubtful:
                self.fit()
                doubtful.clear()
                mark, found = self.clearest(doubtful)
            if found is None and doubtful:
                mark, found = next(iter(doubtful.items()))
            if found is None:
                break
            self.put(mark, found)
            doubtful.pop(mark, None)
        return Start(at=self.at, gross=tuple(self.gross))

    def clearest(self, doubtful: dict[int, First]) -> tuple[int, First | None]:
        """The next mark that has one place; those that may have two are noted."""
        near = np.concatenate([self.eq.last[self._from], self.eq.first[self._to]])
        ready = np.bincount(near % self.placed.size, minlength=self.placed.size)
        waiting = np.flatnonzero(~self.placed)
        for mark in waiting[np.argsort(-ready[waiting], kind="stable")].tolist():
            if mark in doubtful:
                continue
            found = first(
                around(
                    self.eq,
                    self.rows(mark),
                    self.at,
                    mark,
                    self.free[mark],
                    self.side(mark),
                ),
                self.at[mark],
            )
            if found is not None and found.clear:
                return mark, found
            if found is not None:
                doubtful[mark] = found
        return -1, None

    def put(self, mark: int, found: First) -> None:
        """Place a mark."""
        self.gross += self.rows(mark)[list(found.left_out)].tolist()
        self.at[mark] = found.place
        self.placed[mark] = True

    def fit(self) -> None:
        """Fit all that is placed together."""
        there = self.placed[:-1]
        rows = self._from & self._to
        rows[self.gross] = False
        free = self.free & there[:, None]
        at = np.where(there[:, None], self.at, 0.0)
        self.at = np.where(there[:, None], fitted(self.eq.taken(rows), at, free, ROUGHLY), np.nan)
        self.at[~self.free & np.isnan(self.at)] = at[~self.free & np.isnan(self.at)]

    def side(self, mark: int) -> Array | None:
        """The way in which the further of two places is meant."""
        stated = self.stations[mark].side
        return None if stated is None else array(stated)

    def rows(self, mark: int) -> Integers:
        """A mark's sights to marks that are placed."""
        eq = self.eq
        return np.flatnonzero(((eq.last == mark) & self._from) | ((eq.first == mark) & self._to))

    @property
    def _from(self) -> Truths:
        """Sights whose near end is placed."""
        begun: Truths = self.placed[self.eq.first]
        return begun

    @property
    def _to(self) -> Truths:
        """Sights whose far end is placed."""
        ended: Truths = self.placed[self.eq.last]
        return ended
