"""Where to put the rod pin for a ratio, an effort or a travel that is wanted.

The whole row of pins is one batch through the same assessment, so what is read here is what
the dossier will say.
"""

from dataclasses import dataclass, replace
from typing import Literal, TypeAlias

import numpy as np

from pedalwright.core.units import Array, N, Num, Ratio, mm, rad
from pedalwright.design import Design
from pedalwright.fitting.outcomes import outcome
from pedalwright.fitting.pedals import PedalName, fitted, refitted, with_pedal

Goal: TypeAlias = Literal["ratio", "effort", "travel"]

#: Pin radii looked at, as shares of the pad's: ratios from about 10 to 2.
NEAREST, FURTHEST, STATIONS = 0.1, 0.5, 41


@dataclass(frozen=True, kw_only=True, slots=True)
class RatioSweep:
    """What each pin radius gives; every row is (pins,)."""

    pin_radius: mm
    arm_ratio: Ratio
    ratio: Ratio
    effort: N
    travel: mm
    rod_angle: rad
    #: Share of its strength the worst stressed part has in hand.
    strength_margin: Num


def ratio_sweep(
    design: Design,
    name: PedalName,
    pin_radii: Array | None = None,
    *,
    cylinder_follows: bool = True,
) -> RatioSweep:
    """One pedal with its pin at every radius; the cylinder moves with the pin, or stays."""
    made = fitted(design, name)
    if pin_radii is None:
        pin_radii = np.linspace(NEAREST, FURTHEST, STATIONS) * made.pedal.pad_radius
    pedal = replace(made.pedal, pin_radius=pin_radii)
    tried = refitted(design, name, with_pedal(made, pedal, cylinder_follows=cylinder_follows))
    found = outcome(tried, name)
    return RatioSweep(
        pin_radius=pin_radii,
        arm_ratio=found.arm_ratio,
        ratio=found.ratio,
        effort=found.effort,
        travel=found.travel,
        rod_angle=found.rod_angle,
        strength_margin=found.strength_margin,
    )


def pin_radius_for(
    design: Design, name: PedalName, goal: Goal, wanted: Num, *, cylinder_follows: bool = True
) -> mm:
    """The pin radius that gives one ratio, effort or travel; nan where none on this arm does.

    Good to a thousandth of a millimetre: the second sweep lies between two pins of the first.
    """
    coarse = ratio_sweep(design, name, cylinder_follows=cylinder_follows)
    bracket = _bracket(coarse, goal, wanted)
    if bracket is None:
        return np.nan
    fine = ratio_sweep(design, name, np.linspace(*bracket, 9), cylinder_follows=cylinder_follows)
    return _crossing(fine, goal, wanted)


def _bracket(sweep: RatioSweep, goal: Goal, wanted: Num) -> tuple[float, float] | None:
    """The pins on either side of the wanted value, the longest stroke of the pin first."""
    over = np.asarray(getattr(sweep, goal)) - wanted
    pins = np.asarray(sweep.pin_radius)
    crossed = np.flatnonzero(over[:-1] * over[1:] <= 0.0)
    return (float(pins[crossed[-1]]), float(pins[crossed[-1] + 1])) if crossed.size else None


def _crossing(sweep: RatioSweep, goal: Goal, wanted: Num) -> mm:
    values, pins = np.asarray(getattr(sweep, goal)), np.asarray(sweep.pin_radius)
    order = np.argsort(values)
    return float(np.interp(wanted, values[order], pins[order]))
