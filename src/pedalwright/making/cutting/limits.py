"""What is asked of the stock."""

from collections.abc import Iterator, Mapping, Sequence

from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.making.cutting.parts import Bar, BarPlan, Part, Piece, SheetPlan, Stock

ON_STOCK = Limit(
    "making.part_on_stock",
    "No part is larger than the largest stock it could be cut from.",
    "at most",
    "1",
    Source("geometry", "size over the room on the stock, trim and margin taken off", "ours"),
)
ENOUGH = Limit(
    "making.stock_enough",
    "There is stock for every piece, of one's own or to buy.",
    "at least",
    "1",
    Source("geometry", "share of the pieces that find stock", "ours"),
)

#: What to do where a demand is not met.
CURES: Mapping[str, str] = {
    ON_STOCK.code: "join it from two pieces at a bend or a row of rivets, or get longer stock",
    ENOUGH.code: "buy what is listed as missing, or lift the limit on the stock",
}


def check_bars(pieces: Sequence[Piece], bars: Sequence[Bar], plan: BarPlan) -> Iterator[Finding]:
    """Judge a cut list; the longest piece is told, and how many found a bar."""
    longest = max(pieces, key=lambda piece: piece.length)
    room = max((bar.length - plan.trim for bar in bars), default=0.0)
    yield ON_STOCK.check(longest.length / room if room else float("inf"), 1.0, longest.name)
    wanted, missing = _count(pieces), _count(plan.missing)
    yield ENOUGH.check((wanted - missing) / wanted, 1.0, _names(plan.missing))


def check_sheets(
    parts: Sequence[Part], stock: Sequence[Stock], plan: SheetPlan
) -> Iterator[Finding]:
    """Judge a nesting; the part that fits worst is told, and how many found a sheet."""
    sizes = {part.name: _size_over_room(part, stock, plan.margin) for part in parts}
    worst = max(sizes, key=lambda name: sizes[name])
    yield ON_STOCK.check(sizes[worst], 1.0, worst)
    wanted, missing = _count(parts), _count(plan.missing)
    yield ENOUGH.check((wanted - missing) / wanted, 1.0, _names(plan.missing))


def _size_over_room(part: Part, stock: Sequence[Stock], margin: float) -> float:
    """How large a part is on the sheet it fits best, lying as its grain allows."""
    lies = {
        "along": [(part.length, part.width)],
        "across": [(part.width, part.length)],
        "any": [(part.length, part.width), (part.width, part.length)],
    }[part.grain]
    return min(
        (
            max(along / (sheet.length - 2 * margin), across / (sheet.width - 2 * margin))
            for sheet in stock
            for along, across in lies
        ),
        default=float("inf"),
    )


def _count(rows: Sequence[Piece] | Sequence[Part]) -> int:
    return sum(row.count for row in rows)


def _names(rows: Sequence[Piece] | Sequence[Part]) -> str:
    return ", ".join(sorted({row.name for row in rows}))
