"""Supports: what the bench holds, stiffly or by springs to the ground."""

import numpy as np

from pedalwright.core.faults import Fault
from pedalwright.core.points import Point
from pedalwright.shell.arrays import xyz
from pedalwright.shell.build.sheets import part_of
from pedalwright.shell.build.site import NO_AXES, Rough, Site
from pedalwright.shell.mesh import SIX, Flags
from pedalwright.shell.meshing.features import SAME, dropped, lifted
from pedalwright.shell.meshing.plane import distance
from pedalwright.shell.parts import Support

#: Letters of the freedoms, moves then turns.
LETTERS = "xyzXYZ"


def place_supports(site: Site) -> None:
    """Hold what every support holds."""
    for support in site.bench.supports:
        held = np.array([letter in support.holds for letter in LETTERS])
        if not isinstance(support.at, str):
            _ends_are_rough(site, support.at)
        for node in _nodes(site, support):
            if support.stiffness is not None:
                _to_ground(site, node, support, held)
            elif site.bound(node):
                site.wrong.append(
                    Fault(
                        where=f"support {support.name}",
                        read="a node that goes with something else",
                        accepts="Hold the patch, or what the bar is fixed to.",
                    )
                )
            else:
                site.hold(node, held)


def _ends_are_rough(site: Site, ends: tuple[Point, Point]) -> None:
    """Where a held line ends, the stress of every sheet there has no end."""
    for sheet in site.bench.sheets:
        for end in ends:
            place = xyz(end)
            at = dropped(sheet, place[None])
            if np.linalg.norm(lifted(sheet, at) - place) < SAME:
                site.rough.append(Rough(part_of(site, sheet), place[None]))


def _nodes(site: Site, support: Support) -> list[int]:
    if isinstance(support.at, str):
        return [site.points[support.at]]
    start, end = (xyz(point)[None] for point in support.at)
    nodes = np.unique(np.concatenate(list(site.nodes_of.values())))
    places = np.array(site.nodes)[nodes]
    return [int(node) for node in nodes[distance(places, start, end) < SAME]]


def _to_ground(site: Site, node: int, support: Support, held: Flags) -> None:
    assert support.stiffness is not None
    assert len(support.stiffness) == SIX
    ground = site.node(site.nodes[node])
    site.hold(ground, np.ones(SIX, dtype=np.bool_))
    along = np.array(support.stiffness) * held
    site.spring((ground, node), site.part(support.name), NO_AXES, site.nodes[node], along)
