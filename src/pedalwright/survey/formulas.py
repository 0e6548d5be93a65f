"""From tapes to points: the sums of an adjustment, one by one."""

import numpy as np

from pedalwright.core.units import Ratio, mm, mm2, rad
from pedalwright.core.working import formula


@formula("l", source="geometry")
def tape_length(dx: mm, dy: mm, dz: mm) -> mm:
    """A tape between two marks reads their distance in a straight line."""
    return np.sqrt(dx**2 + dy**2 + dz**2)


@formula("beta", source="geometry")
def rise_angle(dx: mm, dy: mm, dz: mm) -> rad:
    """A phone laid on the line from one mark to another shows how steeply it rises."""
    return np.arctan2(dz, np.sqrt(dx**2 + dy**2))


@formula("u_z", source="geometry")
def share_upright(u_x: Ratio, u_y: Ratio) -> Ratio:
    """Share of the car's own height in the plumb line; `u_x`, `u_y` are the sines of its tilts."""
    return np.sqrt(1 - u_x**2 - u_y**2)


@formula("E_max", source="2014/32/EU")
def permitted_error(a: mm, b: mm, n: Ratio) -> mm:
    """What a new tape may be out: a constant, and as much again for each metre begun."""
    return a + b * n


@formula("sigma_m", source="Ghilani")
def mean_sigma(sigma: mm, n: Ratio, E_max: mm) -> mm:
    """Standard deviation of the mean of `n` readings of one tape.

    Reading again averages the reading's own scatter. It does not help against the tape, which
    may be out by `E_max` either way and is out the same way each time: a limit spread evenly has
    a standard deviation of a third of its square.
    """
    return np.sqrt(sigma**2 / n + E_max**2 / 3)


@formula("r", source="Ghilani")
def redundancy_number(sigma: mm, sigma_hat: mm) -> Ratio:
    """How much of an error in one reading the others would show: 0 for none, 1 for all of it.

    `sigma` is the reading's standard deviation, `sigma_hat` what is left of it when all are
    fitted together.
    """
    return 1 - (sigma_hat / sigma) ** 2


@formula("w", source="Baarda")
def normalised_residual(v: mm, sigma: mm, r: Ratio) -> Ratio:
    """A residual beside the scatter it would have by chance alone."""
    return np.abs(v) / (sigma * np.sqrt(r))


@formula("nabla", source="Baarda")
def error_size(v: mm, r: Ratio) -> mm:
    """How far out a reading must be to leave this residual, if it is the only one that is."""
    return np.abs(v) / r


@formula("nabla_k", source="Baarda")
def error_bound(k: Ratio, sigma: mm, r: Ratio) -> mm:
    """Up to here an error may be chance: `k` times what is left to scatter, seen at the reading.

    With the root of a noncentrality for `k` it is the smallest error that would be noticed.
    """
    return k * sigma / np.sqrt(r)


@formula("sigma_0", source="Ghilani")
def unit_weight(S: Ratio, f: Ratio) -> Ratio:
    """How far the readings really scatter beside what was expected of them; about 1 if all is well.

    `S` is the sum of the squared residuals, each over its standard deviation; `f` how many
    readings there are more than needed.
    """
    return np.sqrt(S / f)


@formula("S_max", source="Wilson and Hilferty")
def chance_sum(f: Ratio, z: Ratio) -> Ratio:
    """What a sum of `f` squares reaches by chance, `z` standard deviations out (chi-square)."""
    return f * (1 - 2 / (9 * f) + z * np.sqrt(2 / (9 * f))) ** 3


@formula("DOP", source="geometry")
def dilution(q_x: Ratio, q_y: Ratio, q_z: Ratio) -> Ratio:
    """How many millimetres a point is out for each its tapes are out: tapes crossing well give 1.

    `q` are the point's variances for readings that all have the variance 1.
    """
    return np.sqrt(q_x + q_y + q_z)


@formula("a", source="Ghilani")
def semi_major(s_xx: mm2, s_yy: mm2, s_xy: mm2) -> mm:
    """Longer half axis of the error ellipse, one standard deviation."""
    return np.sqrt((s_xx + s_yy) / 2 + np.sqrt(((s_xx - s_yy) / 2) ** 2 + s_xy**2))


@formula("b", source="Ghilani")
def semi_minor(s_xx: mm2, s_yy: mm2, s_xy: mm2) -> mm:
    """Shorter half axis of the error ellipse, one standard deviation."""
    return np.sqrt((s_xx + s_yy) / 2 - np.sqrt(((s_xx - s_yy) / 2) ** 2 + s_xy**2))


@formula("phi", source="Ghilani")
def ellipse_turn(s_xx: mm2, s_yy: mm2, s_xy: mm2) -> rad:
    """Direction of the longer half axis from the first axis."""
    return np.arctan2(2 * s_xy, s_xx - s_yy) / 2


@formula("k_P", source="Ghilani")
def ellipse_factor(P: Ratio) -> Ratio:
    """How much larger an ellipse is that holds the point with probability `P`; 95 % makes 2.45."""
    return np.sqrt(2.0 * np.log(1 / (1 - P)))
