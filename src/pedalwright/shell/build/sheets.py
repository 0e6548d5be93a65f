"""Sheets placed: their nodes numbered, welded along the seams, layers laid on."""

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.arrays import xyz
from pedalwright.shell.build.site import Rough, Site
from pedalwright.shell.mesh import Flags, Indices, Triangles
from pedalwright.shell.meshing.divide import Divider
from pedalwright.shell.meshing.features import dropped, lifted
from pedalwright.shell.meshing.plane import inside
from pedalwright.shell.meshing.sheets import Meshed
from pedalwright.shell.parts import Sheet
from pedalwright.shell.sparse import connected


def place_sheets(site: Site, sheets: dict[str, Meshed], divider: Divider) -> None:
    """Number the nodes of all sheets and lay down their triangles."""
    site.sheets = sheets
    count = [len(one.nodes) for one in sheets.values()]
    starts = dict(zip(sheets, np.cumsum([0, *count]).tolist(), strict=False))
    welded = _welded(site, starts, divider, sum(count))
    every = np.concatenate([np.zeros((0, 3)), *(one.nodes for one in sheets.values())])
    _, first, number = np.unique(welded, return_index=True, return_inverse=True)
    site.nodes = list(every[first])
    for name, one in sheets.items():
        own = number[starts[name] : starts[name] + len(one.nodes)]
        site.nodes_of[name] = own
        site.rim_of[name] = own[_rim(one.corners)]
    site.triangles = _joined([*(_own(site, one) for one in sheets.values()), *_layers(site)])
    for spot in site.bench.spots:
        site.points[spot.name] = site.on_sheet(spot.sheet, spot.at)
        _spot_is_rough(site, spot.sheet, spot.name)


def part_of(site: Site, sheet: Sheet) -> int:
    """Number of the part a sheet belongs to."""
    return site.part(sheet.part or sheet.name, sheet.material)


def _spot_is_rough(site: Site, sheet: str, name: str) -> None:
    own = next(one for one in site.bench.sheets if one.name == sheet)
    place = site.nodes[site.points[name]]
    site.rough.append(Rough(part_of(site, own), place[None]))


def _welded(site: Site, starts: dict[str, int], divider: Divider, count: int) -> Indices:
    """For each node of each sheet the number of the piece of metal it is, seams being made."""
    first, second = [np.zeros(0, dtype=np.intp)], [np.zeros(0, dtype=np.intp)]
    for seam in site.bench.seams:
        nodes = divider.straight(xyz(seam.start), xyz(seam.end))
        along = [starts[name] + site.sheets[name].nearest(nodes) for name in seam.sheets]
        for other in along[1:]:
            first.append(along[0])
            second.append(other)
    return connected(np.concatenate(first), np.concatenate(second), count)


def _own(site: Site, one: Meshed) -> Triangles:
    return _laid(site, one.sheet, site.nodes_of[one.sheet.name][one.corners], 0.0)


def _layers(site: Site) -> list[Triangles]:
    """Layers that are bonded: the triangles of their base once more, beside it."""
    found: list[Triangles] = []
    by_name = {sheet.name: sheet for sheet in site.bench.sheets}
    for bond in site.bench.bonds:
        layer, base = by_name[bond.layer], site.sheets[bond.base]
        middles = lifted(base.sheet, base.flat[base.corners].mean(axis=1))
        covered = base.corners[covers(layer, dropped(layer, middles))]
        beside = base.sheet.plane.height(layer.plane.origin)
        found.append(_laid(site, layer, site.nodes_of[bond.base][covered], beside))
    return found


def covers(sheet: Sheet, places: Array) -> Flags:
    """Which places of its plane a sheet covers."""
    loops = [np.array(loop, dtype=np.float64) for loop in (sheet.outline, *sheet.openings)]
    start = np.concatenate(loops)
    end = np.concatenate([np.roll(loop, -1, axis=0) for loop in loops])
    covered = inside(places, start, end)
    for hole in sheet.holes:
        covered &= np.hypot(*(places - np.array(hole.centre)).T) > hole.diameter / 2
    return covered


def _laid(site: Site, sheet: Sheet, corners: Indices, beside: float) -> Triangles:
    count = len(corners)
    return Triangles(
        corners=corners,
        part=np.full(count, part_of(site, sheet)),
        thickness=np.full(count, sheet.thickness),
        offset=np.full(count, beside),
    )


def _joined(some: list[Triangles]) -> Triangles:
    some = [Triangles(), *some]
    return Triangles(
        corners=np.concatenate([one.corners for one in some]),
        part=np.concatenate([one.part for one in some]),
        thickness=np.concatenate([one.thickness for one in some]),
        offset=np.concatenate([one.offset for one in some]),
    )


def _rim(corners: Indices) -> Indices:
    """Nodes on sides that only one triangle has."""
    sides = np.sort(np.concatenate([corners[:, [0, 1]], corners[:, [1, 2]], corners[:, [2, 0]]]), 1)
    once, times = np.unique(sides, axis=0, return_counts=True)
    return np.unique(once[times == 1])
