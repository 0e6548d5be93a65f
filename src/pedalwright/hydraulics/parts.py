"""Cylinders and how two of them share one push."""

from dataclasses import dataclass
from typing import TypeAlias

from pedalwright.core.units import Ratio, mm, mm2, mm3


@dataclass(frozen=True, kw_only=True, slots=True)
class Cylinder:
    """One master cylinder."""

    bore: mm
    stroke: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Tandem:
    """Two circuits in one bore; each has half of the stroke."""

    bore: mm
    stroke: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class BalanceBar:
    """A bar between two rods, held by a bearing that can stand off centre."""

    #: Rod to rod.
    spacing: mm
    #: Bearing off centre, positive toward the front brakes' rod, which then gets more.
    offset: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Twin:
    """Two cylinders side by side, sharing the push through a balance bar."""

    front: Cylinder
    rear: Cylinder
    bar: BalanceBar


Masters: TypeAlias = Tandem | Twin


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
