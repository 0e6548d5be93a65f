"""A mark that fits its tapes on either side of its hooks: one of the two, or the question which."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.survey.adjustment import TwoPlaces
from pedalwright.survey.around import OUT_OF_PLANE
from pedalwright.survey.equations import TAPE, Truths, array, numbers, point
from pedalwright.survey.first import DECIDES
from pedalwright.survey.net import Net

#: Places nearer to each other than this are one, badly determined across its hooks, mm.
APART = 10.0


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Sided:
    """Places after every stated side was heeded, and the marks for which none was stated."""

    at: Array
    moved: bool
    open: tuple[TwoPlaces, ...]


def sided(net: Net, at: Array, used: Truths) -> Sided:
    """Look at the other side of every mark, and of marks that only tapes between them tie."""
    begun = at
    open_: list[TwoPlaces] = []
    for mark in _flat(net, at, used):
        here = net.around(at, mark, used)
        place = at[mark]
        other = here.reflected(place)
        if other is None:
            continue
        other = here.polished(other)
        gained = here.squares(place) - here.squares(other)
        if not np.linalg.norm(other - place) > APART or not gained > -DECIDES:
            continue
        choice = _choice(net, [mark], place - other, gained)
        if choice < 0.0:
            at = at.copy()
            at[mark] = other
        elif choice == 0.0:
            open_.append(_two(net, mark, at, other))
    if not open_:
        for group in _tied(net, used):
            at, doubt = _together(net, at, used, group)
            open_ += doubt
    moved = at is not begun
    return Sided(at=net.fitted(at, used) if moved else at, moved=moved, open=tuple(open_))


def _flat(net: Net, at: Array, used: Truths) -> list[int]:
    """Unknown marks whose hooks lie nearly in a plane, as far as the mark can move at all."""
    eq, free = net.equations, net.free.reshape(-1, 3)
    tapes = used & (eq.kind == TAPE)
    mark = np.concatenate([eq.last[tapes], eq.first[tapes]])
    hook = at[np.concatenate([eq.first[tapes], eq.last[tapes]])]
    count, total, square = np.zeros(len(at)), np.zeros(at.shape), np.zeros((len(at), 3, 3))
    np.add.at(count, mark, 1.0)
    np.add.at(total, mark, hook)
    np.add.at(square, mark, hook[:, :, None] * hook[:, None, :])
    middle = total / np.maximum(count, 1.0)[:, None]
    spread = square / np.maximum(count, 1.0)[:, None, None] - middle[:, :, None] * middle[:, None]
    spread = spread * free[:, :, None] * free[:, None, :]
    spread[:, range(3), range(3)] += np.where(free, 0.0, _FAR)
    thickness = np.linalg.eigvalsh(spread)[:, 0]
    return numbers((thickness < OUT_OF_PLANE**2) & free.any(axis=1))


#: Beyond any square of a length in a car, mm2.
_FAR = 1e12


def _together(net: Net, at: Array, used: Truths, group: list[int]) -> tuple[Array, list[TwoPlaces]]:
    """A group of marks on the other side of all that they hang on."""
    names = {net.stations[mark].name for mark in group}
    hooks = sorted(
        {
            name
            for sight, use in zip(net.sights, used, strict=True)
            if use and names & set(sight.ends)
            for name in sight.ends
        }
        - names
    )
    number = {station.name: i for i, station in enumerate(net.stations)}
    known = at[[number[name] for name in hooks]].reshape(-1, 3)
    if len(known) < 3:
        return at, []
    middle = known.mean(axis=0)
    _, values, ways = np.linalg.svd(known - middle)
    if values[-1] > OUT_OF_PLANE * np.sqrt(len(known)):
        return at, []
    way = ways[-1]
    other = at.copy()
    other[group] -= 2.0 * ((at[group] - middle) @ way)[:, None] * way
    other[net_held(net)] = at[net_held(net)]
    other = net.fitted(other, used)
    gained = net.squares(at, used) - net.squares(other, used)
    apart = np.linalg.norm(other[group] - at[group], axis=1)
    if not np.max(apart) > APART or not gained > -DECIDES:
        return at, []
    far = group[int(np.argmax(apart))]
    choice = _choice(net, group, at - other, gained)
    if choice < 0.0:
        return other, []
    return at, [] if choice > 0.0 else [_two(net, far, at, other[far])]


def _choice(net: Net, marks: list[int], way: Array, gained: float) -> float:
    """Above 0 for here, below for there, 0 for nobody knows."""
    if gained > DECIDES:
        return -1.0
    for mark in marks:
        side = net.stations[mark].side
        if side is not None:
            return float(array(side) @ (way if way.ndim == 1 else way[mark])) or 1.0
    return 0.0


def net_held(net: Net) -> Truths:
    """Coordinates that are held, (marks, 3)."""
    fixed: Truths = ~net.free.reshape(-1, 3)
    return fixed


def _two(net: Net, mark: int, at: Array, other: Array) -> TwoPlaces:
    return TwoPlaces(name=net.stations[mark].name, here=point(at[mark]), there=point(other))


def _tied(net: Net, used: Truths) -> Iterator[list[int]]:
    """Groups of two or more unknown marks with sights between them."""
    eq = net.equations
    unknown = set(net.unknown)
    beside: dict[int, set[int]] = {mark: set() for mark in unknown}
    for one, other in np.stack([eq.first[used], eq.last[used]], axis=-1).tolist():
        if one in unknown and other in unknown:
            beside[one].add(other)
            beside[other].add(one)
    seen: set[int] = set()
    for first in beside:
        group, edge = {first}, {first}
        while edge:
            edge = {other for mark in edge for other in beside[mark]} - group
            group |= edge
        if first not in seen and len(group) > 1:
            yield sorted(group)
        seen |= group
