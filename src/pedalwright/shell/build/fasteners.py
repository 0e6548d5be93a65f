"""Fasteners: a spring between each two sheets of a stack, at the face where they meet."""

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.arrays import xyz
from pedalwright.shell.build.patches import bind, ring
from pedalwright.shell.build.sheets import part_of
from pedalwright.shell.build.site import Rough, Site
from pedalwright.shell.meshing.features import SAME, dropped, lifted
from pedalwright.shell.parts import Fastener, Sheet


def place_fasteners(site: Site) -> None:
    """Join the sheets of every stack."""
    for one in site.bench.fasteners:
        stack = [_sheet(site, name) for name in one.sheets]
        nodes = [_held_node(site, one, sheet) for sheet in stack]
        part = site.part(one.part or one.name)
        along = np.array([one.shear, one.shear, one.axial, *[one.turn] * 3])
        pairs = zip(stack, stack[1:], nodes, nodes[1:], strict=False)
        site.springs_of[one.name] = tuple(
            site.spring((first, second), part, _axes(near, far), _meeting(one, near, far), along)
            for near, far, first, second in pairs
        )


def _sheet(site: Site, name: str) -> Sheet:
    return next(sheet for sheet in site.bench.sheets if sheet.name == name)


def _held_node(site: Site, one: Fastener, sheet: Sheet) -> int:
    """The node of a sheet at a fastener, or the master of those under its head."""
    base = site.sheets[site.base(sheet.name)]
    at = dropped(base.sheet, xyz(one.at)[None])
    place = (float(at[0, 0]), float(at[0, 1]))
    if not one.head:
        site.rough.append(Rough(part_of(site, sheet), lifted(base.sheet, at)))
        return site.on_sheet(sheet.name, one.at)
    under = np.hypot(*(base.flat - at[0]).T) < one.head / 2 + SAME
    master = site.node(lifted(base.sheet, at)[0])
    bind(site, site.nodes_of[base.sheet.name][under], master, f"fastener {one.name}")
    rim = lifted(base.sheet, ring(place, one.head / 2))
    site.rough.append(Rough(part_of(site, sheet), rim))
    return master


def _axes(near: Sheet, far: Sheet) -> Array:
    """Across the fastener twice, then along it from the first sheet to the second."""
    normal = near.plane.normal
    sense = 1.0 if near.plane.height(far.plane.origin) >= 0.0 else -1.0
    return np.stack([xyz(near.plane.along), sense * xyz(near.plane.across), sense * xyz(normal)])


def _meeting(one: Fastener, near: Sheet, far: Sheet) -> Array:
    """Where the fastener crosses the face between two sheets."""
    foot = xyz(near.plane.point(near.plane.place(one.at)))
    other = xyz(far.plane.point(far.plane.place(one.at)))
    share = near.thickness / (near.thickness + far.thickness)
    meeting: Array = foot + share * (other - foot)
    return meeting
