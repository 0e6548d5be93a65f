"""How far the pad gives: arm, rod, cylinder flange, pivot, each with the force it really sees."""

import numpy as np

from pedalwright.core.units import MPa, N, N_mm, Nmm, Ratio, mm, mm2, mm4, rad
from pedalwright.core.working import formula
from pedalwright.structure.formulas.sections import GAUSS, bar_inertia, torsion_constant


@formula("G", source="beam theory")
def shear_modulus(E: MPa, nu: Ratio) -> MPa:
    """Shear modulus of an even material."""
    return E / (2 * (1 + nu))


@formula("I_e", source="beam theory")
def even_inertia(t: mm, h_0: mm, h_1: mm) -> mm4:
    """Second moment of an even cantilever that gives as much at its tip as a tapered one.

    `h_0` is the depth at the tip, where the moment is nil, `h_1` at the root; the taper is
    even. Sum over eight Gauss places `u` of weight `w`.
    """
    return 1 / (3 * sum(w * u**2 / bar_inertia.rule(t, h_0 + (h_1 - h_0) * u) for u, w in GAUSS))


@formula("J_e", source="Timoshenko and Goodier")
def even_torsion_constant(t: mm, h_0: mm, h_1: mm) -> mm4:
    """Torsion constant of an even bar that twists as much as an evenly tapered one."""
    return 1 / sum(w / torsion_constant.rule(t, h_0 + (h_1 - h_0) * u) for u, w in GAUSS)


@formula("A_e", source="beam theory")
def even_area(t: mm, h_0: mm, h_1: mm) -> mm2:
    """Area of an even bar that slides in shear as much as an evenly tapered one."""
    return 1 / sum(w / (t * (h_0 + (h_1 - h_0) * u)) for u, w in GAUSS)


@formula("delta_M", source="beam theory")
def bending_give(F: N, a: mm, b: mm, E: MPa, I_a: mm4, I_b: mm4) -> mm:
    """How far the pad moves because the arm bends.

    The arm overhangs by `a` the nearer of pivot and pin; the other holds it a distance `b`
    further on. `I_a`, `I_b` are the even second moments of the two lengths; b = 0 is a
    cantilever.
    """
    return F * a**2 * (a / I_a + b / I_b) / (3 * E)


@formula("delta_V", source="beam theory")
def shear_give(F: N, a: mm, b: mm, G: MPa, A_a: mm2, A_b: mm2) -> mm:
    """How far the pad moves because the arm slides in shear; between pivot and pin it counts.

    1.2 is the shear factor of a rectangle.
    """
    return 1.2 * F * (a / A_a + a**2 / (b * A_b)) / G


@formula("phi", source="Timoshenko and Goodier")
def twist(T: Nmm, L: mm, G: MPa, J: mm4) -> rad:
    """Twist of a bar over its length."""
    return T * L / (G * J)


@formula("delta_T", source="geometry")
def twist_give(phi: rad, e: mm) -> mm:
    """A pad that stands `e` beside a twisted arm swings away by this much."""
    return phi * np.abs(e)


@formula("k", source="beam theory")
def rod_stiffness(E: MPa, A: mm2, L: mm) -> N_mm:
    """Stiffness of a rod along its length; clevis and threads not counted."""
    return E * A / L


@formula("delta", source="statics; work in is work out")
def spring_give(F: N, n: Ratio, k: N_mm) -> mm:
    """How far the pad moves because something gives that sees `n` times the push.

    The force there is n F and it moves by n F / k; at the pad that is n times as much. `n` is
    the pedal ratio for the cylinder's flange, pivot force over push for the pivot's bracket.
    """
    return n**2 * F / k


@formula("F_rod", source="statics")
def pin_rod_force(F: N, n: Ratio) -> N:
    """Force along the rod at the pedal's pin; `n` is its share of the push."""
    return F * n


@formula("F_pivot", source="statics")
def pivot_force(F: N, n: Ratio) -> N:
    """Force on the pivot; `n` is its share of the push, from the balance of the lever."""
    return F * n


@formula("n_pivot", source="statics")
def pivot_share_between(i: Ratio) -> Ratio:
    """Pivot force over push with the pin between pivot and pad, push and rod parallel."""
    return i - 1


@formula("n_pivot", source="statics")
def pivot_share_beyond(i: Ratio) -> Ratio:
    """Pivot force over push with the pin beyond the pivot, push and rod parallel."""
    return i + 1


@formula("delta_f", source="beam theory")
def flange_give(F: N, i: Ratio, k: N_mm) -> mm:
    """How far the cylinder's flange itself moves."""
    return i * F / k


@formula("delta", source="Clapeyron")
def give_of_energy(U: Nmm, F: N) -> mm:
    """How far a force has moved that stores `U` in what gives: the work is half force times way."""
    return 2 * U / F
