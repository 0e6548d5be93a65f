"""Frames and a folded box against PyNiteFEA, an independent frame and plate solver.

Its bars do not slide in shear, so ours are given shear areas without end here; its plates are
four-node Mindlin quadrilaterals on the same nodes as our triangles.
"""

import numpy as np
import pytest
from Pynite import FEModel3D

from pedalwright.core.points import Point
from pedalwright.core.units import Array
from pedalwright.shell.build import build
from pedalwright.shell.forces import bar_forces
from pedalwright.shell.mesh import Material, Mesh, Part, Triangles
from pedalwright.shell.parts import Bar, Bench, End, Support
from pedalwright.shell.sections import Properties
from pedalwright.shell.solve import solve

ELASTIC, POISSON = 210000.0, 0.3
STEEL = Material(elastic=ELASTIC, poisson=POISSON)
TUBE = Properties(
    area=184.0,
    shear_y=np.inf,
    shear_z=np.inf,
    torsion=21000.0,
    inertia_y=16000.0,
    inertia_z=9000.0,
)
DIRECTIONS = ("DX", "DY", "DZ", "RX", "RY", "RZ")
LOADS = ("FX", "FY", "FZ", "MX", "MY", "MZ")
#: A small frame that bends about every axis: two posts, a cross tube, a brace and an overhang.
NODES = {
    "a": (0.0, 0.0, 0.0),
    "b": (400.0, 0.0, 0.0),
    "c": (0.0, 50.0, 300.0),
    "d": (400.0, 0.0, 300.0),
    "e": (500.0, 200.0, 280.0),
}
BARS = (("a", "c"), ("b", "d"), ("c", "d"), ("a", "d"), ("d", "e"))
PUSH = (120.0, -300.0, 80.0, 4000.0, -2500.0, 6000.0)


def theirs(released: bool) -> tuple[Array, Array]:
    """Moves of the overhang's end, and the brace's pull and twist."""
    model = FEModel3D()
    model.add_material("steel", ELASTIC, STEEL.shear, POISSON, 0.0)
    # Bars here and there have the axes that follow from the vertical; both moments alike.
    model.add_section("tube", TUBE.area, 12000.0, 12000.0, TUBE.torsion)
    for name, place in NODES.items():
        model.add_node(name, *place)
    for first, second in BARS:
        model.add_member(f"{first}{second}", first, second, "steel", "tube")
    if released:
        model.def_releases("ad", Ryi=True, Rzi=True, Rxj=True, Ryj=True, Rzj=True)
    for foot in ("a", "b"):
        model.def_support(foot, *[True] * 6)
    for direction, push in zip(LOADS, PUSH, strict=True):
        model.add_node_load("e", direction, push)
    model.analyze_linear()
    end = model.nodes["e"]
    moves = np.array([getattr(end, direction)["Combo 1"] for direction in DIRECTIONS])
    brace = np.ravel(model.members["ad"].f("Combo 1"))
    return moves, np.array([-brace[0], brace[9]])


def ours(released: bool) -> tuple[Array, Array]:
    places = {name: Point(*place) for name, place in NODES.items()}
    even = Properties(
        area=TUBE.area,
        shear_y=np.inf,
        shear_z=np.inf,
        torsion=TUBE.torsion,
        inertia_y=12000.0,
        inertia_z=12000.0,
    )
    # The first bar at each node has it; the others are fixed to that one.
    has: dict[str, str] = {}
    bars: list[Bar] = []
    for first, second in BARS:
        fit = "ball" if released and (first, second) == ("a", "d") else "weld"
        ends = []
        for node, which in ((first, "start"), (second, "end")):
            ends.append(End(at=places[node], to=has.get(node), fit=fit if node in has else "weld"))
            has.setdefault(node, f"{first}{second}.{which}")
        bars.append(
            Bar(
                name=f"{first}{second}",
                start=ends[0],
                end=ends[1],
                section=even,
                material=STEEL,
                up=Point(0.1, 0.7, 0.3),
            )
        )
    supports = tuple(Support(name=foot, at=has[foot]) for foot in ("a", "b"))
    mesh = build(Bench(bars=tuple(bars), supports=supports)).mesh
    answer = solve(mesh, mesh.loads({has["e"]: PUSH}))
    brace = bar_forces(mesh, answer.moves)[0, 3]
    return answer.moves[0, mesh.points[has["e"]]], np.array([brace[1, 0], brace[1, 3]])


@pytest.mark.parametrize("released", [False, True])
def test_a_frame_in_space(released: bool) -> None:
    their_moves, their_brace = theirs(released)
    our_moves, our_brace = ours(released)
    assert our_moves == pytest.approx(their_moves, rel=1e-6)
    assert our_brace == pytest.approx(their_brace, rel=1e-6, abs=1e-6)


#: An open box: a wall that is pushed, and a floor and two cheeks that hold it; sides each.
SIDES, LENGTH, WALL = 8, 240.0, 3.0


def panel(first: Array, second: Array) -> Array:
    """Places over a square panel from the corner of the box, (sides + 1, sides + 1, 3)."""
    share = np.linspace(0.0, LENGTH, SIDES + 1)
    return share[:, None, None] * first + share[None, :, None] * second


X, Y, Z = np.eye(3)
PANELS = {
    "wall": panel(Y, Z),
    "floor": panel(X, Y),
    "left": panel(X, Z),
    "right": panel(X, Z) + LENGTH * Y,
}


def folded() -> tuple[Array, Array]:
    """Nodes, each place once, and the four corners of every little square."""
    every = np.concatenate([places.reshape(-1, 3) for places in PANELS.values()])
    nodes, number = np.unique(np.round(every, 9), axis=0, return_inverse=True)
    squares = []
    for own in number.reshape(len(PANELS), SIDES + 1, SIDES + 1):
        sides = (own[:-1, :-1], own[1:, :-1], own[1:, 1:], own[:-1, 1:])
        squares.append(np.stack(sides, axis=-1).reshape(-1, 4))
    return nodes, np.concatenate(squares)


def test_a_folded_box_on_the_same_nodes() -> None:
    """A push on the middle of the wall: how far it goes in, and how far the top edge comes."""
    nodes, squares = folded()
    rear = np.isclose(nodes[:, 0], LENGTH)
    middle = int(np.argmin(np.linalg.norm(nodes - [0.0, LENGTH / 2, LENGTH / 2], axis=1)))
    top = int(np.argmin(np.linalg.norm(nodes - [0.0, LENGTH / 2, LENGTH], axis=1)))
    model = FEModel3D()
    model.add_material("steel", ELASTIC, STEEL.shear, POISSON, 0.0)
    for name, place in enumerate(nodes):
        model.add_node(str(name), *map(float, place))
        if rear[name]:
            model.def_support(str(name), *[True] * 6)
    for name, square in enumerate(squares):
        model.add_quad(f"q{name}", *map(str, square), WALL, "steel")
    model.add_node_load(str(middle), "FX", -500.0)
    model.analyze_linear()
    their = [model.nodes[str(node)].DX["Combo 1"] for node in (middle, top)]
    corners = np.concatenate([squares[:, [0, 1, 2]], squares[:, [0, 2, 3]]])
    mesh = Mesh(
        nodes=nodes,
        parts=(Part("box", STEEL),),
        held=np.repeat(rear[:, None], 6, axis=1),
        triangles=Triangles(
            corners=corners,
            part=np.zeros(len(corners), dtype=np.intp),
            thickness=np.full(len(corners), WALL),
            offset=np.zeros(len(corners)),
        ),
    )
    our = solve(mesh, mesh.loads({middle: (-500.0, 0.0, 0.0)})).moves[0, [middle, top], 0]
    # Both come to the same as the mesh is made finer; at eight sides a panel they are this near.
    assert our == pytest.approx(their, rel=0.03)
