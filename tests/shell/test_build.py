"""From what is said to a mesh: welded by name only, and every fault told at once."""

from dataclasses import replace

import numpy as np
import pytest
from shell.benches import ALLOY, STEEL, box, flat, rectangle, seam

from pedalwright.core.faults import InputError
from pedalwright.core.points import RIGHT, UP, Point
from pedalwright.core.units import Array
from pedalwright.shell.build import Built, build
from pedalwright.shell.parts import (
    Bar,
    Bench,
    Bond,
    Contact,
    End,
    Fastener,
    Patch,
    Plane,
    Sheet,
    Spot,
    Support,
)
from pedalwright.shell.sections import Flat, Round
from pedalwright.shell.solve import Answer, solve

ROOT = Support(name="root", at=(Point(0.0, 0.0, 0.0), Point(0.0, 40.0, 0.0)))


def solved(bench: Bench, **loads: tuple[float, ...]) -> tuple[Answer, Built]:
    built = build(bench)
    return solve(built.mesh, built.mesh.loads(loads)), built


def test_sheets_that_only_touch_do_not_hang_together() -> None:
    wall = Sheet(
        name="wall",
        plane=Plane(origin=Point(100.0, 0.0, 0.0), along=RIGHT, across=UP),
        outline=rectangle(40, 30),
        thickness=2.0,
        material=STEEL,
    )
    shelf = flat("shelf", rectangle(100, 40))
    tip = Spot(name="tip", at=Point(100.0, 20.0, 30.0), sheet="wall")
    apart = Bench(sheets=(shelf, wall), supports=(ROOT,), spots=(tip,), size=10.0)
    answer, _ = solved(apart, tip=(0.0, 0.0, -10.0))
    assert answer.loose == ("wall",)
    assert np.all(np.isnan(answer.moves))
    folded = replace(apart, seams=(seam("shelf", "wall", (100, 0, 0), (100, 40, 0)),))
    answer, _ = solved(folded, tip=(0.0, 0.0, -10.0))
    assert answer.loose == ()
    assert answer.energy.sum() == pytest.approx(answer.work[0], rel=1e-9)


def test_a_bent_strip_is_as_stiff_as_a_straight_one_with_an_arm() -> None:
    """An L of strip pulled up at its tip: the foot bends, the upright only goes along."""
    bench = Bench(
        sheets=(
            flat("foot", rectangle(100, 10), t=3.0),
            Sheet(
                name="upright",
                plane=Plane(origin=Point(100.0, 0.0, 0.0), along=RIGHT, across=UP),
                outline=rectangle(10, 60),
                thickness=3.0,
                material=STEEL,
            ),
        ),
        seams=(seam("foot", "upright", (100, 0, 0), (100, 10, 0)),),
        supports=(replace(ROOT, at=(Point(0.0, 0.0, 0.0), Point(0.0, 10.0, 0.0))),),
        spots=(Spot(name="tip", at=Point(100.0, 5.0, 60.0), sheet="upright"),),
        size=3.0,
    )
    answer, built = solved(bench, tip=(1.0, 0.0, 0.0))
    tip = answer.moves[0, built.mesh.points["tip"]]
    bending = STEEL.elastic * 10 * 3.0**3 / 12
    assert tip[0] == pytest.approx(60**2 * 100 / bending + 60**3 / (3 * bending), rel=0.02)


def test_bonded_riveted_and_pressed_layers() -> None:
    """A strip with a doubler all over: thick if bonded; between that and two loose ones if riveted.

    Bent with the doubler above, the sheets press; bent so that it would lift they hang on rivets.
    """
    strip = flat("strip", rectangle(200, 40), t=2.0)
    doubler = flat("doubler", rectangle(200, 40), z=2.0, t=2.0)
    tip = Patch(name="tip", sheet="strip", centre=Point(190.0, 20.0, 0.0), width=10.0)
    bench = Bench(sheets=(strip, doubler), patches=(tip,), supports=(ROOT,), size=8.0)
    rivets = tuple(
        Fastener(
            name=f"{x}", at=Point(x, 20.0, 0.0), sheets=("strip", "doubler"), shear=2e4, axial=5e4
        )
        for x in (10.0, 70.0, 130.0, 175.0)
    )

    def give(made: Bench, force: float) -> float:
        answer, built = solved(made, tip=(0.0, 0.0, force))
        assert answer.settled.all()
        return abs(answer.moves[0, built.mesh.points["tip"], 2])

    bonded = give(replace(bench, bonds=(Bond(layer="doubler", base="strip"),)), 1.0)
    alone = give(replace(bench, sheets=(strip,)), 1.0)
    riveted = give(replace(bench, fasteners=rivets), 1.0)
    touching = replace(bench, fasteners=rivets, contacts=(Contact(layer="doubler", base="strip"),))
    assert bonded == pytest.approx(alone / 8, rel=0.1)
    assert bonded < riveted < alone
    assert bonded < give(touching, 1.0) <= riveted * (1 + 1e-9)
    assert give(touching, 1.0) != pytest.approx(give(touching, -1.0), rel=1e-6)
    # Twice the load, twice the give, contact or not: the sheets lie on one another from the start.
    assert give(touching, 2.0) == pytest.approx(2 * give(touching, 1.0), rel=1e-6)


def pushed(section: Flat | Round, end: Flat | Round | None, load: tuple[float, ...]) -> Array:
    bar = Bar(
        name="arm",
        start=End(at=Point(0.0, 0.0, 0.0)),
        end=End(at=Point(0.0, 0.0, 220.0)),
        section=section,
        end_section=end,
        material=STEEL,
        up=RIGHT,
    )
    bench = Bench(bars=(bar,), supports=(Support(name="root", at="arm.start"),))
    answer, built = solved(bench, **{"arm.end": load})
    return answer.moves[0, built.mesh.points["arm.end"]]


def test_a_tapered_bar_gives_as_the_integral_over_its_length() -> None:
    root, tip = Flat(width=10.0, depth=45.0), Flat(width=10.0, depth=25.0)
    moves = pushed(root, tip, (0.0, 2000.0, 0.0))
    z = np.linspace(0.0, 220.0, 20001)
    depth = 45.0 + (25.0 - 45.0) * z / 220.0
    shear = STEEL.shear
    give = 2000.0 * (220 - z) ** 2 * 12 / (STEEL.elastic * 10 * depth**3)
    give += 2000.0 * 1.2 / (shear * 10 * depth)
    assert moves[1] == pytest.approx(np.trapezoid(give, z), rel=1e-6)


def test_a_rod_on_balls_carries_only_along_itself_and_may_spin() -> None:
    """Held by two rods at right angles, a block goes where both stretch."""
    rod = Round(diameter=8.0)
    corner = Point(100.0, 0.0, 0.0)
    block = Bar(
        name="block",
        start=End(at=corner),
        end=End(at=Point(100.0, 0.0, 50.0)),
        section=Round(diameter=40.0),
        material=STEEL,
        up=RIGHT,
    )
    rods = tuple(
        Bar(
            name=name,
            start=End(at=start, to=None),
            end=End(at=corner, to="block.start", fit="ball"),
            section=rod,
            material=STEEL,
            up=UP,
        )
        for name, start in (("long", Point(0.0, 0.0, 0.0)), ("side", Point(100.0, 150.0, 0.0)))
    )
    bench = Bench(
        bars=(block, *rods),
        supports=(
            Support(name="a", at="long.start"),
            Support(name="b", at="side.start"),
            Support(name="guide", at="block.end", holds="zXYZ"),
        ),
    )
    answer, built = solved(bench, **{"block.start": (1000.0, 500.0, 0.0)})
    stretch = STEEL.elastic * np.pi * 16.0
    moves = answer.moves[0, built.mesh.points["block.start"]]
    # The block's far end only keeps it from turning, so each rod has the load along it.
    assert moves[0] == pytest.approx(1000.0 * 100 / stretch, rel=0.01)
    assert moves[1] == pytest.approx(-500.0 * -150 / stretch, rel=0.01)


def test_a_sheet_hung_from_one_pin_is_named_as_loose() -> None:
    sheet = flat("flap", rectangle(100, 40))
    pin = Spot(name="pin", at=Point(0.0, 20.0, 0.0), sheet="flap")
    bench = Bench(
        sheets=(sheet,),
        spots=(pin,),
        supports=(Support(name="pin", at="pin", holds="xyzXZ"),),
        size=10.0,
    )
    answer, _ = solved(bench, pin=(0.0, 0.0, 1.0))
    assert answer.loose == ("flap",)


def test_everything_wrong_is_said_at_once_and_where() -> None:
    bench = box(20.0)
    wrong = replace(
        bench,
        sheets=(*bench.sheets, replace(flat("nothing", ((0, 0), (1, 1))), thickness=0.0)),
        seams=(*bench.seams, seam("wall", "roof", (0, 0, 400), (0, 500, 400))),
        supports=(*bench.supports, Support(name="hook", at="nowhere")),
    )
    with pytest.raises(InputError) as caught:
        build(wrong)
    said = {fault.where for fault in caught.value.faults}
    assert said == {
        "sheet nothing, outline",
        "sheet nothing, thickness",
        "seam wall to roof",
        "support hook",
    }


@pytest.mark.parametrize(
    ("change", "where"),
    [
        ({"seams": (seam("wall", "floor", (0, 0, 5), (0, 500, 5)),)}, "seam wall to floor"),
        (
            {"patches": (Patch(name="p", sheet="wall", centre=Point(0, 4, 200), width=16),)},
            "patch p",
        ),
        (
            {"spots": (Spot(name="in the hole", at=Point(0, 400, 300), sheet="wall"),)},
            "spot in the hole",
        ),
        (
            {
                "fasteners": (
                    Fastener(
                        name="f", at=Point(0, 20, 20), sheets=("wall", "floor"), shear=1, axial=1
                    ),
                )
            },
            "fastener f",
        ),
    ],
)
def test_what_does_not_lie_where_it_is_said_is_named(change: dict[str, object], where: str) -> None:
    with pytest.raises(InputError) as caught:
        build(replace(box(20.0), **change))  # type: ignore[arg-type]
    assert where in {fault.where for fault in caught.value.faults}


def test_patches_that_overlap_are_refused() -> None:
    bench = box(20.0)
    two = tuple(
        Patch(name=f"{y}", sheet="floor", centre=Point(200.0, y, 0.0), width=30.0)
        for y in (200.0, 220.0)
    )
    with pytest.raises(InputError, match="must be made one"):
        build(replace(bench, patches=two, bars=(), supports=bench.supports))


def test_alloy_and_steel_keep_to_themselves() -> None:
    built = build(box(20.0))
    made_of = {part.name: part.material for part in built.mesh.parts}
    assert made_of["wall"] == ALLOY
    assert made_of["doubler"] == STEEL
    assert made_of["rivets"] is None
