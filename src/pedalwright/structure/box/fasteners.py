"""What the fasteners of a box bear, and what one push makes of the hardest worked of each row."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array, MPa, N, Ratio
from pedalwright.core.working import subject
from pedalwright.panels.made import Made, Panel, Row
from pedalwright.panels.parts import Bolts, RivetNuts, Rivets, Stitches
from pedalwright.shelf.bolts import bolts, property_class
from pedalwright.shelf.fasteners import rivet_strengths
from pedalwright.shell.forces import Joint
from pedalwright.structure.box.ways import part_of
from pedalwright.structure.fixings.solve import FAR, GAMMA_M2, HARD, HARDER_THAN, HOLE, SOFT
from pedalwright.structure.formulas.bolts import bolt_pull, bolt_shear, bolt_use, stress_area
from pedalwright.structure.formulas.joints import (
    bearing,
    bearing_end_factor,
    bearing_side_factor,
    blind_rivet_bearing,
    blind_rivet_factor,
    punching,
)
from pedalwright.structure.formulas.welds import weld_shear_strength

#: A blind rivet's head over its body (ISO 15977, from memory), a bolt's over its thread.
RIVET_HEAD, BOLT_HEAD = 2.0, 1.5
#: Throat of a stitch over the thinner sheet; EN 1993-1-8 table 4.1 for the softest steel.
THROAT, CORRELATION = 0.7, 0.8
#: Bodies of blind rivets by the least they bear: where nobody said, the weakest.
WEAKEST = "soft alloy"


@dataclass(frozen=True, kw_only=True, slots=True)
class RowWork:
    """One row under every load case, (cases,): the worst of its fasteners."""

    name: str
    count: int
    shear: N
    pull: N
    #: Shear and pull together; shear against the hole; pull against the head; over what each bears.
    together: Ratio
    bearing: Ratio
    pull_through: Ratio
    #: Whether a maker's figure or the table's least was taken, or nothing is known.
    known: bool

    @property
    def use(self) -> Array:
        """The worst of the three, (cases,)."""
        worst: Array = np.maximum(np.maximum(self.together, self.bearing), self.pull_through)
        return worst


def worked_rows(made: Made, joints: Sequence[Joint]) -> Iterator[RowWork]:
    """Every row counted on, its fasteners as the bench found them loaded."""
    for row in made.rows:
        own = [one for one in joints if one.fastener.rpartition(", ")[0] == row.name]
        if not own:
            continue
        shear = np.stack([one.shear for one in own])
        pull = np.maximum(0.0, np.stack([one.pull for one in own]))
        sheets = [panel for sheet in row.through if (panel := made.panel(part_of(sheet)))]
        with subject(row.name):
            yield _worked(row, sheets, shear, pull)


def _worked(row: Row, sheets: Sequence[Panel], shear: Array, pull: Array) -> RowWork:
    """`shear` and `pull` are (fasteners, cases)."""
    joining = row.joining
    thin = min(sheets, key=lambda sheet: sheet.thickness)
    strength, width = thin.metal.tensile_strength, float(joining.diameter)
    edge, pitch = float(joining.edge), float(joining.pitch)
    together: Array = np.full(shear.shape, np.nan)
    hole: N = np.nan
    head = (RIVET_HEAD if isinstance(joining, Rivets) else BOLT_HEAD) * width
    if isinstance(joining, Bolts):
        strong = property_class(joining.grade).tensile_strength
        together = _bolts(width, strong, shear, pull)
        end = bearing_end_factor(edge, pitch or FAR, HOLE * width, strong, strength)
        side = bearing_side_factor(edge, pitch or FAR, HOLE * width)
        hole = bearing(side, end, strength, width, thin.thickness, GAMMA_M2)
    elif isinstance(joining, (Rivets, RivetNuts)):
        bears = _rivet(joining)
        if bears is not None:
            together = np.asarray(
                bolt_use(shear, bears[0] / GAMMA_M2, pull, bears[1] / GAMMA_M2), dtype=np.float64
            )
        factor = blind_rivet_factor(thin.thickness, width)
        hole = blind_rivet_bearing(factor, strength, width, thin.thickness, GAMMA_M2)
    else:
        throat = THROAT * thin.thickness
        runs = weld_shear_strength(strength, CORRELATION, GAMMA_M2) * throat * width
        together = np.asarray(np.hypot(shear, pull) / runs, dtype=np.float64)
        hole = np.inf
    through = (
        np.inf
        if isinstance(joining, Stitches)
        else punching(head, thin.thickness, strength, GAMMA_M2)
    )
    return RowWork(
        name=row.name,
        count=len(row.places),
        shear=shear.max(axis=0),
        pull=pull.max(axis=0),
        together=together.max(axis=0),
        bearing=shear.max(axis=0) / hole,
        pull_through=pull.max(axis=0) / through,
        known=bool(np.isfinite(together).all()),
    )


def _bolts(width: float, strong: MPa, shear: Array, pull: Array) -> Array:
    pitch = next((bolt.pitch for bolt in bolts() if bolt.diameter == width), width / 6)
    area = stress_area(width, pitch)
    factor = HARD if float(np.max(strong)) > HARDER_THAN else SOFT
    sheared, pulled = bolt_shear(factor, strong, area, GAMMA_M2), bolt_pull(strong, area, GAMMA_M2)
    return np.asarray(bolt_use(shear, sheared, pull, pulled), dtype=np.float64)


def _rivet(joining: Rivets | RivetNuts) -> tuple[float, float] | None:
    """What one bears, shear and pull: as its maker says, else the least sold in its size."""
    if joining.shear is not None and joining.pull is not None:
        return float(joining.shear), float(joining.pull)
    if isinstance(joining, RivetNuts):
        return None
    own = [
        row
        for row in rivet_strengths()
        if row.body == WEAKEST and abs(row.diameter - float(joining.diameter)) < 0.11
    ]
    return (own[0].shear, own[0].pull) if own else None
