"""Fillet welds in steel, and what welding takes from an aluminium alloy.

EN 1993-1-8 begins at 4 mm plate; for thinner sheet the numbers are a guide and a test coupon
decides. Correlation factors: 0.80 S235, 0.85 S275, 0.90 S355.
"""

from math import sqrt

import numpy as np

from pedalwright.core.units import MPa, N, N_mm, Nmm, Ratio, mm, mm3
from pedalwright.core.working import formula


@formula("f_vw,d", source="EN 1993-1-8 4.5.3.3")
def weld_shear_strength(f_u: MPa, beta_w: Ratio, gamma_M2: Ratio) -> MPa:
    """Stress a fillet weld may carry in any direction; `f_u` of the weaker part joined."""
    return f_u / (sqrt(3) * beta_w * gamma_M2)


@formula("l_eff", source="EN 1993-1-8 4.5.1")
def weld_effective_length(l: mm, a: mm) -> mm:  # noqa: E741 - the code's symbol
    """Length that counts, start and end crater off.

    Under 6 a, or under 30 mm, it is no weld.
    """
    return l - 2 * a


@formula("tau_par", source="EN 1993-1-8 4.5.3")
def weld_shear(V: N, l: mm, a: mm) -> MPa:  # noqa: E741
    """Stress along two fillets that share a load lengthwise."""
    return V / (2 * a * l)


@formula("sigma_w", source="beam theory")
def weld_bending(M: Nmm, l: mm, a: mm) -> MPa:  # noqa: E741
    """Stress at the ends of two fillets of length `l` bent in the plane of the plate."""
    return 3 * M / (a * l**2)


@formula("f_w", source="EN 1993-1-8 4.5.3.3")
def weld_resultant(sigma_w: MPa, tau_par: MPa) -> MPa:
    """Simplified: all stress in the throat as one, against the shear strength."""
    return np.sqrt(sigma_w**2 + tau_par**2)


@formula("sigma_v", source="EN 1993-1-8 4.5.3.2")
def weld_equivalent(sigma_w: MPa, tau_par: MPa) -> MPa:
    """Directional: all stresses in the throat, which stands at 45 degrees, as one pull.

    `sigma_w` splits into sigma_w / sqrt(2) across the throat and as much in shear, so
    sqrt(sigma_perp^2 + 3 (tau_perp^2 + tau_par^2)) is sqrt(2 sigma_w^2 + 3 tau_par^2).
    Judged against f_u / (beta_w gamma_M2).
    """
    return np.sqrt(2 * sigma_w**2 + 3 * tau_par**2)


@formula("q_x", source="Shigley")
def weld_line_force_x(V_x: N, L: mm, M: Nmm, y: mm, J: mm3) -> N_mm:
    """Force per length of a weld taken as a line, along x; `J` is the line's polar moment."""
    return V_x / L - M * y / J


@formula("q_y", source="Shigley")
def weld_line_force_y(V_y: N, L: mm, M: Nmm, x: mm, J: mm3) -> N_mm:
    """The same along y; `M` turns x towards y."""
    return V_y / L + M * x / J


@formula("q_z", source="Shigley")
def weld_line_force_z(P: N, L: mm, M: Nmm, y: mm, I: mm3) -> N_mm:  # noqa: E741
    """The same out of the sheet; `M` tips the part, `I` is the line's moment of that axis.

    Weld and part alone; that the part also leans on the sheet is left in hand.
    """
    return P / L + M * y / I


@formula("tau", source="Shigley")
def weld_throat_stress(q: N_mm, a: mm) -> MPa:
    """Stress in the throat `a` from a force per length."""
    return q / a


@formula("f_haz", source="EN 1999-1-1 T3.2")
def softened_strength(rho: Ratio, f: MPa) -> MPa:
    """What is left of an alloy's strength beside a weld."""
    return rho * f


@formula("b_haz", source="EN 1999-1-1 6.1.6.3", empirical=True)
def softened_width_mig(t: mm) -> mm:
    """How far from a MIG weld the alloy is softened (from a public copy of the code)."""
    return np.where(t <= 6, 20.0, np.where(t <= 12, 30.0, np.where(t <= 25, 35.0, 40.0)))
