"""The load loop, the box in space and the deformed box, read back from their shapes."""

from collections.abc import Iterator
from itertools import pairwise
from math import dist, hypot
from typing import Literal

import numpy as np
import pytest

from assess.unboxed import unboxed
from pedalwright.assess import Assessment, assess
from pedalwright.assess.full import FullTier, assess_full
from pedalwright.assess.loop import FRAME, load_loop
from pedalwright.design import Design
from pedalwright.documents.outside import INCH, METRIC
from pedalwright.documents.pictures import pictures
from pedalwright.documents.pictures.arrows import Arrow, Way
from pedalwright.documents.pictures.deformed import deformed, deformed_pictures
from pedalwright.documents.pictures.load_loop import SAYS, force_scale, load_loop_picture
from pedalwright.documents.pictures.oblique import box_picture
from pedalwright.drawing import SHADES, Drawing, Group, Item, Leader, Polyline, Text, svg
from pedalwright.project import car_text, cars, read
from pedalwright.structure.box.shape import shape

Pedal = Literal["brake", "clutch"]
PEDALS: tuple[Pedal, ...] = ("brake", "clutch")


@pytest.fixture(scope="module", params=sorted(cars()))
def design(request: pytest.FixtureRequest) -> Design:
    return read(car_text(request.param)).design


@pytest.fixture(scope="module")
def assessment(design: Design) -> Assessment:
    return assess(design)


def flat(shapes: tuple[Item, ...]) -> Iterator[Item]:
    for item in shapes:
        if isinstance(item, Group):
            yield from flat(item.shapes)
        else:
            yield item


def words(drawing: Drawing) -> list[Text]:
    return [one for one in flat(drawing.laid_out().shapes) if isinstance(one, Text)]


@pytest.mark.parametrize("pedal", PEDALS)
def test_every_arrow_is_as_long_as_its_force(
    design: Design, assessment: Assessment, pedal: Pedal
) -> None:
    """Seen from the side, and those of the pedal and of what carries it come to nothing."""
    loop = load_loop(design, assessment, pedal)
    per = force_scale(loop)
    drawing = load_loop_picture(design, assessment, pedal, METRIC)
    arrows = [one for one in drawing.shapes if isinstance(one, Arrow)]
    acts = [loop.bodies[0].acts[0]]
    acts += [
        act
        for body in loop.bodies
        if any(a.by == FRAME for a in body.acts) and body.name != "relay lever"
        for act in body.acts
    ]
    acts += loop.bodies[0].acts
    drawn = [hypot(*one.force) for one in arrows[:-1]]
    seen = [per * hypot(float(act.force.x), float(act.force.z)) for act in acts]
    assert drawn == pytest.approx(seen, rel=1e-9)
    assert hypot(*arrows[-1].force) == pytest.approx(1000.0 * per)
    total = np.sum([one.force for one in arrows[1:-1]], axis=0)
    assert np.hypot(*total) < 1e-6


@pytest.mark.parametrize("pedal", PEDALS)
def test_the_loop_is_drawn_as_it_closes(
    design: Design, assessment: Assessment, pedal: Pedal
) -> None:
    loop = load_loop(design, assessment, pedal)
    drawing = load_loop_picture(design, assessment, pedal, METRIC)
    ways = [one for one in drawing.shapes if isinstance(one, Way)]
    says = [one.text.replace("\n", " ") for one in drawing.shapes if isinstance(one, Leader)]
    if loop.closing == "closed":
        (whole,) = ways
        assert not whole.broken
        assert dist(whole.places[0], whole.places[-1]) < 1e-9
        assert SAYS["closed"].split(":")[0] in says
    else:
        solid, broken = ways
        assert broken.broken
        assert not solid.broken
        assert {broken.places[0], broken.places[-1]} == {solid.places[0], solid.places[-1]}
        told = SAYS["open"] if loop.closing == "open" else "closed or open: not known"
        assert told in says


@pytest.mark.parametrize("pedal", PEDALS)
def test_no_two_words_stand_on_each_other(
    design: Design, assessment: Assessment, pedal: Pedal
) -> None:
    for units in (METRIC, INCH):
        drawing = load_loop_picture(design, assessment, pedal, units)
        lying = words(drawing)
        for i, one in enumerate(lying):
            for other in lying[:i]:
                apart = abs(one.foot(drawing.scale)[1] - other.foot(drawing.scale)[1])
                assert apart * drawing.scale > 0.9 * one.height or _beside(
                    one, other, drawing.scale
                ), (one.text, other.text)


def _beside(one: Text, other: Text, scale: float) -> bool:
    (a, b), (c, d) = (_run(text, scale) for text in (one, other))
    return b <= c or d <= a


def _run(text: Text, scale: float) -> tuple[float, float]:
    back = {"start": 0.0, "middle": 0.5, "end": 1.0}[text.align] * text.width
    x = text.at[0] * scale - back
    return x, x + text.width


def test_every_car_has_them_and_none_is_nan(design: Design, assessment: Assessment) -> None:
    drawn = {one.key: one.svg for one in pictures(design, assessment, METRIC)}
    for key in ("load-brake", "load-clutch", "give", "give-clutch", "box-space"):
        assert b"nan" not in drawn[key]
        assert len(drawn[key]) > 2000


def test_what_stands_behind_a_sheet_is_not_drawn() -> None:
    """Brackwater's cheek stands before the brake's arm; without it all of the arm shows."""
    design = read(car_text("brackwater-fix2")).design
    found = assess(design)

    def arm(car: Design) -> float:
        return sum(
            dist(a, b)
            for one in flat(box_picture(car, found).shapes)
            if isinstance(one, Polyline) and one.title == "brake arm"
            for a, b in pairwise(one.points)
        )

    assert arm(design) < 0.95 * arm(unboxed(design))


@pytest.fixture(scope="module")
def tier() -> FullTier:
    design = read(car_text("larkfield-first")).design
    found = assess_full(design, assess(design))
    assert found is not None
    return found


def test_a_deformed_box_says_how_much_larger_and_what_the_shades_mean(tier: FullTier) -> None:
    design = read(car_text("larkfield-first")).design
    drawn = deformed_pictures(design, tier, METRIC)
    assert [one.name for one in drawn] == [
        "box-brake-moves", "box-brake-stress", "box-clutch-moves", "box-clutch-stress",
    ]  # fmt: skip
    moves, stress = drawn[:2]
    assert "2 times as large" in moves.title
    said = {text.text for text in words(stress)}
    assert "more than it yields at" in said
    assert b"nan" not in svg(stress, physical=True)


def test_each_triangle_has_the_shade_of_its_move(tier: FullTier) -> None:
    assert tier.box is not None
    own = shape(tier.box, 0)
    drawing = deformed(read(car_text("larkfield-first")).design, tier.box, 0, "moves", METRIC)
    painted = [
        one.fill for one in drawing.shapes if isinstance(one, Polyline) and one.part == "triangle"
    ]
    top = own.moved.max()
    for number, fill in enumerate(SHADES):
        low, high = top * number / 5, top * (number + 1) / 5
        inside = (own.moved >= low) & ((own.moved < high) | (number == 4))
        assert painted.count(fill) == int(inside.sum())


def test_the_shape_is_the_answer_of_the_bench(tier: FullTier) -> None:
    """The wall goes forward under the cylinder, and yields at the brake's hard push."""
    assert tier.box is not None
    own = shape(tier.box, 0)
    wall = own.moves[own.part == own.parts.index("front_wall")]
    assert wall[..., 0].min() == pytest.approx(-own.most, rel=0.05)
    hard = shape(tier.box, 1)
    assert hard.worst[0].part == "front_wall"
    assert hard.worst[0].stress > hard.worst[0].yields
    assert np.nanmax(hard.used) > 1.0
    assert max(one.force for one in hard.fasteners) == pytest.approx(
        2.5 * max(one.force for one in own.fasteners), rel=1e-6
    )
