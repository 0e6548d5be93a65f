"""Curved shells of the obstacle course, and the hook of Raasch.

T. Belytschko et al., "Stress projection for membrane and shear locking in shell finite elements",
Computer Methods in Applied Mechanics and Engineering 51 (1985) 221-258: Scordelis-Lo roof 0.3024,
cylinder pinched between end diaphragms 1.8248e-5. N. F. Knight, "Raasch challenge for shell
elements", AIAA Journal 35 (1997) 375-381, from memory: 5.02.
"""

import numpy as np
import pytest
from shell.grids import Grid, grid, sheet

from pedalwright.core.units import Array
from pedalwright.shell.solve import solve


def roof(n: int) -> float:
    """Sag of the free edge's middle; a quarter of the roof."""
    half = np.radians(40.0)
    made = grid(n, n, lambda u, v: (25 * np.sin(half * u), 25.0 * v, 25 * np.cos(half * u)))
    held = made.hold(
        (made.number[:, 0], "xz"), (made.number[:, -1], "yXZ"), (made.number[0], "xYZ")
    )
    mesh = sheet(made, held, thickness=0.25, elastic=4.32e8, poisson=0.0)
    answer = solve(mesh, made.even_load((0.0, 0.0, -90.0)))
    return -answer.moves[0, made.number[-1, -1], 2]


def cylinder(n: int) -> float:
    """Give under the load; an eighth of the cylinder."""
    quarter = np.pi / 2
    made = grid(
        n, n, lambda u, v: (300 * np.sin(quarter * u), 300.0 * v, 300 * np.cos(quarter * u))
    )
    held = made.hold(
        (made.number[:, 0], "xz"),
        (made.number[:, -1], "yXZ"),
        (made.number[0], "xYZ"),
        (made.number[-1], "zXY"),
    )
    mesh = sheet(made, held, thickness=3.0, elastic=3e6, poisson=0.3)
    loads = np.zeros((1, len(made.nodes), 6))
    loads[0, made.number[0, -1], 2] = -0.25
    return -solve(mesh, loads).moves[0, made.number[0, -1], 2]


def test_scordelis_lo_roof() -> None:
    assert roof(16) == pytest.approx(0.3024, rel=0.01)
    assert roof(32) == pytest.approx(0.3024, rel=0.01)


def test_pinched_cylinder() -> None:
    assert cylinder(16) == pytest.approx(1.8248e-5, rel=0.01)
    assert cylinder(32) == pytest.approx(1.8248e-5, rel=0.01)


WIDTH, THICKNESS = 20.0, 2.0
#: Small and large arc: radius and angle.
ARCS = ((14.0, np.radians(60.0)), (46.0, np.radians(150.0)))


def hook(along: int, across: int) -> Grid:
    """Two arcs that curve against one another, clamped where the small one begins."""
    share = ARCS[0][1] / (ARCS[0][1] + ARCS[1][1])

    def surface(u: Array, v: Array) -> tuple[Array, Array, Array]:
        small = np.minimum(u / share, 1.0) * ARCS[0][1]
        large = np.maximum((u - share) / (1 - share), 0.0) * ARCS[1][1]
        start, heading = ARCS[0][0], small - large
        x = start * np.sin(small) + ARCS[1][0] * (np.sin(small) - np.sin(heading))
        y = start * (1 - np.cos(small)) + ARCS[1][0] * (np.cos(heading) - np.cos(small))
        return x, y, WIDTH * v

    return grid(along, across, surface)


def test_hook_of_raasch_is_as_stiff_as_a_strip_that_does_not_slide_in_shear() -> None:
    """Nearly all of the hook's give is twist of a strip only ten times as wide as it is thick.

    A thin plate twists by w t³ / 3, the strip in truth by 0.63 t / w less. So the answer must fall
    short of 5.02 by just that, 6.3 %; an element without a true turn about its normal misses by a
    large factor, whatever the mesh.
    """
    made = hook(70, 10)
    held = made.hold((made.number[0], "xyzXYZ"))
    mesh = sheet(made, held, thickness=THICKNESS, elastic=3300.0, poisson=0.35)
    tip = made.number[-1]
    answer = solve(mesh, made.edge_load(tip, (0.0, 0.0, 1.0)))
    twist = 1 - 0.63 * THICKNESS / WIDTH
    assert np.mean(answer.moves[0, tip, 2]) == pytest.approx(5.02 * twist, rel=0.005)
