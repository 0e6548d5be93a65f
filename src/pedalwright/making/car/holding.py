"""What is on the shelf, as cut lists and counts want it."""

from collections.abc import Iterator, Mapping
from math import isnan

from pedalwright.core.units import Num
from pedalwright.making.car.bars import bar_section
from pedalwright.making.car.plates import STEEL, Plate
from pedalwright.making.car.threads import thread
from pedalwright.making.cutting import Bar
from pedalwright.making.cutting import Stock as Sheets
from pedalwright.making.fastening import Item
from pedalwright.shelf.materials import material
from pedalwright.shelf.stock import Stock, StockSheet

#: Thicknesses that differ by less are one, mm: a rolling mill is no better.
SAME = 0.06


def own_bars(stock: Stock, section: str) -> list[Bar]:
    """Bars and off-cuts of a section."""
    return [
        Bar(name=bar.name, length=float(bar.length), count=_whole(bar.count), bought=False)
        for bar in stock.bars
        if bar_section(bar.shape, float(bar.outside), float(bar.inside or 0.0)) == section
    ]


def own_sheets(stock: Stock, plate: Plate) -> list[Sheets]:
    """Sheets and off-cuts as thick as wanted, of the same kind of metal and strong enough."""
    return [
        Sheets(
            name=f"{sheet.name} ({sheet.metal}, {float(sheet.thickness):g} mm)",
            length=float(sheet.length),
            width=float(sheet.width),
            count=_whole(sheet.count),
            bought=False,
        )
        for sheet in stock.sheets
        if _serves(sheet, plate)
    ]


def _serves(sheet: StockSheet, plate: Plate) -> bool:
    thickness = float(sheet.thickness)
    forms = ("plate", "sheet")
    rows = [row for form in forms if (row := material(sheet.metal, form, thickness)) is not None]
    return abs(thickness - plate.thickness) < SAME and any(
        ("steel" if row.elastic > STEEL else "alloy") == plate.metal
        and not row.yield_strength < plate.yield_strength
        for row in rows
    )


def box(stock: Stock) -> Mapping[Item, int]:
    """The fastener box."""
    return dict(_box(stock))


def packs(stock: Stock) -> Mapping[str, int]:
    """How many rivets are sold together, by the largest pack named."""
    sold = [_whole(one.pack) for one in stock.rivets]
    return {"blind rivet": max(sold)} if sold else {}


def _box(stock: Stock) -> Iterator[tuple[Item, int]]:
    for rivet in stock.rivets:
        size, length = f"{float(rivet.diameter):g}", float(rivet.length)
        item = Item(kind="blind rivet", size=size, length=length, make=rivet.body)
        yield item, _whole(rivet.count)
    for one in stock.bolts:
        item = Item(
            kind="bolt", size=thread(float(one.thread)), length=float(one.length), make=one.grade
        )
        yield item, _whole(one.count)
    for nut in stock.nuts:
        size = thread(float(nut.thread))
        if nut.kind == "rivet nut":
            yield Item(kind="rivet nut", size=size), _whole(nut.count)
        else:
            yield Item(kind="nut", size=size, make=nut.kind), _whole(nut.count)


def _whole(count: Num) -> int:
    """A count; one that nobody knows is not counted on."""
    return 0 if isnan(number := float(count)) else int(number)
