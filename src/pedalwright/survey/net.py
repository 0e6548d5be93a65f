"""A net of placed marks: its least-squares fit, and what that leaves of each sight."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.survey.around import Around, around
from pedalwright.survey.equations import (
    Equations,
    Integers,
    Truths,
    array,
    equations,
    held,
    numbers,
)
from pedalwright.survey.fit import fitted, solved, squares
from pedalwright.survey.stations import Sight, Station


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Net:
    """Marks, sights and the equations between them."""

    stations: tuple[Station, ...]
    sights: tuple[Sight, ...]
    equations: Equations
    #: Coordinates to be found, (3 marks,).
    free: Truths

    @property
    def unknown(self) -> list[int]:
        """Marks of which something is to be found."""
        return numbers(self.free.reshape(-1, 3).any(axis=1))

    def fitted(self, at: Array, rows: Truths) -> Array:
        """The places that fit some of the sights best, begun from `at`."""
        return fitted(self.equations.taken(rows), at, self.free)

    def residues(self, at: Array, rows: Truths) -> "Residues":
        """What a straight-line fit of some of the sights leaves of them, near the places `at`."""
        eq = self.equations
        slope = eq.slopes_at(at)[:, self.free] / eq.sigma[:, None]
        misfit = (eq.predicted(at) - eq.measured) / eq.sigma
        cofactor = _inverse(slope[rows])
        gain = cofactor @ (slope * rows[:, None]).T
        left = misfit - slope @ (gain @ misfit)
        share = 1.0 - np.sum(slope * gain.T, axis=1)
        return Residues(left=left, share=share, slope=slope, cofactor=cofactor, gain=gain)

    def squares(self, at: Array, rows: Truths) -> float:
        """Sum of the squared misfits, each over its standard deviation."""
        return squares(self.equations.taken(rows), at)

    def rows_of(self, mark: int, used: Truths) -> Integers:
        """The sights that end at a mark."""
        eq = self.equations
        return np.flatnonzero(used & ((eq.first == mark) | (eq.last == mark)))

    def around(self, at: Array, mark: int, used: Truths) -> Around:
        """One mark and its sights, the other marks where they are."""
        side = self.stations[mark].side
        return around(
            self.equations,
            self.rows_of(mark, used),
            at,
            mark,
            self.free.reshape(-1, 3)[mark],
            None if side is None else array(side),
        )


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Residues:
    """What is left of every sight, also of one that was left out, in its standard deviations."""

    left: Array
    #: Share of an error in it that the others would show; without meaning for those left out.
    share: Array
    slope: Array
    #: Of the free coordinates.
    cofactor: Array
    #: How the free coordinates follow the misfits, (free, sights).
    gain: Array

    @property
    def scatter(self) -> Array:
        """Of what a sight left out differs from what the others make of it by chance."""
        of_place: Array = np.sum((self.slope @ self.cofactor) * self.slope, axis=1)
        return np.sqrt(1.0 + of_place)


def net(stations: Sequence[Station], sights: Sequence[Sight]) -> Net:
    """Marks that are placed, and sights between them."""
    return Net(
        stations=tuple(stations),
        sights=tuple(sights),
        equations=equations(stations, sights),
        free=~held(stations).reshape(-1),
    )


def _inverse(slope: Array) -> Array:
    """The cofactors of the unknowns."""
    if not slope.shape[1]:
        return np.zeros((0, 0))
    return solved(slope.T @ slope, np.eye(slope.shape[1]))
