"""What has to be bought, by kind of shop and by dimension, never by brand."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from math import ceil
from typing import Literal

from pedalwright.making.cutting import BarPlan, Part, SheetPlan
from pedalwright.making.fastening import Count, Treatment
from pedalwright.making.profiles import DrillRow

#: What a blank is larger than its part, mm: a shear's edge is filed off (ours).
SAWN = 6.0

Shop = Literal["metal stockist", "fasteners", "tools", "paint and sealant", "motor factor"]


@dataclass(frozen=True, kw_only=True, slots=True)
class Purchase:
    """One line of the buying list."""

    shop: Shop
    what: str
    quantity: int
    why: str = ""


def buying(
    *,
    bars: Mapping[str, BarPlan] | None = None,
    sheets: Iterable[SheetPlan] = (),
    blanks: Mapping[str, Iterable[Part]] | None = None,
    counts: Iterable[Count] = (),
    drilling: Iterable[DrillRow] = (),
    skin_pins: int = 0,
    treatments: Iterable[Treatment] = (),
    fluid: str = "",
) -> tuple[Purchase, ...]:
    """Everything to buy; bars by their section, drills by the drill cards.

    `blanks` are parts that no sheet of one's own holds, by their plate: a stockist cuts them.
    """
    return (
        *_bars(bars or {}),
        *_sheets(sheets),
        *_blanks(blanks or {}),
        *_fasteners(counts),
        *_tools(drilling, skin_pins),
        *_paint(treatments),
        *_fluid(fluid),
    )


def _bars(plans: Mapping[str, BarPlan]) -> Iterator[Purchase]:
    for section, plan in plans.items():
        wanted = Counter(cut.bar.length for cut in plan.bars if cut.bar.bought)
        for length, n in wanted.items():
            yield Purchase(shop="metal stockist", what=f"{section}, {length:g} mm long", quantity=n)


def _sheets(plans: Iterable[SheetPlan]) -> Iterator[Purchase]:
    for plan in plans:
        wanted = Counter(sheet.stock for sheet in plan.sheets if sheet.stock.bought)
        for stock, n in wanted.items():
            size = f"{stock.name}, {stock.length:g} × {stock.width:g} mm"
            yield Purchase(shop="metal stockist", what=size, quantity=n)


def _blanks(parts: Mapping[str, Iterable[Part]]) -> Iterator[Purchase]:
    for plate, lacking in parts.items():
        for part in lacking:
            size = f"{ceil(part.length + SAWN)} × {ceil(part.width + SAWN)} mm"
            yield Purchase(
                shop="metal stockist",
                what=f"{plate} or more, cut to {size}",
                quantity=part.count,
                why=part.name,
            )


def _fasteners(counts: Iterable[Count]) -> Iterator[Purchase]:
    for count in counts:
        if count.buy:
            yield Purchase(
                shop="fasteners",
                what=count.item.words,
                quantity=count.buy,
                why=f"need {count.need} + {count.spare} spare, have {count.have}",
            )


def _tools(drilling: Iterable[DrillRow], skin_pins: int) -> Iterator[Purchase]:
    """Two of each thin drill, which break; reamers as the card says."""
    rows = list(drilling)
    for size in sorted({drill for row in rows for drill in row.drills}):
        yield Purchase(shop="tools", what=f"drill {size:.3g} mm", quantity=2 if size < 5.0 else 1)
    for size in sorted({row.bore.diameter for row in rows if row.bore.reamed}):
        yield Purchase(shop="tools", what=f"hand reamer {size:.4g} mm", quantity=1)
    if skin_pins:
        yield Purchase(shop="tools", what="skin pin 3.2 mm (1/8 in)", quantity=skin_pins)


def _paint(treatments: Iterable[Treatment]) -> Iterator[Purchase]:
    wanted: dict[str, list[str]] = {}
    for one in treatments:
        rows = wanted.setdefault(one.what, [])
        if one.row not in rows:
            rows.append(one.row)
    names = {
        "barrier": "zinc-free primer or insulating tape and sleeves",
        "jointing compound": "jointing compound for steel on aluminium, tin",
        "sealant": "sealant that stands petrol and heat, tube",
    }
    for what, rows in wanted.items():
        yield Purchase(
            shop="paint and sealant", what=names[what], quantity=1, why="for " + ", ".join(rows)
        )
    yield Purchase(shop="paint and sealant", what="degreaser without chlorine", quantity=1)
    yield Purchase(shop="paint and sealant", what="primer for bare metal", quantity=1)


def _fluid(fluid: str) -> Iterator[Purchase]:
    if fluid:
        yield Purchase(shop="motor factor", what=f"brake fluid {fluid}, litre, sealed", quantity=1)
