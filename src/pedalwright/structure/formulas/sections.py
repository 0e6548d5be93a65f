"""Sections: flat bar, drilled flat bar, round bar and tube, bent channel."""

from math import pi

import numpy as np
from numpy.polynomial.legendre import leggauss

from pedalwright.core.units import Ratio, mm, mm2, mm3, mm4
from pedalwright.core.working import formula

#: Gauss-Legendre places and weights between 0 and 1, for sums along a tapered bar.
GAUSS: tuple[tuple[float, float], ...] = tuple(
    (float((1 + x) / 2), float(w / 2)) for x, w in zip(*leggauss(8), strict=True)
)


@formula("A", source="geometry")
def bar_area(t: mm, h: mm) -> mm2:
    """Area of a flat bar of thickness `t` and depth `h`."""
    return t * h


@formula("I", source="beam theory")
def bar_inertia(t: mm, h: mm) -> mm4:
    """Second moment of a flat bar bent in its depth `h`."""
    return t * h**3 / 12


@formula("W", source="beam theory")
def net_modulus(t: mm, h: mm, d: mm) -> mm3:
    """Section modulus of a flat bar bent in its depth, with a hole `d` in the middle of it.

    The metal at the hole's edge is not judged for one push: it is closer to the middle and a
    ductile bar evens it out. For many pushes Peterson gives twice the nominal stress there.
    """
    return t * (h**3 - d**3) / (6 * h)


@formula("Z", source="plastic theory")
def plastic_modulus(t: mm, h: mm, d: mm) -> mm3:
    """Modulus of the same drilled bar when its whole depth yields."""
    return t * (h**2 - d**2) / 4


@formula("W_flat", source="beam theory")
def flat_modulus(t: mm, h: mm) -> mm3:
    """Section modulus of a flat bar bent sideways, over its thickness; `h` is the net depth."""
    return h * t**2 / 6


@formula("k_1", source="Timoshenko and Goodier")
def torsion_factor(n: Ratio) -> Ratio:
    """Stiffness factor of a rectangle in torsion, J = k_1 h t^3; `n` is h / t, at least 1.

    0.1406 for a square, 1/3 for a thin strip. Three terms of the series, good to 0.01 %.
    """
    return (
        1
        - 192
        / (pi**5 * n)
        * (np.tanh(pi * n / 2) + np.tanh(3 * pi * n / 2) / 3**5 + np.tanh(5 * pi * n / 2) / 5**5)
    ) / 3


@formula("J", source="Timoshenko and Goodier")
def torsion_constant(t: mm, h: mm) -> mm4:
    """Torsion constant of a flat bar whose ends are free to warp."""
    return torsion_factor.rule(h / t) * h * t**3


@formula("k_2", source="Timoshenko and Goodier")
def face_torsion_factor(n: Ratio) -> Ratio:
    """Strength factor in torsion at the middle of the broad face, tau = T / (k_2 h t^2).

    0.2082 for a square, 1/3 for a thin strip. From n = 99 on nothing changes any more.
    """
    return torsion_factor.rule(n) / (
        1
        - 8
        / pi**2
        * (
            1 / np.cosh(pi * np.minimum(n, 99) / 2)
            + 1 / np.cosh(3 * pi * np.minimum(n, 99) / 2) / 9
        )
    )


@formula("k_3", source="Timoshenko and Goodier")
def edge_torsion_factor(n: Ratio) -> Ratio:
    """Strength factor in torsion at the middle of the narrow edge, tau = T / (k_3 h t^2).

    A square's edge sees as much as its face, a thin strip's 0.74 of it. The series for the edge
    converges slowly; here its sum for a thin strip (0.915966, Catalan's constant) stands less
    a remainder that dies out fast.
    """
    return torsion_factor.rule(n) / (
        8 / pi**2 * (0.915965594 - (1 - np.tanh(pi * n / 2)) + (1 - np.tanh(3 * pi * n / 2)) / 9)
    )


@formula("W_t", source="plastic theory")
def plastic_torsion_modulus(t: mm, h: mm) -> mm3:
    """Torque over shear stress when the whole bar yields in torsion (sand heap); h >= t."""
    return t**2 * (3 * h - t) / 6


@formula("A", source="geometry")
def round_area(d: mm, d_i: mm) -> mm2:
    """Area of a round bar (`d_i` = 0) or tube."""
    return pi / 4 * (d**2 - d_i**2)


@formula("I", source="beam theory")
def round_inertia(d: mm, d_i: mm) -> mm4:
    """Second moment of a round bar or tube; its torsion constant is twice as large."""
    return pi / 64 * (d**4 - d_i**4)


@formula("W", source="beam theory")
def round_modulus(d: mm, d_i: mm) -> mm3:
    """Section modulus of a round bar or tube."""
    return pi / 32 * (d**4 - d_i**4) / d


@formula("A", source="geometry")
def channel_area(h: mm, b: mm, t: mm) -> mm2:
    """Area of a channel with sharp corners: height `h` and flanges `b` measured outside."""
    return t * (h + 2 * (b - t))


@formula("I_x", source="beam theory")
def channel_strong_inertia(h: mm, b: mm, t: mm) -> mm4:
    """Second moment of a channel bent over its height."""
    return (b * h**3 - (b - t) * (h - 2 * t) ** 3) / 12


@formula("c", source="geometry")
def channel_centroid(h: mm, b: mm, t: mm) -> mm:
    """From the outside of a channel's web to its centroid."""
    return (t * b**2 + (h - 2 * t) * t**2 / 2) / channel_area.rule(h, b, t)


@formula("I_y", source="beam theory")
def channel_weak_inertia(h: mm, b: mm, t: mm) -> mm4:
    """Second moment of a channel bent over its flanges, about its centroid."""
    return (2 * t * b**3 + (h - 2 * t) * t**3) / 3 - channel_area.rule(
        h, b, t
    ) * channel_centroid.rule(h, b, t) ** 2


@formula("J", source="Roark")
def open_torsion_constant(s: mm, t: mm) -> mm4:
    """Torsion constant of a thin open section: `s` along its middle line, one thickness.

    Ends free to warp. A channel of 60 x 25 x 3 is over a hundred times softer than the same
    closed to a box.
    """
    return s * t**3 / 3
