"""The mesh: nodes, and the triangles, bars, springs and links between them. Plain arrays.

Nothing here knows what it stands for, apart from the name of the part each element belongs to,
by which the answers are given. Freedoms of a node: moves in x, y, z, then turns about x, y, z.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from pedalwright.core.units import Array
from pedalwright.shell.elements.beam import STATIONS

Indices = NDArray[np.intp]
Flags = NDArray[np.bool_]

#: Freedoms of a node.
SIX = 6


@dataclass(frozen=True, kw_only=True, slots=True)
class Material:
    """What a part is made of; a spring needs none."""

    elastic: float
    poisson: float
    #: nan where nobody said; then nothing is judged by it.
    yield_strength: float = float("nan")

    @property
    def shear(self) -> float:
        """Shear modulus."""
        return self.elastic / (2 * (1 + self.poisson))


@dataclass(frozen=True, slots=True)
class Part:
    """Something that is made and has a name: a panel, a tube, a row of rivets."""

    name: str
    material: Material | None = None


def _numbers(*shape: int) -> Array:
    return np.zeros(shape)


def _indices(*shape: int) -> Indices:
    return np.zeros(shape, dtype=np.intp)


@dataclass(frozen=True, kw_only=True, slots=True)
class Triangles:
    """Flat pieces of sheet; corners run anticlockwise seen from the side the normal points to."""

    corners: Indices = field(default_factory=lambda: _indices(0, 3))
    part: Indices = field(default_factory=lambda: _indices(0))
    thickness: Array = field(default_factory=lambda: _numbers(0))
    #: Middle of the sheet beside its nodes, along the normal: for a layer bonded to another.
    offset: Array = field(default_factory=lambda: _numbers(0))


@dataclass(frozen=True, kw_only=True, slots=True)
class Bars:
    """Straight bars; see `elements.beam` for their axes and what joints let go."""

    ends: Indices = field(default_factory=lambda: _indices(0, 2))
    part: Indices = field(default_factory=lambda: _indices(0))
    up: Array = field(default_factory=lambda: _numbers(0, 3))
    arms: Array = field(default_factory=lambda: _numbers(0, 2, 3))
    released: Flags = field(default_factory=lambda: np.zeros((0, 12), dtype=np.bool_))
    #: Force per strain at the stations: stretch, shear y and z, twist, bending about y and z.
    section: Array = field(default_factory=lambda: _numbers(0, 6, len(STATIONS)))


@dataclass(frozen=True, kw_only=True, slots=True)
class Springs:
    """Springs between two nodes; see `elements.spring`."""

    ends: Indices = field(default_factory=lambda: _indices(0, 2))
    part: Indices = field(default_factory=lambda: _indices(0))
    axes: Array = field(default_factory=lambda: _numbers(0, 3, 3))
    arms: Array = field(default_factory=lambda: _numbers(0, 2, 3))
    along: Array = field(default_factory=lambda: _numbers(0, 6))


@dataclass(frozen=True, kw_only=True, slots=True)
class Links:
    """Nodes that go with another one as if welded to it by a rigid arm.

    A freedom that is `free` does not go along: the turn about a pin, the slide in a slot. It is
    one of the link's own axes, rows of `axes`.
    """

    node: Indices = field(default_factory=lambda: _indices(0))
    master: Indices = field(default_factory=lambda: _indices(0))
    axes: Array = field(default_factory=lambda: _numbers(0, 3, 3))
    free: Flags = field(default_factory=lambda: np.zeros((0, SIX), dtype=np.bool_))


@dataclass(frozen=True, kw_only=True, slots=True)
class Contacts:
    """Places where one sheet may press on another but not pull.

    The gap opens by `share` times the freedoms named, both (contacts, 24).
    """

    freedoms: Indices = field(default_factory=lambda: _indices(0, 24))
    share: Array = field(default_factory=lambda: _numbers(0, 24))
    part: Indices = field(default_factory=lambda: _indices(0))
    #: Force for each millimetre the sheets press into one another.
    stiffness: Array = field(default_factory=lambda: _numbers(0))


@dataclass(frozen=True, kw_only=True, slots=True)
class Mesh:
    """Everything that is on the bench."""

    nodes: Array
    parts: tuple[Part, ...]
    #: Freedoms that the bench holds, (nodes, 6) of yes or no.
    held: Flags
    triangles: Triangles = field(default_factory=Triangles)
    bars: Bars = field(default_factory=Bars)
    springs: Springs = field(default_factory=Springs)
    links: Links = field(default_factory=Links)
    contacts: Contacts = field(default_factory=Contacts)
    #: Nodes that have a name: where loads act and gives are read.
    points: Mapping[str, int] = field(default_factory=dict[str, int])

    def loads(self, *cases: Mapping[str | int, tuple[float, ...]]) -> Array:
        """Loads on named or numbered nodes: three forces, or three forces and three moments.

        (cases, nodes, 6); each case maps a node to its load.
        """
        loads = np.zeros((len(cases), len(self.nodes), SIX))
        for row, case in zip(loads, cases, strict=True):
            for node, load in case.items():
                place = self.points[node] if isinstance(node, str) else node
                row[place, : len(load)] += load
        return loads
