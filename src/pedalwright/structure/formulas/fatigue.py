"""How often a part can be pushed: notch factors, detail categories, adding up damage."""

from math import cbrt

import numpy as np

from pedalwright.core.units import MPa, Ratio
from pedalwright.core.working import formula


@formula("K_t", source="Heywood")
def hole_pull_factor(q: Ratio) -> Ratio:
    """Peak over net stress at a hole in a pulled bar; `q` is hole over width.

    For many pushes. One push on a ductile bar is judged on the net section.
    """
    return 2 + (1 - q) ** 3


@formula("K_t", source="Roark T17.1")
def hole_pull_factor_cubic(q: Ratio) -> Ratio:
    """The same as Roark and Peterson fit it."""
    return 3 - 3.13 * q + 3.66 * q**2 - 1.53 * q**3


@formula("Delta_sigma_D", source="EN 1993-1-9")
def constant_amplitude_limit(Delta_sigma_C: MPa) -> MPa:
    """Stress range a detail bears for ever if it is never exceeded."""
    return cbrt(0.4) * Delta_sigma_C


@formula("Delta_sigma_L", source="EN 1993-1-9")
def cut_off_limit(Delta_sigma_C: MPa) -> MPa:
    """Stress range that does no harm even beside larger ones: (5 / 100)^(1 / 5) of the last."""
    return 0.5492802717 * constant_amplitude_limit.rule(Delta_sigma_C)


@formula("N", source="EN 1993-1-9")
def cycles(Delta_sigma: MPa, Delta_sigma_C: MPa) -> Ratio:
    """How often a stress range can be borne by a detail of category `Delta_sigma_C`.

    The category is the range borne two million times. Slope 3 down to five million, slope 5
    to a hundred million, no end below.
    """
    return np.where(
        Delta_sigma >= constant_amplitude_limit.rule(Delta_sigma_C),
        2e6 * (Delta_sigma_C / Delta_sigma) ** 3,
        np.where(
            Delta_sigma >= cut_off_limit.rule(Delta_sigma_C),
            5e6 * (constant_amplitude_limit.rule(Delta_sigma_C) / Delta_sigma) ** 5,
            np.where(Delta_sigma >= 0 * Delta_sigma, np.inf, np.nan),
        ),
    )


@formula("D", source="Palmgren-Miner")
def damage(n: Ratio, N: Ratio) -> Ratio:
    """Share of a part's life used by `n` pushes of which it bears `N`; shares add up to 1."""
    return n / N
