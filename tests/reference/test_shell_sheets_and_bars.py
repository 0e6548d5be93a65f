"""Sheets and bars of this trade against tables, series and quadrature.

Roark's Formulas for Stress and Strain, table 11.4; series solved independently by Navier's and
Ritz's methods; R. C. J. Howland's strip with a hole (1930); beam theory by quadrature and a
60-element frame; S. P. Timoshenko, J. M. Gere, Theory of Elastic Stability.
"""

from dataclasses import replace

import numpy as np
import pytest
from shell.benches import STEEL, flat, rectangle, seam
from shell.grids import Grid, grid, sheet

from pedalwright.core.points import REARWARD, RIGHT, UP, Point
from pedalwright.core.units import Array
from pedalwright.shell.buckling import buckling
from pedalwright.shell.build import build
from pedalwright.shell.mesh import Material, Mesh
from pedalwright.shell.parts import Bar, Bench, End, Hole, Plane, Sheet, Support
from pedalwright.shell.sections import Box, Flat, Round
from pedalwright.shell.solve import respond, set_up, solve
from pedalwright.shell.stress import MIDDLE, OVER, stresses


def plate(long: float, short: float, edge: str, t: float, elastic: float) -> tuple[Mesh, Grid]:
    along = 2 * round(16 * long / short)
    made = grid(along, 32, lambda u, v: (long * u, short * v, 0 * u))
    corners = made.number[[0, -1], [0, 0]]
    held = made.hold((np.flatnonzero(made.rim), edge), (corners[:1], "xy"), (corners[1:], "y"))
    return sheet(made, held, thickness=t, elastic=elastic, poisson=0.3), made


def middle_and_edge(mesh: Mesh, made: Grid, loads: Array) -> tuple[float, float, float]:
    """Give in the middle, stress there along the short side, and at the middle of a long edge."""
    answer = solve(mesh, loads)
    found = stresses(mesh, answer.moves)
    rows, columns = np.array(made.number.shape) // 2
    centre, side = made.number[rows, columns], made.number[rows, 0]
    at = [found.tensor[0, found.node == node, OVER, 1, 1][0] for node in (centre, side)]
    return answer.moves[0, centre, 2], at[0], -at[1]


@pytest.mark.parametrize(
    ("sides", "alpha", "beta"),
    [(1.0, 0.0444, 0.2874), (1.2, 0.0616, 0.3762), (2.0, 0.1110, 0.6102)],
)
def test_roark_1a_supported_under_even_load(sides: float, alpha: float, beta: float) -> None:
    mesh, made = plate(100 * sides, 100.0, "z", 1.0, 1e5)
    give, stress, _ = middle_and_edge(mesh, made, made.even_load((0.0, 0.0, 1e-4)))
    assert give == pytest.approx(alpha * 1e-4 * 100**4 / 1e5, rel=5e-3)
    assert stress == pytest.approx(beta * 1e-4 * 100**2, rel=1e-2)


@pytest.mark.parametrize(
    ("sides", "alpha", "beta"),
    [(1.0, 0.01382, 0.3080), (1.2, 0.01884, 0.3834), (2.0, 0.02766, 0.4973)],
)
def test_clamped_under_even_load_by_ritz(sides: float, alpha: float, beta: float) -> None:
    mesh, made = plate(100 * sides, 100.0, "xyzXYZ", 1.0, 1e5)
    give, _, edge = middle_and_edge(mesh, made, made.even_load((0.0, 0.0, 1e-4)))
    assert give == pytest.approx(alpha * 1e-4 * 100**4 / 1e5, rel=1e-2)
    assert edge == pytest.approx(beta * 1e-4 * 100**2, rel=1.5e-2)


@pytest.mark.parametrize(
    ("edge", "sides", "alpha"),
    [("z", 1.0, 0.1267), ("z", 1.4, 0.1621), ("z", 2.0, 0.1805), ("xyzXYZ", 1.0, 0.06128)],
)
def test_roark_1b_point_load(edge: str, sides: float, alpha: float) -> None:
    """The clamped one from 0.0056120 P a² / D; the book's 0.0056 gives 0.0611."""
    mesh, made = plate(100 * sides, 100.0, edge, 1.0, 1e5)
    rows, columns = np.array(made.number.shape) // 2
    loads = np.zeros((1, len(made.nodes), 6))
    loads[0, made.number[rows, columns], 2] = 1.0
    give, _, _ = middle_and_edge(mesh, made, loads)
    assert give == pytest.approx(alpha * 1.0 * 100**2 / 1e5, rel=5e-3)


def foot_load(
    made: Grid, size: tuple[float, float], half: tuple[float, float], force: float
) -> Array:
    """A force spread evenly over a rectangle about the middle; the nodes on its rim take less."""
    share = np.ones(len(made.nodes))
    for axis in (0, 1):
        place = made.nodes[:, axis]
        inside = np.abs(place - size[axis] / 2) < half[axis] - 1e-6
        on_rim = np.isclose(np.abs(place - size[axis] / 2), half[axis])
        share *= inside + 0.5 * on_rim
    loads = np.zeros((1, len(made.nodes), 6))
    loads[0, :, 2] = force * share / share.sum()
    return loads


@pytest.mark.parametrize(("edge", "give", "stress"), [("z", 3.199, 134.7), ("xyzXYZ", 1.359, None)])
def test_alloy_300_by_200_by_3_under_1_kn_on_60_by_60(
    edge: str, give: float, stress: float | None
) -> None:
    """Navier and Ritz; it bulges by half its thickness or nearly so, and linear is too soft."""
    made = grid(60, 40, lambda u, v: (300 * u, 200 * v, 0 * u))
    corners = made.number[[0, -1], [0, 0]]
    held = made.hold((np.flatnonzero(made.rim), edge), (corners[:1], "xy"), (corners[1:], "y"))
    mesh = sheet(made, held, thickness=3.0, elastic=70000.0, poisson=0.3)
    found = middle_and_edge(mesh, made, foot_load(made, (300, 200), (30, 30), 1000.0))
    assert found[0] == pytest.approx(give, rel=5e-3)
    if stress is None:
        assert found[2] == pytest.approx(102.8, rel=1e-2)
    else:
        assert found[1] == pytest.approx(stress, rel=1e-2)


def test_strip_with_a_hole_half_as_wide_as_itself_is_read_from_below() -> None:
    """Howland: 4.32 times the gross stress; for a hole a tenth of the width, 3.03."""
    for diameter, gross in ((10.0, 3.03), (50.0, 4.32)):
        strip = Sheet(
            name="strip",
            plane=flat("", ()).plane,
            outline=rectangle(400, 100),
            thickness=1.0,
            material=STEEL,
            holes=(Hole(centre=(200, 50), diameter=diameter),),
        )
        ends = (Point(0.0, 0.0, 0.0), Point(0.0, 100.0, 0.0))
        held_end = Support(name="end", at=ends, holds="xZ")
        built = build(Bench(sheets=(strip,), supports=(held_end,), size=6.0))
        pulled = np.flatnonzero(np.isclose(built.mesh.nodes[:, 0], 400.0))
        order = pulled[np.argsort(built.mesh.nodes[pulled, 1])]
        share = np.gradient(built.mesh.nodes[order, 1])
        share[[0, -1]] /= 2
        loads = np.zeros((1, len(built.mesh.nodes), 6))
        loads[0, order, 0] = 100.0 * share / share.sum()
        held = built.mesh.held.copy()
        held[:, 2:5] = True
        held[int(np.argmin(built.mesh.nodes.sum(axis=1))), 1] = True
        mesh = replace(built.mesh, held=held)
        found = stresses(mesh, solve(mesh, loads).moves)
        peak = found.tensor[0, :, MIDDLE, 0, 0].max()
        assert 0.80 * gross < peak < 1.05 * gross


def bar_end(bar: Bar, load: tuple[float, ...]) -> Array:
    bench = Bench(bars=(bar,), supports=(Support(name="root", at=f"{bar.name}.start"),))
    mesh = build(bench).mesh
    return solve(mesh, mesh.loads({f"{bar.name}.end": load})).moves[
        0, mesh.points[f"{bar.name}.end"]
    ]


def test_tapered_arm_bends_and_twists_under_a_pad_beside_it() -> None:
    """Depth 45 to 25 over 220 mm, 10 thick, 2000 N 35 mm out of plane: 0.678 mm, 0.0208 rad."""
    arm = Bar(
        name="arm",
        start=End(at=Point(0.0, 0.0, 0.0)),
        end=End(at=Point(220.0, 0.0, 0.0)),
        section=Flat(width=10.0, depth=45.0),
        end_section=Flat(width=10.0, depth=25.0),
        material=STEEL,
        up=UP,
    )
    moves = bar_end(arm, (0.0, 0.0, -2000.0, 2000.0 * 35, 0.0, 0.0))
    shear = np.trapezoid(
        2000 * 1.2 / (STEEL.shear * 10 * np.linspace(45, 25, 2001)), np.linspace(0, 220, 2001)
    )
    # The figures are without shear.
    assert -moves[2] - shear == pytest.approx(0.678, rel=5e-3)
    assert moves[3] == pytest.approx(0.02080, rel=5e-3)
    assert -moves[2] - shear + 35 * moves[3] == pytest.approx(1.406, rel=5e-3)


@pytest.mark.parametrize(
    ("ratio", "share"), [(1, 0.1406), (2, 0.2287), (3, 0.2633), (4, 0.2808), (10, 0.3123)]
)
def test_torsion_of_a_flat_bar(ratio: float, share: float) -> None:
    found = Flat(width=5.0, depth=5.0 * ratio).properties().torsion
    assert found == pytest.approx(share * ratio * 5.0**4, rel=2e-3)


def test_section_of_a_round_tube() -> None:
    tube = Round(diameter=25.0, bore=22.0).properties()
    assert tube.area == pytest.approx(110.74, rel=1e-3)
    assert tube.inertia_y == pytest.approx(7675.7, rel=1e-3)
    assert tube.torsion == pytest.approx(15351.0, rel=1e-3)
    # A thin tube slides in shear as if half of it were there.
    assert tube.shear_y / tube.area == pytest.approx(0.53, abs=0.01)


def test_square_tube_twists_as_bredt_says() -> None:
    tube = Box(width=25.0, depth=25.0, wall=2.0).properties()
    assert tube.torsion == pytest.approx(2.0 * 23.0**3)
    assert tube.inertia_y == pytest.approx((25.0**4 - 21.0**4) / 12)


def test_folded_channel_bends_about_its_strong_axis() -> None:
    """U 60 x 40 x 2, 400 long, loaded in line with its shear centre; beam theory with shear."""
    web, flange, t, length = 60.0, 40.0, 2.0, 400.0
    down = Plane(origin=Point(0.0, 0.0, 0.0), along=REARWARD, across=UP)
    level = Plane(origin=Point(0.0, 0.0, 0.0), along=REARWARD, across=RIGHT)
    above = replace(level, origin=Point(0.0, 0.0, web))
    bench = Bench(
        sheets=(
            Sheet(
                name="web", plane=down, outline=rectangle(length, web), thickness=t, material=STEEL
            ),
            Sheet(
                name="low",
                plane=level,
                outline=rectangle(length, flange),
                thickness=t,
                material=STEEL,
            ),
            Sheet(
                name="top",
                plane=above,
                outline=rectangle(length, flange),
                thickness=t,
                material=STEEL,
            ),
        ),
        seams=(
            seam("web", "low", (0, 0, 0), (400, 0, 0)),
            seam("web", "top", (0, 0, 60), (400, 0, 60)),
        ),
        supports=(
            Support(name="w", at=(Point(0.0, 0.0, 0.0), Point(0.0, 0.0, web))),
            Support(name="l", at=(Point(0.0, 0.0, 0.0), Point(0.0, flange, 0.0))),
            Support(name="t", at=(Point(0.0, 0.0, web), Point(0.0, flange, web))),
        ),
        size=6.0,
    )
    mesh = build(bench).mesh
    end = np.flatnonzero(np.isclose(mesh.nodes[:, 0], length) & np.isclose(mesh.nodes[:, 1], 0.0))
    force = 100.0
    inertia = t * web**3 / 12 + 2 * (flange * t * (web / 2) ** 2 + flange * t**3 / 12)
    shear_centre = flange**2 * web**2 * t / (4 * inertia)
    loads = np.zeros((1, len(mesh.nodes), 6))
    loads[0, end, 2] = -force / len(end)
    # On the web's line the load twists the channel about its shear centre, which lies beyond.
    loads[0, end, 3] = force * shear_centre / len(end)
    give = -solve(mesh, loads).moves[0, end, 2].mean()
    bending = force * length**3 / (3 * STEEL.elastic * inertia)
    assert give == pytest.approx(bending + force * length / (STEEL.shear * t * web), rel=0.02)


@pytest.mark.parametrize(("sides", "k"), [(1.0, 4.0), (1.5, 4.34), (3.0, 4.0)])
def test_plate_pressed_edgewise_buckles_as_timoshenko_and_gere_say(sides: float, k: float) -> None:
    """Supported all round, pressed along `sides` times its width: k pi² D / b² t."""
    width, t = 100.0, 1.0
    alloy = Material(elastic=70000.0, poisson=0.33)
    made = grid(round(24 * sides), 24, lambda u, v: (width * sides * u, width * v, 0 * u))
    held = made.hold(
        (np.flatnonzero(made.rim), "z"), (made.number[0], "x"), (made.number[0, :1], "y")
    )
    mesh = sheet(made, held, thickness=t, elastic=alloy.elastic, poisson=alloy.poisson)
    ready = set_up(mesh)
    pressed = made.edge_load(made.number[-1], (-1000.0, 0.0, 0.0))
    found = buckling(ready, respond(ready, pressed).moves[0])
    stress = k * np.pi**2 * alloy.elastic / (12 * (1 - alloy.poisson**2)) * (t / width) ** 2
    assert found.factor * 1000.0 / (t * width) == pytest.approx(stress, rel=5e-3)
