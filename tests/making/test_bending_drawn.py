"""The drawing of a flat piece: groups as layers, a bend's words, nothing over the grain's arrow."""

import numpy as np
import pytest

from pedalwright.drawing import Circle, Group, Polyline, Text
from pedalwright.making.bending import Face, Fold, Hole, Neutral, Sheet, unfold
from pedalwright.making.bending.drawn import flat_drawing

NEUTRAL = Neutral(share=0.4, plus_minus=0.05, way="given", source="invented")


@pytest.fixture(scope="module")
def groups() -> dict[str, Group]:
    lip = Face(name="lip", outline=((0.0, 0.0), (90.0, 0.0), (90.0, 20.0), (0.0, 20.0)))
    fold = Fold(name="B1", start=(90.0, 0.0), end=(0.0, 0.0), angle=-np.pi / 2, radius=2, face=lip)
    web = Face(
        name="web",
        outline=((0.0, 0.0), (90.0, 0.0), (90.0, 60.0), (0.0, 60.0)),
        holes=(Hole(name="H1", centre=(45.0, 30.0), diameter=6.5),),
        folds=(fold,),
    )
    sheet = Sheet(metal="DC01", thickness=1.0, grain=0.0)
    drawing = flat_drawing(unfold("small bracket", web, sheet, lambda _: NEUTRAL))
    assert drawing.name == "small-bracket"
    return {shape.part: shape for shape in drawing.shapes if isinstance(shape, Group)}


def test_each_tool_has_its_group(groups: dict[str, Group]) -> None:
    assert list(groups) == ["cut", "bend", "drill", "mark"]
    (outline,) = groups["cut"].shapes
    assert isinstance(outline, Polyline)
    assert outline.closed
    (hole,) = [shape for shape in groups["drill"].shapes if isinstance(shape, Circle)]
    assert (hole.centre, hole.radius) == ((45.0, 30.0), 3.25)
    lines = [shape for shape in groups["bend"].shapes if isinstance(shape, Polyline)]
    assert len(lines) == 3


def test_words_are_written_upright(groups: dict[str, Group]) -> None:
    words = {shape.text: shape for shape in groups["mark"].shapes if isinstance(shape, Text)}
    assert set(words) == {"B1 down 90° R2", "H1 Ø6.5", "rolling direction"}
    assert all(abs(text.angle) <= np.pi / 2 + 1e-9 for text in words.values())


def test_the_grains_arrow_keeps_away_from_holes(groups: dict[str, Group]) -> None:
    (grain,) = [
        shape
        for shape in groups["mark"].shapes
        if isinstance(shape, Polyline) and len(shape.points) == 2
    ]
    assert all(np.hypot(x - 45.0, y - 30.0) > 10.0 for x, y in grain.points)
