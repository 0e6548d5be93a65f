"""Groups of fasteners and lines of weld: who takes how much of a load.

Elastic: the sheet is taken as stiff and the fasteners as alike. Coordinates lie in the plane
of the joint; arrays are (fasteners,) or (fasteners, variants), loads numbers or (variants,).
Report the worst of all fasteners: the worst corner is not always the one that looks it.
"""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array, N, N_mm, Nmm, Num, mm
from pedalwright.structure.formulas.joints import (
    fastener_force_x,
    fastener_force_y,
    fastener_pull,
)
from pedalwright.structure.formulas.welds import weld_line_force_x, weld_line_force_y


@dataclass(frozen=True, kw_only=True, slots=True)
class Shares:
    """What each fastener takes; shapes as the coordinates."""

    x: N
    y: N
    #: Both together.
    size: N
    worst: N


@dataclass(frozen=True, kw_only=True, slots=True)
class WeldLine:
    """Force per length at both ends of each run of weld, (2, runs) or (2, runs, variants)."""

    length: mm
    x: N_mm
    y: N_mm
    size: N_mm
    worst: N_mm


def in_plane(x: Array, y: Array, *, force: tuple[N, N], at: tuple[mm, mm]) -> Shares:
    """A load in the plane of the joint, along the line through the point `at`."""
    reach_x, reach_y = x - np.mean(x, axis=0), y - np.mean(y, axis=0)
    moment = _moment(force, at[0] - np.mean(x, axis=0), at[1] - np.mean(y, axis=0))
    polar = np.sum(reach_x**2 + reach_y**2, axis=0)
    along = fastener_force_x(force[0], len(x), moment, reach_y, polar)
    across = fastener_force_y(force[1], len(y), moment, reach_x, polar)
    size = np.hypot(along, across)
    return Shares(x=along, y=across, size=size, worst=np.max(size, axis=0))


def tipping_about_edge(y: Array, moment: Nmm) -> N:
    """Pull on each fastener of a stiff bracket that hinges on its lower edge, y = 0."""
    return fastener_pull(moment, y, np.sum(y**2, axis=0))


def tipping_about_middle(y: Array, moment: Nmm) -> N:
    """The same on flexible sheet, which hinges on the middle of the group: pulls harder."""
    reach = y - np.mean(y, axis=0)
    return fastener_pull(moment, reach, np.sum(reach**2, axis=0))


def weld_line(x: Array, y: Array, *, force: tuple[N, N], at: tuple[mm, mm]) -> WeldLine:
    """A load in the plane of a weld group; runs are straight from row 0 to row 1 of x and y.

    `x`, `y` are (2, runs) or (2, runs, variants).
    """
    length = np.hypot(x[1] - x[0], y[1] - y[0])
    total = np.sum(length, axis=0)
    centre_x = np.sum(length * np.mean(x, axis=0), axis=0) / total
    centre_y = np.sum(length * np.mean(y, axis=0), axis=0) / total
    reach_x, reach_y = x - centre_x, y - centre_y
    middle = np.mean(reach_x, axis=0) ** 2 + np.mean(reach_y, axis=0) ** 2
    polar = np.sum(length**3 / 12 + length * middle, axis=0)
    moment = _moment(force, at[0] - centre_x, at[1] - centre_y)
    along = weld_line_force_x(force[0], total, moment, reach_y, polar)
    across = weld_line_force_y(force[1], total, moment, reach_x, polar)
    size = np.hypot(along, across)
    return WeldLine(length=total, x=along, y=across, size=size, worst=np.max(size, axis=(0, 1)))


def _moment(force: tuple[Num, Num], x: Num, y: Num) -> Nmm:
    return x * force[1] - y * force[0]
