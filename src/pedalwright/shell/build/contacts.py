"""Contacts placed: each node of a layer against the triangle of the base that it lies over.

The base's deflection inside the triangle follows from the moves and turns of its corners by the
cubic of G. P. Bazeley, Y. K. Cheung, B. M. Irons and O. C. Zienkiewicz, which is exact for even
bending, so the two sheets need no matching nodes.
"""

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.arrays import xyz
from pedalwright.shell.build.site import Site
from pedalwright.shell.elements.membrane import CYCLE
from pedalwright.shell.mesh import SIX, Contacts, Indices
from pedalwright.shell.meshing.features import dropped
from pedalwright.shell.meshing.plane import cross
from pedalwright.shell.meshing.sheets import Meshed
from pedalwright.shell.parts import Contact

#: How far outside a triangle a place may lie for rounding, in shares.
EDGE = 1e-6


def place_contacts(site: Site) -> None:
    """Put down every place where two sheets may touch."""
    site.contacts = _joined([_between(site, contact) for contact in site.bench.contacts])


def _between(site: Site, contact: Contact) -> Contacts:
    layer, base = site.sheets[contact.layer], site.sheets[site.base(contact.base)]
    places = dropped(base.sheet, layer.nodes)
    triangle, shares = located(base, places)
    over = np.flatnonzero(triangle >= 0)
    corners = base.corners[triangle[over]]
    side = np.sign(base.sheet.plane.height(layer.sheet.plane.origin))
    plane = base.sheet.plane
    normal = side * xyz(plane.normal)
    rows = np.zeros((len(over), 4, SIX))
    rows[:, 0, :3] = normal
    height, slope_x, slope_y = cubic(base.flat[corners], shares[over])
    rows[:, 1:, :3] = -height[..., None] * normal
    turn = slope_y[..., None] * xyz(plane.along) - slope_x[..., None] * xyz(plane.across)
    rows[:, 1:, 3:] = -side * turn
    own = site.nodes_of[layer.sheet.name][over]
    under = site.nodes_of[base.sheet.name][corners]
    nodes = np.concatenate([own[:, None], under], axis=1)
    return Contacts(
        freedoms=(SIX * nodes[..., None] + np.arange(SIX)).reshape(-1, 4 * SIX),
        share=rows.reshape(-1, 4 * SIX),
        part=np.full(len(over), site.part(contact.name)),
        stiffness=_stiffness(layer, base)[over],
    )


def located(base: Meshed, places: Array) -> tuple[Indices, Array]:
    """The triangle that each place lies in, -1 if in none, and its shares of the corners."""
    a, b, c = (base.flat[corner] for corner in base.corners.T)
    twice = cross(b - a, c - a)
    triangle = np.full(len(places), -1, dtype=np.intp)
    shares = np.zeros((len(places), 3))
    for at, place in enumerate(places):
        own = np.stack([cross(b - place, c - place), cross(c - place, a - place)], -1)
        both = own / twice[:, None]
        three = np.concatenate([both, 1 - both.sum(axis=1, keepdims=True)], axis=1)
        best = int(np.argmax(three.min(axis=1)))
        if three[best].min() > -EDGE:
            triangle[at], shares[at] = best, three[best]
    return triangle, shares


def cubic(corners: Array, shares: Array) -> tuple[Array, Array, Array]:
    """Shares of the corners' heights and slopes in x and y in the height of a place; (places, 3).

    Heights and slopes make a smooth cubic; corners are (places, 3, 2).
    """
    height, slope_x, slope_y = (np.zeros(shares.shape) for _ in range(3))
    bubble = 0.5 * shares.prod(axis=1)
    for i, j, k in CYCLE:
        own, next_, last = shares[:, i], shares[:, j], shares[:, k]
        height[:, i] = own + own**2 * (next_ + last) - own * (next_**2 + last**2)
        to_next = own**2 * next_ + bubble
        to_last = own**2 * last + bubble
        reach = (corners[:, j] - corners[:, i]) * to_next[:, None]
        reach += (corners[:, k] - corners[:, i]) * to_last[:, None]
        slope_x[:, i], slope_y[:, i] = reach.T
    return height, slope_x, slope_y


def _stiffness(layer: Meshed, base: Meshed) -> Array:
    """Of the metal between the middles of both sheets, over each node's share of the area."""
    a, b, c = (layer.flat[corner] for corner in layer.corners.T)
    area = 0.5 * cross(b - a, c - a)
    share = np.bincount(layer.corners.ravel(), np.repeat(area / 3, 3), len(layer.nodes))
    near, far = layer.sheet, base.sheet
    give = 0.5 * (near.thickness / near.material.elastic + far.thickness / far.material.elastic)
    stiff: Array = share / give
    return stiff


def _joined(some: list[Contacts]) -> Contacts:
    some = [Contacts(), *some]
    return Contacts(
        freedoms=np.concatenate([one.freedoms for one in some]),
        share=np.concatenate([one.share for one in some]),
        part=np.concatenate([one.part for one in some]),
        stiffness=np.concatenate([one.stiffness for one in some]),
    )
