"""The flat piece, folded up again, is the part: a thousand panels nobody drew.

Two ways that share nothing but the description: `placed` puts each face in space by its mould
lines, `folded` turns what lies beyond each bend of the flat piece. Areas come from a third way,
rectangles by hand.
"""

from dataclasses import dataclass
from math import pi, tan

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pedalwright.making.bending import (
    Face,
    FlatPattern,
    Fold,
    Hole,
    Neutral,
    Sheet,
    folded,
    unfold,
)
from pedalwright.making.bending.solid import placed
from pedalwright.panels.plane import apart, area


@dataclass(frozen=True)
class Panel:
    """A tray: a web with flanges on some of its sides, some with a return, some only a tab."""

    web: Face
    thickness: float
    share: float

    def flat(self, share: float | None = None) -> FlatPattern:
        k = self.share if share is None else share
        neutral = Neutral(share=k, plus_minus=0.0, way="given", source="drawn by lot")
        sheet = Sheet(metal="5251-H22", thickness=self.thickness)
        return unfold("tray", self.web, sheet, lambda _: neutral)


TURNS = st.floats(pi / 18, 3 * pi / 4)
SIGNS = st.sampled_from([1.0, -1.0])


@st.composite
def panels(draw: st.DrawFn) -> Panel:
    t = draw(st.floats(0.8, 3.0))
    radius = t * draw(st.floats(0.5, 3.0))
    wide, high = draw(st.floats(120.0, 400.0)), draw(st.floats(120.0, 400.0))
    corners = [(0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high)]
    sides = draw(st.sets(st.integers(0, 3), min_size=1))
    folds = []
    for i in sorted(sides):
        end, start = corners[i], corners[(i + 1) % 4]
        length = apart(start, end)
        first, last = 0.0, 1.0
        if draw(st.booleans()):  # a tab that stops short of the corners
            first, last = draw(st.floats(0.2, 0.35)), draw(st.floats(0.6, 0.8))
        at = [
            (start[0] + f * (end[0] - start[0]), start[1] + f * (end[1] - start[1]))
            for f in (first, last)
        ]
        folds.append(
            Fold(
                name=f"B{i}",
                start=at[0],
                end=at[1],
                angle=draw(TURNS) * draw(SIGNS),
                radius=radius,
                face=draw(flanges(f"flange {i}", length * (last - first), radius)),
            )
        )
    hole = Hole(
        name="web hole",
        centre=(wide * draw(st.floats(0.3, 0.7)), high * draw(st.floats(0.3, 0.7))),
        diameter=5.0,
    )
    outline = ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high))
    web = Face(name="web", outline=outline, holes=(hole,), folds=tuple(folds))
    return Panel(web, t, draw(st.floats(0.3, 0.5)))


@st.composite
def flanges(draw: st.DrawFn, name: str, width: float, radius: float) -> Face:
    """A rectangle on its fold; every other one has a return along its far side."""
    deep = draw(st.floats(60.0, 120.0))
    holes = (
        Hole(
            name=f"{name} hole", centre=(width * draw(st.floats(0.3, 0.7)), deep / 2), diameter=5.0
        ),
    )
    folds = ()
    if draw(st.booleans()):
        beyond = Face(
            name=f"{name} return",
            outline=((0.0, 0.0), (width, 0.0), (width, 40.0), (0.0, 40.0)),
            holes=(Hole(name=f"{name} return hole", centre=(width / 3, 30.0), diameter=4.0),),
        )
        folds = (
            Fold(
                name=f"{name} bend",
                start=(0.0, deep),
                end=(width, deep),
                angle=draw(TURNS) * draw(SIGNS),
                radius=radius,
                face=beyond,
            ),
        )
    outline = ((0.0, 0.0), (width, 0.0), (width, deep), (0.0, deep))
    return Face(name=name, outline=outline, holes=holes, folds=folds)


@pytest.mark.slow
@given(panel=panels())
@settings(max_examples=1000)
def test_every_hole_comes_to_lie_where_the_part_has_it(panel: Panel) -> None:
    flat = panel.flat()
    marked = {hole.name: hole for hole in flat.holes}
    for face in placed(panel.web, panel.thickness):
        for hole in face.face.holes:
            mark = marked.pop(hole.name)
            off = folded(flat, mark.face, mark.centre) - face.place(hole.centre)
            assert off.length() < 1e-6
    assert marked == {}


def by_hand(panel: Panel) -> float:
    """Area of the sheet: trimmed rectangles, and for each bend an arc of the neutral line."""

    def back(fold: Fold) -> float:
        return (fold.radius + panel.thickness) * tan(abs(fold.angle) / 2)

    def arc(fold: Fold) -> float:
        return abs(fold.angle) * (fold.radius + panel.share * panel.thickness)

    corners = panel.web.outline
    wide, high = corners[2]
    full: dict[int, float] = {}
    total = 0.0
    for fold in panel.web.folds:
        if fold.start in corners:
            full[int(fold.name[1:])] = back(fold)
    left = {0: wide, 1: high, 2: wide, 3: high}
    for i, trim in full.items():
        left[(i + 1) % 4] -= trim
        left[(i + 3) % 4] -= trim
    total += left[0] * left[1]
    for fold in panel.web.folds:
        i = int(fold.name[1:])
        width = apart(fold.start, fold.end)
        bend_width = left[i] if i in full else width
        total += bend_width * arc(fold)
        if i not in full:  # the tab's root is trimmed, with a notch of 2 mm on each side
            total -= back(fold) * (width + 4.0)
        deep = fold.face.outline[2][1] - back(fold)
        for further in fold.face.folds:
            deep -= back(further)
            total += width * (arc(further) + 40.0 - back(further))
        total += width * deep
    return total


@pytest.mark.slow
@given(panel=panels())
@settings(max_examples=1000)
def test_the_sheet_has_the_area_of_the_part(panel: Panel) -> None:
    flat = panel.flat()
    assert area(flat.outline) == pytest.approx(by_hand(panel), abs=0.05)
    strips = sum(apart(*bend.near) * bend.allowance for bend in flat.bends)
    assert sum(area(face.outline) for face in flat.faces) + strips == pytest.approx(
        by_hand(panel), abs=1e-6
    )


@given(panel=panels())
def test_a_face_keeps_its_shape_when_it_is_bent(panel: Panel) -> None:
    """Its outline is as long in space as on the flat piece, side by side."""
    flat = panel.flat()
    for face in flat.faces:
        up = [folded(flat, face.name, place) for place in face.outline]
        for i, place in enumerate(face.outline):
            level = apart(face.outline[i - 1], place)
            assert (up[i] - up[i - 1]).length() == pytest.approx(level, abs=1e-6)


@given(panel=panels())
def test_a_wrong_neutral_line_is_a_wrong_length(panel: Panel) -> None:
    """A tenth of the thickness more in every bend: the strips grow, the faces do not."""
    right, wrong = panel.flat(), panel.flat(panel.share + 0.1)
    for one, other in zip(right.bends, wrong.bends, strict=True):
        grown = abs(one.angle) * 0.1 * panel.thickness
        assert other.allowance - one.allowance == pytest.approx(grown)
    for one, other in zip(right.faces, wrong.faces, strict=True):
        assert area(other.outline) == pytest.approx(area(one.outline))
