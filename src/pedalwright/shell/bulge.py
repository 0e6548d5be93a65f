"""How far a panel bends out of its plane, and what that means for a linear answer.

Once a panel bulges by more than half its thickness it begins to carry like a net, and is stiffer
than bending alone says. How much stiffer depends on how well its edges hold it; the band goes from
not at all to edges that cannot come nearer (S. Timoshenko, S. Woinowsky-Krieger, Theory of Plates
and Shells, large deflections of circular plates; the factor from memory).
"""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.arrays import xyz
from pedalwright.shell.build import Built
from pedalwright.shell.parts import Bench

#: w/t + A (w/t)³ is what bending alone would make of w/t: edges that turn but cannot come nearer,
#: a load in the middle.
NET = 1.43


@dataclass(frozen=True, slots=True)
class Bulge:
    """Largest deflection of one sheet against the plane its rim has moved to, (cases,)."""

    sheet: str
    thickness: float
    #: By bending alone.
    most: Array
    #: If its edges cannot come nearer.
    least: Array


def bulges(bench: Bench, built: Built, moves: Array) -> Iterator[Bulge]:
    """Every sheet with nodes of its own."""
    for sheet in bench.sheets:
        if sheet.name not in built.nodes:
            continue
        nodes, rim = built.nodes[sheet.name], built.rim[sheet.name]
        height = moves[:, nodes, :3] @ xyz(sheet.plane.normal)
        of_rim = moves[:, rim, :3] @ xyz(sheet.plane.normal)
        rest = height - _plane(built.mesh.nodes[rim], of_rim, built.mesh.nodes[nodes])
        most = np.abs(rest).max(axis=1)
        yield Bulge(sheet.name, sheet.thickness, most, stiffened(most, sheet.thickness))


def stiffened(bent: Array, thickness: float) -> Array:
    """Deflection of a plate that stretches as well, from what bending alone would make it."""
    # The real root of w + A w³ = bent, w in thicknesses (Cardano).
    half = bent / thickness / (2 * NET)
    root = np.sqrt(half**2 + (1 / (3 * NET)) ** 3)
    deflection: Array = thickness * (np.cbrt(half + root) + np.cbrt(half - root))
    return deflection


def _plane(known: Array, height: Array, wanted: Array) -> Array:
    """Heights, (cases, wanted), of the plane that comes nearest to known ones."""
    middle = known.mean(axis=0)
    rows = np.concatenate([known - middle, np.ones((len(known), 1))], axis=1)
    fit = np.linalg.pinv(rows) @ height.T
    over = np.concatenate([wanted - middle, np.ones((len(wanted), 1))], axis=1)
    return np.asarray((over @ fit).T, dtype=np.float64)
