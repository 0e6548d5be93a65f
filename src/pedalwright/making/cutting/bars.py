"""Cutting bars and tubes: the cut list that buys least, and a proof that none buys less.

Every way to fill a bar is written down, and an integer program says how often to cut each. Its
solver also tells what no list can do without. Where there are too many ways (short pieces from
long bars, so few bars) it is asked instead how many pieces to cut from each single bar.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from math import ceil

import numpy as np

from pedalwright.core.units import Array
from pedalwright.making.cutting.formulas import bar_needed
from pedalwright.making.cutting.parts import Bar, BarPlan, CutBar, Piece, Proof

#: Ways to fill bars that are all written down.
MANY = 20_000
#: Sums of lengths that differ by less are equal, mm.
EQUAL = 1e-6
#: Where the solver gives up proving, in branches and in seconds; the gap is told then.
BRANCHES, SECONDS = 20_000, 20.0

#: Price of a piece that finds no stock, in bars of the longest kind: dearer than any bar for it.
LACKING = 2.0

#: How many of each piece are cut from a bar.
Way = tuple[int, ...]


def cut_bars(
    pieces: Sequence[Piece], bars: Sequence[Bar], *, kerf: float, trim: float = 0.0
) -> BarPlan:
    """Cut all pieces; `kerf` goes between two pieces, `trim` is cut off to square each bar.

    First the least length is bought; among such lists, the least of one's own stock is taken
    into use, so that the long off-cuts stay whole.
    """
    if not pieces or not bars:
        nothing = Proof(cost=0.0, bound=0.0)
        return BarPlan(bars=(), kerf=kerf, trim=trim, missing=tuple(pieces), bought=nothing)
    job = _Job(tuple(pieces), tuple(bars), kerf, trim)
    kind = _one_does(job)
    if kind is not None:
        bar = bars[kind]
        cost = bar.length if bar.bought else 0.0
        return BarPlan(
            bars=tuple(_cut_bars(job, [(kind, tuple(piece.count for piece in pieces))])),
            kerf=kerf,
            trim=trim,
            missing=(),
            bought=Proof(cost=cost, bound=cost),
        )
    model = _by_ways(job) or _by_bars(job)
    first = _solved(model, model.bought)
    has_own = any(not bar.bought for bar in bars)
    last = _solved(model, model.own, after=first) if has_own else first
    missing = np.round(last.x[-len(pieces) :]).astype(int)
    cut = tuple(_cut_bars(job, model.read(last.x)))
    cost = float(sum(one.bar.length for one in cut if one.bar.bought))
    bound = _whole_bars(job, first.bound - LACKING * float(np.sum(missing)))
    return BarPlan(
        bars=cut,
        kerf=kerf,
        trim=trim,
        missing=tuple(
            replace(piece, count=int(n)) for piece, n in zip(pieces, missing, strict=True) if n
        ),
        bought=Proof(cost=cost, bound=min(cost, bound)),
    )


def _one_does(job: "_Job") -> int | None:
    """The shortest bar, own ones before bought ones, where all pieces come from one of it.

    No plan can do with less, so no solver is asked.
    """
    there = [i for i, bar in enumerate(job.bars) if bar.count != 0]
    if not there:
        return None
    kind = min(there, key=lambda i: (job.bars[i].bought, job.bars[i].length))
    needed = float(np.sum(job.needs * job.wanted))
    return kind if needed <= job.room(job.bars[kind]) + EQUAL else None


@dataclass(frozen=True, slots=True)
class _Job:
    pieces: tuple[Piece, ...]
    bars: tuple[Bar, ...]
    kerf: float
    trim: float

    def room(self, bar: Bar) -> float:
        """What the pieces and a saw cut for each may take together."""
        return bar.length - self.trim + self.kerf

    @property
    def needs(self) -> Array:
        """Length of each piece with its saw cut."""
        return np.array([piece.length + self.kerf for piece in self.pieces])

    @property
    def wanted(self) -> Array:
        """How many of each."""
        return np.array([float(piece.count) for piece in self.pieces])

    @property
    def longest(self) -> float:
        """Of all kinds of bar."""
        return max(bar.length for bar in self.bars)

    def prices(self, kinds: Sequence[int], *, bought: bool) -> Array:
        """Length bought, or length of one's own stock taken, in bars of the longest kind."""
        return np.array(
            [
                self.bars[kind].length / self.longest if self.bars[kind].bought == bought else 0.0
                for kind in kinds
            ]
        )


@dataclass(frozen=True, slots=True)
class _Model:
    """An integer program; its last variables count the pieces that find no stock."""

    #: Price of each variable: what is bought, and what is taken of one's own stock.
    bought: Array
    own: Array
    #: Rows, each between two bounds.
    matrix: Array
    least: Array
    most: Array
    #: Each variable is a whole number from nought to this.
    top: Array
    #: Bars cut, each a kind of bar and a way to cut it.
    read: Callable[[Array], list[tuple[int, Way]]]


@dataclass(frozen=True, slots=True)
class _Solved:
    x: Array
    cost: float
    bound: float


def _solved(model: _Model, prices: Array, *, after: _Solved | None = None) -> _Solved:
    """The cheapest choice; after an earlier one, none that buys more or leaves out more."""
    from scipy.optimize import Bounds, LinearConstraint, milp  # 0.3 s: only when there is a list

    rows = [LinearConstraint(model.matrix, model.least, model.most)]
    if after is not None:
        rows.append(LinearConstraint(model.bought[np.newaxis, :], -np.inf, after.cost + 1e-6))
    found = milp(
        prices,
        integrality=np.ones(len(prices), dtype=np.int64),
        bounds=Bounds(0.0, model.top),
        constraints=rows,
        options={"mip_rel_gap": 1e-9, "node_limit": BRANCHES, "time_limit": SECONDS},
    )
    assert found.x is not None, f"leaving out every piece is always an answer: {found.message}"
    x = np.round(found.x)
    return _Solved(x, float(prices @ x), float(found.mip_dual_bound))


def _by_ways(job: _Job) -> _Model | None:
    """One variable for each way to fill a bar; None if there are too many ways."""
    kinds: list[int] = []
    ways: list[Way] = []
    for kind, bar in enumerate(job.bars):
        for way in _fillings(job.needs, job.wanted, job.room(bar)):
            kinds.append(kind)
            ways.append(way)
            if len(ways) > MANY:
                return None
    n = len(job.pieces)
    cut = np.hstack([np.array(ways, dtype=float).reshape(-1, n).T, np.eye(n)])
    there = np.array(
        [[float(kind == k) for kind in kinds] + [0.0] * n for k in range(len(job.bars))]
    )
    counts = [np.inf if bar.count is None else float(bar.count) for bar in job.bars]
    lacking = np.full(n, LACKING)
    return _Model(
        bought=np.concatenate([job.prices(kinds, bought=True), lacking]),
        own=np.concatenate([job.prices(kinds, bought=False), lacking]),
        matrix=np.vstack([cut, there]),
        least=np.concatenate([job.wanted, np.full(len(job.bars), -np.inf)]),
        most=np.concatenate([np.full(n, np.inf), counts]),
        top=np.concatenate([np.full(len(ways), np.sum(job.wanted)), job.wanted]),
        read=lambda x: [
            (kind, way)
            for kind, way, times in zip(kinds, ways, x[: len(ways)], strict=True)
            for _ in range(int(times))
        ],
    )


def _fillings(needs: Array, wanted: Array, room: float) -> Iterator[Way]:
    """Every way to fill a bar that leaves no room for one more piece, long pieces first."""
    order = sorted(range(len(needs)), key=lambda i: -needs[i])

    def fill(place: int, left: float, taken: Way) -> Iterator[Way]:
        if place == len(order):
            counts = dict(zip(order, taken, strict=True))
            if any(taken) and not any(
                needs[i] <= left + EQUAL and counts[i] < wanted[i] for i in order
            ):
                yield tuple(counts[i] for i in range(len(needs)))
            return
        i = order[place]
        most = int(min(wanted[i], (left + EQUAL) // needs[i]))
        for n in range(max(most, 0), -1, -1):
            yield from fill(place + 1, left - n * needs[i], (*taken, n))

    return fill(0, room, ())


def _by_bars(job: _Job) -> _Model:
    """For each single bar: whether it is cut, and how many of each piece come from it.

    There are as many bars of each kind as the simple rule, longest piece first, takes.
    """
    kinds: list[int] = []
    for kind, bar in enumerate(job.bars):
        most = _simple_count(job, bar)
        kinds += [kind] * (most if bar.count is None else min(bar.count, most))
    bars, n = len(kinds), len(job.pieces)
    rooms = np.array([job.room(job.bars[kind]) for kind in kinds])
    here, each = np.eye(bars), np.eye(n)
    fits = np.hstack(
        [-np.diag(rooms), np.kron(here, job.needs[np.newaxis, :]), np.zeros((bars, n))]
    ).astype(np.float64)
    cut = np.hstack([np.zeros((n, bars)), np.kron(np.ones((1, bars)), each), each])
    after = [b for b in range(1, bars) if kinds[b] == kinds[b - 1]]  # alike bars in order
    order: Array = np.zeros((len(after), fits.shape[1]))
    for row, b in enumerate(after):
        order[row, b - 1], order[row, b] = -1.0, 1.0
    no_price, lacking = np.zeros(bars * n), np.full(n, LACKING)
    return _Model(
        bought=np.concatenate([job.prices(kinds, bought=True), no_price, lacking]),
        own=np.concatenate([job.prices(kinds, bought=False), no_price, lacking]),
        matrix=np.vstack([fits, cut, order]).astype(np.float64),
        least=np.concatenate([np.full(bars, -np.inf), job.wanted, np.full(len(after), -np.inf)]),
        most=np.concatenate([np.full(bars, EQUAL), job.wanted, np.zeros(len(after))]),
        top=np.concatenate([np.ones(bars), np.tile(job.wanted, bars), job.wanted]),
        read=lambda x: [
            (kind, tuple(int(k) for k in row))
            for kind, cut_here, row in zip(
                kinds, x[:bars], x[bars : bars + bars * n].reshape(bars, n), strict=True
            )
            if cut_here > 0.5 and np.sum(row) > 0.5
        ],
    )


def _simple_count(job: _Job, bar: Bar) -> int:
    """Bars that the simple rule takes: the longest piece first, into the first bar it fits."""
    left: list[float] = []
    each = [need for need, n in zip(job.needs, job.wanted, strict=True) for _ in range(int(n))]
    for need in sorted((n for n in each if n <= job.room(bar) + EQUAL), reverse=True):
        place = next((i for i, room in enumerate(left) if need <= room + EQUAL), None)
        if place is None:
            left.append(job.room(bar))
            place = len(left) - 1
        left[place] -= need
    return len(left)


def _cut_bars(job: _Job, chosen: list[tuple[int, Way]]) -> Iterator[CutBar]:
    """Each bar with its pieces, long ones first; what a list would cut too many is left whole."""
    wanted = [piece.count for piece in job.pieces]
    for kind, way in sorted(chosen, key=lambda one: one[0]):
        pieces: list[Piece] = []
        for i in sorted(range(len(way)), key=lambda i: -job.pieces[i].length):
            n = min(way[i], wanted[i])
            wanted[i] -= n
            pieces += [replace(job.pieces[i], count=1)] * n
        if pieces:
            bar = job.bars[kind]
            total = sum(piece.length for piece in pieces)
            needed = float(bar_needed(total, float(len(pieces)), job.kerf, job.trim))
            left = bar.length - needed
            yield CutBar(
                bar=bar,
                pieces=tuple(pieces),
                left=0.0 if left < job.kerf + EQUAL else left - job.kerf,
            )


def _whole_bars(job: _Job, bound: float) -> float:
    """The bound in mm; where all bars to buy are alike, of whole bars."""
    lengths = {bar.length for bar in job.bars if bar.bought}
    if len(lengths) == 1:
        (length,) = lengths
        return length * ceil(bound * job.longest / length - 1e-6)
    return bound * job.longest
