"""Which reading is wrong, and when nobody can tell.

Each reading's residual is set beside the scatter it would have by chance (Baarda). If the worst
of them stands out so far that no other explains the contradiction nearly as well, it is set
aside, the marks are fitted anew, and the search goes on. If several explain it alike, as two
opposite tapes of four marks in a rectangle do, none is set aside: all are named, and one more
tape decides.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.survey.adjustment import Suspicion
from pedalwright.survey.causes import cause
from pedalwright.survey.equations import Truths, numbers, value_of
from pedalwright.survey.formulas import error_bound, error_size, normalised_residual, tape_length
from pedalwright.survey.net import Net, Residues
from pedalwright.survey.stations import Slope

#: Chance goes beyond this once in a thousand readings (Baarda's usual choice).
CRITICAL = 3.2905
#: Twenty to one: how much likelier one reading has to be wrong than any other, as a difference
#: of squared normalised residuals.
CLEARER = 2.0 * float(np.log(20.0))
#: A share below this is none: nothing checks the reading.
UNCHECKED = 1e-6


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Searched:
    """Where the marks lie once the clear suspects are set aside."""

    at: Array
    used: Truths
    residues: Residues
    suspicions: tuple[Suspicion, ...]


def searched(net: Net, at: Array, gross: Sequence[int]) -> Searched:
    """Look for wrong readings, the worst first; `at` fits all but those that are grossly wrong."""
    used = np.ones(len(net.sights), dtype=np.bool_)
    doubtful = set(gross)
    quiet: set[str] = set()
    found: list[tuple[int, list[int]]] = []
    while True:
        residues = net.residues(at, used)
        normalised = normalised_of(residues, used)
        open_to_doubt = [
            row for row in numbers(normalised > CRITICAL) if not quiet & set(_free_ends(net, row))
        ]
        if not open_to_doubt:
            break
        worst = max(open_to_doubt, key=lambda row: float(normalised[row]))
        alike = numbers(normalised**2 > normalised[worst] ** 2 - CLEARER)
        alike.sort(key=lambda row: -float(normalised[row]))
        found.append((worst, alike))
        if len(alike) == 1:
            used[worst] = False
            doubtful.discard(worst)
            at = net.fitted(at, _but(used, doubtful))
        else:
            quiet |= {name for row in alike for name in _free_ends(net, row)}
    if found or doubtful:
        at = net.fitted(at, used)
        residues = net.residues(at, used)
    suspicions = tuple(_suspicion(net, at, used, residues, *one) for one in found)
    return Searched(at=at, used=used, residues=residues, suspicions=suspicions)


def normalised_of(residues: Residues, used: Truths) -> Array:
    """Baarda's statistic of every sight that is used; nan where nothing checks it."""
    checked = used & (residues.share > UNCHECKED)
    share = np.where(checked, residues.share, np.nan)
    normalised: Array = np.asarray(normalised_residual.rule(residues.left, 1.0, share))
    return normalised


def _but(used: Truths, doubtful: set[int]) -> Truths:
    some = used.copy()
    some[list(doubtful)] = False
    return some


def _free_ends(net: Net, row: int) -> list[str]:
    """The marks of a sight that are not held."""
    ends = net.sights[row].ends
    return [net.stations[mark].name for mark in net.unknown if net.stations[mark].name in ends]


def _suspicion(
    net: Net, at: Array, used: Truths, residues: Residues, worst: int, alike: list[int]
) -> Suspicion:
    """What is said of a contradiction once all that is clear has been set aside."""
    sight, sigma = net.sights[worst], float(net.equations.sigma[worst])
    left, share = float(residues.left[worst]), float(residues.share[worst])
    if not used[worst]:  # the others say what it should be, give or take their own scatter
        share, wider = 1.0, float(residues.scatter[worst])
        left, sigma = left / wider, sigma * wider
    read = value_of(sight)
    expected = read + left / share * sigma
    mark = _in_common(net, alike)
    with_it = [
        s.about
        for row, s in enumerate(net.sights)
        if row in alike or (used[row] and mark in s.ends)
    ]
    certain, arm = len(alike) == 1, _arm(net, at, worst)
    return Suspicion(
        mark=mark,
        among=tuple(with_it),
        likely=tuple(net.sights[row].about for row in alike),
        size=float(error_size.rule(left * sigma, share)) * arm,
        bound=float(error_bound.rule(CRITICAL, sigma, share)) * arm,
        read=read,
        expected=expected,
        unit="rad" if isinstance(sight, Slope) else "mm",
        cause=cause(net, at, worst, expected, sigma) if certain else "",
    )


def _in_common(net: Net, rows: Sequence[int]) -> str:
    """The mark that all of them end at; of several the one with fewest sights."""
    common = _free_ends(net, rows[0])
    for row in rows[1:]:
        common = [name for name in common if name in net.sights[row].ends]
    counts = {name: sum(name in sight.ends for sight in net.sights) for name in common}
    return min(common, key=lambda name: counts[name], default="")


def _arm(net: Net, at: Array, row: int) -> float:
    """What makes an error of a sight a length: the length of its line for an angle."""
    sight = net.sights[row]
    if not isinstance(sight, Slope):
        return 1.0
    names = [station.name for station in net.stations]
    way = at[names.index(sight.head)] - at[names.index(sight.foot)]
    return float(tape_length.rule(*way))
