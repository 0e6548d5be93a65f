"""Bolts: stress area, proof load, preload and the torque that gives it."""

from math import pi

import numpy as np

from pedalwright.core.units import MPa, N, Nmm, Ratio, mm, mm2
from pedalwright.core.working import formula


@formula("A_s", source="ISO 898-1")
def stress_area(d: mm, P: mm) -> mm2:
    """Area at which a metric thread breaks: mean of pitch and core diameter."""
    return pi / 4 * (d - 0.9382 * P) ** 2


@formula("A_s", source="SAE J429")
def unified_stress_area(d: mm, P: mm) -> mm2:
    """The same for unified inch threads; `P` is 25.4 over threads per inch."""
    return pi / 4 * (d - 0.9743 * P) ** 2


@formula("F_p", source="ISO 898-1")
def proof_load(S_p: MPa, A_s: mm2) -> N:
    """Pull a bolt bears without staying longer."""
    return S_p * A_s


@formula("d_2", source="ISO 724")
def pitch_diameter(d: mm, P: mm) -> mm:
    """Pitch diameter of a metric thread."""
    return d - 0.64952 * P


@formula("d_3", source="ISO 898-1")
def core_diameter(d: mm, P: mm) -> mm:
    """Core diameter of a metric thread: what is left of a threaded rod."""
    return d - 1.22687 * P


@formula("d_s", source="VDI 2230")
def stress_diameter(d: mm, P: mm) -> mm:
    """Diameter of a round bar that breaks like the thread."""
    return (pitch_diameter.rule(d, P) + core_diameter.rule(d, P)) / 2


@formula("F_M", source="VDI 2230")
def preload(R_p: MPa, nu: Ratio, d: mm, P: mm, mu: Ratio) -> N:
    """Preload at which pull and wringing together use the share `nu` of yield, usually 0.9.

    `mu` is the friction in the thread. A torque wrench misses it by a factor of 1.6 to 1.8
    between the tightest and the loosest bolt.
    """
    return (
        pi
        / 4
        * stress_diameter.rule(d, P) ** 2
        * nu
        * R_p
        / np.sqrt(
            1
            + 3
            * (
                1.5
                * pitch_diameter.rule(d, P)
                / stress_diameter.rule(d, P)
                * (P / (pi * pitch_diameter.rule(d, P)) + 1.155 * mu)
            )
            ** 2
        )
    )


@formula("M_A", source="VDI 2230")
def tightening_torque(F_M: N, d: mm, P: mm, mu: Ratio, mu_K: Ratio, d_w: mm, d_h: mm) -> Nmm:
    """Torque for a preload; `mu` in the thread, `mu_K` under the head.

    The head rubs between its hole `d_h` and the edge of its bearing face `d_w`.
    """
    return F_M * (0.16 * P + 0.58 * pitch_diameter.rule(d, P) * mu + mu_K * (d_w + d_h) / 4)


@formula("T", source="SAE J429")
def dry_torque(F: N, d: mm) -> Nmm:
    """Rule-of-thumb torque for a dry plated bolt; tens of per cent either way."""
    return 0.2 * F * d


@formula("F_v,Rd", source="EN 1993-1-8 T3.4")
def bolt_shear(alpha_v: Ratio, f_ub: MPa, A: mm2, gamma_M2: Ratio) -> N:
    """Shear a bolt may carry in one plane.

    `alpha_v` is 0.6 (4.6, 5.6, 8.8) or 0.5 (4.8, 5.8, 10.9); `A` the stress area, or the
    shank's with alpha_v 0.6 if no thread lies in the plane.
    """
    return alpha_v * f_ub * A / gamma_M2


@formula("F_t,Rd", source="EN 1993-1-8 T3.4")
def bolt_pull(f_ub: MPa, A_s: mm2, gamma_M2: Ratio) -> N:
    """Pull a bolt may carry."""
    return 0.9 * f_ub * A_s / gamma_M2


@formula("eta", source="EN 1993-1-8 T3.4")
def bolt_use(F_v: N, F_vRd: N, F_t: N, F_tRd: N) -> Ratio:
    """Shear and pull on one bolt together; 1 is all it may carry."""
    return F_v / F_vRd + F_t / (1.4 * F_tRd)
