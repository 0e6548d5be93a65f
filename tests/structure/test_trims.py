"""Trimmed members: sections against strips counted one by one, and what goes back.

Strength: independent. A section is laid on a grid of 0.02 mm and its strips are added up; nothing
of the closed forms is used.
"""

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from pedalwright.assess import assess
from pedalwright.core.points import Point
from pedalwright.project import ProjectError, car_text, read
from pedalwright.structure.trims import (
    CoverPlates,
    Gussets,
    Section,
    Triangle,
    Trim,
    modulus,
    sized,
    trimmed,
)
from pedalwright.survey import Line

END = Point(0.0, 600.0, 0.0)
RAIL = Line(name="rail", start=Point(0.0, 0.0, 0.0), end=END, diameter=25.0, height=30.0, wall=2.0)
TUBE = Line(name="tube", start=Point(0.0, 0.0, 0.0), end=END, diameter=38.0, wall=1.5)
NOTCH = Trim(name="toes", member="rail", way="notch", depth=8.0, length=120.0)

GRID = 0.02


def counted(width: Callable[[np.ndarray], np.ndarray], low: float, high: float) -> Section:
    """A section of a given width of metal at each height from the far face."""
    y = np.arange(low + GRID / 2, high, GRID)
    strips = width(y) * GRID
    area = strips.sum()
    middle = (strips * y).sum() / area
    return Section(
        area=area,
        height=middle,
        inertia=(strips * (y - middle) ** 2).sum(),
        far=low,
        near=high,
    )


def boxed(high: float, *, closed: bool) -> Callable[[np.ndarray], np.ndarray]:
    """A rectangular tube 25 wide with walls of 2; the near side open for a notch."""
    return lambda y: np.where((y < 2.0) | (closed & (y > high - 2.0)), 25.0, 4.0)


def ringed(y: np.ndarray) -> np.ndarray:
    """A tube of 38 with a wall of 1.5."""
    up = y - 19.0
    outer = np.sqrt(np.maximum(19.0**2 - up**2, 0.0))
    inner = np.sqrt(np.maximum(17.5**2 - up**2, 0.0))
    return 2.0 * (outer - inner)


def assert_same(found: Section, expected: Section, rel: float) -> None:
    assert float(found.area) == pytest.approx(expected.area, rel=rel)
    assert float(found.height) == pytest.approx(expected.height, rel=rel)
    assert float(found.inertia) == pytest.approx(expected.inertia, rel=rel)
    assert float(modulus(found)) == pytest.approx(float(modulus(expected)), rel=rel)


def test_a_rectangular_rail_before_and_notched() -> None:
    found = trimmed(RAIL, NOTCH)
    assert_same(found.before, counted(boxed(30.0, closed=True), 0.0, 30.0), 1e-3)
    assert_same(found.bare, counted(boxed(22.0, closed=False), 0.0, 22.0), 1e-3)
    assert float(found.modulus_bare) < 0.3 * float(found.modulus_before)


def test_a_fold_takes_no_metal() -> None:
    found = trimmed(RAIL, replace(NOTCH, way="fold"))
    assert float(found.bare.area) == pytest.approx(float(found.before.area), rel=1e-9)

    def folded(y: np.ndarray) -> np.ndarray:
        flat = np.where((y > 18.0) & (y < 20.0), 16.0, 0.0)
        return boxed(22.0, closed=True)(y) + flat

    assert_same(found.bare, counted(folded, 0.0, 22.0), 1e-3)


def test_a_round_tube_before_notched_and_folded() -> None:
    """The wall is taken as thin: a few parts in a hundred of a true ring, cut square."""
    notch = replace(NOTCH, member="tube", depth=9.0)
    found = trimmed(TUBE, notch)
    assert_same(found.before, counted(ringed, 0.0, 38.0), 2e-3)
    assert_same(found.bare, counted(ringed, 0.0, 29.0), 0.03)
    fold = trimmed(TUBE, replace(notch, way="fold"))
    assert float(found.modulus_bare) < float(fold.modulus_bare) < float(fold.modulus_before)


def test_cover_plates_gussets_and_a_triangle_by_strips() -> None:
    notched = boxed(22.0, closed=False)
    plates = trimmed(RAIL, replace(NOTCH, put_back=CoverPlates(thickness=3.0, lap=50.0)))

    def covered(y: np.ndarray) -> np.ndarray:
        return np.where((y < 0.0) | (y > 22.0), 25.0, notched(y))

    assert_same(plates.after, counted(covered, -3.0, 25.0), 2e-3)
    cheeks = trimmed(RAIL, replace(NOTCH, put_back=Gussets(thickness=2.0, height=40.0, lap=50.0)))

    def cheeked(y: np.ndarray) -> np.ndarray:
        return np.where(y > 0.0, notched(y), 0.0) + 4.0

    assert_same(cheeks.after, counted(cheeked, -18.0, 22.0), 2e-3)
    bar = trimmed(
        RAIL,
        replace(NOTCH, put_back=Triangle(width=20.0, thickness=4.0, distance=30.0, lap=50.0)),
    )

    def barred(y: np.ndarray) -> np.ndarray:
        return np.where(y > 0.0, notched(y), np.where(y < -28.0, 20.0, 0.0))

    assert_same(bar.after, counted(barred, -32.0, 22.0), 2e-3)


@pytest.mark.parametrize("way", ["notch", "fold", "cut"])
@pytest.mark.parametrize("member", [RAIL, TUBE], ids=["rail", "tube"])
def test_what_is_sized_is_enough_and_one_size_less_is_not(member: Line, way: str) -> None:
    trim = replace(NOTCH, way=way)
    for option in sized(member, trim):
        found = trimmed(member, replace(trim, put_back=option))
        if np.isnan(float(option.lap)):
            assert way == "cut"
            continue
        assert float(found.modulus_after) >= float(found.modulus_before)
        less = None
        if isinstance(option, CoverPlates) and float(option.thickness) > 1.0:
            less = replace(option, thickness=float(option.thickness) - 0.5)
        if isinstance(option, Gussets) and float(option.height) > 30.0:
            less = replace(option, height=float(option.height) - 5.0)
        if isinstance(option, Triangle) and float(option.distance) > 5.0:
            less = replace(option, distance=float(option.distance) - 5.0)
        if less is not None:
            weaker = trimmed(member, replace(trim, put_back=less))
            assert float(weaker.modulus_after) < float(found.modulus_after)


def test_two_plates_with_no_web_between_them_do_not_bridge_a_cut() -> None:
    cut = replace(NOTCH, way="cut", put_back=CoverPlates(thickness=10.0, lap=80.0))
    found = trimmed(RAIL, cut)
    assert float(found.modulus_after) == pytest.approx(2 * 25.0 * 10.0**2 / 6, rel=1e-12)
    assert np.isnan(float(sized(RAIL, cut)[0].lap))


def test_the_weld_carries_all_the_piece_can() -> None:
    """By hand: 25 x 4 x 235 N over two runs of 1.4 throat at 360 / (√3 0.9 1.25) MPa, + craters."""
    found = trimmed(RAIL, replace(NOTCH, put_back=CoverPlates(thickness=4.0, lap=50.0)))
    run = 25 * 4 * 235 / (2 * 1.4 * 360 / (3**0.5 * 0.9 * 1.25)) + 2 * 1.4
    assert float(found.lap) == pytest.approx(run, rel=1e-12)
    assert float(found.weld) == pytest.approx(2 * 2 * 2 * run, rel=1e-12)


TRIM = """
[trims.toes]
member = "cowl_rail"
way = "notch"
depth = "10 mm"
length = "120 mm"
"""
BACK = """
[trims.toes.put_back]
kind = "gussets"
thickness = "2 mm"
height = "45 mm"
lap = "45 mm"
"""


def judged(text: str) -> dict[str, bool]:
    findings = assess(read(text).design).findings
    return {f.limit.code: bool(f.ok) for f in findings if ".trim_" in f.limit.code}


def test_no_member_is_cut_without_a_replacement() -> None:
    text = car_text("larkfield-tapes")
    assert judged(text) == {}
    assert judged(text + TRIM) == {
        "structure.trim_allowed": True,
        "structure.trim_strength": False,
        "structure.trim_stiffness": False,
    }
    assert judged(text + TRIM + BACK) == {
        "structure.trim_allowed": True,
        "structure.trim_strength": True,
        "structure.trim_stiffness": True,
        "structure.trim_weld": True,
    }


@pytest.mark.parametrize(
    ("old", "new", "fails"),
    [
        ('may_cut = "yes"', 'may_cut = "no"', "structure.trim_allowed"),
        ('height = "45 mm"', 'height = "30 mm"', "structure.trim_strength"),
        ('lap = "45 mm"', 'lap = "25 mm"', "structure.trim_weld"),
    ],
)
def test_each_demand_fails_by_itself(old: str, new: str, fails: str) -> None:
    text = car_text("larkfield-tapes") + TRIM + BACK
    assert old in text
    found = judged(text.replace(old, new))
    missed = {code for code, ok in found.items() if not ok} - {"structure.trim_stiffness"}
    assert missed == {fails}


def test_a_wall_nobody_measured_is_not_judged() -> None:
    text = car_text("larkfield-tapes").replace('wall = "2 mm"', 'wall = "?"') + TRIM + BACK
    assert judged(text)["structure.trim_strength"] is False
    unknown = replace(RAIL, wall=None)
    assert np.isnan(float(modulus(trimmed(unknown, NOTCH).before)))


def test_a_trim_of_nothing_is_asked_about() -> None:
    with pytest.raises(ProjectError, match="Did you mean cowl_rail"):
        read(car_text("larkfield-tapes") + TRIM.replace("cowl_rail", "cowl_rial"))


def test_a_batch_of_depths_is_its_singles() -> None:
    depths = np.array([4.0, 8.0, 12.0])
    put_back = CoverPlates(thickness=3.0, lap=50.0)
    together = trimmed(RAIL, replace(NOTCH, depth=depths, put_back=put_back))
    for i, depth in enumerate(depths.tolist()):
        alone = trimmed(RAIL, replace(NOTCH, depth=depth, put_back=put_back))
        assert np.asarray(together.modulus_after)[i] == pytest.approx(float(alone.modulus_after))
