"""The shell bench against its budget, and against PyNiteFEA on as many freedoms in the same run.

An invented open box: a front wall with a riveted doubler that may press on it, a floor and two
cheeks, meshed, solved and read. PyNiteFEA gets a folded box of four-node plates with nearly as
many freedoms, the bench the same box in triangles on the same nodes.
"""

import time
from dataclasses import dataclass

import numpy as np
from Pynite import FEModel3D

from pedalwright.core.points import REARWARD, RIGHT, UP, Point
from pedalwright.core.units import Array
from pedalwright.shell.build import build
from pedalwright.shell.condense import condense
from pedalwright.shell.forces import fastener_forces
from pedalwright.shell.judged import judged
from pedalwright.shell.mesh import Material, Mesh, Part, Triangles
from pedalwright.shell.parts import (
    Bench,
    Contact,
    Fastener,
    Hole,
    Patch,
    Place,
    Plane,
    Seam,
    Sheet,
    Spot,
    Support,
)
from pedalwright.shell.solve import respond, set_up, solve
from pedalwright.shell.stress import stresses

ALLOY = Material(elastic=70000.0, poisson=0.33, yield_strength=120.0)
#: Of the triangles; gives somewhat more than 20 000 freedoms.
SIZE = 16.0
#: Squares along each side of the folded box: as many freedoms again.
SIDES = 33


@dataclass(frozen=True, slots=True)
class Cost:
    """Seconds of each step, and how large the model was."""

    freedoms: int
    mesh: float
    solve: float
    read: float

    @property
    def whole(self) -> float:
        """All of it."""
        return self.mesh + self.solve + self.read


def box() -> Cost:
    """Mesh, solve and read the box with contact, two load cases."""
    start = time.perf_counter()
    built = build(bench())
    meshed = time.perf_counter()
    push = {"bolt 1": (-600.0, 0.0, 0.0), "bolt 2": (-600.0, 0.0, 0.0)}
    side = {"bolt 1": (0.0, 200.0, 0.0)}
    answer = solve(built.mesh, built.mesh.loads(push, side))
    solved = time.perf_counter()
    assert answer.settled.all()
    assert len(list(judged(built, stresses(built.mesh, answer.moves)))) == 5
    assert len(fastener_forces(built, answer.moves)) == 8
    return Cost(
        6 * len(built.mesh.nodes), meshed - start, solved - meshed, time.perf_counter() - solved
    )


def condensed() -> float:
    """Seconds to condense the box to eight hard points, 48 freedoms, once it is set up."""
    ready = set_up(build(bench()).mesh)
    start = time.perf_counter()
    found = condense(ready)
    assert found.give.shape == (48, 48)
    return time.perf_counter() - start


def designs(count: int = 2_000) -> float:
    """Seconds a design: levers and rods added to the condensed box, three load cases."""
    give = condense(set_up(build(bench()).mesh))
    rng = np.random.default_rng(1)
    stiffness = np.zeros((48, 48, count))
    # A pivot tube on two points, and rods to two more.
    stiffness[np.arange(24), np.arange(24)] = rng.uniform(0.0, 1e3, (24, count))
    loads = rng.normal(size=(48, 3))
    start = time.perf_counter()
    give.joined(stiffness, loads)
    return (time.perf_counter() - start) / count


def ours() -> float:
    """Seconds for the folded box in triangles, from places to moves."""
    nodes, squares = folded()
    start = time.perf_counter()
    corners = np.concatenate([squares[:, [0, 1, 2]], squares[:, [0, 2, 3]]])
    count = len(corners)
    mesh = Mesh(
        nodes=nodes,
        parts=(Part("box", ALLOY),),
        held=np.repeat(np.isclose(nodes[:, :1], 450.0), 6, axis=1),
        triangles=Triangles(
            corners=corners,
            part=np.zeros(count, dtype=np.intp),
            thickness=np.full(count, 1.6),
            offset=np.zeros(count),
        ),
    )
    ready = set_up(mesh)
    respond(ready, mesh.loads({0: (-500.0, 0.0, 0.0)}))
    return time.perf_counter() - start


def theirs() -> float:
    """Seconds for the same box by PyNiteFEA, in plates on the same nodes."""
    nodes, squares = folded()
    start = time.perf_counter()
    model = FEModel3D()
    model.add_material("alloy", ALLOY.elastic, ALLOY.shear, ALLOY.poisson, 0.0)
    for name, place in enumerate(nodes):
        model.add_node(str(name), *map(float, place))
        if np.isclose(place[0], 450.0):
            model.def_support(str(name), *[True] * 6)
    for name, square in enumerate(squares):
        model.add_quad(f"q{name}", *map(str, square), 1.6, "alloy")
    model.add_node_load("0", "FX", -500.0)
    model.analyze_linear(check_stability=False)
    return time.perf_counter() - start


def folded() -> tuple[Array, Array]:
    """Nodes of a wall, a floor and a cheek of little squares, and the squares' corners."""
    x, y, z = 450.0 * np.eye(3)
    share = np.linspace(0.0, 1.0, SIDES + 1)
    pairs = ((y, z), (x, y), (x, z))
    places = [share[:, None, None] * a + share[None, :, None] * b for a, b in pairs]
    every = np.round(np.concatenate([one.reshape(-1, 3) for one in places]), 9)
    nodes, number = np.unique(every, axis=0, return_inverse=True)
    squares: list[Array] = []
    for own in number.reshape(len(pairs), SIDES + 1, SIDES + 1):
        sides = (own[:-1, :-1], own[1:, :-1], own[1:, 1:], own[:-1, 1:])
        squares.append(np.stack(sides, axis=-1).reshape(-1, 4))
    return nodes, np.concatenate(squares)


def bench() -> Bench:
    """The box, with eight hard points."""
    corner = Point(0.0, 0.0, 0.0)
    cheek: tuple[Place, ...] = ((0, 0), (450, 0), (450, 250), (300, 400), (0, 400))
    front, level = {"along": RIGHT, "across": UP}, {"along": REARWARD, "across": RIGHT}
    upright = {"along": REARWARD, "across": UP}
    hole = Hole(centre=(230, 200), diameter=40)

    def sheet(
        name: str,
        plane: Plane,
        outline: tuple[Place, ...],
        t: float = 1.6,
        holes: tuple[Hole, ...] = (),
    ) -> Sheet:
        return Sheet(
            name=name, plane=plane, outline=outline, thickness=t, material=ALLOY, holes=holes
        )

    sheets = (
        sheet("wall", Plane(origin=corner, **front), rectangle(500, 400), holes=(hole,)),
        sheet("floor", Plane(origin=corner, **level), rectangle(450, 500)),
        sheet("left", Plane(origin=corner, **upright), cheek),
        sheet("right", Plane(origin=Point(0.0, 500.0, 0.0), **upright), cheek),
        sheet(
            "doubler",
            Plane(origin=Point(2.3, 150.0, 120.0), **front),
            rectangle(160, 160),
            3.0,
            (Hole(centre=(80, 80), diameter=40),),
        ),
    )
    far, top = Point(0.0, 500.0, 0.0), Point(0.0, 0.0, 400.0)
    rear = Point(450.0, 0.0, 0.0)
    edges = (
        ("floor", corner, far, "wall"),
        ("left", corner, top, "wall"),
        ("right", far, far + top, "wall"),
        ("left", corner, rear, "floor"),
        ("right", far, far + rear, "floor"),
    )
    rivets = [(y, z) for y in (160, 230, 300) for z in (130, 200, 270) if (y, z) != (230, 200)]
    bolts = (Point(2.3, 195.0, 200.0), Point(2.3, 265.0, 200.0))
    spots = (Point(0.0, 60.0, 330.0), Point(0.0, 400.0, 330.0), Point(0.0, 400.0, 90.0))
    return Bench(
        sheets=sheets,
        seams=tuple(
            Seam(name=f"{a} {b}", start=start, end=end, sheets=(a, b)) for a, start, end, b in edges
        ),
        fasteners=tuple(
            Fastener(
                name=f"{y} {z}",
                at=Point(0.0, float(y), float(z)),
                sheets=("wall", "doubler"),
                shear=2e4,
                axial=5e4,
                part="rivets",
            )
            for y, z in rivets
        ),
        contacts=(Contact(layer="doubler", base="wall"),),
        patches=tuple(
            Patch(name=f"bolt {i}", sheet="doubler", centre=at, width=16.0)
            for i, at in enumerate(bolts, 1)
        ),
        spots=(
            *(Spot(name=f"wall {i}", at=at, sheet="wall") for i, at in enumerate(spots)),
            *(
                Spot(name=f"floor {y}", at=Point(225.0, y, 0.0), sheet="floor")
                for y in (100.0, 250.0, 400.0)
            ),
        ),
        supports=(
            Support(name="rear", at=(rear, far + rear)),
            Support(name="left", at=(rear, Point(450.0, 0.0, 250.0))),
        ),
        size=SIZE,
    )


def rectangle(length: float, height: float) -> tuple[Place, ...]:
    """Corners of a rectangle."""
    return ((0.0, 0.0), (length, 0.0), (length, height), (0.0, height))
