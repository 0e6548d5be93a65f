"""Regular grids of triangles for tests, laid over any surface."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.mesh import Flags, Indices, Material, Mesh, Part, Triangles

Surface = Callable[[Array, Array], tuple[Array, Array, Array]]


@dataclass(frozen=True, slots=True)
class Grid:
    nodes: Array
    corners: Indices
    #: Numbers of the nodes by row and column, (along + 1, across + 1).
    number: Indices

    @property
    def rim(self) -> Flags:
        rim = np.zeros(len(self.nodes), dtype=bool)
        edges = (self.number[0], self.number[-1], self.number[:, 0], self.number[:, -1])
        rim[np.concatenate(edges)] = True
        return rim

    def hold(self, *places: tuple[Indices, str]) -> Flags:
        """Freedoms held at some nodes, by letters: x y z moves, X Y Z turns."""
        held = np.zeros((len(self.nodes), 6), dtype=bool)
        for nodes, letters in places:
            held[np.ix_(np.atleast_1d(nodes).ravel(), ["xyzXYZ".index(c) for c in letters])] = True
        return held

    def even_load(self, load: tuple[float, float, float]) -> Array:
        """Loads for each unit of area, (1, nodes, 6)."""
        places = self.nodes[self.corners]
        across = np.cross(places[:, 1] - places[:, 0], places[:, 2] - places[:, 0])
        area = 0.5 * np.linalg.norm(across, axis=1)
        loads = np.zeros((1, len(self.nodes), 6))
        for corner in self.corners.T:
            np.add.at(loads[0, :, :3], corner, area[:, None] / 3 * np.array(load))
        return loads

    def edge_load(self, nodes: Indices, load: tuple[float, float, float]) -> Array:
        """A load spread evenly along a row of evenly spaced nodes, (1, nodes, 6)."""
        share = np.full(len(nodes), 1.0)
        share[[0, -1]] = 0.5
        loads = np.zeros((1, len(self.nodes), 6))
        loads[0, nodes, :3] = share[:, None] / share.sum() * np.array(load)
        return loads


def grid(along: int, across: int, surface: Surface, *, turning: bool = True) -> Grid:
    """Triangles on a surface over 0..1 by 0..1; their diagonals turn like a chessboard, or not."""
    share = np.meshgrid(np.linspace(0, 1, along + 1), np.linspace(0, 1, across + 1), indexing="ij")
    nodes = np.stack([np.broadcast_to(x, share[0].shape) for x in surface(*share)], axis=-1)
    number = np.arange(nodes[..., 0].size).reshape(share[0].shape)
    a, b, c, d = number[:-1, :-1], number[1:, :-1], number[1:, 1:], number[:-1, 1:]
    black = (np.add.outer(np.arange(along), np.arange(across)) % 2 == 0) | (not turning)
    first = np.where(black[..., None], np.stack([a, b, c], -1), np.stack([a, b, d], -1))
    second = np.where(black[..., None], np.stack([a, c, d], -1), np.stack([b, c, d], -1))
    corners = np.concatenate([first.reshape(-1, 3), second.reshape(-1, 3)])
    return Grid(nodes.reshape(-1, 3).astype(float), corners, number)


def sheet(made: Grid, held: Flags, *, thickness: float, elastic: float, poisson: float) -> Mesh:
    """One even sheet."""
    count = len(made.corners)
    return Mesh(
        nodes=made.nodes,
        parts=(Part("sheet", Material(elastic=elastic, poisson=poisson)),),
        held=held,
        triangles=Triangles(
            corners=made.corners,
            part=np.zeros(count, dtype=np.intp),
            thickness=np.full(count, thickness),
            offset=np.zeros(count),
        ),
    )
