"""Cylinders and how two of them share one push."""

from dataclasses import dataclass
from typing import TypeAlias

from pedalwright.core.units import MPa, N, Ratio, mm, mm2, mm3, rad


@dataclass(frozen=True, kw_only=True, slots=True)
class Cylinder:
    """One master cylinder."""

    bore: mm
    stroke: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Boost:
    """One point of a servo's curve: force on its rod, force it hands on."""

    push: N
    force: N


@dataclass(frozen=True, kw_only=True, slots=True)
class Servo:
    """A servo between the pedal's rod and the cylinder, as its curve from rest onward.

    The curve begins at nothing; past its last point each newton adds just one newton. Ratio and
    run-out are one point: the force where help ends, and the ratio times that.
    """

    points: tuple[Boost, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Tandem:
    """Two circuits in one bore; each has half of the stroke."""

    bore: mm
    stroke: mm
    servo: Servo | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class BarTube:
    """The tube a balance bar passes through, and what lets the bar tilt in it."""

    bar_diameter: mm
    bore: mm
    length: mm
    #: Clevis to end of the tube, on each side, with the bar square.
    end_float: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class BalanceBar:
    """A bar between two rods, held by a bearing that can stand off centre."""

    #: Rod to rod.
    spacing: mm
    #: Bearing off centre, positive toward the front brakes' rod, which then gets more.
    offset: mm
    tube: BarTube | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Twin:
    """Two cylinders side by side, sharing the push through a balance bar."""

    front: Cylinder
    rear: Cylinder
    bar: BalanceBar


Masters: TypeAlias = Tandem | Twin


@dataclass(frozen=True, kw_only=True, slots=True)
class Limiter:
    """A valve that lets the rear circuit rise less past its knee."""

    knee: MPa
    #: Rear pressure gained for each unit of pressure before the valve; 0 holds it where it is.
    slope: Ratio


@dataclass(frozen=True, kw_only=True, slots=True)
class ResidualValves:
    """Pressure that stays in each circuit with the pedal up; 0 for a circuit without a valve."""

    front: MPa
    rear: MPa


@dataclass(frozen=True, kw_only=True, slots=True)
class Feed:
    """The hose from a remote reservoir to its cylinder."""

    bore: mm
    length: mm
    #: Lowest fluid level above the cylinder's port.
    above_port: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Reservoirs:
    """What the reservoirs hold, on the cylinders or remote from them."""

    #: Fluid between the filled mark and the port of each circuit.
    front: mm3
    rear: mm3
    #: Lowest fluid level above the highest wheel cylinder or calliper; below it, negative.
    height: mm
    #: Where they stand away from the cylinders, how the fluid comes down to these.
    feed: Feed | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Circuit:
    """One circuit as its cylinder feeds it."""

    area: mm2
    #: Share of the rod force that its piston feels: 1 in a tandem, about 0.5 beside a bar.
    share: Ratio
    #: Stroke it has to itself.
    stroke: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Demand:
    """Fluid each circuit takes up to the hard stop."""

    front: mm3
    rear: mm3


@dataclass(frozen=True, kw_only=True, slots=True)
class Strokes:
    """Rod travel at the pedal: whole system, and with one circuit lost."""

    hard_stop: mm
    front_alone: mm
    rear_alone: mm
    #: Piston travel of each circuit at the hard stop, dead stroke included.
    front_piston: mm
    rear_piston: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class BarTilt:
    """How far a balance bar tilts, and how far it may; positive with the front rod ahead."""

    hard_stop: rad
    rear_lost: rad
    front_lost: rad
    #: Where the bar meets its tube; None where the tube was not measured.
    allowed: rad | None = None
    #: How much nearer to the tube each clevis is drawn at the larger tilt, and what it has.
    drawn_in: mm | None = None
    end_float: mm | None = None
