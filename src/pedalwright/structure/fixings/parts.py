"""A fixing as the builder can measure it: holes where they are, what is in them, what they hold."""

from dataclasses import dataclass
from typing import TypeAlias

from pedalwright.core.points import Point
from pedalwright.core.units import MPa, N, Ratio, mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Sheet:
    """What the fasteners go through: of the two sheets the weaker."""

    thickness: mm
    yield_strength: MPa
    tensile_strength: MPa
    #: Least distance from a hole's middle to the sheet's edge.
    edge: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Bolted:
    """Bolts through and through, or into a captive nut."""

    holes: tuple[Point, ...]
    #: Square to the sheet, to the side on which the part stands.
    axis: Point
    #: From the outermost hole to the edge of the part that stands there: what it tips over.
    toe: mm
    sheet: Sheet
    diameter: mm
    pitch: mm
    #: Of the bolt: 800 MPa for class 8.8.
    tensile_strength: MPa
    #: Bearing face under the softer side's head, nut or washer, across.
    head: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Riveted:
    """Blind rivets, or rivet nuts: hollow, so that only their maker can say what they bear."""

    holes: tuple[Point, ...]
    #: Square to the sheet, to the side on which the part stands.
    axis: Point
    #: From the outermost hole to the edge of the part that stands there: what it tips over.
    toe: mm
    sheet: Sheet
    diameter: mm
    #: Of one rivet, by its maker: least shear and pull.
    shear: N
    pull: N
    #: Head, across.
    head: mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Run:
    """One straight run of fillet weld."""

    start: Point
    end: Point


@dataclass(frozen=True, kw_only=True, slots=True)
class Welded:
    """Fillet welds all round, or where they are."""

    runs: tuple[Run, ...]
    #: Square to the sheet, to the side on which the part stands.
    axis: Point
    #: Of the fillet: 0.7 of its leg.
    throat: mm
    #: The thinner part joined, and its strength beside the weld.
    thickness: mm
    tensile_strength: MPa
    #: EN 1993-1-8: 0.80 for S235, 0.85 for S275, 0.90 for S355.
    correlation: Ratio


Fixing: TypeAlias = Bolted | Riveted | Welded


@dataclass(frozen=True, kw_only=True, slots=True)
class Load:
    """A force at a point, from the part on what carries it."""

    at: Point
    force: Point


@dataclass(frozen=True, kw_only=True, slots=True)
class Fastened:
    """A group of fasteners under one load; the worst of each."""

    pull: N
    shear: N
    #: Shear and pull together, shear against the hole, pull against the head, over what each bears.
    together: Ratio
    bearing: Ratio
    pull_through: Ratio
    #: The worst of the three with the hardest worked fastener gone; infinite if none is left.
    one_missing: Ratio


@dataclass(frozen=True, kw_only=True, slots=True)
class WeldUse:
    """A line of weld under one load."""

    #: Force per length at the worst end of a run over what the throat bears.
    use: Ratio
    #: Thickness of the thinner part over the 4 mm where the code begins.
    thin: Ratio
