"""Windows, scales and hatching."""

import math

import pytest

from pedalwright.drawing.box import Box
from pedalwright.drawing.dimension import Linear
from pedalwright.drawing.hatch import Hatch
from pedalwright.drawing.leader import Leader
from pedalwright.drawing.shapes import Arc, Circle, Group, Polyline, Text, extent
from pedalwright.drawing.sheet import SCALES, Drawing

BEAM = Polyline(((0.0, 0.0), (700.0, 0.0)))


def drawing(*shapes: Polyline | Linear | Leader | Group | Text) -> Drawing:
    return Drawing(name="beam", title="Beam", shapes=shapes)


@pytest.mark.parametrize(
    ("width", "scale", "text"), [(800, 1.0, "1:1"), (360, 0.5, "1:2"), (150, 0.2, "1:5")]
)
def test_the_largest_usual_scale_that_fits_is_taken(width: float, scale: float, text: str) -> None:
    fitted = drawing(BEAM).fitted(width, 100.0)
    assert fitted.scale == scale
    assert fitted.scale_text == text


def test_dimensions_count_when_a_scale_is_chosen() -> None:
    """Bare, the beam needs 356 mm x 6 mm of paper at 1 : 2; the dimension needs height too."""
    dimension = Linear((0.0, 0.0), (700.0, 0.0), "horizontal", offset=30.0)
    assert drawing(BEAM).fitted(356.0, 10.0).scale == 0.5
    assert drawing(BEAM, dimension).fitted(356.0, 10.0).scale == SCALES[-1]
    assert drawing(BEAM, dimension).fitted(356.0, 40.0).scale == 0.5


def test_the_window_holds_everything_with_a_margin() -> None:
    shapes = (BEAM, Group((Polyline(((0.0, -20.0), (1.0, 30.0))),)))
    assert drawing(*shapes).laid_out().window == Box(-3.0, -23.0, 703.0, 33.0)


def test_an_empty_drawing_has_a_window_too() -> None:
    assert drawing().laid_out().window == Box(-3.0, -3.0, 3.0, 3.0)


def test_arcs_reach_as_far_as_they_bulge() -> None:
    over_the_top = extent([Arc((0.0, 0.0), 10.0, 0.1, math.pi - 0.1)], 1.0)
    assert over_the_top is not None
    assert over_the_top.top == pytest.approx(10.0)
    assert over_the_top.right == pytest.approx(10.0 * math.cos(0.1))
    full = extent([Circle((1.0, 2.0), 10.0)], 1.0)
    assert full is not None
    assert (full.left, full.bottom, full.right, full.top) == pytest.approx((-9, -8, 11, 12))


def test_upright_text_needs_height_not_width() -> None:
    # ten letters of 0.602 em where a capital is 0.729 em high
    long = 10 * 0.602 / 0.729 * 2.5
    box = extent([Text((0.0, 0.0), "ten letter", angle=math.pi / 2, align="start")], 1.0)
    assert box is not None
    assert (box.width, box.height) == pytest.approx((2.5, long))
    assert extent([Text((0.0, 0.0), "ten letter", stand="under", align="end")], 0.5) == Box(
        pytest.approx(-2 * long), pytest.approx(-5.0), pytest.approx(0.0), pytest.approx(0.0)
    )


def test_notes_and_letters_lie_on_top() -> None:
    note = Leader((0.0, 0.0), "note")
    length = Linear((0.0, 0.0), (700.0, 0.0), "horizontal")
    shapes = drawing(length, note, BEAM).laid_out().shapes
    assert shapes.index(BEAM) < min(i for i, s in enumerate(shapes) if isinstance(s, Text))


def test_hatching_fills_an_outline_with_a_notch_and_nothing_else() -> None:
    """Lines 2 mm apart: their length times 2 mm is the area of the section."""
    section = ((0.0, 0.0), (60.0, 0.0), (60.0, 40.0), (40.0, 40.0), (40.0, 10.0), (0.0, 10.0))
    lines = [s for s in Hatch(section, pitch=0.1).drawn(1.0) if isinstance(s, Polyline)]
    area = sum(math.dist(*line.points) for line in lines) * 0.1
    assert area == pytest.approx(60 * 10 + 20 * 30, rel=2e-3)
    for line in lines:
        for x, y in line.points:
            assert -1e-9 <= y <= 40.0 + 1e-9
            assert x >= 40.0 - 1e-9 or y <= 10.0 + 1e-9


def test_hatching_keeps_its_pitch_on_paper() -> None:
    square = ((0.0, 0.0), (100.0, 0.0), (100.0, 100.0), (0.0, 100.0))
    full, half = (len(Hatch(square).drawn(scale)) for scale in (1.0, 0.5))
    # half the paper: half as many lines, give or take one at the corner
    assert full == 71
    assert half == 35
