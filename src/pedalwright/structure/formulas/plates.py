"""Flat panels: how far they give and how hard they are stressed, for both kinds of edge.

A riveted or bolted edge lies between supported and clamped: show both. Linear theory: once
the middle has moved by half the thickness the real panel is stiffer than this.
"""

import numpy as np

from pedalwright.core.units import MPa, N, Ratio, mm
from pedalwright.core.working import formula
from pedalwright.shelf.plates import coefficients

_SUPPORTED_UNIFORM = coefficients("supported", "uniform")
_CLAMPED_UNIFORM = coefficients("clamped", "uniform")
_SUPPORTED_POINT = coefficients("supported", "point")
_CLAMPED_POINT = coefficients("clamped", "point")


@formula("alpha", source="Roark T11.4")
def supported_uniform_give(n: Ratio) -> Ratio:
    """Give factor, edges supported, load even; `n` is long over short side, nu 0.3."""
    return np.interp(n, _SUPPORTED_UNIFORM.sides, _SUPPORTED_UNIFORM.give)


@formula("beta", source="Roark T11.4")
def supported_uniform_stress(n: Ratio) -> Ratio:
    """Stress factor in the middle, edges supported, load even."""
    return np.interp(n, _SUPPORTED_UNIFORM.sides, _SUPPORTED_UNIFORM.stress)


@formula("alpha", source="Roark T11.4")
def clamped_uniform_give(n: Ratio) -> Ratio:
    """Give factor, edges clamped, load even."""
    return np.interp(n, _CLAMPED_UNIFORM.sides, _CLAMPED_UNIFORM.give)


@formula("beta", source="Roark T11.4")
def clamped_uniform_stress(n: Ratio) -> Ratio:
    """Stress factor in the middle of the long edge, edges clamped, load even."""
    return np.interp(n, _CLAMPED_UNIFORM.sides, _CLAMPED_UNIFORM.stress)


@formula("alpha", source="Roark T11.4")
def supported_point_give(n: Ratio) -> Ratio:
    """Give factor, edges supported, load in the middle."""
    return np.interp(n, _SUPPORTED_POINT.sides, _SUPPORTED_POINT.give)


@formula("alpha", source="Timoshenko and Woinowsky-Krieger")
def clamped_point_give(n: Ratio) -> Ratio:
    """Give factor, edges clamped, load in the middle."""
    return np.interp(n, _CLAMPED_POINT.sides, _CLAMPED_POINT.give)


@formula("y", source="Roark T11.4")
def plate_give(alpha: Ratio, q: MPa, b: mm, E: MPa, t: mm) -> mm:
    """Give of the middle under an even load `q`; `b` is the short side."""
    return alpha * q * b**4 / (E * t**3)


@formula("sigma", source="Roark T11.4")
def plate_stress(beta: Ratio, q: MPa, b: mm, t: mm) -> MPa:
    """Bending stress under an even load."""
    return beta * q * b**2 / t**2


@formula("y", source="Roark T11.4")
def plate_point_give(alpha: Ratio, W: N, b: mm, E: MPa, t: mm) -> mm:
    """Give of the middle under a load `W` there."""
    return alpha * W * b**2 / (E * t**3)


@formula("sigma", source="Roark T11.4")
def plate_patch_stress(beta: Ratio, W: N, t: mm) -> MPa:
    """Bending stress under a load spread over a patch in the middle."""
    return beta * W / t**2
