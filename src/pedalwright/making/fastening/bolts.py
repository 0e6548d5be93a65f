"""Bolts: how long, how they are locked, how hard they are tightened."""

from math import nan
from typing import Literal

from pedalwright.making.fastening.formulas import bolt_length, head_pressure
from pedalwright.making.fastening.parts import BoltRow, Locking, SetBolt
from pedalwright.shelf.bolts import Bolt, bolt, property_class
from pedalwright.shelf.fasteners import bolt_lengths, nut
from pedalwright.structure.formulas.bolts import preload, tightening_torque

#: Share of yield a bolt is tightened to.
TIGHT = 0.9
#: Friction in thread and under head: as delivered and lightly oiled, greased, dry.
OILED, GREASED, DRY = 0.12, 0.10, 0.16


def set_bolt(row: BoltRow) -> SetBolt:
    """Length, locking and torque of a row's bolts.

    What turns on its bolt is not clamped: a castle nut, turned back to the next slot, and a split
    pin. A captive thread takes threadlocker. A locking nut's own drag comes on top of the torque.
    """
    thread, heights = bolt(row.size), nut(row.size)
    total = sum(layer.thickness for layer in row.layers)
    locking = _locking(row)
    washer = heights.penny if row.washers == "penny" else heights.washer
    high = {
        "castle nut and split pin": heights.castle,
        "threadlocker": heights.plain,
    }.get(locking, heights.locking)
    ends = washer if row.captive else 2 * washer
    least = float(bolt_length(total, ends, high, thread.pitch))
    length = next((b.length for b in bolt_lengths() if b.length >= least), None)
    load = nan if row.turns else _preload(row, thread, OILED)
    rim = heights.penny_outside if row.washers == "penny" else heights.washer_outside
    return SetBolt(
        row=row,
        total=total,
        least=least,
        length=length,
        locking=locking,
        torque=nan if row.turns else _torque(row, thread, OILED),
        torque_greased=nan if row.turns else _torque(row, thread, GREASED),
        torque_dry=nan if row.turns else _torque(row, thread, DRY),
        preload=load,
        pressure=float(head_pressure(load, rim, thread.hole_medium)),
    )


def _locking(row: BoltRow) -> Locking | Literal["threadlocker"]:
    if row.turns:
        return "castle nut and split pin"
    if row.captive:
        return "threadlocker"
    return "all-metal locking nut" if row.hot else "nylon-insert locking nut"


def _preload(row: BoltRow, thread: Bolt, friction: float) -> float:
    strength = property_class(row.grade).yield_strength
    return float(preload(strength, TIGHT, thread.diameter, thread.pitch, friction))


def _torque(row: BoltRow, thread: Bolt, friction: float) -> float:
    """To the same share of yield, whatever the friction: a greased bolt wants less."""
    return float(
        tightening_torque(
            _preload(row, thread, friction),
            thread.diameter,
            thread.pitch,
            friction,
            friction,
            thread.head_face,
            thread.hole_medium,
        )
    )
