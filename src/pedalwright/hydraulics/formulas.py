"""Cylinders, balance bars and fluid: one formula each."""

import numpy as np

from pedalwright.core.units import (
    MPa,
    MPa_s,
    N,
    Ratio,
    kg_mm3,
    m_s2,
    mm,
    mm2,
    mm2_MPa,
    mm3,
    mm3_MPa,
    mm3_s,
    rad,
    s,
)
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


@formula("V_callipers", source="elasticity")
def calliper_volume(n: Ratio, k: mm3_MPa, p: MPa) -> mm3:
    """Fluid taken by `n` callipers that spread and swell by `k` for each unit of pressure.

    Straight-line in pressure; real callipers give more in the first few bar.
    """
    return n * k * p


@formula("V_hoses", source="elasticity")
def hose_volume(k: mm2_MPa, L: mm, p: MPa) -> mm3:
    """Fluid taken by the swelling of hose of length `L`; `k` is per length and pressure.

    Straight-line in pressure, at room temperature; 1 mm2/MPa is 1 cm3 per m and MPa.
    """
    return k * L * p


@formula("V_fluid", source="elasticity")
def fluid_compression(V: mm3, p: MPa, K: MPa) -> mm3:
    """Fluid lost to its own compression; `K` is its bulk modulus, which free air ruins."""
    return V * p / K


@formula("V_worn", source="FMVSS 135, S5.4.2")
def wear_volume(n: Ratio, A: mm2, w_pad: mm, w_disc: mm) -> mm3:
    """Fluid that follows `n` pistons from new linings to worn ones.

    `w_pad` is the usable wear of a lining, `w_disc` that of one face of the disc. The
    reservoir of a circuit holds at least this, so that it never runs dry between services.
    """
    return n * A * (w_pad + w_disc)


@formula("s_tube", source="geometry")
def bar_travel(share: Ratio, s_front: mm, s_rear: mm) -> mm:
    """Travel of the bar's bearing: rod travels weighed by the shares of force (same work)."""
    return share * s_front + (1 - share) * s_rear


@formula("phi_bar", source="geometry")
def bar_tilt(s_front: mm, s_rear: mm, S: mm) -> rad:
    """Tilt of the bar when its rods travel unequally; positive when the front rod is ahead.

    For rods that stay level and a bar set square at rest. With a circuit lost the tilt is
    largest: then the bar must still clear the tube it passes through.
    """
    return np.arctan2(s_front - s_rear, S)


@formula("p_head", source="hydrostatics")
def head_pressure(rho: kg_mm3, g: m_s2, h: mm) -> MPa:
    """Pressure of a column of fluid of height `h`.

    Brake fluid on glycol weighs 1020 to 1070 kg/m3. A cylinder below its callipers feels this
    head, and their pistons creep back by it unless a residual valve holds more.
    """
    return rho * g * h


@formula("h_held", source="hydrostatics")
def held_head(p: MPa, rho: kg_mm3, g: m_s2) -> mm:
    """Height of fluid that a residual valve of pressure `p` keeps from draining back."""
    return p / (rho * g)


@formula("phi_tube", source="geometry")
def tube_tilt(D: mm, L: mm, d: mm) -> rad:
    """Tilt at which a bar of diameter `d` meets the end of the tube it passes through.

    `D` is the tube's bore and `L` its length, with twice the bearing's offset added because the
    longer side meets it first. From D cos(phi) = d + L sin(phi); 0 for a bar too thick to enter.
    For a bar of one diameter between its clevises, tilting about the middle of the bore.
    """
    return np.where(d < D, np.arccos(d / np.hypot(D, L)) - np.arctan2(L, D), 0.0)


@formula("c_bar", source="geometry")
def clevis_draw(S: mm, phi: rad) -> mm:
    """How far each clevis is drawn toward the tube when a bar tilts by `phi`.

    Its pins stay `S` apart along the bar, so the rods come nearer to each other, by half on each
    side.
    """
    return S * (1 - np.cos(phi)) / 2


@formula("G", source="geometry")
def servo_gain(B: N, F: N) -> Ratio:
    """How many times a servo multiplies the rod's force `F`, as its curve says for this force."""
    return B / F


@formula("p_rear", source="geometry")
def limited_pressure(p: MPa, p_knee: MPa, m: Ratio) -> MPa:
    """Pressure behind a valve that passes all up to its knee and `m` of what comes after.

    The knee is taken as sharp and as fixed; a valve worked by the rear springs moves it.
    """
    return np.minimum(p, p_knee + m * (p - p_knee))


@formula("h_level", source="hydrostatics")
def level_with_valve(h: mm, h_held: mm) -> mm:
    """Fluid level above the highest wheel cylinder, what a residual valve holds counted in."""
    return h + h_held


@formula("Q", source="geometry")
def refill_flow(A: mm2, s_piston: mm, t: s) -> mm3_s:
    """Fluid a cylinder asks for when its piston is let back over `s_piston` in the time `t`."""
    return A * s_piston / t


@formula("dp", source="Hagen and Poiseuille")
def hose_loss(eta: MPa_s, L: mm, Q: mm3_s, d: mm) -> MPa:
    """Pressure lost by smooth flow through a hose of bore `d`."""
    return 128 * eta * L * Q / (np.pi * d**4)
