"""A flat piece of sheet between three nodes: membrane and plate together, six freedoms a node.

Membrane and plate know nothing of each other in a flat, even sheet, so their stiffnesses are
simply put side by side; where triangles meet at an angle the turn about one's normal becomes the
bending of the next. A layer that is bonded to another sheet shares its nodes: it lies `offset`
beside them along the normal, and is carried on rigid arms.

Freedoms of a node: moves in x, y, z, then turns about x, y, z.
"""

from dataclasses import dataclass

import numpy as np

from pedalwright.core.units import Array
from pedalwright.shell.elements.membrane import (
    area,
    bending_share,
    bending_strain,
    even_strain,
    plane_stress,
)
from pedalwright.shell.elements.plate import curvature

#: Freedoms of the membrane and of the plate among the eighteen of a triangle.
IN_PLANE = np.array([6 * node + freedom for node in range(3) for freedom in (0, 1, 5)])
OUT_OF_PLANE = np.array([6 * node + freedom for node in range(3) for freedom in (2, 3, 4)])
#: What triangles are worked at once, so that the memory stays small.
CHUNK = 20_000


@dataclass(frozen=True, kw_only=True, slots=True)
class Sheet:
    """Triangles ready to be worked: places of corners (triangles, 3, 3), the rest (triangles,)."""

    places: Array
    thickness: Array
    elastic: Array
    poisson: Array
    #: The sheet's middle beside its nodes, along the normal.
    offset: Array

    def part(self, some: slice) -> "Sheet":
        """Some of the triangles."""
        return Sheet(
            places=self.places[some],
            thickness=self.thickness[some],
            elastic=self.elastic[some],
            poisson=self.poisson[some],
            offset=self.offset[some],
        )


def stiffness(sheet: Sheet) -> Array:
    """Stiffness of each triangle in the axes of the model, (triangles, 18, 18)."""
    count = len(sheet.thickness)
    starts = range(0, count, CHUNK)
    blocks = [_stiffness(sheet.part(slice(start, start + CHUNK))) for start in starts]
    return np.concatenate(blocks) if blocks else np.zeros((0, 18, 18))


def strains(sheet: Sheet, moves: Array) -> tuple[Array, Array, Array]:
    """Strain of the middle and curvature at each corner, and the axes they are in.

    `moves` are the corners' freedoms, (cases, triangles, 18). Strains and curvatures are
    (cases, triangles, 3 corners, 3), axes (triangles, 3, 3).
    """
    axes, corners = frames(sheet.places)
    cases, count = moves.shape[:2]
    local = np.einsum("tij,ctnj->ctni", axes, moves.reshape(cases, count, 6, 3))
    local = local.reshape(cases, count, 18)
    for node in range(0, 18, 6):
        local[..., node] += sheet.offset * local[..., node + 4]
        local[..., node + 1] -= sheet.offset * local[..., node + 3]
    membrane = even_strain(corners)[:, None] + bending_strain(corners)
    return (
        np.einsum("tnij,ctj->ctni", membrane, local[..., IN_PLANE]),
        np.einsum("tnij,ctj->ctni", curvature(corners), local[..., OUT_OF_PLANE]),
        axes,
    )


def frames(places: Array) -> tuple[Array, Array]:
    """Axes of each triangle as rows (x along its first side, z its normal), and flat corners."""
    first, second = places[:, 1] - places[:, 0], places[:, 2] - places[:, 0]
    x = first / np.linalg.norm(first, axis=1, keepdims=True)
    normal = np.cross(first, second)
    z = normal / np.linalg.norm(normal, axis=1, keepdims=True)
    axes = np.stack([x, np.cross(z, x), z], axis=1)
    middle = places.mean(axis=1, keepdims=True)
    return axes, ((places - middle) @ axes.transpose(0, 2, 1))[..., :2]


def _stiffness(sheet: Sheet) -> Array:
    axes, corners = frames(sheet.places)
    elastic = plane_stress(sheet.elastic, sheet.poisson)
    size, thickness = area(corners), sheet.thickness
    share = bending_share(sheet.poisson)[:, None, None]
    stretched = _swept(even_strain(corners)[:, None], elastic)
    stretched += share * _swept(_middles(bending_strain(corners)), elastic)
    bent = _swept(_middles(curvature(corners)), elastic)
    local = np.zeros((len(size), 18, 18))
    local[:, IN_PLANE[:, None], IN_PLANE] = stretched * (size * thickness)[:, None, None]
    local[:, OUT_OF_PLANE[:, None], OUT_OF_PLANE] = bent * (size * thickness**3 / 12)[:, None, None]
    if np.any(sheet.offset):
        _carry(local, sheet.offset)
        _carry(local.transpose(0, 2, 1), sheet.offset)
    return turned(local, axes)


def _swept(rows: Array, elastic: Array) -> Array:
    """Mean of rows^T elastic rows over the places on axis 1."""
    # Side by side, the places make one product of matrices where there would be three.
    count, places, _, freedoms = rows.shape
    stressed = (elastic[:, None] @ rows).reshape(count, 3 * places, freedoms)
    swept: Array = rows.reshape(count, 3 * places, freedoms).transpose(0, 2, 1) @ stressed / places
    return swept


def _middles(at_corners: Array) -> Array:
    """What varies evenly between the corners, at the middles of the sides."""
    return 0.5 * (at_corners + np.roll(at_corners, -1, axis=1))


def _carry(matrix: Array, offset: Array) -> None:
    """From the freedoms of the sheet's middle to those of its nodes, on the last axis."""
    for node in range(0, 18, 6):
        matrix[..., node + 4] += offset[:, None] * matrix[..., node]
        matrix[..., node + 3] -= offset[:, None] * matrix[..., node + 1]


def turned(local: Array, axes: Array) -> Array:
    """The same stiffness in the axes of the model."""
    count = len(local)
    back = axes.transpose(0, 2, 1)[:, None]
    half = (back @ local.reshape(count, 6, 3, 18)).reshape(count, 18, 18).transpose(0, 2, 1)
    return np.ascontiguousarray(back @ half.reshape(count, 6, 3, 18)).reshape(count, 18, 18)
