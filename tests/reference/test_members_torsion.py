"""Torsion of flat bars: the classical table, and a finite-difference solution of our own.

The membrane (Prandtl) equation is solved on a grid, which shares nothing with the series.
"""

import numpy as np
import pytest
import scipy.sparse as sparse
from scipy.sparse.linalg import spsolve

from pedalwright.core.units import Array
from pedalwright.structure.formulas.arm import (
    bending_stress,
    equivalent_stress,
    shear_stress,
    torsion_stress,
)
from pedalwright.structure.formulas.sections import (
    bar_area,
    edge_torsion_factor,
    face_torsion_factor,
    net_modulus,
    plastic_torsion_modulus,
    torsion_constant,
    torsion_factor,
)

#: h/t, k_1, k_2 (Timoshenko and Goodier, Theory of Elasticity, the table for rectangles).
TABLE = [
    (1.0, 0.1406, 0.2082),
    (2.0, 0.2287, 0.2459),
    (3.0, 0.2633, 0.2672),
    (4.0, 0.2808, 0.2817),
    (10.0, 0.3123, 0.3123),
]


def membrane(t: float, h: float, cells: int) -> tuple[float, Array, Array]:
    """Torsion constant, and slope along the broad face and along the narrow edge."""
    step = t / cells
    across, along = cells - 1, round(h / step) - 1

    def second(n: int) -> sparse.dia_array:
        return (
            sparse.diags_array([1.0, -2.0, 1.0], offsets=[-1, 0, 1], shape=(n, n), dtype=np.float64)
            / step**2
        )

    matrix = sparse.kron(sparse.eye_array(along), second(across)) + sparse.kron(
        second(along), sparse.eye_array(across)
    )
    inside = spsolve(matrix.tocsc(), np.full(across * along, -2.0)).reshape(along, across)
    hill = np.pad(inside, 1)
    face = (4 * hill[:, 1] - hill[:, 2]) / (2 * step)
    edge = (4 * hill[1] - hill[2]) / (2 * step)
    return 2 * float(np.sum(hill)) * step**2, face, edge


@pytest.mark.parametrize(("slim", "k_1", "k_2"), TABLE)
def test_timoshenko_goodier_table(slim: float, k_1: float, k_2: float) -> None:
    assert torsion_factor(slim) == pytest.approx(k_1, rel=5e-4)
    assert face_torsion_factor(slim) == pytest.approx(k_2, rel=5e-4)


def test_a_square_has_four_like_sides() -> None:
    assert edge_torsion_factor(1.0) == pytest.approx(face_torsion_factor(1.0), rel=1e-4)


def test_the_edge_of_a_thin_strip_sees_0_7425_of_the_face() -> None:
    ratio = face_torsion_factor(200.0) / edge_torsion_factor(200.0)
    assert ratio == pytest.approx(0.7425, abs=1e-4)


@pytest.mark.parametrize("slim", [1.0, 2.0, 4.0])
def test_membrane_on_a_grid(slim: float) -> None:
    constant, face, edge = membrane(10.0, 10.0 * slim, 40)
    assert torsion_constant(10.0, 10.0 * slim) == pytest.approx(constant, rel=3e-3)
    # tau = slope at unit twist, so T / tau = J / slope
    assert face_torsion_factor(slim) * slim * 1000 == pytest.approx(
        constant / face[len(face) // 2], rel=3e-3
    )
    assert edge_torsion_factor(slim) * slim * 1000 == pytest.approx(
        constant / edge[len(edge) // 2], rel=3e-3
    )


@pytest.mark.parametrize(("slim", "worse"), [(3.0, 1.01), (4.0, 1.03), (8.0, 1.09)])
def test_places_between_edge_and_face_are_little_worse(slim: float, worse: float) -> None:
    _, face, edge = membrane(10.0, 10.0 * slim, 20)
    height = np.linspace(-1.0, 1.0, len(face))
    found = 1.0
    for twist in np.linspace(0.0, 3.0, 61):
        for shear in (0.0, 0.1, 0.3):
            tau = twist * face / face.max() + shear * (1 - height**2)
            round_the_side = np.max(equivalent_stress(np.abs(height), tau))
            at_edge = equivalent_stress(1.0, twist * edge.max() / face.max())
            judged = max(at_edge, equivalent_stress(0.0, twist + shear))
            found = max(found, float(round_the_side / judged))
    assert worse - 0.02 < found < worse


def test_section_10_by_40_with_the_pad_35_aside_180_from_it() -> None:
    """2000 N. Bending and face worked by hand; the edge's torsion is the grid's, 46.3 MPa."""
    t, h, torque = 10.0, 40.0, 2000.0 * 35.0
    bent = bending_stress(2000.0 * 180.0, net_modulus(t, h, 0.0))
    face = torsion_stress(torque, face_torsion_factor(h / t), h, t)
    edge = torsion_stress(torque, edge_torsion_factor(h / t), h, t)
    shear = shear_stress(2000.0, bar_area(t, h))
    assert bent == pytest.approx(135.0)
    assert face == pytest.approx(62.13, rel=1e-3)
    assert shear == pytest.approx(7.5)
    assert equivalent_stress(0.0, face + shear) == pytest.approx(120.6, rel=1e-3)
    assert edge == pytest.approx(46.27, rel=1e-3)
    assert equivalent_stress(bent, edge) == pytest.approx(157.0, rel=1e-3)


def test_sand_heap_on_a_square_is_a_pyramid() -> None:
    """Twice the volume of a heap whose slope is the yield shear: 2/3 · (t/2) · t² for a square."""
    assert plastic_torsion_modulus(10.0, 10.0) == pytest.approx(10.0**3 / 3)
