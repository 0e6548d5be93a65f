"""A first place for one mark, in closed form.

Spheres about two hooks meet in a plane: their equations, one taken from the other, are linear.
So three or four tapes and whatever plumb and level say give a mark's place by linear equations;
where one direction is left open, one sphere closes it with two answers. A few steps of least
squares on that mark alone say which of two answers the readings like better.
"""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.survey.around import OUT_OF_PLANE, Around

#: Singular values below this share of the largest count as none: hooks in a line or a plane.
FLAT = 0.02
#: Sums of squares nearer to each other than this do not decide between two places.
DECIDES = 9.0
#: A reading farther out than this many standard deviations, and millimetres, is left out of the
#: start if the others agree without it.
GROSS, GROSS_MM = 15.0, 15.0


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class First:
    """Where a mark may be."""

    place: Array
    #: Its sights that were left out, because they cannot be right beside the others.
    left_out: tuple[int, ...] = ()
    #: False where another place fits nearly as well.
    clear: bool = True


def first(mark: Around, known: Array) -> First | None:
    """A mark's place; None where its sights do not give it.

    `known` holds the coordinates that are held, nan for the others.
    """
    best = _best(mark, known)
    if best is None or not _far_out(mark, best.place, 2.0):
        return best
    place = mark.polished(best.place)
    if _far_out(mark, place) and mark.count >= int(np.sum(mark.free)) + 2:
        tries = [(row, mark.without(row)) for row in range(mark.count)]
        begun = [(row, one, _best(one, known)) for row, one in tries]
        fitted = [(row, one, one.polished(b.place)) for row, one, b in begun if b is not None]
        agreeing = [(one.squares(p), row, p) for row, one, p in fitted]
        squares, row, without = min(agreeing, key=lambda e: e[0], default=(np.inf, 0, place))
        if squares < GROSS**2:
            return First(place=without, left_out=(row,), clear=False)
        return First(place=place, clear=False)
    return First(place=place, clear=best.clear)


def _far_out(mark: Around, place: Array, times: float = 1.0) -> bool:
    """Whether some sight cannot be right with the mark there."""
    misfit = np.abs(mark.misfit(place)) / times
    return bool(np.any((misfit > GROSS) & (misfit * mark.sigma > GROSS_MM)))


def _best(mark: Around, known: Array) -> First | None:
    """The likeliest of the places that the sights allow.

    Marks placed before are a little out themselves, so what the likelier place leaves sets the
    scale by which two places differ.
    """
    if mark.count < int(np.sum(mark.free)):
        return None
    places = [place for place in _candidates(mark, known) if np.all(np.isfinite(place))]
    if len(places) < 2:
        return First(place=places[0]) if places else None
    places = [mark.polished(place) for place in places]
    squares = [mark.squares(place) for place in places]
    here, there = sorted(zip(squares, places, strict=True), key=lambda pair: pair[0])
    spare = max(mark.count - int(np.sum(mark.free)), 1)
    clear = there[0] - here[0] > DECIDES * max(1.0, here[0] / spare)
    side = mark.side
    if not clear and side is not None:
        return First(place=max(places, key=lambda place: float(side @ place)))
    return First(place=here[1], clear=clear)


def _candidates(mark: Around, known: Array) -> Iterator[Array]:
    """Places in closed form; `known` holds the coordinates that are held, nan for the others."""
    free, (hooks, lengths) = mark.free, mark.hooks()
    dims = int(np.sum(free))
    there = np.where(free, 0.0, known)
    count = max(len(hooks), 1)
    middle = hooks.sum(axis=0) / count
    spread = hooks - middle
    size = float(np.sqrt(np.sum(spread**2) / (3 * count))) or 1.0
    squares = (np.sum(hooks**2, axis=1) - lengths**2) / 2
    flat = squares - np.sum(squares) / count - spread @ there
    unit, level = mark.levels()
    matrix = np.vstack([spread[:, free], unit[:, free] * size])
    wanted = np.concatenate([flat, (level - unit @ there) * size])
    matrix = np.vstack([matrix, np.zeros((dims, dims))])  # as many rows as unknowns at least
    left, values, ways = np.linalg.svd(matrix, full_matrices=False)
    rank = int(np.sum(values > FLAT * max(size, float(values.max()))))
    solved = (left[: len(wanted), :rank].T @ wanted) / values[:rank]
    place = there.copy()
    place[free] += ways[:rank].T @ solved
    if rank == dims:
        yield place
        other = None if values[-1] > OUT_OF_PLANE * np.sqrt(len(wanted)) else mark.reflected(place)
        if other is not None:
            yield other
    elif rank == dims - 1 and len(hooks):
        way = np.zeros(3)
        way[free] = ways[-1]
        along = float(way @ (place - middle))
        away: Array = np.sum((place - hooks) ** 2, axis=1)
        over = float(np.mean(away - lengths**2))
        reach = max(along**2 - over, 0.0) ** 0.5
        yield place + (reach - along) * way
        yield place - (reach + along) * way
