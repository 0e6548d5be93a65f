"""What is asked of cylinders, balance bar, valves and reservoirs."""

from collections.abc import Iterator

import numpy as np

from pedalwright.core.checks import Finding, Limit, Source
from pedalwright.core.units import MPa, Num, mm3
from pedalwright.hydraulics.formulas import held_head, level_with_valve
from pedalwright.hydraulics.parts import BarTilt, Feed, Reservoirs, ResidualValves

#: Brake fluid on glycol, kg/mm3: 1020 to 1070 kg/m3; the heavier drains back sooner.
FLUID_DENSITY = 1060e-9
GRAVITY = 9.81
#: Pound of force on a square inch, from the definitions of pound, gravity and inch.
PSI = 0.45359237 * 9.80665 / 25.4**2

STROKE = Limit(
    "hydraulics.stroke",
    "At a hard stop the fuller circuit still has a third of its stroke in reserve.",
    "at most",
    "1",
    Source("common practice", "no source: two thirds of what is available", "trade"),
)
BAR_SQUARE = Limit(
    "hydraulics.bar_square",
    "At a hard stop the balance bar stands within 5 degrees of square to its rods.",
    "at most",
    "rad",
    Source("pedalwright", "bars are set square under load; the 5 degrees are ours", "ours"),
    "should",
)
BAR_TILT = Limit(
    "hydraulics.bar_tilt",
    "The balance bar tilts without meeting its tube, even with a circuit lost.",
    "at most",
    "rad",
    Source("geometry", "bar against the ends of its tube", "ours"),
)
END_FLOAT = Limit(
    "hydraulics.bar_end_float",
    "The clevises have the end float that a tilting bar takes up.",
    "at most",
    "mm",
    Source("geometry", "pins keep their distance along the bar", "ours"),
)
RESERVOIR = Limit(
    "hydraulics.reservoir",
    "A circuit's reservoir holds what its pistons take from new linings to worn ones.",
    "at least",
    "mm3",
    Source("FMVSS 135", "S5.4.2, second-hand", "regulation"),
)
DRAIN_BACK = Limit(
    "hydraulics.drain_back",
    "The fluid's level, with what a residual valve holds, stands above the wheel cylinders.",
    "at least",
    "mm",
    Source("common practice", "no source: 10 mm, or fluid drains back to the reservoir", "trade"),
    "should",
)
ABOVE_PORT = Limit(
    "hydraulics.above_port",
    "A remote reservoir stands above its cylinder, so that its hose rises and holds no air.",
    "at least",
    "mm",
    Source("common practice", "no source: 20 mm", "trade"),
)
FEED = Limit(
    "hydraulics.feed",
    "A remote reservoir's hose fills the cylinder as fast as the pedal comes back, in the cold.",
    "at most",
    "MPa",
    Source("pedalwright", "a third of an atmosphere: more draws air past the cups", "ours"),
    "should",
)
RESIDUAL_DRAG = Limit(
    "hydraulics.residual_drag",
    "A residual valve before discs holds at most 3 psi, or their pads drag.",
    "at most",
    "MPa",
    Source("common practice", "no source: 2 psi valves are sold for discs, 10 for drums", "trade"),
    "should",
)


def check(stroke_used: Num) -> Iterator[Finding]:
    """Judge the stroke used of the fuller circuit, as a share of what it has."""
    yield STROKE.check(stroke_used, 2.0 / 3.0, "brake")


def check_bar(tilt: BarTilt) -> Iterator[Finding]:
    """Judge a balance bar; its tube only where it was measured."""
    yield BAR_SQUARE.check(np.abs(tilt.hard_stop), np.deg2rad(5.0))
    if tilt.allowed is not None:
        yield BAR_TILT.check(np.abs(tilt.hard_stop), tilt.allowed, "hard stop")
        yield BAR_TILT.check(np.abs(tilt.rear_lost), tilt.allowed, "rear circuit lost")
        yield BAR_TILT.check(np.abs(tilt.front_lost), tilt.allowed, "front circuit lost")
    if tilt.drawn_in is not None and tilt.end_float is not None:
        yield END_FLOAT.check(tilt.drawn_in, tilt.end_float)


def check_reservoirs(
    reservoirs: Reservoirs, needed: tuple[mm3 | None, mm3 | None], held: tuple[MPa, MPa]
) -> Iterator[Finding]:
    """Judge reservoirs by the fluid that wear takes, where that is known, and by their height.

    `held` is what residual valves hold in the front and the rear circuit.
    """
    circuits = ("front circuit", "rear circuit")
    have = (reservoirs.front, reservoirs.rear)
    for about, volume, wanted, pressure in zip(circuits, have, needed, held, strict=True):
        if wanted is not None:
            yield RESERVOIR.check(volume, wanted, about)
        level = level_with_valve(reservoirs.height, held_head(pressure, FLUID_DENSITY, GRAVITY))
        yield DRAIN_BACK.check(level, 10.0, about)


def check_feed(feed: Feed, losses: tuple[MPa, MPa]) -> Iterator[Finding]:
    """Judge the hose of a remote reservoir; `losses` as both pistons come back."""
    yield ABOVE_PORT.check(feed.above_port, 20.0)
    for about, lost in zip(("front circuit", "rear circuit"), losses, strict=True):
        yield FEED.check(lost, 0.03, about)


def check_residual(valves: ResidualValves, discs: tuple[bool, bool]) -> Iterator[Finding]:
    """Judge residual valves before discs; `discs` says front and rear."""
    circuits = (("front circuit", valves.front), ("rear circuit", valves.rear))
    for (about, held), disc in zip(circuits, discs, strict=True):
        if disc:
            yield RESIDUAL_DRAG.check(held, 3.0 * PSI, about)
