"""A doubler with a stiff foot on a clamped plate, against solid elements of CalculiX.

Steel plate 300 x 250 x 2, doubler 120 x 100 x 3 on one side, foot 40 x 40, 1200 N. Solid bricks of
twenty nodes (73 600 freedoms) with a solid foot, which is not quite rigid, gave 0.680 mm for a pull
square to the plate and 0.216 mm for a push along it 40 mm above the plate's middle. An independent
trial of shells with bars for rivets (2e4 N/mm across, 5e4 along) gave 1.280 mm and 0.430 mm
riveted, 1.203 mm and 0.394 mm when the sheets may press on one another, and 179 to 217 N and 287
to 354 N in the worst rivet without and with pressing.
"""

from dataclasses import replace

import numpy as np
import pytest
from shell.benches import flat, rectangle

from pedalwright.core.points import Point
from pedalwright.core.units import Array
from pedalwright.shell.build import build
from pedalwright.shell.forces import fastener_forces
from pedalwright.shell.parts import Bench, Bond, Contact, Fastener, Patch, Support
from pedalwright.shell.solve import solve

CORNERS = tuple(
    Point(x, y, 0.0) for x, y in ((0.0, 0.0), (300.0, 0.0), (300.0, 250.0), (0.0, 250.0))
)
PLATE = Bench(
    sheets=(
        flat("plate", rectangle(300, 250), t=2.0),
        replace(
            flat("doubler", rectangle(120, 100), t=3.0),
            plane=replace(flat("", ()).plane, origin=Point(90.0, 75.0, 2.5)),
        ),
    ),
    patches=(
        Patch(
            name="foot",
            sheet="doubler",
            centre=Point(150.0, 125.0, 2.5),
            width=40.0,
            height=40.0,
            master=Point(150.0, 125.0, 40.0),
        ),
    ),
    supports=tuple(
        Support(name=f"{i}", at=(start, CORNERS[(i + 1) % 4])) for i, start in enumerate(CORNERS)
    ),
    size=5.0,
)
BONDED = replace(PLATE, bonds=(Bond(layer="doubler", base="plate"),))
RIVETED = replace(
    PLATE,
    fasteners=tuple(
        Fastener(
            name=f"{x} {y}",
            at=Point(150.0 + x, 125.0 + y, 0.0),
            sheets=("plate", "doubler"),
            shear=2e4,
            axial=5e4,
            turn=1e4,
        )
        for x in (-50.0, 0.0, 50.0)
        for y in (-40.0, 0.0, 40.0)
        if (x, y) != (0.0, 0.0)
    ),
)
PRESSING = replace(RIVETED, contacts=(Contact(layer="doubler", base="plate"),))


def answer(bench: Bench) -> tuple[Array, Array]:
    """Give along the push and along the pull, and the hardest pull on a rivet in each case."""
    built = build(bench)
    loads = built.mesh.loads({"foot": (1200.0, 0.0, 0.0)}, {"foot": (0.0, 0.0, 1200.0)})
    found = solve(built.mesh, loads)
    assert found.settled.all()
    foot = built.mesh.points["foot"]
    pulls = [joint.pull for joint in fastener_forces(built, found.moves)]
    hardest = np.max(pulls, axis=0) if pulls else np.zeros(2)
    return np.array([found.moves[0, foot, 0], found.moves[1, foot, 2]]), hardest


def test_bonded_a_little_stiffer_than_the_solid_whose_foot_gives_too() -> None:
    gives, _ = answer(BONDED)
    solid = np.array([0.216, 0.680])
    assert np.all(gives < solid)
    assert gives == pytest.approx(solid, rel=0.09)


def test_riveted_gives_twice_as_much() -> None:
    gives, hardest = answer(RIVETED)
    assert gives == pytest.approx([0.430, 1.280], rel=0.03)
    assert gives[1] / answer(BONDED)[0][1] == pytest.approx(2.0, rel=0.05)
    # The trial's foot stood on other nodes, so its rivets differ more than its gives.
    assert hardest == pytest.approx([179.0, 287.0], rel=0.15)


def test_sheets_that_press_are_stiffer_and_pull_harder_on_their_rivets() -> None:
    gives, hardest = answer(PRESSING)
    alone, without = answer(RIVETED)
    assert gives == pytest.approx([0.394, 1.203], rel=0.03)
    assert gives / alone == pytest.approx([0.92, 0.94], abs=0.03)
    assert np.all(hardest / without > 1.15)
