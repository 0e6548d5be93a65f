"""Fasteners: how many to have, how long, how strong a substitute is."""

import numpy as np

from pedalwright.core.units import MPa, N, Ratio, mm
from pedalwright.core.working import formula


@formula("n_spare", source="common practice")
def spares(n: Ratio, n_least: Ratio) -> Ratio:
    """Spare ones for `n` wanted: a tenth of them, and not fewer than `n_least`, whole ones."""
    return np.maximum(np.ceil(0.1 * n - 1e-9), n_least)


@formula("n_buy", source="common practice")
def to_buy(n: Ratio, n_spare: Ratio, n_have: Ratio, pack: Ratio) -> Ratio:
    """What to buy, in whole packs: wanted and spare ones, less what is there."""
    return pack * np.ceil(np.maximum(n + n_spare - n_have, 0.0) / pack - 1e-9)


@formula("l", source="common practice")
def bolt_length(t: mm, w: mm, m: mm, P: mm) -> mm:
    """Least length of a bolt: sheets, washers, nut, and two threads that look out of it."""
    return t + w + m + 2 * P


@formula("n", source="geometry")
def as_strong(n: Ratio, F: N, F_other: N) -> Ratio:
    """How many of another fastener bear as much in shear; whole ones."""
    return np.ceil(n * F / F_other - 1e-9)


@formula("p", source="VDI 2230")
def head_pressure(F_M: N, d_w: mm, d_h: mm) -> MPa:
    """Pressure under a bolt's head, nut or washer, on the ring between its hole and its rim."""
    return F_M / (np.pi / 4 * (d_w**2 - d_h**2))
