"""Cylinders, balance bars and fluid: one formula each."""

import numpy as np

from pedalwright.core.units import MPa, N, Ratio, mm, mm2, mm3
from pedalwright.core.working import formula


@formula("A", source="geometry")
def bore_area(d: mm) -> mm2:
    """Piston area of a cylinder of bore `d`."""
    return np.pi / 4 * d**2


@formula("p", source="Pascal")
def line_pressure(F_pedal: N, i: Ratio, eta: Ratio, share: Ratio, A: mm2) -> MPa:
    """Pressure behind one piston: push on the pad x ratio x efficiency x its share, over bore area.

    Return springs and seals are in the efficiency; 0.8 to 0.95 with the cylinder is common.
    """
    return F_pedal * i * eta * share / A


@formula("share_front", source="geometry")
def front_rod_share(S: mm, e: mm) -> Ratio:
    """Front rod's share of the push through a balance bar: moments about the rear rod.

    `S` is rod to rod, `e` the bearing's offset toward the front rod. The rod nearer the
    bearing gets more. True while the bar is square to the rods.
    """
    return (S / 2 + e) / S


@formula("V_lift", source="geometry")
def lift_volume(n: Ratio, A: mm2, lift: mm) -> mm3:
    """Fluid that moves `n` pistons from rest until the linings press."""
    return n * A * lift


@formula("s", source="geometry")
def piston_stroke(V: mm3, A: mm2) -> mm:
    """Piston travel that moves the volume `V`."""
    return V / A


@formula("V_pads", source="geometry")
def pad_volume(n: Ratio, A: mm2, squeeze: mm) -> mm3:
    """Fluid taken by linings that squeeze under each of `n` pistons."""
    return n * A * squeeze


@formula("V_fluid", source="elasticity")
def fluid_compression(V: mm3, p: MPa, K: MPa) -> mm3:
    """Fluid lost to its own compression; `K` is its bulk modulus, which free air ruins."""
    return V * p / K


@formula("s_tube", source="geometry")
def bar_travel(share: Ratio, s_front: mm, s_rear: mm) -> mm:
    """Travel of the bar's bearing: rod travels weighed by the shares of force (same work)."""
    return share * s_front + (1 - share) * s_rear


@formula("p_head", source="hydrostatics", empirical=True)
def head_pressure(rho_kg_m3: Ratio, h: mm) -> MPa:
    """Pressure of a column of fluid of height `h`; density in kg/m3, g = 9.81 m/s2."""
    return rho_kg_m3 * 9.81 * h * 1e-9
