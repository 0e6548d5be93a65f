"""A supported panel under a load spread over a patch in its middle, by Navier's double series.

The tables of `formulas.plates` know point and even loads only; a cylinder's flange is neither.
"""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Num, Ratio, mm

#: Odd terms each way; the stress of a patch a fifth as wide as the panel is good to 0.2 %.
TERMS = 60


@dataclass(frozen=True, kw_only=True, slots=True)
class Patch:
    """Factors of a patch load: give alpha W b² / (E t³), stress beta W / t²."""

    give: Ratio
    #: Stress in the middle along the short side and along the long side.
    stress_short: Ratio
    stress_long: Ratio


def supported_patch(a: mm, b: mm, u: mm, v: mm, nu: Ratio = 0.3) -> Patch:
    """Long side `a`, short side `b`; the patch is `u` along a and `v` along b."""
    odd = np.arange(1.0, 2.0 * TERMS, 2.0).reshape(-1, *(1,) * np.ndim(a + b + u + v))
    m, n = odd[:, None], odd[None, :]
    along, across = (m / a) ** 2, (n / b) ** 2
    load = 16 / (np.pi**2 * m * n * u * v) * _peak(m * u / a) * _peak(n * v / b)
    wave = load / (np.pi**4 * (along + across) ** 2)
    stiffness = 12 * (1 - nu**2)
    return Patch(
        give=stiffness * np.sum(wave, axis=(0, 1)) / b**2,
        stress_short=6 * np.pi**2 * np.sum(wave * (across + nu * along), axis=(0, 1)),
        stress_long=6 * np.pi**2 * np.sum(wave * (along + nu * across), axis=(0, 1)),
    )


def _peak(waves: Num) -> Num:
    """Half-waves over the patch: their share at the middle, where every odd wave peaks."""
    return np.sin(np.pi * waves / 2)
