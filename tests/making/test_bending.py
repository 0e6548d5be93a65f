"""Each demand on bends and holes broken by one part, and how bends are marked and made."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.making.bending import (
    CURES,
    Face,
    FlatPattern,
    Fold,
    Hole,
    Neutral,
    Sheet,
    bend_order,
    check,
    reliefs,
    unfold,
)
from pedalwright.panels.plane import apart

SHEET = Sheet(metal="5251-H22", thickness=1.5, yield_strength=120.0, elastic=70000.0)
NEUTRAL = Neutral(share=0.4, plus_minus=0.05, way="given", source="invented")
H1 = Hole(name="H1", centre=(60.0, 40.0), diameter=5.0)


def flange(deep: float = 25.0, *holes: Hole) -> Face:
    outline = ((0.0, 0.0), (120.0, 0.0), (120.0, deep), (0.0, deep))
    return Face(name="flange", outline=outline, holes=holes)


def bracket(
    beyond: Face | None = None, *holes: Hole, radius: float = 2.5, sheet: Sheet = SHEET
) -> FlatPattern:
    """A web of 120 x 80 with one flange turned up along its lower side."""
    fold = Fold(
        name="B1",
        start=(120.0, 0.0),
        end=(0.0, 0.0),
        angle=np.pi / 2,
        radius=radius,
        face=beyond or flange(),
    )
    outline = ((0.0, 0.0), (120.0, 0.0), (120.0, 80.0), (0.0, 80.0))
    web = Face(name="web", outline=outline, holes=holes or (H1,), folds=(fold,))
    return unfold("bracket", web, sheet, lambda _: NEUTRAL)


def broken(pattern: FlatPattern, **folder: float) -> set[str]:
    return {found.limit.code for found in check(pattern, **folder) if not found.ok}


def test_a_plain_bracket_breaks_none() -> None:
    assert broken(bracket(), folder_least=12.0, folder_width=600.0) == set()


@pytest.mark.parametrize(
    ("code", "pattern"),
    [
        ("making.flange_length", bracket(flange(8.0))),
        ("making.bend_radius", bracket(radius=1.0)),
        ("making.hole_to_bend", bracket(None, replace(H1, centre=(60.0, 9.0)))),
        ("making.hole_to_edge", bracket(None, replace(H1, centre=(60.0, 71.0)))),
        ("making.holes_apart", bracket(None, H1, Hole(name="H2", centre=(66, 40), diameter=4.2))),
    ],
)
def test_one_part_breaks_only_this_one(code: str, pattern: FlatPattern) -> None:
    assert broken(pattern) == {code}
    assert CURES[code]


def test_a_hole_in_a_bend_is_noticed_from_either_side() -> None:
    """In the strip itself, and in the flange just beyond it."""
    in_bend = bracket(None, replace(H1, centre=(60.0, 2.0)))
    assert "making.hole_to_bend" in broken(in_bend)
    found = next(f for f in check(in_bend) if f.limit.code == "making.hole_to_bend")
    assert found.value == pytest.approx(2.0 - 4.0 - 2.5)
    beyond = bracket(flange(25.0, Hole(name="H2", centre=(60.0, 9.0), diameter=5.0)))
    assert "making.hole_to_bend" in broken(beyond)


def test_the_builders_own_folder_judges_the_flange_and_the_length() -> None:
    assert broken(bracket(flange(12.0)), folder_least=10.0) == set()
    assert broken(bracket(flange(12.0)), folder_least=15.0) == {"making.flange_length"}
    assert broken(bracket(), folder_width=100.0) == {"making.folder_width"}
    short = next(f for f in check(bracket(flange(12.0))) if f.limit.code == "making.flange_length")
    assert short.value == pytest.approx(12.0)
    assert short.bound == pytest.approx(2.5 + 4 * 1.5)


def test_with_the_grain_the_radius_must_be_larger() -> None:
    along = replace(SHEET, grain=0.0)
    across = replace(SHEET, grain=np.pi / 2)
    assert broken(bracket(radius=2.0, sheet=along)) == {"making.bend_radius"}
    assert broken(bracket(radius=2.0, sheet=across)) == set()


def test_a_metal_that_is_in_no_table_is_not_judged_and_not_passed() -> None:
    unknown = bracket(sheet=replace(SHEET, metal="drawer front"))
    found = next(f for f in check(unknown) if f.limit.code == "making.bend_radius")
    assert not found.judged
    assert not found.ok


def test_flanges_that_meet_on_the_flat_piece_are_noticed() -> None:
    """Two deep flanges on the arms of a U-shaped web grow into each other."""
    outline = ((0, 0), (200, 0), (200, 150), (130, 150), (130, 40), (70, 40), (70, 150), (0, 150))

    def inner(name: str, x: float, deep: float, up: bool) -> Fold:
        start, end = ((x, 150.0), (x, 45.0)) if up else ((x, 45.0), (x, 150.0))
        square = ((0.0, 0.0), (105.0, 0.0), (105.0, deep), (0.0, deep))
        return Fold(
            name=name,
            start=start,
            end=end,
            angle=np.pi / 2,
            radius=2.5,
            face=Face(name=f"{name} flange", outline=square),
        )

    def u(deep: float) -> FlatPattern:
        folds = (inner("B1", 130.0, deep, up=False), inner("B2", 70.0, deep, up=True))
        web = Face(name="web", outline=tuple((float(x), float(y)) for x, y in outline), folds=folds)
        return unfold("U", web, SHEET, lambda _: NEUTRAL)

    assert broken(u(25.0)) == set()
    assert broken(u(40.0)) == {"making.pattern_overlap"}


def test_of_many_good_holes_only_the_tightest_is_told() -> None:
    row = [Hole(name=f"H{i}", centre=(15.0 + 15 * i, 40.0 + i), diameter=4.9) for i in range(7)]
    told = [f.limit.code for f in check(bracket(None, *row))]
    assert told.count("making.hole_to_bend") == 1
    assert told.count("making.holes_apart") == 1


def test_where_to_set_the_sight_line() -> None:
    """A radius from where the bend begins, on the way to where it ends."""
    (bend,) = bracket().bends
    assert apart(bend.near[0], bend.sight[0]) == pytest.approx(2.5)
    assert apart(bend.near[0], bend.far[0]) == pytest.approx(np.pi / 2 * (2.5 + 0.4 * 1.5))
    assert apart(bend.near[0], bend.middle[0]) == pytest.approx(bend.allowance / 2)


def test_returns_are_bent_before_the_flanges_they_stand_on() -> None:
    lip = Face(name="lip", outline=((0.0, 0.0), (120.0, 0.0), (120.0, 12.0), (0.0, 12.0)))
    fold = Fold(
        name="lip bend", start=(0.0, 25.0), end=(120.0, 25.0), angle=1.0, radius=2.5, face=lip
    )
    pattern = bracket(replace(flange(), folds=(fold,)))
    assert [bend.name for bend in pattern.bends] == ["B1", "lip bend"]
    steps = bend_order(pattern)
    assert [step.bend.name for step in steps] == ["lip bend", "B1"]
    assert np.degrees(steps[1].turn_to) == pytest.approx(90.60, abs=0.005)
    assert steps[1].left_radius == pytest.approx(2.5216, abs=1e-3)


def test_without_strength_the_springback_is_left_unsaid() -> None:
    (step,) = bend_order(bracket(sheet=replace(SHEET, yield_strength=float("nan"))))
    assert np.isnan(step.left_radius)
    assert step.turn_to == pytest.approx(np.pi / 2)


def test_a_fold_that_lies_on_no_side_is_a_mistake_of_ours() -> None:
    fold = Fold(name="B1", start=(90.0, 5.0), end=(20.0, 5.0), angle=1.0, radius=2.0, face=flange())
    outline = ((0.0, 0.0), (120.0, 0.0), (120.0, 80.0), (0.0, 80.0))
    web = Face(name="web", outline=outline, folds=(fold,))
    with pytest.raises(AssertionError, match=r"web: \['B1'\] lie on none of its sides"):
        unfold("x", web, SHEET, lambda _: NEUTRAL)


@pytest.mark.parametrize(("thickness", "hole"), [(1.5, 3.2), (2.5, 4.8)])
def test_where_two_bends_meet_a_hole_keeps_the_corner_from_tearing(
    thickness: float, hole: float
) -> None:
    """At the crossing of the inner edges; the radius, or the least the airframe handbook has."""

    def tray(radius: float, *, second: bool = True) -> FlatPattern:
        side = Face(name="side", outline=((0.0, 0.0), (80.0, 0.0), (80.0, 30.0), (0.0, 30.0)))
        low = Fold(
            name="B1", start=(120.0, 0.0), end=(0.0, 0.0), angle=1.5, radius=radius, face=flange()
        )
        turned = Fold(
            name="B2", start=(120.0, 80.0), end=(120.0, 0.0), angle=1.5, radius=radius, face=side
        )
        outline = ((0.0, 0.0), (120.0, 0.0), (120.0, 80.0), (0.0, 80.0))
        folds = (low, turned) if second else (low,)
        web = Face(name="web", outline=outline, folds=folds)
        return unfold("tray", web, replace(SHEET, thickness=thickness), lambda _: NEUTRAL)

    (found,) = reliefs(tray(2.0))
    back = (2.0 + thickness) * np.tan(0.75)
    assert found.centre == pytest.approx((120.0 - back, back))
    assert found.diameter == hole
    (larger,) = reliefs(tray(6.0))
    assert larger.diameter == 6.0
    assert list(reliefs(tray(2.0, second=False))) == []
