"""From a load on a flange or bracket to what its bolts, rivets or welds make of it."""

from itertools import combinations

import numpy as np

from pedalwright.core.points import Point
from pedalwright.core.solve import no_answer_is_nan
from pedalwright.core.units import Array, N, N_mm, Ratio, mm
from pedalwright.core.working import subject, unrecorded
from pedalwright.structure.fixings.group import Frame, Pulled, shared, stacked, tipping
from pedalwright.structure.fixings.parts import (
    Bolted,
    Fastened,
    Fixing,
    Load,
    Riveted,
    Welded,
    WeldUse,
)
from pedalwright.structure.formulas.bolts import bolt_pull, bolt_shear, bolt_use, stress_area
from pedalwright.structure.formulas.joints import (
    bearing,
    bearing_end_factor,
    bearing_side_factor,
    blind_rivet_bearing,
    blind_rivet_factor,
    punching,
)
from pedalwright.structure.formulas.welds import (
    weld_line_force_z,
    weld_shear_strength,
    weld_throat_stress,
)
from pedalwright.structure.groups import weld_line

#: Partial factor of joints, EN 1993-1-8, 2.2.
GAMMA_M2 = 1.25
#: Thread in the shear plane: 0.6 for soft bolts, 0.5 for 10.9 and harder, EN 1993-1-8 T3.4.
SOFT, HARD, HARDER_THAN = 0.6, 0.5, 900.0
#: A bolt's hole over its thread: medium fit of ISO 273, nearly.
HOLE = 1.1
#: A pitch that changes nothing, for a fastener by itself.
FAR = 1e4
#: Plate from which on EN 1993-1-8 speaks of welds.
CODE_BEGINS = 4.0


@no_answer_is_nan
def fixed(fixing: Fixing, load: Load) -> Fastened | WeldUse:
    """How hard a fixing works under a load, as shares of what it bears."""
    if isinstance(fixing, Welded):
        return _welded(fixing, load)
    worked = _worked(fixing, load)
    return Fastened(
        pull=worked.pull,
        shear=worked.shear,
        together=worked.together,
        bearing=worked.bearing,
        pull_through=worked.pull_through,
        one_missing=_one_missing(fixing, load),
    )


def _one_missing(fixing: Bolted | Riveted, load: Load) -> Ratio:
    """The worst use of those left, whichever fastener is gone."""
    if len(fixing.holes) < 2:
        return np.inf
    worst: Ratio = 0.0
    with unrecorded():
        for left in combinations(fixing.holes, len(fixing.holes) - 1):
            worked = _worked(fixing, load, left)
            uses = np.maximum(worked.together, np.maximum(worked.bearing, worked.pull_through))
            worst = np.maximum(worst, uses)
    return worst


def _worked(
    fixing: Bolted | Riveted, load: Load, holes: tuple[Point, ...] | None = None
) -> Fastened:
    group = shared(fixing.holes if holes is None else holes, fixing.axis, fixing.toe, load)
    sheet = fixing.sheet
    with subject("worst fastener"):
        through = punching(fixing.head, sheet.thickness, sheet.tensile_strength, GAMMA_M2)
        if isinstance(fixing, Bolted):
            together = _bolts(fixing, group)
            hole = _bolt_hole(fixing, _spacing(fixing.holes))
        else:
            together = _largest(
                bolt_use(
                    group.shear,
                    fixing.shear / GAMMA_M2,
                    group.pull,
                    fixing.pull / GAMMA_M2,
                )
            )
            factor = blind_rivet_factor(sheet.thickness, fixing.diameter)
            hole = blind_rivet_bearing(
                factor, sheet.tensile_strength, fixing.diameter, sheet.thickness, GAMMA_M2
            )
    return Fastened(
        pull=_largest(group.pull),
        shear=_largest(group.shear),
        together=together,
        bearing=_largest(group.shear) / hole,
        pull_through=_largest(group.pull) / through,
        one_missing=np.nan,
    )


def _bolts(fixing: Bolted, group: Pulled) -> Ratio:
    area = stress_area(fixing.diameter, fixing.pitch)
    soft = np.where(np.asarray(fixing.tensile_strength) > HARDER_THAN, HARD, SOFT)
    strong = bolt_shear(soft, fixing.tensile_strength, area, GAMMA_M2)
    tough = bolt_pull(fixing.tensile_strength, area, GAMMA_M2)
    return _largest(bolt_use(group.shear, strong, group.pull, tough))


def _bolt_hole(fixing: Bolted, spacing: mm) -> N:
    """Load that one hole bears, whichever way it is pulled."""
    sheet, hole = fixing.sheet, HOLE * fixing.diameter
    strength = sheet.tensile_strength
    end = bearing_end_factor(sheet.edge, spacing, hole, fixing.tensile_strength, strength)
    side = bearing_side_factor(sheet.edge, spacing, hole)
    return bearing(side, end, strength, fixing.diameter, sheet.thickness, GAMMA_M2)


def _spacing(holes: tuple[Point, ...]) -> mm:
    """Least distance between two holes."""
    least: mm = FAR
    for one, other in combinations(holes, 2):
        least = np.minimum(least, (one - other).length())
    return least


def _welded(weld: Welded, load: Load) -> WeldUse:
    """Welds as lines about their own middle; the sheet under a tipping part is not counted."""
    frame = Frame.of(weld.axis)
    starts = stacked([frame.seen(run.start) for run in weld.runs])
    stops = stacked([frame.seen(run.end) for run in weld.runs])
    x, y, z = (np.stack(pair) for pair in zip(starts, stops, strict=True))
    across, up, out = frame.seen(load.force)
    at_x, at_y, at_z = frame.seen(load.at)
    with subject("worst end of the weld"):
        line = weld_line(x, y, force=(across, up), at=(at_x, at_y))
        length = np.hypot(x[1] - x[0], y[1] - y[0])
        high = at_z - np.mean(z, axis=(0, 1))
        over_x = _lifted(x, length, (out, at_x, across, high))
        over_y = _lifted(y, length, (out, at_y, up, high))
        pulled = out / line.length + over_x + over_y
        stress = weld_throat_stress(np.hypot(line.size, pulled), weld.throat)
        bears = weld_shear_strength(weld.tensile_strength, weld.correlation, GAMMA_M2)
    return WeldUse(use=np.max(stress, axis=(0, 1)) / bears, thin=weld.thickness / CODE_BEGINS)


def _lifted(ends: Array, length: mm, load: tuple[N, mm, N, mm]) -> N_mm:
    """Force per length out of the sheet at every end when the part tips along one direction."""
    out, at, sideways, high = load
    middle = np.sum(length * np.mean(ends, axis=0), axis=0) / np.sum(length, axis=0)
    off = ends - middle
    inertia = np.sum(length * ((off[1] - off[0]) ** 2 / 12 + np.mean(off, axis=0) ** 2), axis=0)
    moment = tipping(out, at - middle, sideways, high)
    return weld_line_force_z(0.0 * out, np.sum(length, axis=0), moment, off, inertia)


def _largest(values: N) -> N:
    worst: N = np.max(values, axis=0)
    return worst
