"""Groups of bolts, rivets and welds under eccentric load.

The layout of the six bolts is a public worked example to AS 4100; the forces were solved in
two ways, by vectors and as three springs' worth of unknowns.
"""

import numpy as np
import pytest

from pedalwright.core.units import Array
from pedalwright.structure.formulas.welds import weld_throat_stress
from pedalwright.structure.groups import (
    in_plane,
    tipping_about_edge,
    tipping_about_middle,
    weld_line,
)


def points(*pairs: tuple[float, float]) -> tuple[Array, Array]:
    x, y = np.array(pairs, dtype=np.float64).T
    return x, y


def as_springs(
    x: Array, y: Array, force: tuple[float, float], at: tuple[float, float]
) -> tuple[Array, Array]:
    """The same by equilibrium of a rigid sheet on unit springs: three equations."""
    n = len(x)
    stiffness = np.array(
        [
            [n, 0, -np.sum(y)],
            [0, n, np.sum(x)],
            [-np.sum(y), np.sum(x), np.sum(x**2 + y**2)],
        ]
    )
    moved = np.linalg.solve(stiffness, [*force, at[0] * force[1] - at[1] * force[0]])
    return moved[0] - moved[2] * y, moved[1] + moved[2] * x


def test_as_4100_layout_six_bolts_120_kn_200_mm_beside_the_middle() -> None:
    x, y = points((0, 0), (0, 70), (0, 140), (80, 0), (80, 70), (80, 140))
    shares = in_plane(x, y, force=(0.0, -120e3), at=(240.0, 70.0))
    assert shares.worst == pytest.approx(78.14e3, rel=1e-3)
    assert shares.size[[3, 5]] == pytest.approx(78.14e3, rel=1e-3)
    assert np.argmin(shares.size) == 1
    assert shares.size[1] == pytest.approx(12.88e3, rel=1e-3)


def test_five_rivets_solved_independently() -> None:
    x, y = points((0, 0), (30, 0), (60, 0), (0, 40), (60, 40))
    shares = in_plane(x, y, force=(300.0, -900.0), at=(110.0, 75.0))
    assert shares.size == pytest.approx([366.8, 269.1, 696.8, 545.0, 805.0], rel=1e-3)
    along, across = as_springs(x, y, (300.0, -900.0), (110.0, 75.0))
    assert shares.x == pytest.approx(along, rel=1e-9)
    assert shares.y == pytest.approx(across, rel=1e-9)


def test_three_rows_of_two_under_a_tipping_bracket_worked_by_hand() -> None:
    y = np.repeat([15.0, 55.0, 95.0], 2)
    moment = 2500.0 * 60.0
    assert tipping_about_edge(y, moment)[::2] == pytest.approx([91.6, 336.0, 580.4], abs=0.06)
    assert tipping_about_middle(y, moment)[::2] == pytest.approx([-937.5, 0.0, 937.5])


def test_c_shaped_weld_solved_independently() -> None:
    x = np.array([[0.0, 0.0, 0.0], [30.0, 0.0, 30.0]])
    y = np.array([[0.0, 0.0, 60.0], [0.0, 60.0, 60.0]])
    weld = weld_line(x, y, force=(0.0, -3000.0), at=(90.0, 30.0))
    assert weld.length == pytest.approx(120.0)
    assert weld.worst == pytest.approx(128.06, rel=1e-3)
    assert weld.size[1, [0, 2]] == pytest.approx(128.06, rel=1e-3)
    assert weld_throat_stress(weld.worst, 3.0) == pytest.approx(42.69, rel=1e-3)


def test_a_group_of_variants_is_its_singles() -> None:
    x, y = points((0, 0), (30, 0), (60, 0), (0, 40), (60, 40))
    wide = np.array([1.0, 1.5, 2.0])
    both = in_plane(
        x[:, None] * wide, y[:, None] + 0 * wide, force=(300.0, -900.0), at=(110.0, 75.0)
    )
    for i, factor in enumerate(wide):
        one = in_plane(x * factor, y, force=(300.0, -900.0), at=(110.0, 75.0))
        assert both.size[:, i] == pytest.approx(one.size, rel=1e-12)
        assert both.worst[i] == pytest.approx(one.worst, rel=1e-12)
