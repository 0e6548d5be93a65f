"""The sheet around a fastener: bearing, pull-through, prying, and how it shares a load."""

from math import pi

import numpy as np

from pedalwright.core.units import MPa, N, Nmm, Ratio, mm, mm2, mm_N
from pedalwright.core.working import formula


@formula("alpha_b", source="EN 1993-1-8 T3.4")
def bearing_end_factor(e_1: mm, p_1: mm, d_0: mm, f_ub: MPa, f_u: MPa) -> Ratio:
    """How much of its bearing strength a sheet has along the pull: `e_1` to the end, `p_1` pitch.

    For a lone fastener give a large pitch.
    """
    return np.minimum(
        np.minimum(e_1 / (3 * d_0), p_1 / (3 * d_0) - 0.25), np.minimum(f_ub / f_u, 1.0)
    )


@formula("k_1", source="EN 1993-1-8 T3.4")
def bearing_side_factor(e_2: mm, p_2: mm, d_0: mm) -> Ratio:
    """The same across the pull: `e_2` to the edge, `p_2` to the next row."""
    return np.minimum(np.minimum(2.8 * e_2 / d_0 - 1.7, 1.4 * p_2 / d_0 - 1.7), 2.5)


@formula("F_b,Rd", source="EN 1993-1-8 T3.4")
def bearing(k_1: Ratio, alpha_b: Ratio, f_u: MPa, d: mm, t: mm, gamma_M2: Ratio) -> N:
    """Load at which a bolt begins to draw its hole out long, with the code's factor."""
    return k_1 * alpha_b * f_u * d * t / gamma_M2


@formula("B_p,Rd", source="EN 1993-1-8 T3.4")
def punching(d_m: mm, t: mm, f_u: MPa, gamma_M2: Ratio) -> N:
    """Pull at which a head or nut is drawn through the sheet.

    `d_m` is the mean of the head's width across flats and across corners, or the washer's
    diameter if it is stiff; not the hole's.
    """
    return 0.6 * pi * d_m * t * f_u / gamma_M2


@formula("M_pl", source="EN 1993-1-8 6.2.4")
def flange_plastic_moment(l_eff: mm, t: mm, f_y: MPa) -> Nmm:
    """Moment at which a strip `l_eff` of a flange folds."""
    return l_eff * t**2 * f_y / 4


@formula("F_1", source="EN 1993-1-8 6.2.4")
def flange_folds(M_pl: Nmm, m: mm) -> N:
    """Pull of a two-bolt T-stub, mode 1: the flange folds at web and bolts; `m` bolt to web."""
    return 4 * M_pl / m


@formula("F_2", source="EN 1993-1-8 6.2.4")
def flange_pries(M_pl: Nmm, m: mm, n: mm, F_t: N) -> N:
    """Mode 2: the flange folds at the web and pries the bolts off.

    `n` from bolt to edge, not more than 1.25 m; `F_t` all bolts together.
    """
    return (2 * M_pl + np.minimum(n, 1.25 * m) * F_t) / (m + np.minimum(n, 1.25 * m))


@formula("alpha", source="EN 1993-1-3 T8.1")
def blind_rivet_factor(t: mm, d: mm) -> Ratio:
    """Bearing factor of a blind rivet between equally thick sheets (from memory, to verify)."""
    return np.minimum(3.6 * np.sqrt(t / d), 2.1)


@formula("F_b,Rd", source="EN 1993-1-3 T8.1")
def blind_rivet_bearing(alpha: Ratio, f_u: MPa, d: mm, t: mm, gamma_M2: Ratio) -> N:
    """Load at which a blind rivet draws its hole out long; `t` the thinner sheet."""
    return alpha * f_u * d * t / gamma_M2


@formula("p", source="AC 43.13-1B")
def rivet_pitch(c: Ratio, d_h: mm, t: mm) -> mm:
    """Widest pitch of one row of solid rivets that is as strong as the sheet it joins.

    `c` is the rivet's shear strength over the sheet's pull strength, `d_h` the hole. The
    smaller of rivet shear and sheet bearing (1.6 times its pull strength).
    """
    return np.minimum(c * pi / 4 * d_h**2 / t, 1.6 * d_h)


@formula("n", source="AC 43.13-1B")
def rivets_in_row(w: mm, p: mm, k: Ratio) -> Ratio:
    """Rivets for a width, rounded up; `k` is the share wanted of the full row."""
    return np.ceil(k * w / p - 1e-9)


@formula("f", source="Huth, ASTM STP 927")
def fastener_flexibility(
    t_1: mm, t_2: mm, d: mm, E_1: MPa, E_2: MPa, E_f: MPa, a: Ratio, b: Ratio
) -> mm_N:
    """How far two sheets slide on one fastener in single shear.

    Rivets in metal a = 0.4, b = 2.2; bolts a = 2/3, b = 3. Tests scatter by a factor of two;
    blind rivets are hollow, take twice this.
    """
    return ((t_1 + t_2) / (2 * d)) ** a * (
        b * (1 / (t_1 * E_1) + 1 / (t_2 * E_2) + 1 / (2 * t_1 * E_f) + 1 / (2 * t_2 * E_f))
    )


@formula("F_x", source="Shigley")
def fastener_force_x(V_x: N, n: Ratio, M: Nmm, y: mm, I_p: mm2) -> N:
    """A fastener's share of a load in the plane of the sheet, along x.

    An even part, and one that turns about the middle of the group in proportion to the
    distance; `I_p` is the sum of x^2 + y^2 over all fasteners. Sheet stiff, fasteners alike.
    """
    return V_x / n - M * y / I_p


@formula("F_y", source="Shigley")
def fastener_force_y(V_y: N, n: Ratio, M: Nmm, x: mm, I_p: mm2) -> N:
    """The same along y; `M` turns x towards y."""
    return V_y / n + M * x / I_p


@formula("F", source="Shigley")
def fastener_pull(M: Nmm, y: mm, I_y: mm2) -> N:
    """A fastener's pull when the bracket tips: in proportion to its distance `y` from the hinge.

    `I_y` is the sum of y^2 over all fasteners.
    """
    return M * y / I_y
