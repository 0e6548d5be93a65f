"""Sections of trimmed members, and the welds of what goes back."""

import numpy as np

from pedalwright.core.units import MPa, Ratio, mm, mm2, mm3, mm4, rad
from pedalwright.core.working import formula


@formula("A", source="geometry")
def box_area(b: mm, h: mm, t: mm) -> mm2:
    """Area of a rectangular tube with sharp corners, measured outside."""
    return 2 * t * (b + h - 2 * t)


@formula("I", source="beam theory")
def box_inertia(b: mm, h: mm, t: mm) -> mm4:
    """Second moment of a rectangular tube bent in its height."""
    return (b * h**3 - (b - 2 * t) * (h - 2 * t) ** 3) / 12


@formula("phi", source="geometry")
def arc_left(r: mm, y: mm) -> rad:
    """Half the angle of a thin ring that is left above a cut at the height `y` over its middle."""
    return np.arccos(np.minimum(np.maximum(y / r, -1.0), 1.0))


@formula("A", source="geometry")
def arc_area(r: mm, t: mm, phi: rad) -> mm2:
    """Area of an arc of thin wall, `phi` to either side."""
    return 2 * phi * r * t


@formula("y", source="geometry")
def arc_height(r: mm, phi: rad) -> mm:
    """Its centroid over the middle of the ring."""
    return r * np.sin(phi) / phi


@formula("I", source="beam theory")
def arc_inertia(r: mm, t: mm, phi: rad) -> mm4:
    """Its second moment about the level axis through the middle of the ring."""
    return r**3 * t * (phi + np.sin(phi) * np.cos(phi))


@formula("I", source="beam theory")
def about_other_axis(I: mm4, A: mm2, e: mm) -> mm4:  # noqa: E741 - the books' symbol
    """Second moment about an axis `e` from the centroid (Steiner)."""
    return I + A * e**2


@formula("y", source="geometry")
def common_height(A_1: mm2, y_1: mm, A_2: mm2, y_2: mm) -> mm:
    """Centroid of two areas together."""
    return (A_1 * y_1 + A_2 * y_2) / (A_1 + A_2)


@formula("W", source="beam theory")
def edge_modulus(I: mm4, c: mm) -> mm3:  # noqa: E741
    """Section modulus of the edge that lies farthest from the centroid."""
    return I / c


@formula("l", source="EN 1993-1-8 4.5.1")
def lap_needed(A: mm2, f_y: MPa, n: Ratio, a: mm, f_vw: MPa) -> mm:
    """Length of each of `n` runs that carry all a piece can, with start and end crater."""
    return A * f_y / (n * a * f_vw) + 2 * a


@formula("a", source="common practice")
def usual_throat(t: mm) -> mm:
    """Throat of a fillet on thin metal: 0.7 of the thinner part."""
    return 0.7 * t
