"""What a builder may find in a footwell besides walls: an arch, a bonnet, a rail, the ground."""

from dataclasses import replace

import numpy as np
import pytest

from pedalwright.assess import assess
from pedalwright.core.checks import Finding
from pedalwright.core.points import Plane, Point
from pedalwright.design import Design
from pedalwright.project import car_text, read
from pedalwright.survey import Face, Line, Obstacle, Survey


@pytest.fixture(scope="module")
def design() -> Design:
    return read(car_text("brackwater-fix2")).design


def with_things(design: Design, **things: object) -> Design:
    survey: Survey = replace(design.survey, **things)  # pyright: ignore[reportArgumentType]
    return replace(design, survey=survey)


def found(design: Design, code: str, about: str = "") -> list[Finding]:
    return [f for f in assess(design).findings if f.limit.code == code and about in f.about]


@pytest.mark.parametrize("thick", [120.0, 160.0])
def test_an_arch_as_a_thick_tube_is_as_near_as_it_is_thick(design: Design, thick: float) -> None:
    """A tube across the car, level, over the toes of whoever drives: half a diameter nearer."""
    arch = Line(
        name="wheel_arch",
        start=Point(150.0, -600.0, 420.0),
        end=Point(150.0, -180.0, 420.0),
        diameter=thick,
    )
    thin = replace(arch, diameter=20.0)
    rooms = [
        min(
            float(one.distance)
            for one in assess(
                with_things(design, lines=(*design.survey.lines, line))
            ).clearances.lines
            if one.thing == "wheel_arch"
        )
        for line in (thin, arch)
    ]
    assert rooms[0] - rooms[1] == pytest.approx((thick - 20.0) / 2.0)


def test_an_arch_as_a_box_is_something_a_shoe_must_pass(design: Design) -> None:
    box = Obstacle(
        name="wheel_arch", low=Point(0.0, -600.0, 300.0), high=Point(300.0, -430.0, 400.0)
    )
    before = found(design, "driver.instep", "clutch")
    after = found(with_things(design, obstacles=(box,)), "driver.instep", "clutch")
    assert before
    assert min(float(f.value) for f in after) < min(float(f.value) for f in before)


def test_the_underside_of_a_bonnet_is_a_face_that_looks_down(design: Design) -> None:
    """The toes' room goes with its height, millimetre for millimetre."""

    def room(height: float) -> float:
        plane = Plane(normal=Point(0.0, 0.0, -1.0), offset=-height)
        bonnet = Face(name="bonnet", plane=plane)
        faces = (*design.survey.faces, bonnet)
        rooms = found(with_things(design, faces=faces), "driver.toe_height")
        return min(float(f.value) for f in rooms)

    assert found(design, "driver.toe_height") == []
    assert room(500.0) - room(460.0) == pytest.approx(40.0)
    assert np.isfinite(room(460.0))
