"""What is asked of fasteners and of the metals they join."""

from collections.abc import Iterable, Iterator, Mapping
from math import nan

import numpy as np

from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.making.fastening.metals import SALT, contacts
from pedalwright.making.fastening.parts import BoltRow, Count, RivetRow, SetBolt, SetRivet
from pedalwright.shelf.fasteners import bolt_lengths
from pedalwright.shelf.rivets import grips

_GRIP = Source("ISO 15981", "recommended grip ranges", "standard")

GRIP_LEAST = Limit(
    "making.grip_least",
    "The sheets together are thick enough for the rivet's length to draw tight.",
    "at least",
    "mm",
    _GRIP,
)
GRIP_MOST = Limit(
    "making.grip_most",
    "The sheets together are thin enough for the rivet to form its head behind them.",
    "at most",
    "mm",
    _GRIP,
)
BOLT_LENGTH = Limit(
    "making.bolt_length",
    "A bolt of a length one can buy reaches through sheets, washers and nut.",
    "at most",
    "mm",
    Source("common practice", "two threads look out of the nut", "trade"),
)
HEAD_PRESSURE = Limit(
    "making.head_pressure",
    "Nut and head do not sink into the sheet under them.",
    "at most",
    "MPa",
    Source("VDI 2230", "boundary pressure taken as the tensile strength, to verify", "standard"),
    "should",
)
GALVANIC = Limit(
    "making.galvanic",
    "Metals that touch in road salt are near each other, or a barrier keeps them apart.",
    "at most",
    "1",
    Source("galvanic charts", "0.15 V outdoors, in salt", "handbook"),
)
ENOUGH = Limit(
    "making.fasteners_enough",
    "There are enough fasteners of each kind to finish the job.",
    "at least",
    "1",
    Source("pedalwright", "as many as there are holes; spare ones are on the buying list", "ours"),
    "should",
)

#: What to do where a demand is not met.
CURES: Mapping[str, str] = {
    GRIP_LEAST.code: "use the next shorter rivet, or put a washer under its head behind thin sheet",
    GRIP_MOST.code: "use the next longer rivet",
    BOLT_LENGTH.code: "use studding of the same class, or fewer packing pieces",
    HEAD_PRESSURE.code: "put a penny washer or a steel plate under head and nut",
    GALVANIC.code: "jointing compound or zinc-free primer between the metals, rivets set wet",
    ENOUGH.code: "buy what the list says before the first hole is drilled",
}


def check_rivet(one: SetRivet) -> Iterator[Finding]:
    """The grip of the rivet that is to go in; without one that grips nothing passes."""
    about = f"{one.row.name}: {one.row.diameter:g} × {one.length:g}" if one.length else one.row.name
    grip = next(
        (g for g in grips() if (g.diameter, g.length) == (one.row.diameter, one.length)), None
    )
    yield GRIP_LEAST.check(one.total, grip.least if grip else nan, about)
    yield GRIP_MOST.check(one.total, grip.most if grip else nan, about)


def check_bolt(one: SetBolt) -> Iterator[Finding]:
    """Its length, and what its washers press on."""
    yield BOLT_LENGTH.check(one.least, bolt_lengths()[-1].length, one.row.name)
    if not one.row.turns:
        outside = one.row.layers[0].strength, one.row.layers[-1].strength
        yield HEAD_PRESSURE.check(one.pressure, np.minimum(*outside), one.row.name)


def check_metals(rows: Iterable[RivetRow | BoltRow], *, most: float = SALT) -> Iterator[Finding]:
    """Each pair of metals without a barrier; `most` is what is let pass, mV."""
    for row in rows:
        for pair in contacts(row):
            if not pair.barrier:
                about = f"{row.name}: {pair.one} on {pair.other}"
                yield GALVANIC.check(pair.apart / most, 1.0, about)


def check_counts(counted: Iterable[Count]) -> Iterator[Finding]:
    """What is there against what is wanted, item by item."""
    for one in counted:
        yield ENOUGH.check(one.have / one.need, 1.0, f"{one.item.kind} {one.item.size}")
