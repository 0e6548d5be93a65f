"""What is made of an answer: judged stress, bulge, forces, buckling, halving, condensation."""

from dataclasses import replace

import numpy as np
import pytest
from shell.benches import box, flat, rectangle

from pedalwright.core.checks import Finding
from pedalwright.core.points import Point
from pedalwright.shell.buckling import buckling
from pedalwright.shell.build import Built, build
from pedalwright.shell.bulge import NET, bulges, stiffened
from pedalwright.shell.condense import Condensed, condense
from pedalwright.shell.forces import bar_forces, fastener_forces
from pedalwright.shell.halving import Halving, halved
from pedalwright.shell.judged import judged
from pedalwright.shell.limits import check, check_buckling, check_halving, check_sheets
from pedalwright.shell.parts import Bench, Patch, Spot, Support
from pedalwright.shell.solve import Answer, SetUp, respond, set_up, solve
from pedalwright.shell.stress import OVER, stresses

PUSH = {"bolt 195.0": (-100.0, 0.0, 0.0), "bolt 265.0": (-100.0, 0.0, 0.0)}
#: The box without contact, whose answers add up.
OPEN = replace(box(20.0), contacts=())


@pytest.fixture(scope="module")
def bench() -> SetUp:
    return set_up(build(OPEN).mesh)


@pytest.fixture(scope="module")
def condensed(bench: SetUp) -> Condensed:
    return condense(bench)


def plate(size: float, width: float = 30.0) -> Bench:
    """Clamped all round, with a stiff foot in the middle."""
    corners = (Point(0.0, 0.0, 0.0), Point(200.0, 0.0, 0.0), Point(200.0, 160.0, 0.0))
    corners = (*corners, Point(0.0, 160.0, 0.0))
    sides = zip(corners, (*corners[1:], corners[0]), strict=True)
    return Bench(
        sheets=(flat("plate", rectangle(200, 160), t=3.0),),
        patches=(Patch(name="foot", sheet="plate", centre=Point(100.0, 80.0, 0.0), width=width),),
        supports=tuple(Support(name=f"{i}", at=side) for i, side in enumerate(sides)),
        size=size,
    )


def pushed(made: Bench, load: tuple[float, ...], at: str = "foot") -> tuple[Built, Answer]:
    built = build(made)
    return built, solve(built.mesh, built.mesh.loads({at: load}))


def test_energy_of_the_parts_is_the_work_and_says_who_gives() -> None:
    built = build(box(20.0))
    answer = solve(built.mesh, built.mesh.loads(PUSH))
    assert answer.energy.sum() == pytest.approx(answer.work[0], rel=1e-9)
    share = dict(zip((p.name for p in built.mesh.parts), answer.energy[0], strict=True))
    assert max(share, key=lambda name: share[name]) == "wall"
    assert min(share.values()) >= 0.0


def test_supports_carry_the_loads() -> None:
    built = build(box(20.0))
    answer = solve(built.mesh, built.mesh.loads(PUSH))
    assert answer.reactions[0, :, :3].sum(axis=0) == pytest.approx([200.0, 0.0, 0.0], abs=1e-5)


def test_judged_stress_settles_where_the_raw_peak_climbs() -> None:
    """A point load has no largest stress; beside a foot there is one to judge."""
    spot = Spot(name="foot", at=Point(100.0, 80.0, 0.0), sheet="plate")
    raw, read = [], []
    for size in (10.0, 5.0, 2.5):
        built, answer = pushed(replace(plate(size), patches=(), spots=(spot,)), (0, 0, 500.0))
        raw.append(stresses(built.mesh, answer.moves).equivalent.max())
        built, answer = pushed(plate(size), (0.0, 0.0, 500.0))
        found = next(judged(built, stresses(built.mesh, answer.moves)))
        read.append(found.stress[0])
    assert np.all(np.diff(raw) > 0.12 * np.array(raw[:-1]))
    assert read[2] == pytest.approx(read[1], rel=0.03)
    assert read[2] - read[1] < 0.5 * (read[1] - read[0])
    # One thickness off the foot's rim, which is a ring of 24 straight sides, and no nearer.
    assert np.hypot(*(found.place[0, :2] - [100.0, 80.0])) > 15.0 * np.cos(np.pi / 24) + 3.0 - 1e-6


def test_stress_between_the_nodes_is_between_that_of_the_nodes() -> None:
    built, answer = pushed(plate(8.0), (0.0, 0.0, 500.0))
    found = stresses(built.mesh, answer.moves)
    triangle = built.mesh.triangles.corners[40]
    corners = [found.tensor[0, found.node == node][0] for node in triangle]
    middle = built.mesh.nodes[triangle].mean(axis=0)
    between = found.at(built.mesh, 0, middle[None])[0, 0]
    assert between == pytest.approx(np.mean(corners, axis=0), rel=1e-9, abs=1e-9)
    assert np.isnan(found.at(built.mesh, 0, np.array([[-50.0, 0.0, 0.0]]))).all()


def test_fasteners_hold_what_the_patches_are_loaded_with() -> None:
    """All of a pull on the doubler goes through its rivets, contact left out."""
    built = build(OPEN)
    answer = solve(built.mesh, built.mesh.loads({"bolt 195.0": (300.0, 0.0, 0.0)}))
    joints = fastener_forces(built, answer.moves)
    assert len(joints) == 8
    assert sum(joint.pull[0] for joint in joints) == pytest.approx(300.0, rel=1e-9)
    pressed = build(box(20.0))
    answer = solve(pressed.mesh, pressed.mesh.loads({"bolt 195.0": (300.0, 0.0, 0.0)}))
    prised = [joint.pull[0] for joint in fastener_forces(pressed, answer.moves)]
    # Where the doubler's edge presses on the wall, the rivets pull that much more.
    assert sum(prised) == pytest.approx(300.0 + answer.pressed.sum(), rel=1e-6)
    assert max(prised) > max(joint.pull[0] for joint in joints)


def test_bulge_is_against_the_rim_and_not_against_the_floor() -> None:
    built, answer = pushed(plate(10.0), (0.0, 0.0, 500.0))
    found = next(bulges(plate(10.0), built, answer.moves))
    assert found.most[0] == pytest.approx(answer.moves[0, built.mesh.points["foot"], 2], rel=2e-3)
    tilted = answer.moves.copy()
    tilted[0, :, 2] += 5.0 + 0.01 * built.mesh.nodes[:, 0]
    assert next(bulges(plate(10.0), built, tilted)).most == pytest.approx(found.most, rel=1e-9)


def test_a_stretched_panel_gives_less_and_obeys_the_cubic() -> None:
    bent = np.array([0.1, 1.0, 5.0, 50.0])
    gives = stiffened(bent, 2.0)
    assert gives / 2 + NET * (gives / 2) ** 3 == pytest.approx(bent / 2, rel=1e-12)
    assert gives[0] == pytest.approx(0.1, rel=0.01)
    assert gives[-1] < 10.0


def test_halving_says_how_far_the_answer_moves() -> None:
    def give(built: Built, answer: Answer) -> float:
        return float(answer.moves[0, built.mesh.points["foot"], 2])

    coarse = halved(plate(40.0), {"foot": (0.0, 0.0, 500.0)}, give)
    fine = halved(plate(10.0), {"foot": (0.0, 0.0, 500.0)}, give)
    assert fine.change < 0.4 * coarse.change
    assert fine.change < 0.01


def test_condensed_gives_the_same_as_the_whole(bench: SetUp, condensed: Condensed) -> None:
    points = ("bolt 195.0", "bolt 265.0")
    rng = np.random.default_rng(2)
    forces = np.concatenate([rng.normal(size=(3, 3)) * 100, rng.normal(size=(3, 3)) * 1e3] * 2)
    whole = np.zeros((3, len(bench.mesh.nodes), 6))
    nodes = [bench.mesh.points[point] for point in points]
    whole[:, nodes] = forces.T.reshape(3, 2, 6)
    answer = respond(bench, whole)
    found = condensed.pick(*points).give @ forces
    assert found == pytest.approx(answer.moves[:, nodes].reshape(3, 12).T, rel=1e-6)
    assert pytest.approx(answer.energy, rel=1e-6, abs=1e-9) == condensed.energy(forces).T


def test_condensed_is_even_handed_and_its_parts_add_up(condensed: Condensed) -> None:
    """Maxwell: as far here for a push there as there for a push here."""
    assert condensed.give == pytest.approx(condensed.give.T, rel=1e-9)
    total = condensed.by_part.sum(axis=0)
    assert total == pytest.approx(condensed.give, rel=1e-6, abs=1e-9 * np.abs(total).max())


def test_a_strut_added_to_the_condensed_box_carries_its_share(condensed: Condensed) -> None:
    """One and many at once; and a stiff strut to the ground takes nearly all."""
    strut = np.zeros((12, 12, 3))
    strut[0, 0] = [0.0, 500.0, 1e9]
    load = np.zeros((12, 1))
    load[0] = -100.0
    moves = condensed.joined(strut, load)
    assert moves.shape == (12, 1, 3)
    assert moves[..., 0] == pytest.approx(condensed.give @ load)
    give = condensed.give[0, 0]
    assert moves[0, 0, 1] == pytest.approx(-100.0 / (1 / give + 500.0))
    assert abs(moves[0, 0, 2]) < 1e-6
    assert condensed.joined(strut[..., 1], load) == pytest.approx(moves[..., 1])


def failed(findings: list[Finding]) -> set[str]:
    return {finding.limit.code for finding in findings if not finding.ok}


def test_a_good_answer_passes_every_check_of_the_sums() -> None:
    built, answer = pushed(plate(10.0), (0.0, 0.0, 100.0))
    assert failed(list(check(built, answer))) == set()


def test_what_is_loose_fails_and_is_not_called_zero() -> None:
    built, answer = pushed(replace(plate(20.0), supports=()), (0.0, 0.0, 100.0))
    assert answer.loose == ("plate",)
    assert {"shell.balance", "shell.energy"} <= failed(list(check(built, answer)))


def test_contact_that_did_not_settle_fails() -> None:
    built, answer = pushed(plate(20.0), (0.0, 0.0, 100.0))
    unsettled = replace(answer, settled=np.zeros(1, dtype=np.bool_))
    assert "shell.balance" in failed(list(check(built, unsettled)))


@pytest.mark.parametrize(
    ("force", "fails"), [(100.0, set()), (10_000.0, {"shell.bulge", "shell.yield"})]
)
def test_sheets_are_flagged_beyond_half_their_thickness_and_beyond_yield(
    force: float, fails: set[str]
) -> None:
    made = plate(10.0)
    built, answer = pushed(made, (0.0, 0.0, force))
    found = stresses(built.mesh, answer.moves)
    flagged = check_sheets(bulges(made, built, answer.moves), judged(built, found))
    assert failed(list(flagged)) == fails


def test_a_thin_web_pressed_edgewise_is_flagged_in_time() -> None:
    """The same strip, pressed harder: 2.0 times the load is wanted before it jumps aside."""
    strip = flat("web", rectangle(120, 60), t=1.0)
    bench = Bench(
        sheets=(strip,),
        patches=(Patch(name="foot", sheet="web", centre=Point(110.0, 30.0, 0.0), width=16.0),),
        supports=(Support(name="root", at=(Point(0.0, 0.0, 0.0), Point(0.0, 60.0, 0.0))),),
        size=6.0,
    )
    ready = set_up(build(bench).mesh)
    answer = respond(ready, ready.mesh.loads({"foot": (-100.0, 0, 0)}, {"foot": (100.0, 0, 0)}))
    found = buckling(ready, answer.moves[0])
    assert found.part == "web"
    # Euler's cantilever, as long as to the foot's rim or to its middle.
    longest, shortest = (np.pi**2 * 210000 * 60 / 12 / (4 * far**2) for far in (110, 102))
    assert longest < 100.0 * found.factor < shortest
    twice = buckling(ready, 2 * answer.moves[0])
    assert twice.factor == pytest.approx(found.factor / 2, rel=1e-4)
    assert check_buckling(found).ok == (found.factor > 2.0)
    assert not check_buckling(buckling(ready, 20 * answer.moves[0])).ok
    # Pulled, it buckles at no load that means anything.
    assert buckling(ready, answer.moves[1]).factor > 20 * found.factor


def test_a_coarse_mesh_is_told() -> None:
    assert check_halving(Halving(1.0, 1.01), "pad").ok
    assert not check_halving(Halving(1.0, 1.10), "pad").ok


def test_faces_are_under_and_over() -> None:
    """Pushed up in the middle, a plate is pulled on its upper face there."""
    built, answer = pushed(plate(10.0), (0.0, 0.0, 100.0))
    found = stresses(built.mesh, answer.moves)
    near = np.argmin(np.linalg.norm(built.mesh.nodes[found.node] - [100.0, 100.0, 0.0], axis=1))
    assert found.tensor[0, near, OVER, 1, 1] > 0.0


def test_no_bars_no_forces() -> None:
    built, answer = pushed(plate(20.0), (0.0, 0.0, 1.0))
    assert bar_forces(built.mesh, answer.moves).shape == (1, 0, 2, 6)
