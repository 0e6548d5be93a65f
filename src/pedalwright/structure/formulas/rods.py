"""Push rods and other struts: how hard they can be pushed before they bow."""

from math import pi

import numpy as np

from pedalwright.core.units import MPa, N, Ratio, mm, mm2, mm4
from pedalwright.core.working import formula


@formula("lambda", source="Shigley")
def slenderness(K: Ratio, L: mm, I: mm4, A: mm2) -> Ratio:  # noqa: E741 - second moment, as everywhere
    """Free length over radius of gyration. `K` is 1 between two joints, 2 for a flagpole."""
    return K * L / np.sqrt(I / A)


@formula("C_c", source="Shigley")
def column_limit(E: MPa, S_y: MPa) -> Ratio:
    """Slenderness above which a strut bows elastically (Euler) and below which it crushes too."""
    return np.sqrt(2 * pi**2 * E / S_y)


@formula("P_cr", source="Shigley")
def buckling_load(A: mm2, E: MPa, S_y: MPa, lam: Ratio) -> N:
    """Push at which a straight, centrally loaded strut bows.

    Euler above the slenderness `C_c`, Johnson's parabola below. A rod with a thread along it
    counts with its core diameter. A bent rod, or a ball end that rocks off centre, carries
    less.
    """
    return np.where(
        lam > column_limit.rule(E, S_y),
        pi**2 * E * A / lam**2,
        A * S_y * (1 - S_y * lam**2 / (4 * pi**2 * E)),
    )
