"""Rigid patches: all nodes of a sheet under something stiff are bound to one."""

import numpy as np

from pedalwright.core.faults import Fault
from pedalwright.core.units import Array
from pedalwright.shell.arrays import xyz
from pedalwright.shell.build.sheets import part_of
from pedalwright.shell.build.site import Rough, Site
from pedalwright.shell.mesh import Indices
from pedalwright.shell.meshing.features import SAME, corners_of, lifted
from pedalwright.shell.meshing.plane import inside
from pedalwright.shell.parts import Place


def place_patches(site: Site) -> None:
    """Bind the nodes under every patch."""
    for patch in site.bench.patches:
        sheet = next(sheet for sheet in site.bench.sheets if sheet.name == patch.sheet)
        base = site.sheets[site.base(sheet.name)]
        centre = base.sheet.plane.place(patch.centre)
        if patch.height:
            rim = np.array(corners_of(patch, base.sheet))
            around = rim + np.sign(rim - np.array(centre)) * SAME
            under = inside(base.flat, around, np.roll(around, -1, axis=0))
        else:
            rim = ring(centre, patch.width / 2)
            under = np.hypot(*(base.flat - np.array(centre)).T) < patch.width / 2 + SAME
        nodes = site.nodes_of[base.sheet.name][under]
        master = site.node(xyz(patch.master or patch.centre))
        site.points[patch.name] = master
        bind(site, nodes, master, f"patch {patch.name}")
        site.rough.append(Rough(part_of(site, sheet), lifted(base.sheet, rim)))


def bind(site: Site, nodes: Indices, master: int, whose: str) -> None:
    """Bind nodes to a master, or say that they are bound already."""
    if not all(site.link(int(node), master) for node in nodes):
        site.wrong.append(
            Fault(
                where=whose,
                read="nodes of the sheet that go with something else already",
                accepts="Patches and heads that overlap must be made one.",
            )
        )


def ring(centre: Place, radius: float) -> Array:
    """Places round a circle."""
    turn = np.arange(24) * np.pi / 12
    around: Array = np.array(centre) + radius * np.stack([np.cos(turn), np.sin(turn)], axis=-1)
    return around
