"""The footwell from above and from the seat, read back from its shapes."""

import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import pairwise
from math import isfinite

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from pedalwright.assess import Assessment, assess
from pedalwright.core.points import REARWARD, UP, Point
from pedalwright.design import Design, mirrored
from pedalwright.documents.outside import INCH, METRIC, Units
from pedalwright.documents.pictures.feet import scene
from pedalwright.documents.pictures.front import front_view
from pedalwright.documents.pictures.plan import plan
from pedalwright.documents.pictures.views import FROM_ABOVE, FROM_THE_SEAT, hull
from pedalwright.drawing import XY, Drawing, Group, Item, Polyline, Text, svg
from pedalwright.project import car_text, read

Draws = Callable[[Design, Assessment, Units], Drawing]
BOTH = pytest.mark.parametrize("draws", [plan, front_view])


@pytest.fixture(scope="module", params=["larkfield-first", "brackwater-fix2", "saltmarsh-improved"])
def design(request: pytest.FixtureRequest) -> Design:
    return read(car_text(request.param)).design


@pytest.fixture(scope="module")
def assessment(design: Design) -> Assessment:
    return assess(design)


def lines(drawing: Drawing, part: str) -> list[tuple[XY, ...]]:
    """The points of all lines of a part, in the order they are drawn in."""
    return [
        shape.points
        for shape in flat(drawing.shapes)
        if isinstance(shape, Polyline) and shape.part == part
    ]


def flat(shapes: tuple[Item, ...]) -> Iterator[Item]:
    for shape in shapes:
        if isinstance(shape, Group):
            yield from flat(shape.shapes)
        else:
            yield shape


def words(drawing: Drawing, room: tuple[float, float] = (270.0, 225.0)) -> list[Text]:
    shapes = drawing.fitted(*room).laid_out().shapes
    return [shape for shape in flat(shapes) if isinstance(shape, Text)]


def test_paper_lies_in_the_car_as_it_is_said() -> None:
    assert FROM_ABOVE.towards == UP
    assert FROM_THE_SEAT.towards == REARWARD


@BOTH
def test_every_driver_is_on_every_pedal(
    design: Design, assessment: Assessment, draws: Draws
) -> None:
    drawing = draws(design, assessment, METRIC)
    for driver in design.drivers:
        assert len(lines(drawing, f"shoe-{driver.name}")) == 3
        assert len(lines(drawing, f"leg-{driver.name}")) == 3
    for pedal in ("clutch", "brake", "accelerator"):
        slid = sum(aft > 0.0 for aft in scene(design, assessment).aft)
        assert len(lines(drawing, f"{pedal}-pad")) == 2 + slid


@BOTH
def test_no_two_words_stand_on_each_other(
    design: Design, assessment: Assessment, draws: Draws
) -> None:
    """Lying ones; a name may touch the next one's, but not begin before it ends."""
    drawing = draws(design, assessment, INCH).fitted(270.0, 225.0)
    lying = [text for text in words(drawing) if abs(text.angle) < 0.1]
    for i, one in enumerate(lying):
        for other in lying[:i]:
            below = abs(one.foot(drawing.scale)[1] - other.foot(drawing.scale)[1]) * drawing.scale
            assert below > 0.9 * one.height or _apart(one, other, drawing.scale), (
                one.text,
                other.text,
            )


def _apart(one: Text, other: Text, scale: float) -> bool:
    (a, b), (c, d) = (_run(text, scale) for text in (one, other))
    return b <= c or d <= a


def _run(text: Text, scale: float) -> tuple[float, float]:
    back = {"start": 0.0, "middle": 0.5, "end": 1.0}[text.align] * text.width
    x = text.at[0] * scale - back
    return x, x + text.width


def test_a_wall_is_cut_at_the_pad_beside_it(design: Design, assessment: Assessment) -> None:
    shown = scene(design, assessment)
    tunnel = design.survey.face("tunnel")
    pad = min((built.lever.pad for built in shown.pedals), key=tunnel.height)
    (above,), (seat,) = (
        lines(draws(design, assessment, METRIC), "tunnel") for draws in (plan, front_view)
    )
    for x, y in above:
        assert tunnel.height(Point(x, y, pad.z)) == pytest.approx(0.0, abs=1e-9)
    for y, z in seat:
        assert tunnel.height(Point(pad.x, y, z)) == pytest.approx(0.0, abs=1e-9)


def test_the_row_of_pedals_adds_up_from_wall_to_wall(
    design: Design, assessment: Assessment
) -> None:
    """As written along the row: walls, pads and what is between them."""
    drawing = front_view(design, assessment, METRIC)
    shown = scene(design, assessment)
    written = [
        text.text
        for text in words(drawing)
        if re.fullmatch(r"[\d.]+", text.text) and not text.angle
    ]
    assert len(written) == 7
    between = float(shown.row.right_wall - shown.row.left_wall)
    assert sum(map(float, written)) == pytest.approx(between, abs=7 * 0.05)


def test_the_other_hand_is_the_mirror_image(design: Design, assessment: Assessment) -> None:
    other = mirrored(design)
    found = assess(other)
    for draws, (x, y) in ((plan, (1.0, -1.0)), (front_view, (-1.0, 1.0))):
        one, mirror = (draws(d, a, METRIC) for d, a in ((design, assessment), (other, found)))
        for part in ("brake-pad", "clutch-arm", f"leg-{design.drivers[0].name}"):
            for points, turned in zip(lines(one, part), lines(mirror, part), strict=True):
                swapped = sorted((x * right, y * up) for right, up in turned)
                assert np.array(sorted(points)) == pytest.approx(np.array(swapped), abs=1e-6)


@BOTH
def test_who_does_not_reach_is_left_out(draws: Draws) -> None:
    design = read(car_text("larkfield-improved")).design
    first, *others = design.drivers
    unknown = replace(design, drivers=(replace(first, hip=Point(np.nan, 352.0, 120.0)), *others))
    drawn = svg(draws(unknown, assess(unknown), METRIC), physical=True)
    assert b"nan" not in drawn
    assert b'data-part="leg-D2"' in drawn


@given(st.lists(st.tuples(st.integers(-9, 9), st.integers(-9, 9)), min_size=3, unique=True))
def test_a_hull_has_no_hollow_and_holds_everything(places: list[tuple[int, int]]) -> None:
    outline = hull([(float(x), float(y)) for x, y in places])
    assert set(outline) <= set(places)
    for (ax, ay), (bx, by) in pairwise((*outline, outline[0])):
        sides = [(bx - ax) * (y - ay) - (by - ay) * (x - ax) for x, y in places]
        assert len(outline) < 3 or min(sides) >= 0.0
    assert all(isfinite(x) for x, _ in outline)
