"""Cutting: what a saw takes, and what no plan can do without."""

import numpy as np

from pedalwright.core.units import Ratio, mm, mm2
from pedalwright.core.working import formula


@formula("l", source="geometry")
def bar_needed(l_sum: mm, n: Ratio, k: mm, t: mm) -> mm:
    """Bar that `n` pieces take: their lengths, a saw cut `k` between two, `t` to square the end."""
    return l_sum + (n - 1) * k + t


@formula("N_min", source="geometry")
def least_bars(l_sum: mm, n: Ratio, k: mm, t: mm, L: mm) -> Ratio:
    """Bars of length `L` that no cut list can do without, by length alone."""
    return np.ceil((l_sum + n * k) / (L - t + k) - 1e-9)


@formula("N_min", source="geometry")
def least_sheets(A: mm2, A_own: mm2, A_sheet: mm2) -> Ratio:
    """Sheets to buy that no plan can do without, by area alone: own sheets first."""
    return np.ceil(np.maximum(0.0 * A, A - A_own) / A_sheet - 1e-9)
