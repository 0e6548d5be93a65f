"""The flat shell triangle: even strain and even bending exactly, and no force for a rigid move."""

from collections.abc import Callable

import numpy as np
import pytest
from scipy.spatial.transform import Rotation
from shell.grids import grid, sheet

from pedalwright.core.units import Array
from pedalwright.shell.elements import triangle
from pedalwright.shell.elements.membrane import (
    area,
    bending_share,
    bending_strain,
    even_strain,
    plane_stress,
)
from pedalwright.shell.mesh import Mesh
from pedalwright.shell.solve import solve
from pedalwright.shell.stress import corner_stresses

ELASTIC, POISSON, THICKNESS = 70000.0, 0.33, 2.0
#: Moves of flat nodes, and the stress that belongs to them.
Field = Callable[[Array], tuple[Array, Array]]
#: Any way a sheet may lie in space.
TURNED = Rotation.from_rotvec([0.4, -1.1, 0.7]).as_matrix()


def distorted(*, thickness: float = THICKNESS) -> tuple[Mesh, Array]:
    """A sheet of crooked triangles, somewhere in space, held at its rim; and its flat nodes."""
    made = grid(5, 4, lambda u, v: (90.0 * u, 60.0 * v, 0 * u))
    nudge = np.random.default_rng(3).uniform(-6.0, 6.0, (len(made.nodes), 3)) * [1, 1, 0]
    flat = made.nodes + nudge * ~made.rim[:, None]
    held = np.repeat(made.rim[:, None], 6, axis=1)
    mesh = sheet(made, held, thickness=thickness, elastic=ELASTIC, poisson=POISSON)
    turned = Mesh(nodes=flat @ TURNED.T, parts=mesh.parts, held=held, triangles=mesh.triangles)
    return turned, flat


def in_space(moves: Array) -> Array:
    return np.concatenate([moves[:, :3] @ TURNED.T, moves[:, 3:] @ TURNED.T], axis=1)


def stretched(flat: Array) -> tuple[Array, Array]:
    """Moves of an even strain with a turn, and the stress that belongs to it."""
    slope = np.array([[1e-3, 3e-4], [-7e-4, -2e-3]])
    moves = np.zeros((len(flat), 6))
    moves[:, :2] = flat[:, :2] @ slope.T
    moves[:, 5] = 0.5 * (slope[1, 0] - slope[0, 1])
    strain = np.array([slope[0, 0], slope[1, 1], slope[0, 1] + slope[1, 0]])
    return moves, plane_stress(np.array([ELASTIC]), np.array([POISSON]))[0] @ strain


def bent(flat: Array) -> tuple[Array, Array]:
    """Moves of an even bending with twist, and the stress on the face the normal points to."""
    x, y = flat[:, 0], flat[:, 1]
    a, b, c = 2e-4, -1e-4, 1.5e-4
    moves = np.zeros((len(flat), 6))
    moves[:, 2] = a * x**2 / 2 + b * y**2 / 2 + c * x * y
    moves[:, 3] = b * y + c * x
    moves[:, 4] = -(a * x + c * y)
    strain = -0.5 * THICKNESS * np.array([a, b, 2 * c])
    return moves, plane_stress(np.array([ELASTIC]), np.array([POISSON]))[0] @ strain


@pytest.mark.parametrize(("field", "face"), [(stretched, 0), (bent, 2)])
def test_crooked_triangles_pass_the_patch_test(field: Field, face: int) -> None:
    mesh, flat = distorted()
    moves, expected = field(flat)
    answer = solve(mesh, np.zeros((1, len(flat), 6)), moved=in_space(moves))
    assert answer.moves[0] == pytest.approx(in_space(moves), abs=1e-10 * np.abs(moves).max())
    tensor = TURNED.T @ corner_stresses(mesh, answer.moves)[0, :, :, face] @ TURNED
    found = np.stack([tensor[..., 0, 0], tensor[..., 1, 1], tensor[..., 0, 1]], axis=-1)
    assert found == pytest.approx(np.broadcast_to(expected, found.shape), rel=1e-10, abs=1e-9)


def test_a_rigid_move_needs_no_force_and_there_are_six_of_them() -> None:
    rng = np.random.default_rng(5)
    places = rng.normal(size=(20, 3, 3)) * 10.0
    one = np.ones(20)
    stiff = triangle.stiffness(
        triangle.Sheet(
            places=places,
            thickness=one,
            elastic=1000.0 * one,
            poisson=0.3 * one,
            offset=0.7 * one,
        )
    )
    turn = np.array([0.3, -0.2, 0.5])
    moves = np.concatenate([np.cross(turn, places), np.broadcast_to(turn, places.shape)], -1)
    forces = np.einsum("tij,tj->ti", stiff, moves.reshape(20, 18))
    assert np.abs(forces).max() < 1e-10 * np.abs(stiff).max()
    assert stiff == pytest.approx(stiff.transpose(0, 2, 1), rel=1e-12, abs=1e-9)
    stiffest = np.linalg.eigvalsh(stiff)
    assert np.all(np.sum(stiffest > 1e-9 * stiffest[:, -1:], axis=1) == 12)


@pytest.mark.parametrize("slender", [1.0, 4.0, 16.0])
def test_two_triangles_take_the_exact_energy_of_bending_in_their_plane(slender: float) -> None:
    """Felippa's aim: a rectangle of two triangles, whatever its shape, under an even moment."""
    corners = np.array([[-slender, -1], [slender, -1], [slender, 1], [-slender, 1.0]]) / 2
    two = corners[[[0, 1, 2], [0, 2, 3]]]
    x, y = corners.T
    curve = 1e-3
    moves = curve * np.stack([-x * y, x**2 / 2 + POISSON * y**2 / 2, x], axis=1)
    own = moves[[[0, 1, 2], [0, 2, 3]]].reshape(2, 9)
    elastic = plane_stress(np.full(2, 1.0), np.full(2, POISSON))
    even = np.einsum("tij,tj->ti", even_strain(two), own)
    bending = np.einsum("tnij,tj->tni", bending_strain(two), own)
    middles = 0.5 * (bending + np.roll(bending, -1, axis=1))
    share = bending_share(np.full(2, POISSON))
    density = np.einsum("ti,tij,tj->t", even, elastic, even)
    density += share * np.einsum("tni,tij,tnj->t", middles, elastic, middles) / 3
    energy = np.sum(0.5 * area(two) * density)
    assert energy == pytest.approx(0.5 * curve**2 * slender / 12, rel=1e-12)


def test_a_bonded_layer_bends_like_a_thick_sheet() -> None:
    """Two sheets of 1 mm, each half a millimetre beside the nodes, are one of 2 mm."""
    mesh, flat = distorted()
    half = mesh.triangles.thickness / 2
    two = np.concatenate([mesh.triangles.corners] * 2)
    layers = Mesh(
        nodes=mesh.nodes,
        parts=mesh.parts,
        held=mesh.held,
        triangles=type(mesh.triangles)(
            corners=two,
            part=np.zeros(len(two), dtype=np.intp),
            thickness=np.concatenate([half, half]),
            offset=np.concatenate([half / 2, -half / 2]),
        ),
    )
    load = np.zeros((1, len(flat), 6))
    load[0, 14, :3] = TURNED @ [200.0, -300.0, 50.0]
    thick, layered = solve(mesh, load), solve(layers, load)
    # Bent by offset membranes instead of a plate, of which the mesh is not quite the same.
    assert layered.work == pytest.approx(thick.work, rel=0.02)
