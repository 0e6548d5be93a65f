"""Laws that any elastic structure obeys, whatever its sheets, bars and fasteners."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.spatial.transform import Rotation
from shell.benches import box

from pedalwright.core.units import Array
from pedalwright.shell.build import build
from pedalwright.shell.mesh import Bars, Mesh, Springs
from pedalwright.shell.solve import SetUp, respond, set_up, solve

COARSE = replace(box(60.0), contacts=())
MESH = build(COARSE).mesh
READY: SetUp = set_up(MESH)
BOLTS = [MESH.points[name] for name in ("bolt 195.0", "bolt 265.0")]
LOAD = st.tuples(*[st.floats(-100.0, 100.0)] * 3, *[st.floats(-1e3, 1e3)] * 3)


def on_bolts(*cases: tuple[tuple[float, ...], tuple[float, ...]]) -> Array:
    loads = np.zeros((len(cases), len(MESH.nodes), 6))
    for row, case in zip(loads, cases, strict=True):
        row[BOLTS] = case
    return loads


@given(LOAD, LOAD, st.floats(-3.0, 3.0))
@settings(max_examples=15)
def test_moves_add_up_as_loads_do(
    first: tuple[float, ...], second: tuple[float, ...], times: float
) -> None:
    nothing = (0.0,) * 6
    loads = on_bolts((first, nothing), (nothing, second))
    both = loads[:1] + times * loads[1:]
    moves = respond(READY, np.concatenate([loads, both])).moves
    scale = max(np.abs(moves).max(), 1e-12)
    assert moves[2] == pytest.approx(moves[0] + times * moves[1], abs=1e-8 * scale)


@given(LOAD, LOAD)
@settings(max_examples=15)
def test_one_load_works_on_the_others_moves_as_that_on_its(
    first: tuple[float, ...], second: tuple[float, ...]
) -> None:
    """Betti's law."""
    nothing = (0.0,) * 6
    loads = on_bolts((first, nothing), (nothing, second))
    moves = respond(READY, loads).moves
    here, there = np.sum(loads[0] * moves[1]), np.sum(loads[1] * moves[0])
    size = np.sqrt(np.sum(loads[0] * moves[0]) * np.sum(loads[1] * moves[1]))
    assert here == pytest.approx(there, abs=1e-8 * max(size, 1e-12))


@given(LOAD, LOAD)
@settings(max_examples=15)
def test_energy_of_the_parts_is_the_work_and_never_negative(
    first: tuple[float, ...], second: tuple[float, ...]
) -> None:
    answer = respond(READY, on_bolts((first, second)))
    assert answer.energy.sum() == pytest.approx(answer.work[0], rel=1e-9, abs=1e-12)
    assert answer.energy.min() >= 0.0


def turned(mesh: Mesh, by: Array) -> Mesh:
    """The same bench, another way round in space."""
    return replace(
        mesh,
        nodes=mesh.nodes @ by.T,
        bars=replace(mesh.bars, up=mesh.bars.up @ by.T, arms=mesh.bars.arms @ by.T),
        springs=replace(mesh.springs, axes=mesh.springs.axes @ by.T, arms=mesh.springs.arms @ by.T),
        links=replace(mesh.links, axes=mesh.links.axes @ by.T),
    )


@given(st.tuples(*[st.floats(-3.0, 3.0)] * 3), LOAD)
@settings(max_examples=8)
def test_the_bench_may_stand_any_way_round(
    way: tuple[float, float, float], load: tuple[float, ...]
) -> None:
    by = Rotation.from_rotvec(way).as_matrix()
    both = np.kron(np.eye(2), by)
    loads = on_bolts((load, load))
    moves = respond(READY, loads).moves
    # Supports hold all or nothing here, so they turn with the rest.
    assert np.all(MESH.held.all(axis=1) == MESH.held.any(axis=1))
    found = solve(turned(MESH, by), loads @ both.T).moves
    assert found == pytest.approx(moves @ both.T, abs=1e-7 * max(np.abs(moves).max(), 1e-12))


def test_thicker_sheets_never_give_more() -> None:
    load = on_bolts(((-100.0, 0, 0, 0, 0, 0), (-100.0, 0, 0, 0, 0, 0)))
    works = []
    for factor in (1.0, 1.5, 2.0):
        triangles = replace(MESH.triangles, thickness=factor * MESH.triangles.thickness)
        works.append(solve(replace(MESH, triangles=triangles), load).work[0])
    assert works[0] > works[1] > works[2] > works[0] / 2.0**3


def test_the_mirrored_box_gives_the_same() -> None:
    """Left for right: y turns over, and with it the turns about x and z."""
    mirror = np.array([1.0, -1.0, 1.0, -1.0, 1.0, -1.0])
    mesh = replace(
        MESH,
        nodes=MESH.nodes * mirror[:3],
        triangles=replace(MESH.triangles, corners=MESH.triangles.corners[:, [0, 2, 1]]),
        springs=replace(
            MESH.springs, axes=MESH.springs.axes * mirror[:3], arms=MESH.springs.arms * mirror[:3]
        ),
    )
    load = on_bolts(((-100.0, 20.0, 5.0, 10.0, 20.0, 30.0), (-50.0, 0, 0, 0, 0, 0)))
    moves = solve(MESH, load).moves
    assert solve(mesh, load * mirror).moves == pytest.approx(moves * mirror, abs=1e-7)
    assert len(Bars().ends) == len(MESH.bars.ends) == 0
    assert len(MESH.springs.ends) > len(Springs().ends)
