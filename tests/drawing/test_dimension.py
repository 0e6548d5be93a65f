"""Dimensions say the true length and stand where ISO 129-1 wants them, at any scale."""

import itertools
import math

import pytest

from pedalwright.core.lengths import inches
from pedalwright.drawing.box import XY, Box, polar
from pedalwright.drawing.dimension import ARROW, GAP, OVERSHOOT, Linear, Stack, arrow
from pedalwright.drawing.leader import Leader
from pedalwright.drawing.lines import Fill, Line
from pedalwright.drawing.rounds import Angular, CentreCross, diameter, radius
from pedalwright.drawing.shapes import Arc, Item, Polyline, Text, extent
from pedalwright.drawing.sheet import SCALES, Drawing

#: Two letters, 2.5 mm high, on paper.
WIDTH_40 = 2 * 0.602 / 0.729 * 2.5


def lines(items: tuple[Item, ...]) -> list[tuple[XY, ...]]:
    return [i.points for i in items if isinstance(i, Polyline) and not i.closed]


def arrows(items: tuple[Item, ...]) -> list[tuple[XY, ...]]:
    return [i.points for i in items if isinstance(i, Polyline) and i.closed]


def text(items: tuple[Item, ...]) -> Text:
    (only,) = [i for i in items if isinstance(i, Text)]
    return only


def near(points: tuple[XY, ...]) -> object:
    return pytest.approx([x for point in points for x in point], abs=1e-9)


def flat(points: tuple[XY, ...]) -> list[float]:
    return [x for point in points for x in point]


@pytest.mark.parametrize("scale", SCALES)
def test_an_arrowhead_is_filled_and_three_mm_long_and_15_degrees_sharp(scale: float) -> None:
    head = arrow((5.0, 7.0), (2.0, 0.0), scale)
    assert (head.fill, head.line) == (Fill.SOLID, Line.NONE)
    tip, upper, lower = head.points
    assert tip == (5.0, 7.0)
    assert (tip[0] - upper[0]) * scale == pytest.approx(3.0)
    assert upper[0] == pytest.approx(lower[0])
    width = abs(upper[1] - lower[1]) * scale
    assert math.degrees(2 * math.atan(width / 2 / 3.0)) == pytest.approx(15.0)


@pytest.mark.parametrize("scale", SCALES)
def test_a_level_dimension_over_two_points(scale: float) -> None:
    items = Linear((10.0, 5.0), (610.0, 25.0), "horizontal", offset=10.0).drawn(scale)
    height = 25.0 + 10.0 / scale
    dimension, left, right = lines(items)
    assert flat(dimension) == near(((10.0, height), (610.0, height)))
    end = height + OVERSHOOT / scale
    assert flat(left) == near(((10.0, 5.0 + GAP / scale), (10.0, end)))
    assert flat(right) == near(((610.0, 25.0 + GAP / scale), (610.0, end)))
    assert [tip for tip, *_ in arrows(items)] == [(10.0, height), (610.0, height)]
    words = text(items)
    assert words.text == "600"
    assert words.at[0] == pytest.approx(310.0)
    assert words.at[1] > height
    assert words.angle == 0.0


def test_arrows_point_outward_where_there_is_room_and_inward_where_there_is_none() -> None:
    wide = Linear((0.0, 0.0), (40.0, 0.0), "horizontal")
    tight = Linear((0.0, 0.0), (7.0, 0.0), "horizontal")
    (tip, wing, _), _ = arrows(wide.drawn(1.0))
    assert wing[0] > tip[0]
    (tip, wing, _), _ = arrows(tight.drawn(1.0))
    assert wing[0] < tip[0]
    # the same part at 1 : 10 has no room either
    (tip, wing, _), _ = arrows(wide.drawn(0.1))
    assert wing[0] < tip[0]
    assert tight.reach(1.0) == (-2 * ARROW, 7.0 + 2 * ARROW)
    assert wide.reach(0.1) == (
        -20 * ARROW,
        pytest.approx(40.0 + 20 * ARROW + 10 * (WIDTH_40 + GAP)),
    )


def test_a_text_wider_than_the_length_stands_beyond_the_end() -> None:
    items = Linear((0.0, 0.0), (7.0, 0.0), "horizontal", label="{} ±0.25").drawn(1.0)
    words = text(items)
    box = extent([words], 1.0)
    assert box is not None
    assert box.left > 7.0 + 2 * ARROW
    dimension = lines(items)[0]
    assert dimension[0][0] == pytest.approx(-2 * ARROW)
    assert dimension[1][0] >= box.right


def test_a_text_beyond_the_end_is_read_away_from_it_whichever_way_was_measured() -> None:
    for a, b in itertools.permutations([(0.0, 0.0), (7.0, 0.0)], 2):
        dimension = Linear(a, b, "aligned", offset=0.0, label="{} ±0.25")
        box = extent([text(dimension.drawn(1.0))], 1.0)
        assert box is not None
        assert box.left > 7.0
        assert max(x for x, _ in lines(dimension.drawn(1.0))[0]) >= box.right


def test_a_dimension_line_through_its_points_has_no_extension_lines() -> None:
    items = Linear((0.0, 0.0), (50.0, 30.0), "horizontal", offset=0.5, base=0.0).drawn(1.0)
    assert len(lines(items)) == 1


def test_an_upright_dimension_is_read_from_the_right() -> None:
    items = Linear((0.0, 0.0), (3.0, -60.0), "vertical", offset=-10.0).drawn(1.0)
    assert flat(lines(items)[0]) == near(((-10.0, -60.0), (-10.0, 0.0)))
    words = text(items)
    assert words.text == "60"
    assert words.angle == pytest.approx(math.pi / 2)
    assert words.at == (pytest.approx(-10.8), pytest.approx(-30.0))


@pytest.mark.parametrize("degrees", range(0, 360, 15))
def test_no_text_stands_on_its_head(degrees: int) -> None:
    end = polar((0.0, 0.0), 80.0, math.radians(degrees))
    items = Linear((0.0, 0.0), end, "aligned", offset=10.0).drawn(1.0)
    words = text(items)
    assert words.text == "80"
    assert -90.0 < round(math.degrees(words.angle), 6) <= 90.0
    a, b = lines(items)[0]
    assert math.dist(a, b) == pytest.approx(80.0)
    # a positive offset lies to the left on the way from a to b
    cross = end[0] * a[1] - end[1] * a[0]
    assert cross / 80.0 == pytest.approx(10.0)
    # the text stands above its own line
    up = polar((0.0, 0.0), 1.0, words.angle + math.pi / 2)
    middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    lift = (words.at[0] - middle[0]) * up[0] + (words.at[1] - middle[1]) * up[1]
    assert lift == pytest.approx(0.8)


def test_a_base_lines_dimensions_up() -> None:
    items = Linear((0.0, 0.0), (50.0, 30.0), "horizontal", offset=-12.0, base=-40.0).drawn(0.5)
    assert lines(items)[0][0][1] == -40.0 - 24.0


@pytest.mark.parametrize("value", [0.0, math.nan])
def test_no_length_no_dimension(value: float) -> None:
    for direction in ("horizontal", "aligned"):
        assert Linear((0.0, 0.0), (value, 0.0), direction).drawn(1.0) == ()


def test_a_stack_puts_chains_in_a_row_and_longer_ones_outside() -> None:
    points = [(0.0, 0.0), (40.0, 5.0), (90.0, 0.0), (160.0, 0.0)]
    chain = [Linear(a, b, "horizontal") for a, b in itertools.pairwise(points)]
    overall = Linear(points[0], points[-1], "horizontal")
    placed = Stack((overall, *chain), side=1.0).placed(1.0)
    heights = {item.text: text(item.drawn(1.0)).at[1] for item in placed}
    assert heights["40"] == heights["50"] == heights["70"] == pytest.approx(5.0 + 10.0 + 0.8)
    assert heights["160"] == pytest.approx(heights["40"] + 8.0)


def test_a_stack_draws_no_line_over_another() -> None:
    """Three lengths between three points: three dimension lines, three extension lines."""
    a, b, c = (0.0, 0.0), (40.0, 0.0), (90.0, 0.0)
    rows = tuple(Linear(*pair, "horizontal") for pair in itertools.combinations((a, b, c), 2))
    items = Stack(rows, side=1.0).drawn(1.0)
    upright = sorted(line for line in lines(items) if line[0][0] == line[1][0])
    assert upright == [((x, 1.0), (x, top)) for x, top in ((0.0, 20.0), (40.0, 12.0), (90.0, 20.0))]
    assert len(lines(items)) == 6
    assert len(arrows(items)) == 6


def test_a_stack_counts_the_text_that_stands_outside() -> None:
    """At 1 : 10 the first text needs the room of its neighbour, at 1 : 1 it does not."""
    rows = (
        Linear((0.0, 0.0), (60.0, 0.0), "horizontal"),
        Linear((60.0, 0.0), (160.0, 0.0), "horizontal"),
    )

    def levels(scale: float) -> set[float]:
        return {item.offset for item in Stack(rows, side=-1.0).placed(scale)}

    assert levels(1.0) == {-10.0}
    assert levels(0.1) == {-10.0, -18.0}


def test_an_angle_is_written_in_degrees_beside_its_arc() -> None:
    items = Angular((0.0, 0.0), 0.0, math.pi / 6, 100.0).drawn(1.0)
    words = text(items)
    assert words.text == "30°"
    box = extent([words], 1.0)
    assert box is not None
    assert math.hypot(box.left, box.bottom) > 100.0
    (arc,) = [item for item in items if isinstance(item, Arc)]
    assert (arc.start, arc.end) == (0.0, math.pi / 6)
    first, second = arrows(items)
    assert first[0] == (100.0, 0.0)
    # the heads lie within the angle, on the arc
    for head in (first, second):
        foot = ((head[1][0] + head[2][0]) / 2, (head[1][1] + head[2][1]) / 2)
        assert 0.0 < math.atan2(foot[1], foot[0]) < math.pi / 6
        assert math.hypot(*foot) == pytest.approx(100.0, abs=0.05)


def test_a_small_angle_has_its_arrows_outside() -> None:
    items = Angular((0.0, 0.0), 0.0, 0.05, 100.0).drawn(1.0)
    (arc,) = [item for item in items if isinstance(item, Arc)]
    assert arc.start < 0.0 < 0.05 < arc.end
    assert arrows(items)[0][1][1] < 0.0


def test_a_diameter_and_a_radius_point_at_the_circle() -> None:
    hole = diameter((10.0, 0.0), 15.88, math.pi / 2, label="Ø{} H7")
    assert (hole.text, hole.tip) == ("Ø15.88 H7", (pytest.approx(10.0), pytest.approx(7.94)))
    corner = radius((0.0, 0.0), 3.0, math.pi)
    assert (corner.text, corner.tip) == ("R3", (pytest.approx(-3.0), pytest.approx(0.0)))
    tip, *wings = arrows(corner.drawn(1.0))[0]
    assert all(wing[0] < tip[0] for wing in wings)


def test_a_centre_cross_goes_over_the_edge_by_two_mm_on_paper() -> None:
    level, upright = lines(CentreCross((1.0, 2.0), 8.0).drawn(0.2))
    assert level == ((-17.0, 2.0), (19.0, 2.0))
    assert upright == ((1.0, -16.0), (1.0, 20.0))


def test_a_note_stands_on_its_shelf_on_the_side_it_was_sent_to() -> None:
    for way in (1.0, -1.0):
        items = Leader((0.0, 0.0), "first\nsecond line", to=(way * 10.0, 5.0)).drawn(1.0)
        tip, elbow, end = lines(items)[0]
        assert (tip, elbow) == ((0.0, 0.0), (way * 10.0, 5.0))
        first, second = [item for item in items if isinstance(item, Text)]
        assert first.at[1] > second.at[1] + 2.5
        box = extent([first, second], 1.0)
        assert box is not None
        assert min(elbow[0], end[0]) <= box.left < box.right <= max(elbow[0], end[0])
        assert box.bottom > 5.0


def rooms(drawing: Drawing) -> list[Box]:
    texts = [shape for shape in drawing.laid_out().shapes if isinstance(shape, Text)]
    boxes = [extent([shape], drawing.scale) for shape in texts]
    return [box for box in boxes if box is not None]


@pytest.mark.parametrize("scale", [1.0, 0.5, 0.2])
def test_notes_make_room_for_each_other_and_for_dimensions(scale: float) -> None:
    """Six notes on neighbouring holes: sent the same way, they would cover one another."""
    notes = [Leader((12.0 * i, 0.0), f"hole number {i}", to=(6.0, 14.0)) for i in range(6)]
    size = Linear((0.0, 0.0), (60.0, 0.0), "horizontal", offset=16.0)
    as_sent = [note.room(scale) for note in notes]
    assert any(a and b and a.meets(b) for a, b in itertools.combinations(as_sent, 2))
    boxes = rooms(Drawing(name="n", title="N", shapes=(*notes, size), scale=scale))
    assert len(boxes) == 7
    assert not any(a.meets(b) for a, b in itertools.combinations(boxes, 2))


def test_dimensions_can_be_written_in_inches() -> None:
    row = Linear((0.0, 0.0), (228.6, 0.0), "horizontal", written=inches)
    assert text(row.drawn(1.0)).text == "9″"
    assert text(Stack((row,), side=1.0).drawn(1.0)).text == "9″"
    assert diameter((0.0, 0.0), 11.1125, 0.0, written=inches).text == "Ø7/16″"
    assert radius((0.0, 0.0), 44.45, 0.0, written=inches).text == "R1 3/4″"
