"""Where two metals touch: how far apart they are, and which one is eaten."""

from collections.abc import Iterator
from itertools import pairwise

from pedalwright.making.fastening.parts import BoltRow, Contact, RivetRow, Treatment
from pedalwright.shelf.fasteners import rivet_strength
from pedalwright.shelf.galvanic import surface

#: What is let pass without a barrier, mV: in salt spray, in the damp, in the dry.
SALT, DAMP, DRY = 150.0, 250.0, 500.0


def contacts(row: RivetRow | BoltRow) -> Iterator[Contact]:
    """Sheet on sheet, and the fastener in each sheet; each pair of metals once.

    Zinc on steel is no couple to part: it is there to be eaten in the steel's place.
    """
    fastener = (
        rivet_strength(row.body, row.diameter).surface if isinstance(row, RivetRow) else row.surface
    )
    metals = [layer.surface for layer in row.layers]
    pairs = [*pairwise(metals), *((fastener, metal) for metal in metals)]
    for one, other in dict.fromkeys(pairs):
        if one != other and {one, other} != {"zinc", "steel"}:
            yield contact(row.name, one, other, barrier=row.barrier)


def treatments(row: RivetRow | BoltRow, *, most: float = SALT) -> Iterator[Treatment]:
    """What to put between the sheets, and why.

    Steel on alloy is hardly a couple by the chart, yet the trade never leaves it bare: rust lifts
    paint, and wet rust eats alloy.
    """
    for pair in contacts(row):
        why = f"{pair.one} on {pair.other}, {pair.apart:g} mV apart; {pair.eaten} is eaten"
        if pair.apart > most:
            yield Treatment(row=row.name, what="barrier", why=why)
        elif {pair.one, pair.other} == {"steel", "aluminium"}:
            yield Treatment(row=row.name, what="jointing compound", why=why)
    if row.sealed:
        yield Treatment(row=row.name, what="sealant", why="keeps fumes and water out of the cabin")


def contact(row: str, one: str, other: str, *, barrier: bool = False) -> Contact:
    """Two metals side by side."""
    apart = surface(one).potential - surface(other).potential
    return Contact(
        row=row,
        one=one,
        other=other,
        apart=abs(apart),
        eaten=one if apart < 0.0 else other if apart > 0.0 else "",
        barrier=barrier,
    )
