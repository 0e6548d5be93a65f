"""Distances of holes on an arm, as a rule measures them."""

import numpy as np

from pedalwright.core.units import N, Nmm, mm, rad
from pedalwright.core.working import formula


@formula("c", source="geometry")
def land(e: mm, d_1: mm, d_2: mm) -> mm:
    """Metal left between two holes `e` apart from centre to centre; less than nought, they meet."""
    return e - (d_1 + d_2) / 2


@formula("c_min", source="EN 1993-1-8")
def land_needed(d_1: mm, d_2: mm) -> mm:
    """Metal to leave between two holes for pins or bolts: 1.2 of the larger diameter.

    The standard wants 2.2 diameters from centre to centre along the load (table 3.3), so that
    neither hole is torn into the other; across the load it would be 2.4.
    """
    return 1.2 * np.maximum(d_1, d_2)


@formula("e", source="geometry")
def apart(r_1: mm, r_2: mm, gamma: rad) -> mm:
    """Distance of two holes at two radii, `gamma` between their lines from the pivot."""
    return np.sqrt(r_1**2 + r_2**2 - 2 * r_1 * r_2 * np.cos(gamma))


@formula("d_bush", source="geometry")
def bush_hole(d: mm, e: mm, w: mm) -> mm:
    """Hole for a bush round a hole that is `e` off; the pin bored in it keeps a wall of `w`."""
    return d + 2 * (e + w)


@formula("M", source="statics")
def moment_beside_pin(F: N, R: mm, r_pin: mm, r: mm) -> Nmm:
    """Bending of the arm `r` from the pivot, the rod pin at `r_pin` on the pad's side.

    Largest at the pin; outside it falls to nought at the pad, inside to nought at the pivot.
    """
    return F * np.minimum(R - r, (R - r_pin) * r / r_pin)


@formula("M", source="statics")
def moment_beyond_pivot(F: N, R: mm, r_pin: mm, r: mm) -> Nmm:
    """Bending `r` beyond the pivot, the rod pin there too: largest at the pivot."""
    return F * R * np.maximum(0.0, 1.0 - r / r_pin)
