"""From tapes, plumb line, level and phone to the places of marks, by least squares.

Marks are given a first place in closed form (`start`), fitted together by the steps of Gauss and
Newton (`net`), cleared of readings that cannot be right (`suspects`) and looked at from the other
side of their hooks (`sides`). What nobody can tell is said, never chosen.
"""

from collections.abc import Iterator, Sequence
from itertools import chain

import numpy as np

from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import Array
from pedalwright.survey.adjustment import Adjustment, Checked, Loose, Placed, TwoPlaces
from pedalwright.survey.equations import SLOPE, Truths, array, held, numbers, point, with_datum
from pedalwright.survey.formulas import chance_sum, dilution, unit_weight
from pedalwright.survey.net import Net, Residues, net
from pedalwright.survey.sides import sided
from pedalwright.survey.start import start
from pedalwright.survey.stations import AXES, Sight, Station, Step
from pedalwright.survey.suspects import Searched, normalised_of, searched


@no_answer_is_nan
def adjust(stations: Sequence[Station], sights: Sequence[Sight]) -> Adjustment:
    """Place every mark that its sights can place, and say what is wrong with the others.

    Coordinates that are given with a scatter count as sights of their own; those given without
    are held. A sight names marks among the stations only.
    """
    every = (*sights, *chain.from_iterable(_given(station) for station in stations))
    begun = start(stations, every)
    there = numbers(np.isfinite(begun.at).all(axis=1))
    placed = [stations[mark] for mark in there]
    names = {station.name for station in placed}
    rows = [row for row, sight in enumerate(every) if set(sight.ends) <= names]
    gross = [rows.index(row) for row in begun.gross if row in rows]
    made = net(placed, [every[row] for row in rows])
    some = np.ones(len(rows), dtype=np.bool_)
    some[gross] = False
    looked = sided(made, made.fitted(begun.at[there], some), some)
    done = searched(made, looked.at, gross)
    if done.suspicions:
        looked = sided(made, done.at, done.used)
        if looked.moved:
            done = searched(made, made.fitted(looked.at, np.ones_like(some)), ())
            looked = sided(made, done.at, done.used)
    loose = tuple(_loose(station, every) for station in stations if station.name not in names)
    return _adjustment(made, done, looked.open, loose)


def _adjustment(
    made: Net, done: Searched, two_places: tuple[TwoPlaces, ...], loose: tuple[Loose, ...]
) -> Adjustment:
    at, used, residues = done.at, done.used, done.residues
    freedom = int(np.sum(used)) - int(np.sum(made.free))
    squares = made.squares(at, used)
    spare = float(freedom) if freedom > 0 else np.nan
    weight = float(unit_weight.rule(squares, spare))
    most = float(unit_weight.rule(chance_sum.rule(spare, _THOUSANDTH), spare))
    unsolved = any(not suspicion.certain for suspicion in done.suspicions)
    wider = max(1.0, weight) if unsolved and np.isfinite(weight) else 1.0
    cofactor = np.zeros((made.free.size, made.free.size))
    cofactor[np.ix_(made.free, made.free)] = residues.cofactor * wider**2
    gain = np.zeros((made.free.size, len(made.sights)))
    gain[made.free] = residues.gain / made.equations.sigma
    return Adjustment(
        marks=tuple(_placed(made, at, used, cofactor, _arms(made, at))),
        sights=tuple(_checked(made, at, used, residues)),
        suspicions=done.suspicions,
        two_places=two_places,
        loose=loose,
        freedom=freedom,
        unit_weight=weight,
        unit_weight_bound=most,
        covariance=cofactor,
        gain=gain,
    )


#: Once in a thousand times, in standard deviations of a normal distribution, one side.
_THOUSANDTH = 3.0902


def _given(station: Station) -> list[Step]:
    """Coordinates that are known with a scatter."""
    known = zip(AXES, array(station.at).tolist(), array(station.sigma).tolist(), strict=True)
    return [
        Step(mark=station.name, base="", axis=axis, length=value, sigma=sigma)
        for axis, value, sigma in known
        if np.isfinite(value) and sigma > 0.0
    ]


def _placed(made: Net, at: Array, used: Truths, cofactor: Array, arms: Array) -> Iterator[Placed]:
    """Every mark with what its sights leave open."""
    eq, free = made.equations, made.free.reshape(-1, 3)
    counts = np.bincount(
        np.concatenate([eq.first[used], eq.last[used]]) % (len(at) + 1), minlength=len(at) + 1
    )
    dilutions, shares = _by_itself(made, at, used, arms)
    for mark, station in enumerate(made.stations):
        own = slice(3 * mark, 3 * mark + 3)
        covariance = cofactor[own, own]
        yield Placed(
            name=station.name,
            at=point(at[mark]),
            sigma=point(np.sqrt(np.maximum(np.diag(covariance), 0.0))),
            covariance=covariance,
            dilution=float(dilutions[mark]),
            checked=float(shares[mark]),
            sights=int(counts[mark]),
            held=not free[mark].any(),
        )


def _by_itself(made: Net, at: Array, used: Truths, arms: Array) -> tuple[Array, Array]:
    """Dilution of each mark by the directions of its own sights, as if the other marks were exact.

    And the share of an error in the least checked of them that the others would show.
    """
    eq, free = made.equations.taken(used), made.free.reshape(-1, 3)
    change = eq.changes_at(at) * arms[used, None]
    squares = np.zeros((len(at) + 1, 3, 3))
    products = change[:, :, None] * change[:, None, :]
    np.add.at(squares, eq.last, products)
    np.add.at(squares, eq.first, products)
    movable = with_datum(free.astype(np.float64))
    squares = squares * movable[:, :, None] * movable[:, None, :]
    cofactors: Array = np.asarray(np.linalg.pinv(squares, hermitian=True), dtype=np.float64)
    shares = np.ones(len(at) + 1)
    for end in (eq.last, eq.first):
        left = 1.0 - np.sum((change[:, None, :] @ cofactors[end])[:, 0] * change, axis=1)
        np.minimum.at(shares, end, left)
    own = cofactors[:-1]
    return np.asarray(dilution.rule(own[:, 0, 0], own[:, 1, 1], own[:, 2, 2])), shares[:-1]


def _arms(made: Net, at: Array) -> Array:
    """What makes an error of each sight a length: for an angle, the length of its line."""
    eq = made.equations
    there = with_datum(at)
    length = np.linalg.norm(there[eq.last] - there[eq.first], axis=1)
    arms: Array = np.where(eq.kind == SLOPE, length, 1.0)
    return arms


def _checked(made: Net, at: Array, used: Truths, residues: Residues) -> list[Checked]:
    """Every sight beside the others; one set aside has its distance from what they say."""
    eq = made.equations
    normalised = normalised_of(residues, used)
    misfit = eq.predicted(at) - eq.measured
    scatter = residues.scatter
    return [
        Checked(
            sight=sight,
            residual=float(misfit[row]),
            redundancy=float(residues.share[row]) if used[row] else 1.0,
            normalised=float(
                normalised[row] if used[row] else abs(misfit[row]) / eq.sigma[row] / scatter[row]
            ),
            set_aside=not used[row],
        )
        for row, sight in enumerate(made.sights)
    ]


def _loose(station: Station, sights: Sequence[Sight]) -> Loose:
    """A mark that could not be placed, with what it has."""
    own = tuple(sight.about for sight in sights if station.name in sight.ends)
    return Loose(name=station.name, sights=own, needs=int(np.sum(~held([station]))))
