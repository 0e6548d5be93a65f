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
from pedalwright.survey.fit import fitted, normal, solved, squares
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
        eq, marks, move = self.equations, len(at), self.free
        change = eq.changes_at(at) / eq.sigma[:, None]
        misfit = (eq.predicted(at) - eq.measured) / eq.sigma
        square = normal(eq.taken(rows), change[rows], marks, move)
        cofactor = solved(square, np.eye(len(square)))
        ways = eq.slopes_at(at)[:, move] / eq.sigma[:, None]
        follows = cofactor @ ways.T  # each free coordinate with each sight
        of_place = np.sum(ways.T * follows, axis=0)
        gain = follows * rows
        left = misfit - ways @ (gain @ misfit)
        return Residues(left=left, of_place=of_place, cofactor=cofactor, gain=gain)

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
    #: Variance of what the marks make of it.
    of_place: Array
    #: Of the free coordinates.
    cofactor: Array
    #: How the free coordinates follow the misfits, (free, sights).
    gain: Array

    @property
    def share(self) -> Array:
        """Share of an error in it that the others would show; only of one that was fitted."""
        return 1.0 - self.of_place

    @property
    def scatter(self) -> Array:
        """Of what a sight left out differs from what the others make of it by chance."""
        return np.sqrt(1.0 + self.of_place)


def net(stations: Sequence[Station], sights: Sequence[Sight]) -> Net:
    """Marks that are placed, and sights between them."""
    return Net(
        stations=tuple(stations),
        sights=tuple(sights),
        equations=equations(stations, sights),
        free=~held(stations).reshape(-1),
    )
