"""Thin plates against exact series: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells.

Square, nu 0.3, supported or clamped all round, a load in the middle or spread evenly. The
coefficients are the book's, with digits from the series themselves.
"""

import numpy as np
import pytest
from shell.grids import Grid, grid, sheet

from pedalwright.core.units import Array
from pedalwright.shell.mesh import Mesh
from pedalwright.shell.solve import solve
from pedalwright.shell.stress import OVER, stresses

SIDE, THICKNESS, ELASTIC, POISSON = 300.0, 2.0, 210000.0, 0.3
BENDING = ELASTIC * THICKNESS**3 / (12 * (1 - POISSON**2))
PRESSURE, FORCE = 0.01, 1000.0
#: Give in the middle: share of P a² / D, and of q a⁴ / D.
SUPPORTED, CLAMPED = (0.0116008, 0.0040624), (0.0056120, 0.0012653)


def plate(n: int, edge: str) -> tuple[Mesh, Grid, int]:
    made = grid(n, n, lambda u, v: (SIDE * u, SIDE * v, 0 * u))
    rim = np.flatnonzero(made.rim)
    corners = made.number[[0, -1], [0, 0]]
    held = made.hold((rim, edge), (corners[:1], "xy"), (corners[1:], "y"))
    made_of = sheet(made, held, thickness=THICKNESS, elastic=ELASTIC, poisson=POISSON)
    return made_of, made, int(made.number[n // 2, n // 2])


def gives(n: int, edge: str) -> Array:
    """Give in the middle over the exact one of a bent plate: point load, even load."""
    mesh, made, middle = plate(n, edge)
    loads = np.concatenate([np.zeros((1, len(made.nodes), 6)), made.even_load((0, 0, PRESSURE))])
    loads[0, middle, 2] = FORCE
    found = solve(mesh, loads).moves[:, middle, 2]
    return found / [FORCE * SIDE**2 / BENDING, PRESSURE * SIDE**4 / BENDING]


@pytest.mark.parametrize(("edge", "exact"), [("z", SUPPORTED), ("xyzXYZ", CLAMPED)])
def test_give_in_the_middle_within_one_per_cent(edge: str, exact: tuple[float, float]) -> None:
    assert gives(16, edge) == pytest.approx(exact, rel=0.01)


@pytest.mark.parametrize(("edge", "exact"), [("z", SUPPORTED), ("xyzXYZ", CLAMPED)])
def test_half_the_size_a_quarter_of_the_error(edge: str, exact: tuple[float, float]) -> None:
    errors = [np.abs(gives(n, edge)[1] / exact[1] - 1) for n in (8, 16, 32)]
    orders = np.log2(np.divide(errors[:-1], errors[1:]))
    assert np.all(orders > 1.8)


@pytest.mark.parametrize(
    ("edge", "place", "moment"), [("xyzXYZ", "edge", -0.0513), ("z", "middle", 0.0479)]
)
def test_moments_where_they_are_largest(edge: str, place: str, moment: float) -> None:
    """Share of q a², read off the face's stress; the book prints four digits."""
    mesh, made, middle = plate(32, edge)
    found = stresses(mesh, solve(mesh, made.even_load((0, 0, PRESSURE))).moves)
    node = middle if place == "middle" else made.number[0, 16]
    stress = found.tensor[0, found.node == node, OVER, 0, 0][0]
    # The load is along the normal, so the face that the normal points to is pulled in the middle.
    assert stress * THICKNESS**2 / 6 / (PRESSURE * SIDE**2) == pytest.approx(moment, rel=4e-3)
