"""Bends in sheet: how long the flat piece is, where the bend lies, how far it springs back.

`alpha` is the angle the sheet is turned through (90 degrees for a square flange), `r` the inside
radius as it comes out, `s` the thickness. Mould lines are where the outer faces of the two legs
would meet; legs are measured to them, which is what a square and a rule do on a bent part.
"""

import numpy as np

from pedalwright.core.units import MPa, Ratio, mm, rad
from pedalwright.core.working import formula


@formula("BA", source="geometry")
def bend_allowance(alpha: rad, r: mm, K: Ratio, s: mm) -> mm:
    """Sheet that goes into the bend: the arc of the line that is neither stretched nor squeezed.

    That line lies `K` thicknesses from the inside.
    """
    return alpha * (r + K * s)


@formula("SB", source="geometry")
def setback(alpha: rad, r: mm, s: mm) -> mm:
    """From the mould line back to where the bend begins; for less than half a turn."""
    return (r + s) * np.tan(alpha / 2)


@formula("BD", source="geometry")
def bend_deduction(SB: mm, BA: mm) -> mm:
    """What to take off the two legs, measured to the mould line, for the flat length."""
    return 2 * SB - BA


@formula("l", source="geometry")
def flat_length(l_1: mm, l_2: mm, BD: mm) -> mm:
    """Flat length of two legs measured to their mould line."""
    return l_1 + l_2 - BD


@formula("BD", source="geometry")
def strip_deduction(l: mm, l_1: mm, l_2: mm) -> mm:  # noqa: E741
    """What a bent test strip gained: its two legs, measured outside, less its flat length."""
    return l_1 + l_2 - l


@formula("K", source="geometry")
def strip_share(BD: mm, alpha: rad, r: mm, s: mm) -> Ratio:
    """Place of the neutral line, from a test strip, as a share of the thickness from the inside."""
    return ((2 * (r + s) * np.tan(alpha / 2) - BD) / alpha - r) / s


@formula("u_K", source="geometry")
def strip_doubt(u: mm, alpha: rad, s: mm) -> Ratio:
    """How far the neutral line is out where the strip's deduction is out by `u`."""
    return u / (alpha * s)


@formula("k", source="DIN 6935")
def din_share(r: mm, s: mm) -> Ratio:
    """Neutral line by the German standard, as a share of half the thickness.

    A line through trials; the standard gives it for radii from 0.65 thicknesses on, and 1 beyond
    five.
    """
    return np.minimum(1.0, 0.65 + 0.5 * np.log10(r / s))


@formula("K", source="DIN 6935")
def din_neutral(k: Ratio) -> Ratio:
    """The same as a share of the whole thickness."""
    return k / 2


@formula("v", source="DIN 6935")
def din_correction(alpha: rad, r: mm, s: mm, k: Ratio) -> mm:
    """What the German standard takes off the two legs.

    Up to a right angle the legs are measured to the mould line. Beyond it, where the mould line
    runs off to nowhere, they are measured to the outermost point of the bend, and both radii go
    off whole. Hardly bent legs (15 degrees and less) keep their length.
    """
    return np.where(
        alpha * 12 > np.pi,
        2 * (r + s) * np.where(2 * alpha > np.pi * (1 + 1e-12), 1.0, np.tan(alpha / 2))
        - alpha * (r + k * s / 2),
        0 * r,
    )


@formula("BA", source="FAA-H-8083-31")
def airframe_allowance(alpha: rad, R: mm, T: mm) -> mm:
    """Bend allowance by the airframe mechanics' rule of thumb, from experience with many bends."""
    return 180 * alpha / np.pi * (0.01743 * R + 0.0078 * T)


@formula("X", source="Kalpakjian")
def springback(R: mm, Y: MPa, E: MPa, T: mm) -> Ratio:
    """Radius over the tool over the radius that is left when the tool lets go.

    `Y` is the yield strength; for a wide sheet bent without stretching.
    """
    return 4 * (R * Y / (E * T)) ** 3 - 3 * R * Y / (E * T) + 1


@formula("R_f", source="Kalpakjian")
def sprung_radius(R: mm, X: Ratio) -> mm:
    """Inside radius that is left when the tool lets go."""
    return R / X


@formula("d", source="geometry")
def joggle_slant(e: mm, s: mm, alpha: rad) -> mm:
    """Slanting piece of a joggle between its mould lines, which lie on opposite faces."""
    return (e + s * (1 - np.cos(alpha))) / np.sin(alpha)


@formula("b", source="geometry")
def joggle_run(d: mm, s: mm, alpha: rad) -> mm:
    """Length of a joggle as it is seen square to the part."""
    return d * np.cos(alpha) - s * np.sin(alpha)


@formula("Delta_l", source="geometry")
def joggle_length(d: mm, b: mm, BD: mm) -> mm:
    """What a flat bar must be longer for a joggle than the part is seen to be."""
    return d - b - 2 * BD


@formula("alpha_t", source="Kalpakjian")
def overbend(alpha: rad, R: mm, R_f: mm, T: mm) -> rad:
    """How far to bend over the tool so that `alpha` is left; the middle line keeps its length."""
    return alpha * (R_f + T / 2) / (R + T / 2)


@formula("r_1", source="workshop tables")
def tool_radius(k_R: Ratio, r_2: mm, s: mm) -> mm:
    """Radius of the tool for a radius `r_2` that is to be left, by a factor from tables."""
    return k_R * (r_2 + s / 2) - s / 2


@formula("r_min", source="common practice")
def radius_along_grain(r: mm) -> mm:
    """Least radius where the bend line runs with the grain: half as much again as across it."""
    return 1.5 * r


@formula("h_min", source="common practice")
def least_flange(r: mm, s: mm) -> mm:
    """Shortest flange, measured outside, that tools still hold: radius and four thicknesses.

    A folder of one's own may need more: measure what it clamps.
    """
    return r + 4 * s


@formula("c_min", source="common practice")
def hole_off_bend(s: mm) -> mm:
    """Flat metal to leave between a hole's edge and the bend: two thicknesses.

    Nearer, the hole is drawn oval.
    """
    return 2 * s


@formula("d_relief", source="FAA-H-8083-31")
def relief_hole(r: mm, d_least: mm) -> mm:
    """Hole where two bends cross: the bend's radius, and not less than what thickness wants."""
    return np.maximum(r, d_least)
