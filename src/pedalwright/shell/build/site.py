"""The site: where nodes, links, springs and bars are gathered while a bench is built."""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.faults import Fault
from pedalwright.core.points import Point
from pedalwright.core.units import Array
from pedalwright.shell.arrays import xyz
from pedalwright.shell.mesh import (
    SIX,
    Bars,
    Contacts,
    Flags,
    Indices,
    Links,
    Material,
    Mesh,
    Part,
    Springs,
    Triangles,
)
from pedalwright.shell.meshing.sheets import Meshed
from pedalwright.shell.parts import Bench

NO_AXES: Array = np.eye(3)
NONE_FREE: Flags = np.zeros(SIX, dtype=np.bool_)


@dataclass(frozen=True, slots=True)
class Rough:
    """A place next to which the stress of a sheet has no end, or only tells of the mesh."""

    part: int
    #: Rim of a patch in order, or a single point, (points, 3).
    rim: Array


class Site:
    """Everything placed so far; only `build` uses it, and only to make a mesh of it."""

    def __init__(self, bench: Bench) -> None:
        self.bench = bench
        self.sheets: dict[str, Meshed] = {}
        #: Numbers of each sheet's own nodes among all, and of those on its rim.
        self.nodes_of: dict[str, Indices] = {}
        self.rim_of: dict[str, Indices] = {}
        self.nodes: list[Array] = []
        self.points: dict[str, int] = {}
        self.rough: list[Rough] = []
        #: Springs of each fastener, from the first joint of its stack to the last.
        self.springs_of: dict[str, tuple[int, ...]] = {}
        self.wrong: list[Fault] = []
        self.triangles = Triangles()
        self.contacts = Contacts()
        self._parts: dict[str, Part] = {}
        self._links: dict[int, tuple[int, Array, Flags]] = {}
        self._masters: set[int] = set()
        self._held: dict[int, Flags] = {}
        self._springs: list[tuple[int, int, int, Array, Array, Array]] = []
        self._bars: list[tuple[int, int, int, Array, Array]] = []

    def part(self, name: str, material: Material | None = None) -> int:
        """Number of a part; the first to name it says what it is made of."""
        self._parts.setdefault(name, Part(name, material))
        return list(self._parts).index(name)

    def node(self, place: Array) -> int:
        """A new node."""
        self.nodes.append(place)
        return len(self.nodes) - 1

    def on_sheet(self, name: str, at: Point) -> int:
        """The node of a sheet, or of the sheet that carries it, at a point of the model."""
        base = self.base(name)
        return int(self.nodes_of[base][self.sheets[base].nearest(xyz(at)[None])[0]])

    def base(self, name: str) -> str:
        """The sheet whose nodes a sheet uses: itself, or the one it is bonded to."""
        return next((bond.base for bond in self.bench.bonds if bond.layer == name), name)

    def link(self, node: int, master: int, axes: Array = NO_AXES, free: Flags = NONE_FREE) -> bool:
        """Bind a node to another; False where it is bound already, or is a master itself."""
        if node in self._links or master in self._links or node in self._masters:
            return False
        self._links[node] = (master, axes, free)
        self._masters.add(master)
        return True

    def bound(self, node: int) -> bool:
        """Whether a node goes with another one."""
        return node in self._links

    def hold(self, node: int, which: Flags) -> None:
        """Hold some freedoms of a node."""
        self._held[node] = self._held.get(node, NONE_FREE) | which

    def spring(self, ends: tuple[int, int], part: int, axes: Array, at: Array, along: Array) -> int:
        """A spring between two nodes, joined at a place; its number."""
        arms = np.stack([at - self.nodes[ends[0]], at - self.nodes[ends[1]]])
        self._springs.append((*ends, part, axes, arms, along))
        return len(self._springs) - 1

    def bar(self, ends: tuple[int, int], part: int, up: Array, section: Array) -> None:
        """A bar between two nodes."""
        self._bars.append((*ends, part, up, section))

    def mesh(self) -> Mesh:
        """All of it."""
        held = np.zeros((len(self.nodes), SIX), dtype=np.bool_)
        for node, which in self._held.items():
            held[node] = which
        return Mesh(
            nodes=np.array(self.nodes).reshape(-1, 3),
            parts=tuple(self._parts.values()),
            held=held,
            triangles=self.triangles,
            bars=self._all_bars(),
            springs=self._all_springs(),
            links=self._all_links(),
            contacts=self.contacts,
            points=dict(self.points),
        )

    def _all_bars(self) -> Bars:
        if not self._bars:
            return Bars()
        first, second, part, up, section = zip(*self._bars, strict=True)
        return Bars(
            ends=np.stack([first, second], axis=1),
            part=np.array(part),
            up=np.array(up),
            arms=np.zeros((len(part), 2, 3)),
            released=np.zeros((len(part), 12), dtype=np.bool_),
            section=np.array(section),
        )

    def _all_springs(self) -> Springs:
        if not self._springs:
            return Springs()
        first, second, part, axes, arms, along = zip(*self._springs, strict=True)
        return Springs(
            ends=np.stack([first, second], axis=1),
            part=np.array(part),
            axes=np.array(axes),
            arms=np.array(arms),
            along=np.array(along),
        )

    def _all_links(self) -> Links:
        if not self._links:
            return Links()
        master, axes, free = zip(*self._links.values(), strict=True)
        return Links(
            node=np.array(list(self._links)),
            master=np.array(master),
            axes=np.array(axes),
            free=np.array(free),
        )
