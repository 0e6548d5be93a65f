"""The mesher: every line kept, no sharp angle, fine where it must be, alike on both sides."""

from dataclasses import replace

import numpy as np
import pytest
from shell.benches import box, flat, rectangle

from pedalwright.core.points import Point
from pedalwright.shell.meshing.plane import cross
from pedalwright.shell.meshing.sheets import Meshed, meshed
from pedalwright.shell.parts import Bench, Hole, Patch, Place, Spot

#: A row of rivets in a flange 15 mm wide, nearer to its edges than sides are long elsewhere.
ROW = tuple(Spot(name=f"{x}", at=Point(x, 7.5, 0.0), sheet="it") for x in range(15, 400, 35))
#: Heads of rivets, some close to the edge.
HEADS = tuple(
    Patch(name=f"{x} {y}", sheet="it", centre=Point(x, y, 0.0), width=9.5)
    for x in range(20, 300, 40)
    for y in (15, 100)
)
HOLES = (Hole(centre=(80, 70), diameter=30), Hole(centre=(50, 120), diameter=8))
NOTCHED = ((0, 0), (300, 0), (300, 40), (60, 40), (60, 200), (0, 200))


def one(outline: tuple[Place, ...], bench: Bench, *holes: Hole) -> Meshed:
    sheet = replace(flat("it", outline), holes=holes)
    return meshed(replace(bench, sheets=(sheet,)))[0]["it"]


SHEETS = {
    "flange with rivets": lambda: one(rectangle(410, 15), Bench(spots=ROW, size=20.0)),
    "heads at the edge": lambda: one(rectangle(300, 200), Bench(patches=HEADS)),
    "holes": lambda: one(rectangle(160, 160), Bench(), *HOLES),
    "holes, coarse": lambda: one(rectangle(160, 160), Bench(size=40.0), *HOLES),
    "notched": lambda: one(NOTCHED, Bench(size=15.0)),
    "gusset": lambda: one(((0, 0), (100, 0), (0, 60)), Bench(size=10.0)),
    "square foot": lambda: one(
        rectangle(120, 100),
        Bench(
            patches=(
                Patch(name="foot", sheet="it", centre=Point(50.0, 50.0, 0.0), width=40, height=30),
            )
        ),
    ),
}


@pytest.mark.parametrize("name", SHEETS)
def test_no_angle_is_sharper_than_twenty_degrees_and_no_line_is_lost(name: str) -> None:
    found = SHEETS[name]()
    assert np.degrees(found.sharpest) > 20.0
    assert len(found.missing) == 0


def test_a_whole_box_has_no_sharp_angle_either() -> None:
    for found in meshed(box(12.0))[0].values():
        assert np.degrees(found.sharpest) > 20.0
        assert len(found.missing) == 0


def test_a_sharp_corner_is_as_sharp_as_it_is_drawn_and_no_more() -> None:
    corner = np.degrees(np.arctan2(60, 200))
    found = one(((0, 0), (200, 0), (0, 60)), Bench(size=10.0))
    assert 0.9 * corner < np.degrees(found.sharpest) <= corner + 1e-6


def area(found: Meshed) -> float:
    a, b, c = (found.flat[corner] for corner in found.corners.T)
    twice = cross(b - a, c - a)
    assert np.all(twice > 0)
    return float(0.5 * np.sum(twice))


def test_triangles_cover_the_sheet_once_and_leave_its_holes_open() -> None:
    assert area(SHEETS["notched"]()) == pytest.approx(300 * 40 + 60 * 160, rel=1e-9)
    # A hole is a ring of at least twelve straight sides, so a little of it is filled.
    left = 160.0**2 - np.pi * (15.0**2 + 4.0**2)
    assert area(SHEETS["holes"]()) == pytest.approx(left, rel=2e-3)


def test_sides_are_short_at_a_hole_and_as_long_as_wished_far_off() -> None:
    found = one(rectangle(400, 400), Bench(size=20.0), Hole(centre=(200, 200), diameter=16))
    places = found.flat[found.corners]
    sides = np.linalg.norm(np.roll(places, -1, axis=1) - places, axis=-1).mean(axis=1)
    off = np.linalg.norm(places.mean(axis=1) - 200.0, axis=-1)
    assert np.all(sides[off < 12.0] < 6.6)
    assert sides[off > 100.0].mean() == pytest.approx(20.0, rel=0.15)
    # Next to one another they differ by little: 0.35 mm for each mm away from the hole.
    assert np.all(sides < 1.6 * np.minimum(20.0, 4.2 + 0.35 * (off - 8.0).clip(0)))


def test_both_sides_of_a_fold_have_the_same_nodes() -> None:
    sheets, divider = meshed(box(14.0))
    for start, end, names in (
        ((0, 0, 0), (0, 500, 0), ("wall", "floor")),
        ((0, 0, 0), (0, 0, 400), ("wall", "cheek left")),
    ):
        nodes = divider.straight(np.array(start, float), np.array(end, float))
        assert len(nodes) > 20
        for name in names:
            found = sheets[name]
            assert found.nodes[found.nearest(nodes)] == pytest.approx(nodes, abs=1e-9)


def test_a_point_on_the_fold_is_a_node_on_both_sides() -> None:
    bench = box(14.0)
    spot = Spot(name="on the fold", at=Point(0.0, 123.4, 0.0), sheet="wall")
    sheets, _ = meshed(replace(bench, spots=(spot,)))
    for name in ("wall", "floor"):
        nodes = sheets[name].nodes
        assert np.linalg.norm(nodes - [0.0, 123.4, 0.0], axis=1).min() < 1e-6
