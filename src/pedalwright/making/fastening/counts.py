"""The fastener box: what is wanted, spare, there, and to buy."""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence

from pedalwright.making.fastening.formulas import spares, to_buy
from pedalwright.making.fastening.parts import Count, Item, RivetRow, SetBolt, SetRivet

#: Least number of spare ones. A bolt is no rivet: one spare of each length does.
LEAST_SPARE, LEAST_SPARE_BOLTS = 5, 1
#: What one spare is enough of.
_BIG = frozenset({"bolt", "clevis pin", "fork", "bush"})
#: How many are sold together where the builder does not say.
PACK: Mapping[str, int] = {"blind rivet": 10}


def counts(
    rivets: Iterable[SetRivet],
    bolts: Iterable[SetBolt],
    have: Mapping[Item, int],
    packs: Mapping[str, int] = PACK,
    others: Mapping[Item, int] | None = None,
) -> tuple[Count, ...]:
    """Every item once, over all rows and `others` besides; `packs` by kind of item."""
    wanted: Counter[Item] = Counter()
    for one in rivets:
        wanted[_rivet(one)] += one.row.count
    for bolt in bolts:
        for item, n in _with_nut_and_washers(bolt):
            wanted[item] += n * bolt.row.count
    wanted.update(others or {})
    return tuple(_count(item, n, have.get(item, 0), packs) for item, n in wanted.items())


def in_all(size: float, rows: Sequence[RivetRow], have: Mapping[Item, int]) -> Count:
    """All rivets of a diameter as if any length would do; what is there of any length counts."""
    need = sum(row.count for row in rows)
    spare = spares(float(need), float(LEAST_SPARE))
    item = Item(kind="blind rivet", size=f"{size:g}")
    there = sum(n for one, n in have.items() if (one.kind, one.size) == (item.kind, item.size))
    buy = to_buy(float(need), spare, float(there), float(PACK["blind rivet"]))
    return Count(item=item, need=need, spare=int(spare), have=there, buy=int(buy))


def _count(item: Item, need: int, have: int, packs: Mapping[str, int]) -> Count:
    least = LEAST_SPARE_BOLTS if item.kind in _BIG else LEAST_SPARE
    spare = spares(float(need), float(least))
    buy = to_buy(float(need), spare, float(have), float(packs.get(item.kind, 1)))
    return Count(item=item, need=need, spare=int(spare), have=have, buy=int(buy))


def _rivet(one: SetRivet) -> Item:
    return Item(
        kind="blind rivet",
        size=f"{one.row.diameter:g}",
        length=one.length,
        make=one.row.body,
    )


def _with_nut_and_washers(one: SetBolt) -> list[tuple[Item, int]]:
    row = one.row
    found = [
        (Item(kind="bolt", size=row.size, length=one.length, make=row.grade), 1),
        (Item(kind="washer", size=row.size, make=row.washers), 1 if row.captive else 2),
    ]
    if not row.captive:
        make = "castle nut" if row.turns else one.locking  # its split pin is an item of its own
        found.append((Item(kind="nut", size=row.size, make=make), 1))
    if row.turns:
        found.append((Item(kind="split pin", size=row.size), 1))
    return found
